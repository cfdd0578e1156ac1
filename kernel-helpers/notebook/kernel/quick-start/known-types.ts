import type * as TypeScript from "@tslab/typescript-for-tslab";
import { loadTslab } from "../load-tslab.js";

/** What a kernel's compiler reads before the first cell: the declarations of the language, of Node and of this package. */
export interface KnownTypes {
  readonly options: TypeScript.CompilerOptions;
  readonly files: readonly { readonly name: string; readonly text: string }[];
}

/** Lets a compiler read its types, as the first cells of a worksheet would, and tells which these were. */
export function knownTypes(): KnownTypes {
  const tslab = loadTslab();
  const converter = tslab.createConverter({ isJS: false, isBrowser: false });
  converter.convert("", 'import * as journalbox from "journalbox";\njournalbox;');
  converter.close();
  const program = tslab.lastProgram();
  if (program === undefined) throw new Error("knownTypes: the compiler must make a program, got none");
  return {
    options: program.getCompilerOptions(),
    files: program
      .getSourceFiles()
      .filter(({ fileName }) => /\.d\.[cm]?ts$/.test(fileName) && !fileName.endsWith("__prev__.d.ts"))
      .map(({ fileName, text }) => ({ name: fileName, text })),
  };
}
