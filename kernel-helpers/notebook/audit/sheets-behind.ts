import { sheetLinks } from "../../record/index.js";
import type { RebuildState } from "./rebuild-state.js";

/** A sheet and all those it takes over from, directly or through others, in the order in which they are run. */
export function sheetsBehind(sheet: string, code: RebuildState["code"]): readonly string[] {
  const links = new Map(
    [...code].map(([name, cells]) => [name, sheetLinks(cells.map(({ source }) => source))]),
  );
  const needed = new Set<string>();
  const need = (name: string): void => {
    if (needed.has(name)) return;
    needed.add(name);
    const own = links.get(name);
    for (const [other, its] of links) {
      const gives = own?.recalls.some((wanted) => its.publishes.includes(wanted));
      const decides = own?.takesDecisions.some((wanted) => its.decides.includes(wanted));
      if (gives || decides) need(other);
    }
  };
  need(sheet);
  return [...code.keys()].filter((name) => needed.has(name));
}
