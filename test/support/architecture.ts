import { isBuiltin } from "node:module";
import { posix } from "node:path";
import * as ts from "typescript";

/** The folders from top to bottom: a file may use its own folder and those below it. */
export const layers: readonly string[] = [
  "cli",
  "live",
  "notebook",
  "record",
  "view",
  "bearing",
  "shaft",
  "joint",
  "intake",
  "survey",
  "handbook",
  "statistics",
  "quantity",
];

/** What a tree of sources must keep to. Paths are relative to kernel-helpers, with forward slashes. */
export interface House {
  /** Folders without input, output, clock or chance. */
  readonly pureFolders: readonly string[];
  /** Files of pure folders that may read a file, and nothing more. */
  readonly fileReaders: readonly string[];
  /** Files that are tables of data and may be long. */
  readonly dataFiles: readonly string[];
  readonly longestFile: number;
}

interface Import {
  readonly specifier: string;
  readonly line: number;
  /** What is taken from it by name. */
  readonly names: readonly string[];
  readonly typeOnly: boolean;
  /** Done when the file is loaded, and not inside a function. */
  readonly atTopLevel: boolean;
}

/** All that is wrong with a tree of sources, each fault as `file:line: what`. */
export function architectureFaults(sources: ReadonlyMap<string, string>, house: House): string[] {
  const faults: string[] = [];
  const uses = new Map<string, string[]>();
  for (const [path, source] of sources) {
    const file = ts.createSourceFile(path, source, ts.ScriptTarget.ESNext, true);
    const imports = importsOf(file);
    uses.set(
      path,
      relativeImports(path, imports).filter((target) => sources.has(target)),
    );
    const lines = source.split("\n").length - 1;
    if (lines > house.longestFile && !house.dataFiles.includes(path))
      faults.push(`${path}: it has ${lines} lines, more than ${house.longestFile}`);
    for (const found of imports) {
      const fault = importFault(path, found, sources);
      if (fault !== undefined) faults.push(`${path}:${found.line}: ${fault}`);
    }
    if (house.pureFolders.includes(folderOf(path))) faults.push(...impurities(path, file, imports, house));
  }
  return [...faults, ...cycles(uses).map((cycle) => `${cycle.join(" → ")}: the files import each other`)];
}

function folderOf(path: string): string {
  return path.includes("/") ? path.slice(0, path.indexOf("/")) : "";
}

function importFault(path: string, found: Import, sources: ReadonlyMap<string, string>): string | undefined {
  const { specifier } = found;
  const from = folderOf(path);
  if (from !== "" && !layers.includes(from)) return `the folder ${from} is not in the list of layers`;
  if (/^plotly/.test(specifier) && found.atTopLevel && !found.typeOnly && from !== "view")
    return `${specifier} is loaded at once; only view may do that`;
  if (!specifier.startsWith(".")) return undefined;
  // The bundler of the live page takes style sheets too.
  if (from === "live" && specifier.endsWith(".css")) return undefined;
  if (!/\.(js|json)$/.test(specifier)) return `${specifier} must end in .js`;
  const target = targetOf(path, specifier);
  if (target.startsWith("../")) return undefined;
  if (specifier.endsWith(".js") && !sources.has(target)) return `${specifier} is not there`;
  if (from === "") return undefined;
  const to = folderOf(target);
  if (to === "") return `${specifier} is the table of contents, which only the root may use`;
  if (layers.indexOf(to) < layers.indexOf(from)) return `${from} must not use ${to}`;
  return undefined;
}

function targetOf(path: string, specifier: string): string {
  return posix.join(posix.dirname(path), specifier).replace(/\.js$/, ".ts");
}

function relativeImports(path: string, imports: readonly Import[]): string[] {
  return imports.filter((i) => i.specifier.startsWith(".")).map((i) => targetOf(path, i.specifier));
}

