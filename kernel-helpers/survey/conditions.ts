import { isPlaceName } from "./column-names.js";
import { temperatureFrom } from "./conditions-temperature.js";
import { nearestWord } from "./nearest-word.js";
import type { Column, Conditions, Instrument, Part, Remark } from "./table.js";
import { type ReportFault, shown } from "./table-faults.js";

/** The instruments and parts that remarks may name, by their short names. */
export interface KnownThings {
  readonly instruments?: Readonly<Record<string, Instrument>> | undefined;
  readonly parts?: Readonly<Record<string, Part>> | undefined;
}

/**
 * What the remarks of a table say about how it was read:
 *
 * - `# instrument diameter: mic-2-3` for one column, `# instrument: mic-2-3` for all lengths but the station;
 * - `# temperature: 54 ± 2 degF` of part and instrument. Behind the ± stand limits: any temperature between
 *   them is as likely as another (rectangular), so that u = 2/√3 degF;
 * - `# temperature uncertainty: 1 degF` instead, where a standard uncertainty is known;
 * - `# part: shaft`.
 *
 * Other remarks are kept and not understood; one that nearly has such a name is doubted.
 *
 * @source JCGM 100:2008 (GUM), 4.3.7 (limits ±a of a rectangular distribution: u = a/√3)
 */
export function conditionsFrom(
  remarks: readonly Remark[],
  columns: readonly Column[],
  known: KnownThings,
  report: ReportFault,
): { readonly conditions: Conditions; readonly warnings: readonly string[] } {
  const warnings: string[] = [];
  const said = new Map<string, Remark>();
  for (const remark of remarks) {
    if (!isCondition(remark.key)) {
      const near = nearestWord(remark.key, conditionKeys);
      if (near !== undefined)
        warnings.push(
          `Line ${remark.line}: the remark "${remark.key}" is kept, but not understood; was "${near}" meant?`,
        );
    } else if (said.has(remark.key))
      report(
        remark.line,
        undefined,
        `a second remark "${remark.key}"`,
        `one (the first is on line ${said.get(remark.key)!.line})`,
        "delete one of the two",
      );
    else said.set(remark.key, remark);
  }
  const partRemark = said.get("part");
  const conditions = {
    instruments: instrumentsFrom(said, columns, known.instruments, warnings, report),
    ...temperatureFrom(said, warnings, report),
    part: partRemark && thingNamed("part", partRemark, known.parts, warnings, report),
  };
  return { conditions: Object.freeze(conditions), warnings };
}

const conditionKeys = ["instrument", "temperature", "temperature uncertainty", "part"];

function isCondition(key: string): boolean {
  return conditionKeys.includes(key) || key.startsWith("instrument ");
}

function instrumentsFrom(
  said: ReadonlyMap<string, Remark>,
  columns: readonly Column[],
  known: Readonly<Record<string, Instrument>> | undefined,
  warnings: string[],
  report: ReportFault,
): Readonly<Record<string, Instrument>> {
  // What a column without a legible unit measures is asked at its header already.
  const may = (kind: string): boolean => kind === "length" || kind === "unknown";
  const names = [...new Set(columns.filter(({ dimension }) => may(dimension)).map(({ name }) => name))];
  const instruments: Record<string, Instrument> = {};
  for (const [key, remark] of said) {
    if (key !== "instrument" && !key.startsWith("instrument ")) continue;
    const name = key.slice("instrument ".length);
    if (name !== "" && !names.includes(name)) {
      const mend = `write "instrument: …" for all lengths but the station, or name one of ${names.join(", ")}`;
      report(remark.line, undefined, `an instrument for "${name}"`, "the name of a column of lengths", mend);
      continue;
    }
    const instrument = thingNamed("instrument", remark, known, warnings, report);
    if (instrument === undefined) continue;
    if (name !== "") instruments[name] = instrument;
    // What is said of one column goes before what is said of all.
    else
      for (const each of names)
        if (!isPlaceName(each) && !said.has(`instrument ${each}`)) instruments[each] = instrument;
  }
  return Object.freeze(instruments);
}

/** The instrument or part a remark names; an unknown one is reported, or doubted where none are known at all. */
function thingNamed<T>(
  what: string,
  remark: Remark,
  known: Readonly<Record<string, T>> | undefined,
  warnings: string[],
  report: ReportFault,
): T | undefined {
  if (known === undefined) {
    warnings.push(
      `Line ${remark.line}: the ${what} "${remark.value}" is not known here, for no ${what}s were given.`,
    );
    return undefined;
  }
  if (Object.hasOwn(known, remark.value)) return known[remark.value];
  const ids = Object.keys(known);
  const near = nearestWord(remark.value, ids);
  const mend = near === undefined ? `add it to rebuild.json, or correct the name` : `was "${near}" meant?`;
  const list = ids.length === 0 ? `none is in rebuild.json` : `one of ${ids.join(", ")}`;
  report(
    remark.line,
    undefined,
    `${what} ${shown(remark.value)}`,
    `the short name of a known ${what}: ${list}`,
    mend,
  );
  return undefined;
}
