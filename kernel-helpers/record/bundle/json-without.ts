import type { TextSearch } from "./text-search.js";

/** A value with something taken out. */
export interface Without {
  readonly value: unknown;
  /** In how many places [-]. */
  readonly count: number;
}

/** What stands where a text was. */
const gone = "(left out)";

/** A JSON value in which each text that holds something left out is replaced. */
export function valueWithout(value: unknown, search: TextSearch): Without {
  let count = 0;
  const walk = (part: unknown): unknown => {
    if (typeof part === "string") {
      if (!search.standsIn(part)) return part;
      count += 1;
      return gone;
    }
    if (Array.isArray(part)) return part.map(walk);
    if (typeof part !== "object" || part === null) return part;
    return Object.fromEntries(Object.entries(part).map(([key, item]) => [key, walk(item)]));
  };
  return { value: walk(value), count };
}

/** What is shown in place of an output. */
const notShown = {
  output_type: "display_data",
  data: { "text/plain": "Left out: this result showed something that is not shared." },
  metadata: {},
};

interface NotebookJson {
  readonly cells?: readonly { readonly outputs?: readonly unknown[] }[];
}

/** An executed notebook in which each output that shows something left out is replaced, in all its forms. */
export function notebookWithout(notebook: unknown, search: TextSearch): Without {
  let count = 0;
  const { cells = [], ...rest } = notebook as NotebookJson;
  const kept = cells.map((cell) => {
    if (cell.outputs === undefined) return cell;
    const outputs = cell.outputs.map((output) => {
      if (!shows(output, search)) return output;
      count += 1;
      return notShown;
    });
    return { ...cell, outputs };
  });
  return { value: { ...rest, cells: kept }, count };
}

/** Texts of an output may be stored as lists of lines. */
function shows(part: unknown, search: TextSearch): boolean {
  if (typeof part === "string") return search.standsIn(part);
  if (Array.isArray(part)) {
    const isText = part.length > 0 && part.every((line) => typeof line === "string");
    if (isText && search.standsIn(part.join(""))) return true;
    return part.some((item) => shows(item, search));
  }
  return typeof part === "object" && part !== null && Object.values(part).some((item) => shows(item, search));
}