/** Every way a file names another: import, export from, import type, import(), require(). */
function importsOf(file: ts.SourceFile): Import[] {
  const found: Import[] = [];
  const add = (
    node: ts.Node,
    specifier: ts.Node | undefined,
    typeOnly: boolean,
    atTopLevel: boolean,
  ): void => {
    if (specifier !== undefined && ts.isStringLiteralLike(specifier))
      found.push({
        specifier: specifier.text,
        line: lineOf(file, node),
        names: ts.isImportDeclaration(node) ? namesOf(node) : [],
        typeOnly,
        atTopLevel,
      });
  };
  const visit = (node: ts.Node, atTopLevel: boolean): void => {
    if (ts.isImportDeclaration(node))
      add(node, node.moduleSpecifier, node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword, true);
    else if (ts.isExportDeclaration(node)) add(node, node.moduleSpecifier, node.isTypeOnly, true);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      add(node, node.argument.literal, true, true);
    else if (
      ts.isCallExpression(node) &&
      /^(import|require|require\.resolve)$/.test(node.expression.getText())
    )
      add(node, node.arguments[0], node.expression.getText() === "require.resolve", atTopLevel);
    const inside = atTopLevel && !ts.isFunctionLike(node);
    ts.forEachChild(node, (child) => visit(child, inside));
  };
  visit(file, true);
  return found;
}

function namesOf(node: ts.ImportDeclaration): string[] {
  const bindings = node.importClause?.namedBindings;
  const named = bindings !== undefined && ts.isNamedImports(bindings) ? bindings.elements : [];
  return node.importClause?.name === undefined ? named.map((e) => (e.propertyName ?? e.name).text) : [];
}

/** A hash is a pure function of its bytes, wherever it lives. */
function isPure({ specifier, names }: Import): boolean {
  return specifier === "node:crypto" && names.length === 1 && names[0] === "createHash";
}

const forbidden = ["console", "process", "performance", "globalThis", "setTimeout", "setInterval", "crypto"];

/** What keeps a file from giving the same answer to the same call, or from doing nothing else. */
function impurities(path: string, file: ts.SourceFile, imports: readonly Import[], house: House): string[] {
  const readsFiles = house.fileReaders.includes(path);
  const faults = imports
    .filter((found) => isBuiltin(found.specifier) && !isPure(found))
    .filter(({ specifier }) => !(readsFiles && /^node:(fs|path)$/.test(specifier)))
    .map(({ specifier, line }) => `${path}:${line}: ${specifier} has no place in a pure folder`);
  const visit = (node: ts.Node): void => {
    const name = impureName(node);
    if (name !== undefined)
      faults.push(`${path}:${lineOf(file, node)}: ${name} has no place in a pure folder`);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return faults;
}

function impureName(node: ts.Node): string | undefined {
  if (ts.isPropertyAccessExpression(node)) {
    const text = node.getText().replace(/\s/g, "");
    if (text === "Date.now" || text === "Math.random") return text;
  }
  if (ts.isNewExpression(node) && node.expression.getText() === "Date" && !node.arguments?.length)
    return "new Date()";
  if (!ts.isIdentifier(node) || !forbidden.includes(node.text)) return undefined;
  const { parent } = node;
  // A field or method of that name is something else.
  const isField =
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    ((ts.isPropertyAssignment(parent) ||
      ts.isPropertySignature(parent) ||
      ts.isPropertyDeclaration(parent) ||
      ts.isMethodDeclaration(parent) ||
      ts.isMethodSignature(parent)) &&
      parent.name === node);
  return isField ? undefined : node.text;
}

function lineOf(file: ts.SourceFile, node: ts.Node): number {
  return file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1;
}

/** Rings of files that import each other, each once, from its first file in the alphabet. */
function cycles(uses: ReadonlyMap<string, readonly string[]>): string[][] {
  const rings = new Map<string, string[]>();
  const done = new Set<string>();
  const visit = (path: string, trail: readonly string[]): void => {
    const at = trail.indexOf(path);
    if (at >= 0) {
      const ring = trail.slice(at);
      const first = ring.indexOf([...ring].sort()[0]!);
      const turned = [...ring.slice(first), ...ring.slice(0, first)];
      rings.set(turned.join(), [...turned, turned[0]!]);
      return;
    }
    if (done.has(path)) return;
    for (const next of uses.get(path) ?? []) visit(next, [...trail, path]);
    done.add(path);
  };
  for (const path of [...uses.keys()].sort()) visit(path, []);
  return [...rings.values()];
}
