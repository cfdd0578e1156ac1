import type * as TypeScript from "@tslab/typescript-for-tslab";
import { keepHelpers } from "./keep-helpers.js";

/** Members of TypeScript that its declarations leave out. */
interface Inner {
  bindSourceFile(file: TypeScript.SourceFile, options: TypeScript.CompilerOptions): void;
}
interface InnerFile {
  /** The names it declares, once they have been looked for. */
  readonly locals?: ReadonlyMap<string, unknown>;
  /** The texts that name what it imports. */
  readonly imports?: readonly TypeScript.Node[];
}

/**
 * Makes the programs in which tslab checks a cell, without TypeScript's own bookkeeping of which file depends on
 * which: that is worth its time to those who rebuild a project, and is thrown away after each cell. tslab makes
 * two programs for a cell, and asks the first only for the names the cell declares; these are found here
 * without a type checker.
 */
export function createLightProgram(
  ts: typeof TypeScript,
): TypeScript.CreateProgram<TypeScript.BuilderProgram> {
  const { bindSourceFile } = ts as unknown as Inner;
  const hosts = new WeakSet<TypeScript.CompilerHost>();
  return (rootNames, options, host, old, faults) => {
    if (host !== undefined && rootNames !== undefined && !hosts.has(host)) {
      hosts.add(host);
      keepHelpers(ts, host, rootNames);
    }
    const program = ts.createProgram({
      rootNames: rootNames ?? [],
      options: options ?? {},
      host: host!,
      oldProgram: old?.getProgram(),
    });
    const light = ts.createAbstractBuilder(program, host as never, old, faults);
    return {
      ...light,
      getSourceFile: (name) => {
        const file = program.getSourceFile(name);
        if (file !== undefined && inner(file).locals === undefined)
          bindSourceFile(file, program.getCompilerOptions());
        return file;
      },
      getAllDependencies: (file) => dependencies(program.getTypeChecker(), file),
    };
  };
}

function inner(file: TypeScript.SourceFile): InnerFile {
  return file as unknown as InnerFile;
}

/** A file and all it imports, and what these import; of declarations, only their own names. */
function dependencies(checker: TypeScript.TypeChecker, file: TypeScript.SourceFile): string[] {
  const found = new Set([file.fileName]);
  const follow = (from: TypeScript.SourceFile): void => {
    if (from.isDeclarationFile) return;
    for (const specifier of inner(from).imports ?? [])
      for (const declaration of checker.getSymbolAtLocation(specifier)?.declarations ?? []) {
        const target = declaration.getSourceFile();
        if (found.has(target.fileName)) continue;
        found.add(target.fileName);
        follow(target);
      }
  };
  follow(file);
  return [...found];
}
