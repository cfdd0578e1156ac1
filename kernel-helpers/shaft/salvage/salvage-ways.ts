import type { Length, Time } from "../../quantity/index.js";
import { columnsNamed, lengthsOf, numbersOf, quantitiesOf, type Table, textOf } from "../../survey/index.js";

/** One way to save worn journals, as the user's own table tells it. */
export interface SalvageWay {
  readonly name: string;
  /** What is turned off below the finished size, on DIAMETER, for something to be put on; undefined for new steel. */
  readonly undercut: Length | undefined;
  /** The thinnest that what is put on may be, on RADIUS; undefined where nothing is put on, or nothing is known. */
  readonly leastLayer: Length | undefined;
  readonly hours: { readonly low: Time; readonly high: Time };
  /** In the user's own money; undefined where the table tells none [-]. */
  readonly cost: { readonly low: number; readonly high: number } | undefined;
  readonly needs: string;
  readonly risks: string;
  /** Where it must not be used. */
  readonly notWhere: string;
  readonly reversible: string;
  /** What must be settled before it may be chosen; "" for nothing. */
  readonly open: string;
  /** Where undercut, layer and risks come from. */
  readonly source: string;
  /** Where it stands: file and line. */
  readonly at: string;
}

/** The way that every table must tell: it is what the others are held against. */
export const turnUndersize = "turn undersize";

/**
 * The ways to save worn journals from the user's own table: undercut, hours, cost, needs, risks.
 *
 * @param table  columns option, needs, reversible [text]; undercut on DIAMETER, - for new steel [length]; least and most
 * [time]; if known: least layer on RADIUS [length], least cost and most cost, risks, not where, open, source [text]
 * @returns the ways in the table's order
 * @throws RangeError  no row "turn undersize", two of one name, hours or cost the wrong way round, an undercut or a
 * layer below 0; the message names the line
 * @example
 * const rows = ["option [text],undercut [in],needs [text],least [hr],most [hr],reversible [text]", "turn undersize,0,a steady,3,5,no"];
 * const table = readTable(new TextEncoder().encode(rows.join("\n")), { name: "options", file: "options.csv" });
 * salvageWays(table)[0].hours.high // 5 h
 */
export function salvageWays(table: Table): readonly SalvageWay[] {
  const where = "salvageWays";
  const has = (name: string): boolean => columnsNamed(table, name).length > 0;
  const text = (name: string): readonly string[] =>
    has(name) ? textOf(table, name).map((word) => (word === "-" ? "" : word)) : [];
  const names = textOf(table, "option");
  const [needs, reversible] = [textOf(table, "needs"), textOf(table, "reversible")];
  const [risks, notWhere, open, source] = ["risks", "not where", "open", "source"].map(text);
  const undercuts = lengthsOf(table, "undercut");
  const layers = has("least layer") ? lengthsOf(table, "least layer") : [];
  const [least, most] = ["least", "most"].map((name) => quantitiesOf(table, name, "time"));
  const [cheap, dear] = ["least cost", "most cost"].map((name) => (has(name) ? numbersOf(table, name) : []));
  if (!names.includes(turnUndersize))
    throw new RangeError(
      `${where}: ${table.file} needs a row "${turnUndersize}", which the others are held against; got ${names.join(", ")}`,
    );
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (twice !== undefined)
    throw new RangeError(`${where}: ${table.file} tells "${twice}" twice; give each way a name of its own`);
  return Object.freeze(
    names.map((name, row): SalvageWay => {
      const at = `${table.file} line ${table.lines[row]}`;
      const [low, high] = [least![row], most![row]];
      if (low === undefined || high === undefined || low.si > high.si)
        throw new RangeError(
          `${where}: ${at}: hours must run from least to most, got ${low ?? "-"} to ${high ?? "-"}`,
        );
      const undercut = undercuts[row];
      if (undercut !== undefined && !(undercut.si >= 0))
        throw new RangeError(`${where}: ${at}: undercut must be 0 or more, got ${undercut}; - for new steel`);
      if (name === turnUndersize && undercut?.si !== 0)
        throw new RangeError(`${where}: ${at}: to turn undersize has no undercut: 0, got ${undercut ?? "-"}`);
      const leastLayer = layers[row];
      if (leastLayer !== undefined && !(leastLayer.si >= 0))
        throw new RangeError(`${where}: ${at}: least layer must be 0 or more, got ${leastLayer}`);
      const [a, b] = [cheap![row] ?? Number.NaN, dear![row] ?? Number.NaN];
      if (Number.isNaN(a) !== Number.isNaN(b) || a > b)
        throw new RangeError(`${where}: ${at}: cost must run from least to most, got ${a} to ${b}`);
      return Object.freeze<SalvageWay>({
        name,
        undercut,
        leastLayer,
        hours: Object.freeze({ low, high }),
        cost: Number.isNaN(a) ? undefined : Object.freeze({ low: a, high: b }),
        needs: needs[row]!,
        risks: risks![row] ?? "",
        notWhere: notWhere![row] ?? "",
        reversible: reversible[row]!,
        open: open![row] ?? "",
        source: source![row] ?? "",
        at,
      });
    }),
  );
}
