import type { Length, Mass } from "../quantity/index.js";
import { lengthsOf, quantitiesOf, type Table, textOf } from "../survey/index.js";
import type { Slinging } from "./lift-plan-types.js";

/** A row of a table of lifts, checked for what its way of slinging needs. */
export interface LiftRow {
  readonly what: string;
  readonly parts: readonly string[];
  readonly sling: Slinging;
  readonly hitch: string;
  readonly weighed: { readonly mass: Mass; readonly within: Mass } | undefined;
  readonly first: Length | undefined;
  readonly second: Length | undefined;
  readonly heldAt: Length | undefined;
  readonly overCentre: Length | undefined;
  readonly hookAbove: Length | undefined;
  readonly slingTag: Mass | undefined;
  readonly remark: string;
  readonly line: number;
  /** For messages: file and line. */
  readonly where: string;
}

type Size = "first" | "second" | "held at" | "over centre" | "hook above" | "sling tag";

/** What each way of slinging needs, and may have. */
const forms: Readonly<Record<Slinging, { readonly needs: readonly Size[]; readonly may: readonly Size[] }>> =
  Object.freeze({
    "one leg": { needs: ["sling tag"], may: ["held at", "over centre"] },
    "two along": { needs: ["first", "second", "hook above", "sling tag"], may: [] },
    "two across": {
      needs: ["first", "second", "hook above", "sling tag"],
      may: ["held at", "over centre"],
    },
    "one person": { needs: [], may: [] },
    "two persons": { needs: [], may: [] },
    "three persons": { needs: [], may: [] },
  });

/** The rows of a table of lifts. @throws RangeError a row is not such a lift; the message names file, line and column */
export function liftRows(table: Table): readonly LiftRow[] {
  const [whats, slings, hitches] = ["part", "sling", "hitch"].map((name) => textOf(table, name));
  const remarks = table.columns.find(({ name }) => name === "remark")?.text;
  const masses = (name: string): readonly (Mass | undefined)[] => quantitiesOf(table, name, "mass");
  const [weighed, within, tags] = [masses("weighed"), masses("within"), masses("sling tag")];
  const lengths = new Map(
    (["first", "second", "held at", "over centre", "hook above"] as const).map((name) => [
      name as Size,
      lengthsOf(table, name),
    ]),
  );
  return whats!.map((what, row): LiftRow => {
    const where = `lifts: ${table.file} line ${table.lines[row]}`;
    const fail = (column: string, found: string, expected: string): never => {
      throw new RangeError(`${where}, column "${column}": found ${found}, expected ${expected}`);
    };
    const parts = what.split("+").map((name) => name.trim());
    if (parts.some((name) => name === "" || name === "-"))
      fail("part", `"${what}"`, 'a part, or several lifted in one piece: "shaft + pulley"');
    const sling = slings![row] as Slinging;
    if (!Object.hasOwn(forms, sling))
      fail("sling", `"${sling}"`, `one of ${Object.keys(forms).join(", ")}; write how it is taken up`);
    const { needs, may } = forms[sling];
    const size = (name: Size): Length | Mass | undefined =>
      name === "sling tag" ? tags[row] : lengths.get(name)![row];
    for (const name of [...lengths.keys(), "sling tag" as const]) {
      if (needs.includes(name) && size(name) === undefined)
        fail(name, "nothing", `a value: ${sling} needs it`);
      if (!needs.includes(name) && !may.includes(name) && size(name) !== undefined)
        fail(name, String(size(name)), `-: ${sling} has none`);
    }
    if (weighed[row] !== undefined && !(within[row] !== undefined && within[row].si > 0))
      fail(
        "within",
        within[row] === undefined ? "nothing" : String(within[row]),
        "how far the mass may be off, above 0",
      );
    return Object.freeze({
      what,
      parts: Object.freeze(parts),
      sling,
      hitch: hitches![row]!,
      weighed:
        weighed[row] === undefined ? undefined : Object.freeze({ mass: weighed[row], within: within[row]! }),
      first: lengths.get("first")![row],
      second: lengths.get("second")![row],
      heldAt: lengths.get("held at")![row],
      overCentre: lengths.get("over centre")![row],
      hookAbove: lengths.get("hook above")![row],
      slingTag: tags[row],
      remark: remarks?.[row] ?? "",
      line: table.lines[row]!,
      where,
    });
  });
}
