import { dirname } from "node:path";
import type * as TypeScript from "@tslab/typescript-for-tslab";

/** The names of a sheet that a cell has to do with. */
export interface CellNames {
  /** Names it declares, imports, assigns to, or alters a part of. */
  readonly makes: ReadonlySet<string>;
  /** Every name it mentions. */
  readonly mentions: ReadonlySet<string>;
  /** True where what it does cannot be told from names: it reaches for what all cells share, or is a module. */
  readonly reachesFurther: boolean;
}

/** Methods that alter what they are called on. */
const altering: ReadonlySet<string> = new Set([
  ...["push", "pop", "shift", "unshift", "splice", "sort", "reverse", "fill", "copyWithin"],
  ...["set", "add", "delete", "clear", "append", "assign", "defineProperty", "defineProperties"],
]);

/** Names by which a cell reaches what is shared by all. */
const shared: ReadonlySet<string> = new Set(["globalThis", "global", "process", "require", "eval", "module"]);

let compiler: typeof TypeScript | undefined;

/** Which names a cell makes and mentions, as its source says. In doubt a name is counted to both. */
export function cellNames(source: string): CellNames {
  compiler ??= loadCompiler();
  const ts = compiler;
  const file = ts.createSourceFile("cell.ts", source, ts.ScriptTarget.ES2022, true);
  const makes = new Set<string>();
  const mentions = new Set<string>();
  let reachesFurther = /^\s*\/\*\*[\s\S]*?@(?:module|browser)\b/.test(source);

  const make = (target: TypeScript.Node): void => {
    if (ts.isIdentifier(target)) makes.add(target.text);
    else if (ts.isPropertyAccessExpression(target) || ts.isElementAccessExpression(target))
      make(target.expression);
    else ts.forEachChild(target, make); // patterns, brackets, non-null marks
  };
  const look = (node: TypeScript.Node): void => {
    if (ts.isIdentifier(node) && !namesAPart(ts, node)) {
      mentions.add(node.text);
      if (shared.has(node.text)) reachesFurther = true;
      if (declaresName(ts, node)) makes.add(node.text);
    }
    if (ts.isImportDeclaration(node) && node.importClause === undefined) reachesFurther = true;
    if (node.kind === ts.SyntaxKind.ThisKeyword || node.kind === ts.SyntaxKind.ImportKeyword) {
      if (!ts.isImportDeclaration(node.parent)) reachesFurther = true;
    }
    if (ts.isBinaryExpression(node)) {
      const { FirstAssignment, LastAssignment } = ts.SyntaxKind;
      const { kind } = node.operatorToken;
      if (kind >= FirstAssignment && kind <= LastAssignment) make(node.left);
    }
    if (ts.isPrefixUnaryExpression(node) || ts.isPostfixUnaryExpression(node)) {
      const { PlusPlusToken, MinusMinusToken } = ts.SyntaxKind;
      if (node.operator === PlusPlusToken || node.operator === MinusMinusToken) make(node.operand);
    }
    if (ts.isDeleteExpression(node)) make(node.expression);
    if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
      if (altering.has(node.expression.name.text))
        for (const altered of [node.expression.expression, ...node.arguments]) make(altered);
    }
    ts.forEachChild(node, look);
  };
  look(file);
  return { makes, mentions, reachesFurther };
}

/** The `b` of `a.b`, of `{ b: 1 }` and of a type's member: no name of the sheet. */
function namesAPart(ts: typeof TypeScript, node: TypeScript.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    (ts.isPropertyAssignment(parent) && parent.name === node) ||
    (ts.isPropertySignature(parent) && parent.name === node) ||
    (ts.isMethodDeclaration(parent) && parent.name === node) ||
    (ts.isBindingElement(parent) && parent.propertyName === node) ||
    (ts.isImportSpecifier(parent) && parent.propertyName === node)
  );
}

/** Whether an identifier is the name that its parent declares or imports. */
function declaresName(ts: typeof TypeScript, node: TypeScript.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isVariableDeclaration(parent) ||
      ts.isBindingElement(parent) ||
      ts.isFunctionDeclaration(parent) ||
      ts.isClassDeclaration(parent) ||
      ts.isEnumDeclaration(parent) ||
      ts.isInterfaceDeclaration(parent) ||
      ts.isTypeAliasDeclaration(parent) ||
      ts.isModuleDeclaration(parent) ||
      ts.isImportSpecifier(parent) ||
      ts.isImportClause(parent) ||
      ts.isNamespaceImport(parent)) &&
    parent.name === node
  );
}

/** The TypeScript that compiles the cells. */
function loadCompiler(): typeof TypeScript {
  const paths = [dirname(require.resolve("tslab/package.json"))];
  return require(require.resolve("@tslab/typescript-for-tslab", { paths }));
}
