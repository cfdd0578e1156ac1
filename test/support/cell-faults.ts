import { join } from "node:path";
import ts from "@tslab/typescript-for-tslab";

/**
 * What the TypeScript of tslab says to each cell, all of them compiled at once.
 *
 * @param folder  where the cells are taken to lie, for their imports
 * @param cells   source by name
 * @param strict  as the kernel of this project checks, or not, as plain tslab does
 */
export function cellFaults<Name extends string>(
  folder: string,
  cells: Readonly<Record<Name, string>>,
  strict: boolean,
): Readonly<Record<Name, readonly string[]>> {
  const names = Object.keys(cells) as Name[];
  const paths = new Map(names.map((name) => [join(folder, `cell-${name}.ts`).replaceAll("\\", "/"), name]));
  const options: ts.CompilerOptions = {
    target: ts.ScriptTarget.ES2022,
    lib: ["lib.es2022.d.ts"],
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.NodeJs,
    esModuleInterop: true,
    noEmit: true,
    skipLibCheck: true,
    types: [],
    strict,
  };
  const host = ts.createCompilerHost(options);
  const { fileExists, getSourceFile } = host;
  host.fileExists = (path) => paths.has(path) || fileExists(path);
  host.getSourceFile = (path, version, ...rest) => {
    const name = paths.get(path);
    return name === undefined
      ? getSourceFile(path, version, ...rest)
      : ts.createSourceFile(path, cells[name], version);
  };
  const program = ts.createProgram([...paths.keys()], options, host);
  const faultsOf = (path: string): string[] =>
    ts
      .getPreEmitDiagnostics(program, program.getSourceFile(path))
      .map((fault) => ts.flattenDiagnosticMessageText(fault.messageText, "\n"));
  const found = [...paths].map(([path, name]) => [name, faultsOf(path)] as const);
  return Object.fromEntries(found) as unknown as Readonly<Record<Name, readonly string[]>>;
}
