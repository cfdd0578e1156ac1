import type { SheetLinks } from "./sheet-links.js";

/** A sheet and what it hands on and takes over. */
export interface LinkedSheet {
  readonly name: string;
  readonly links: SheetLinks;
}

/** In which order sheets are run, and what would be missing. */
export interface OrderOfRun {
  readonly order: readonly string[];
  /** What a sheet takes over and no sheet hands on, each as a sentence. */
  readonly missing: readonly string[];
}

/**
 * The order in which sheets are run: each after those it takes results or decisions from, one that collects from all
 * others last, and otherwise by name.
 *
 * @throws RangeError  sheets take over from each other in a ring, so that none of them can be run first
 */
export function orderOfRun(sheets: readonly LinkedSheet[]): OrderOfRun {
  const byName = [...sheets].sort((a, b) => (a.name < b.name ? -1 : 1));
  const missing: string[] = [];
  const needs = new Map(byName.map((sheet) => [sheet.name, needsOf(sheet, byName, missing)]));
  const order: string[] = [];
  const underWay: string[] = [];
  const visit = (name: string): void => {
    if (order.includes(name)) return;
    if (underWay.includes(name))
      throw new RangeError(ringText([...underWay.slice(underWay.indexOf(name)), name], needs));
    underWay.push(name);
    for (const from of needs.get(name)!.keys()) visit(from);
    underWay.pop();
    order.push(name);
  };
  const [last, first] = [
    byName.filter(({ links }) => links.takesAll),
    byName.filter(({ links }) => !links.takesAll),
  ];
  for (const { name } of [...first, ...last]) visit(name);
  return Object.freeze({ order: Object.freeze(order), missing: Object.freeze(missing) });
}

/** The sheets a sheet must come after, each with what it takes from it. */
function needsOf(
  { name, links }: LinkedSheet,
  sheets: readonly LinkedSheet[],
  missing: string[],
): ReadonlyMap<string, string> {
  const needs = new Map<string, string>();
  const take = (what: string, wanted: string, handsOn: (other: SheetLinks) => readonly string[]): void => {
    const from = sheets.find((other) => handsOn(other.links).includes(wanted));
    if (from === undefined)
      missing.push(`${name} takes over ${what} “${wanted}”, which no sheet here hands on.`);
    else if (from.name !== name) needs.set(from.name, `${what} “${wanted}”`);
  };
  for (const wanted of links.recalls) take("the result", wanted, (other) => other.publishes);
  for (const wanted of links.takesDecisions) take("the decision", wanted, (other) => other.decides);
  return needs;
}

function ringText(ring: readonly string[], needs: ReadonlyMap<string, ReadonlyMap<string, string>>): string {
  const links = ring
    .slice(0, -1)
    .map((name, i) => `${name} takes over ${needs.get(name)!.get(ring[i + 1]!)} from ${ring[i + 1]}`);
  return `orderOfRun: sheets that take over from each other in a ring cannot be run: ${links.join(", and ")}; let one of them take it from elsewhere`;
}
