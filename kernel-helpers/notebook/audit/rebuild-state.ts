import { cpSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, dirname, join, relative } from "node:path";
import {
  type CellCode,
  cellsOfCodeText,
  codeText,
  recordFolder,
  type SheetFile,
} from "../../record/index.js";
import { readNotebook } from "../file/notebook-file.js";
import { outputFolder } from "../run-rebuild.js";

/** Everything that decides what a rebuild computes: its files by path, and the code of its sheets, in order of run. */
export interface RebuildState {
  readonly files: ReadonlyMap<string, string>;
  readonly code: ReadonlyMap<string, readonly CellCode[]>;
}

/** The code of the sheets as it is now, in the order of their run; a sheet that cannot be read has none. */
export function codeNow(sheets: readonly SheetFile[]): ReadonlyMap<string, readonly CellCode[]> {
  return new Map(
    sheets.map(({ name, path }) => {
      try {
        return [name, cellsOfCodeText(codeText(readNotebook(path).cells))];
      } catch {
        return [name, []];
      }
    }),
  );
}

const leftOut: readonly string[] = [recordFolder, outputFolder, "node_modules", ".git"];

/** A copy of a rebuild in a temporary folder, without what was computed from it; `remove` takes it away. */
export function temporaryCopy(directory: string): { readonly folder: string; readonly remove: () => void } {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "journalbox-audit-")));
  cpSync(directory, folder, {
    recursive: true,
    filter: (source) => {
      const [first = ""] = relative(directory, source).split(/[/\\]/);
      return !leftOut.includes(first) && !basename(source).startsWith(".ipynb_checkpoints");
    },
  });
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Puts files of a rebuild into a folder. */
export function writeFiles(folder: string, files: ReadonlyMap<string, string>): void {
  for (const [file, text] of files) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  }
}
