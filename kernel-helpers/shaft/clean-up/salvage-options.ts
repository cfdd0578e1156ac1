import {
  type Length,
  type Measured,
  type Pressure,
  quantityFromSi,
  type Torque,
} from "../../quantity/index.js";
import { lengthsOf, quantitiesOf, type Table, textOf } from "../../survey/index.js";
import { type CleanUp, chanceToClean } from "./clean-up.js";

/** What the options are judged by. */
export interface SalvageOptionsInput {
  readonly cleanUp: CleanUp;
  /** The diameter the journal would be turned to. */
  readonly finished: Length;
  /** The least diameter that may be left. */
  readonly smallestAllowed: Length;
  /** What the journal was made to. */
  readonly asMade: Length;
  /** The torque it carries. */
  readonly torque: Torque;
  /** Hours by option: columns option, undercut, needs, least, most, reversible. */
  readonly table: Table;
}

/** One way to save a journal: the shape that a decision takes. */
export interface SalvageOption {
  readonly name: string;
  readonly figures: Readonly<Record<string, Length | Measured<Length> | Pressure | number | string>>;
  readonly breaks: readonly string[];
}

const turned = "turn undersize";
/** Below this chance to clean up an option is said to leave black spots. */
const cleansUp = 0.9;

/**
 * The ways to save a worn journal, each with its figures and what it violates: turn it undersize, or one of the ways
 * of the user's own table, which bring it back to size.
 *
 * The steel that carries is the finished diameter less the undercut (ON DIAMETER): a sleeve or a deposit is not counted
 * as strength, so the shaft turned down under it must carry. Its shear stress of torsion is 16T/(πd³). Every option is
 * held against the smallest diameter allowed, and against the chance that what is turned cleans up.
 *
 * Valid when: torsion alone is asked for. Bending, keyways, shoulders and fatigue are not in it.
 *
 * @param input.cleanUp  as `cleanUp` returns it
 * @param input.finished, input.smallestAllowed, input.asMade  > 0 [m]
 * @param input.torque  ≥ 0 [N·m]
 * @param input.table  one row an option, "turn undersize" among them; undercut below the finished size, 0 for none, -
 * for new steel [m]
 * @returns the options in the table's order
 * @throws RangeError  no row "turn undersize", hours the wrong way round, a finished diameter that is not below what
 * it was made to, a diameter not above 0, a torque below 0, or an undercut that leaves no steel
 * @example
 * const rows = ["0,2.4375", "1,2.4375", "2,2.4375", "3,2.4345", "4,2.4345", "5,2.4345"];
 * const tableOf = (name, ...lines) => readTable(new TextEncoder().encode(lines.join("\n")), { name, file: name });
 * const profile = profileOf(tableOf("survey", "station [in],diameter [in]", ...rows), { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * const found = cleanUp(wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) }), { from: inch(3), to: inch(5) });
 * const table = tableOf("options", "option [text],undercut [in],needs [text],least [hr],most [hr],reversible [text]", "turn undersize,0,a steady,3,5,no");
 * const sizes = { finished: inch(2.43), smallestAllowed: inch(2.4325), asMade: inch(2.4375), torque: lbfInch(6875) };
 * salvageOptions({ cleanUp: found, ...sizes, table: table })[0].breaks[0] // "2.43 in of steel is below the smallest diameter allowed, 2.4325 in"
 * @source torsion of a round bar; cost and hours: the user's own
 */
export function salvageOptions(input: SalvageOptionsInput): readonly SalvageOption[] {
  const { cleanUp, finished, smallestAllowed, asMade, torque, table } = input;
  for (const [name, value] of [
    ["finished", finished],
    ["smallestAllowed", smallestAllowed],
    ["asMade", asMade],
  ] as const)
    if (!(value.si > 0)) throw new RangeError(`salvageOptions: ${name} must be above 0, got ${value}`);
  if (!(finished.si < asMade.si))
    throw new RangeError(`salvageOptions: turned to ${finished} is not below what it was made to, ${asMade}`);
  if (!(torque.si >= 0)) throw new RangeError(`salvageOptions: torque must be 0 or more, got ${torque}`);
  const [options, needs, reversible] = ["option", "needs", "reversible"].map((name) => textOf(table, name));
  const undercuts = lengthsOf(table, "undercut");
  const [least, most] = ["least", "most"].map((name) => quantitiesOf(table, name, "time"));
  if (!options!.includes(turned))
    throw new RangeError(`salvageOptions: ${table.file} needs a row "${turned}", got ${options!.join(", ")}`);
  return Object.freeze(
    options!.map((name, row): SalvageOption => {
      const line = `${table.file} line ${table.lines[row]}`;
      const [low, high] = [least![row], most![row]];
      if (low === undefined || high === undefined || low.si > high.si)
        throw new RangeError(`salvageOptions: ${line}: hours must run from least to most`);
      const undercut = undercuts[row];
      if (undercut !== undefined && !(undercut.si >= 0 && undercut.si < finished.si))
        throw new RangeError(
          `salvageOptions: ${line}: undercut must be 0 or more and leave steel, got ${undercut}; - for new steel`,
        );
      // What is put on is not counted as strength: the steel left under it carries.
      const carries =
        undercut === undefined
          ? asMade
          : quantityFromSi("length", finished.si - undercut.si, finished.writtenIn as never);
      const stress = quantityFromSi(
        "pressure",
        (16 * torque.si) / (Math.PI * carries.si ** 3),
        cleanUp.unitSystem === "inch" ? "psi" : "megapascal",
      );
      const chance = undercut === undefined ? undefined : chanceToClean(cleanUp, carries);
      const breaks: string[] = [];
      if (carries.si < smallestAllowed.si)
        breaks.push(`${carries} of steel is below the smallest diameter allowed, ${smallestAllowed}`);
      if (chance !== undefined && chance < cleansUp)
        breaks.push(`the chance that ${carries} cleans up all along is only ${(100 * chance).toFixed(0)} %`);
      return Object.freeze({
        name,
        figures: Object.freeze({
          "finished diameter": name === turned ? finished : asMade,
          "steel that carries": carries,
          ...(chance === undefined
            ? {}
            : { "cleans up to": cleanUp.plan, "chance to clean up": `${(100 * chance).toFixed(0)} %` }),
          "shear stress of the torque": stress,
          "stress against as made": `${((asMade.si / carries.si) ** 3).toFixed(3)} times`,
          hours: `${low.in("hour")} to ${high.in("hour")}`,
          needs: needs![row]!,
          reversible: reversible![row]!,
        }),
        breaks: Object.freeze(breaks),
      });
    }),
  );
}
