import { type Length, measured } from "../../quantity/index.js";
import { lengthsOf, type Table } from "../../survey/index.js";
import type { TrialCut } from "./correct-taper.js";

/**
 * A trial cut of a taper from its table: two places, the one that is to be small first.
 *
 * @param table  columns station and diameter, two rows [m]
 * @param given.wanted  change of DIAMETER per length; its sign does not count [-]
 * @param given.measuring  standard uncertainty of a diameter, > 0 [m]
 * @param given.betweenCentres  between the points of the centres, for the tailstock [m]
 * @returns what `correctTaper` takes
 * @throws RangeError  not two rows, an empty place, or two readings at one station; the file is named
 * @example
 * const rows = ["station [in],diameter [in]", "0.5,2.14", "4.5,2.388"];
 * const table = readTable(new TextEncoder().encode(rows.join("\n")), { name: "trial-cut", file: "trial-cut.csv" });
 * trialCutOf(table, { wanted: 0.0625, measuring: thou(0.2) }).apart.in("inch") // 4
 */
export function trialCutOf(
  table: Table,
  given: {
    readonly wanted: number;
    readonly measuring: Length;
    readonly betweenCentres?: Length | undefined;
  },
): TrialCut {
  const [stations, diameters] = ["station", "diameter"].map((name) => lengthsOf(table, name));
  const [from, to] = stations!;
  const [small, large] = diameters!;
  if (stations!.length !== 2 || !from || !to || !small || !large)
    throw new RangeError(
      `trialCutOf: ${table.file} must hold two rows, each with station and diameter: first where the taper is to be small; got ${stations!.length}`,
    );
  const apart = to.minus(from).absolute();
  if (!(apart.si > 0))
    throw new RangeError(`trialCutOf: ${table.file} must hold two stations, got ${from} twice`);
  const { betweenCentres, measuring } = given;
  return Object.freeze<TrialCut>({
    wanted: Math.abs(given.wanted),
    smallEnd: measured(small, measuring),
    largeEnd: measured(large, measuring),
    apart,
    ...(betweenCentres === undefined ? {} : { betweenCentres }),
  });
}
