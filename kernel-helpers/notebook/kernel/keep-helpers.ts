import type * as TypeScript from "@tslab/typescript-for-tslab";
import { packageName } from "../../record/package-root.js";

/** Members of a source file that TypeScript's declarations leave out. */
interface InnerFile {
  /** The texts that name what it imports; set by the program that first reads the file. */
  imports?: readonly TypeScript.StringLiteralLike[];
}

/**
 * Keeps the helpers in the program of every cell once a cell has imported them. TypeScript goes through all files
 * again when a cell imports other modules than the one before it; most cells import nothing, and use names of the
 * helpers all the same. So the two files in which tslab hands over a cell import the helpers, for TypeScript's
 * account of files only: in the cell nothing changes.
 *
 * @param roots the names of these two files
 */
export function keepHelpers(
  ts: typeof TypeScript,
  host: TypeScript.CompilerHost,
  roots: readonly string[],
): void {
  const kept = new Set<string>();
  const seen = new WeakSet<TypeScript.SourceFile>();
  const prepared = (file: TypeScript.SourceFile | undefined): TypeScript.SourceFile | undefined => {
    if (file === undefined || seen.has(file) || !roots.includes(file.fileName)) return file;
    seen.add(file);
    let imports: InnerFile["imports"];
    Object.defineProperty(file, "imports", {
      get: () => imports,
      set: (found: NonNullable<InnerFile["imports"]>) => {
        for (const { text } of found) if (isOwn(text)) kept.add(text);
        const own = [...kept].map(
          (text) => found.find((node) => node.text === text) ?? imported(ts, text, file),
        );
        imports = [...own, ...found.filter(({ text }) => !kept.has(text))];
      },
    });
    return file;
  };
  const { getSourceFile, getSourceFileByPath } = host;
  host.getSourceFile = (...asked) => prepared(getSourceFile(...asked));
  if (getSourceFileByPath !== undefined)
    host.getSourceFileByPath = (...asked) => prepared(getSourceFileByPath(...asked));
}

function isOwn(specifier: string): boolean {
  return specifier === packageName || specifier.startsWith(`${packageName}/`);
}

/** An import that is written nowhere, made as TypeScript makes those of its own helpers. */
function imported(
  ts: typeof TypeScript,
  name: string,
  file: TypeScript.SourceFile,
): TypeScript.StringLiteral {
  const { factory } = ts;
  const specifier = factory.createStringLiteral(name);
  const declaration = factory.createImportDeclaration(undefined, undefined, specifier);
  return Object.assign(specifier, { parent: Object.assign(declaration, { parent: file }) });
}
