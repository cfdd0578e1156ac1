import { cellIds } from "./cell-ids.js";
import { joinStreams } from "./join-streams.js";
import type { Cell, JsonObject, Notebook } from "./notebook-format.js";

/** The name under which the kernel is registered with Jupyter, and what people read. */
export const kernelName = "journalbox";
export const kernelDisplayName = "Journalbox (TypeScript)";

const kernelspec = { display_name: kernelDisplayName, language: "typescript", name: kernelName };
/** Without the version, which would change with the installation and not with the notebook. */
const languageInfo = {
  file_extension: ".ts",
  mimetype: "text/typescript",
  name: "typescript",
  pygments_lexer: "typescript",
};

/** What front ends leave behind, and says nothing about the notebook. */
const transientInNotebook = ["orig_nbformat", "orig_nbformat_minor", "signature", "widgets"];
const transientInCell = ["trusted", "collapsed", "scrolled", "execution", "ExecuteTime"];

/**
 * A notebook in its one form: this package's kernel, ids in words, consecutive pieces of a stream joined, and
 * nothing that depends on when, where or in which front end it was run.
 */
export function canonicalNotebook(notebook: Notebook): Notebook {
  const ids = cellIds(notebook.cells);
  return {
    metadata: { ...without(notebook.metadata, transientInNotebook), kernelspec, language_info: languageInfo },
    cells: notebook.cells.map((cell, i) => canonicalCell(cell, ids[i]!)),
  };
}

function canonicalCell(cell: Cell, id: string): Cell {
  const metadata = without(cell.metadata, transientInCell);
  if (cell.cell_type !== "code") return { ...cell, id, metadata };
  return { ...cell, id, metadata, outputs: joinStreams(cell.outputs) };
}

function without(metadata: JsonObject, names: readonly string[]): JsonObject {
  return Object.fromEntries(Object.entries(metadata).filter(([name]) => !names.includes(name)));
}
