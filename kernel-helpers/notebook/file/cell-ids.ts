import { type Cell, cellIdPattern } from "./notebook-format.js";

/** So many words of a text make its id. */
const words = 4;

/**
 * An id for each cell, in words: ids that are valid and not yet taken are kept; a cell without one is called
 * after the first words of its text, or `code`; a number is added where two would be called alike.
 * Nothing random: the same cells get the same ids.
 *
 * @example cellIds([{ cell_type: "markdown", id: "", metadata: {}, source: "# Wear bands" }]) // ["wear-bands"]
 */
export function cellIds(cells: readonly Cell[]): readonly string[] {
  const kept = cells.map(({ id }, i) => cellIdPattern.test(id) && cells.findIndex((c) => c.id === id) === i);
  const taken = new Set(cells.filter((_, i) => kept[i]).map(({ id }) => id));
  return Object.freeze(
    cells.map((cell, i) => {
      if (kept[i]) return cell.id;
      const id = firstFree(idFromText(cell), taken);
      taken.add(id);
      return id;
    }),
  );
}

function idFromText({ cell_type, source }: Cell): string {
  if (cell_type !== "markdown") return cell_type;
  const plain = source.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  const id = (plain.match(/[a-z0-9]+/g) ?? []).slice(0, words).join("-");
  return id === "" ? "text" : id.slice(0, 60);
}

function firstFree(wanted: string, taken: ReadonlySet<string>): string {
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? wanted : `${wanted.slice(0, 56)}-${n}`;
    if (!taken.has(id)) return id;
  }
}
