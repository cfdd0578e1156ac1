import { type CellCode, sheetLinks } from "../../record/index.js";
import { type CellNames, cellNames } from "./cell-names.js";
import type { RebuildState } from "./rebuild-state.js";

/**
 * The cells that lead up to what a sheet decides: in the sheet itself those that decide, in the sheets behind it those
 * that publish or decide what is taken over, and in each of them the cells that make the names these use, and so on up.
 * Cells that only look at something are left out.
 *
 * Which cells lead up to which is read off names. What a name is given in a way that the source does not show is not
 * seen; whoever relies on this compares what comes of these cells with what comes of all.
 *
 * @returns the code of the sheets needed, in order of run, each with the cells needed alone; undefined where a sheet
 *          takes over whatever all others hand on
 */
export function cellsBehind(sheet: string, code: RebuildState["code"]): RebuildState["code"] | undefined {
  const kept = new Map<string, readonly CellCode[]>();
  const wanted = new Map<string, (source: string) => boolean>([[sheet, decides]]);
  // In the reverse order of run each sheet comes after all that take over from it.
  for (const [name, cells] of [...code].reverse()) {
    const isWanted = wanted.get(name);
    if (isWanted === undefined) continue;
    const needed = leadingUp(cells, isWanted);
    kept.set(name, needed);
    const { recalls, takesDecisions, takesAll } = sheetLinks(needed.map(({ source }) => source));
    if (takesAll) return undefined;
    for (const other of code.keys()) {
      if (other === name) continue;
      const before = wanted.get(other) ?? (() => false);
      const sources = code.get(other)!.map(({ source }) => source);
      const handOn = sources.filter((source, at) => {
        const links = sheetLinks([source], sources.slice(0, at));
        return (
          links.publishes.some((given) => recalls.includes(given)) ||
          links.decides.some((given) => takesDecisions.includes(given))
        );
      });
      if (handOn.length > 0) wanted.set(other, (source) => before(source) || handOn.includes(source));
    }
  }
  return new Map([...code.keys()].flatMap((name) => (kept.has(name) ? [[name, kept.get(name)!]] : [])));
}

/** The cells wanted and those that make what they use, in their order. */
export function leadingUp(
  cells: readonly CellCode[],
  isWanted: (source: string) => boolean,
): readonly CellCode[] {
  const needed = new Set<string>();
  return cells
    .map((cell) => ({ cell, names: cellNames(cell.source) }))
    .reverse()
    .filter(({ cell, names }) => {
      if (!isWanted(cell.source) && !names.reachesFurther && !makesAny(names, needed)) return false;
      for (const name of names.mentions) needed.add(name);
      return true;
    })
    .map(({ cell }) => cell)
    .reverse();
}

function makesAny({ makes }: CellNames, needed: ReadonlySet<string>): boolean {
  return [...makes].some((name) => needed.has(name));
}

function decides(source: string): boolean {
  return /\.\s*decide\s*\(/.test(source);
}
