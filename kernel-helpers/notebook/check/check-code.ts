import { loadTslab, type Tslab } from "../kernel/load-tslab.js";
import { type TypeFault, typeFaults } from "../kernel/type-error.js";

/** A code cell to be checked. */
export interface CellToCheck {
  readonly id: string;
  readonly source: string;
}

/** What is wrong with the code of one cell. */
export interface CellFault extends TypeFault {
  readonly cell: string;
}

/** Checks the code of sheets; close it when done. */
export interface CodeChecker {
  /** Everything wrong with the code cells of one sheet, taken from first to last in clean state. */
  readonly check: (cells: readonly CellToCheck[]) => readonly CellFault[];
  readonly close: () => void;
}

let tslab: Tslab | undefined;

/**
 * A checker of cells for the sheets of a folder: the kernel's own compiler, with its types and imports, which says what
 * it would say in the cell. Nothing is run.
 *
 * The compiler looks at files from the folder the process stands in, so the process stands there until `close`.
 */
export function createCodeChecker(directory: string): CodeChecker {
  const before = process.cwd();
  process.chdir(directory);
  tslab ??= loadTslab("of all types");
  const { createConverter, getCodeMetadata } = tslab;
  const converter = createConverter({ isJS: false, isBrowser: false });

  const check = (cells: readonly CellToCheck[]): readonly CellFault[] => {
    let declared = "";
    // Names of cells at fault are not known to later ones, which is no fault of these.
    const lost = new Set<string>();
    return cells.flatMap(({ id, source }) => {
      const meta = getCodeMetadata(source);
      if (meta.mode === "browser")
        return [{ cell: id, line: 1, column: 1, text: "cells marked @browser do not run here" }];
      const converted = meta.module
        ? { diagnostics: converter.addModule(meta.module, source, meta), declOutput: declared }
        : converter.convert(declared, source);
      if (converted.diagnostics.length === 0) {
        declared = converted.declOutput ?? "";
        return [];
      }
      for (const name of namesDeclared(source)) lost.add(name);
      return typeFaults(converted.diagnostics)
        .filter(
          ({ unknownName }) =>
            unknownName === undefined || !lost.has(unknownName) || declares(source, unknownName),
        )
        .map((fault) => ({ ...fault, cell: id }));
    });
  };
  const close = (): void => {
    converter.close();
    process.chdir(before);
  };
  return { check, close };
}

/** Names a cell declares or imports, as far as they can be seen without a compiler. */
function namesDeclared(source: string): readonly string[] {
  const single = [...source.matchAll(/\b(?:const|let|var|function|class)\s+([\p{L}_$][\p{L}\p{N}_$]*)/gu)];
  const lists = [...source.matchAll(/\b(?:const|let|var|import)\s*\{([^}]*)\}/gu)];
  const listed = lists.flatMap(([, names]) =>
    names!.split(",").map((name) =>
      name
        .split(/:|\bas\b/)
        .at(-1)!
        .trim(),
    ),
  );
  return [...single.map(([, name]) => name!), ...listed];
}

function declares(source: string, name: string): boolean {
  return namesDeclared(source).includes(name);
}
