import { type Length, measured, quantityFromSi } from "../quantity/index.js";
import { coverageFactor, studentTCdf } from "../statistics/index.js";
import { deviationOf, lengthColumn, meanOf } from "./instrument-study-columns.js";
import type { InstrumentComparison } from "./instrument-study-types.js";
import { betweenSmall, chanceText, smallText } from "./run-out-text.js";
import type { Table } from "./table.js";

export interface CompareInstrumentsOptions {
  /** The column of the first instrument or person. */
  readonly first: string;
  /** The column of the second. */
  readonly second: string;
}

const fewest = 3;
const differsBelow = 0.05;

/**
 * Compares two instruments, or two people, by readings of the same places: bias, agreement, spread.
 *
 * dᵢ = secondᵢ − firstᵢ; bias = d̄, u = s_d/√n, paired t with n − 1; limits of agreement d̄ ± 1.96 s_d.
 * Spread (Pitman–Morgan): r = correlation of difference and sum, t = r √((n−2)/(1−r²)), n − 2 degrees of freedom. It
 * compares the spread of all readings, places included, which are the same for both.
 *
 * Valid when: each row is one place read by both, differences independent and about normal. Neither is taken for true:
 * a bias tells that they differ, not which is wrong.
 *
 * @param table  one row a place [m]; rows that one of the two did not read are left out, with a warning
 * @param options.first  name of the first column [-]
 * @param options.second  name of the second column [-]
 * @returns bias with its uncertainty, limits of agreement [m], ratio of spreads [-]
 * @throws RangeError  fewer than 3 places read by both, one column named twice, or differences all alike
 * @example
 * const rows = ["1.0,1.2", "2.0,2.1", "3.0,3.3"].join("\n");
 * const bytes = new TextEncoder().encode(`old [thou],new [thou]\n${rows}`);
 * const table = readTable(bytes, { name: "c", file: "c.csv" });
 * compareInstruments(table, { first: "old", second: "new" }).bias.value.in("thou") // 0.2
 * @source limits of agreement: J. M. Bland, D. G. Altman, Lancet 1986 (i) 307-310; spread: E. J. G. Pitman, Biometrika 31
 * (1939) 9-12, and W. A. Morgan, the same, 13-19 (from memory); paired t: Student, Biometrika 6 (1908) 1-25
 */
export function compareInstruments(table: Table, options: CompareInstrumentsOptions): InstrumentComparison {
  const where = "compareInstruments";
  const { first, second } = options;
  if (first === second)
    throw new RangeError(`${where}: two different columns must be named, got "${first}" twice`);
  const [a, b] = [lengthColumn(where, table, first), lengthColumn(where, table, second)];
  const pairs = a.values.flatMap((value, row) => {
    const other = b.values[row]!;
    return Number.isNaN(value) || Number.isNaN(other) ? [] : [[value, other] as const];
  });
  const n = pairs.length;
  if (n < fewest)
    throw new RangeError(
      `${where}: at least ${fewest} places read by both "${a.header}" and "${b.header}" are needed, got ${n} in ${table.file}`,
    );
  const differences = pairs.map(([x, y]) => y - x);
  const s = deviationOf(differences);
  const size = Math.max(...pairs.flat().map(Math.abs));
  if (s <= 1e-12 * size)
    throw new RangeError(
      `${where}: differences must scatter to be judged, got ${n} all alike between "${a.header}" and "${b.header}" of ${table.file}; estimate to a fraction of a step, or read more places`,
    );
  const lengthOf = (si: number): Length => quantityFromSi("length", si, a.unit as never);
  const mean = meanOf(differences);
  const u = s / Math.sqrt(n);
  const bias = measured(lengthOf(mean), lengthOf(u), n - 1);
  const chance = 2 * studentTCdf(-Math.abs(mean) / u, n - 1);
  const half = coverageFactor(0.95, Number.POSITIVE_INFINITY) * s;
  const found = {
    first,
    second,
    count: n,
    bias,
    chance,
    biased: chance < differsBelow,
    standardDeviation: lengthOf(s),
    limits: Object.freeze({ low: lengthOf(mean - half), high: lengthOf(mean + half) }),
    spread: spreadOf(pairs),
  };
  const left = table.rowCount - n;
  return Object.freeze<InstrumentComparison>({
    kind: "instrument comparison",
    title: table.name,
    unitSystem: table.unitSystem ?? "metric",
    ...found,
    text: sentence(found, table.unitSystem ?? "metric"),
    warnings: Object.freeze([
      ...table.warnings,
      ...(left > 0
        ? [
            `${left === 1 ? "1 row lacks one of the two readings and is" : `${left} rows lack one of the two readings and are`} left out.`,
          ]
        : []),
      ...(n < 10 ? [`${n} places tell the limits of agreement but roughly; 10 or more are handy.`] : []),
    ]),
  });
}

function spreadOf(pairs: readonly (readonly [number, number])[]): InstrumentComparison["spread"] {
  const [x, y] = [pairs.map(([v]) => v), pairs.map(([, v]) => v)];
  const [sx, sy] = [deviationOf(x), deviationOf(y)];
  if (sx === 0 || sy === 0) return undefined;
  const sums = pairs.map(([p, q]) => p + q);
  const differences = pairs.map(([p, q]) => q - p);
  const [ms, md] = [meanOf(sums), meanOf(differences)];
  const covariance =
    sums.reduce((all, sum, i) => all + (sum - ms) * (differences[i]! - md), 0) / (pairs.length - 1);
  const r = covariance / (deviationOf(sums) * deviationOf(differences));
  if (!(Math.abs(r) < 1 - 1e-12)) return undefined;
  const dof = pairs.length - 2;
  const chance = 2 * studentTCdf(-Math.abs(r) * Math.sqrt(dof / (1 - r * r)), dof);
  return Object.freeze({ ratio: sy / sx, chance, differs: chance < differsBelow });
}

function sentence(
  {
    first,
    second,
    bias,
    chance,
    biased,
    limits,
    spread,
  }: Pick<InstrumentComparison, "first" | "second" | "bias" | "chance" | "biased" | "limits" | "spread">,
  system: InstrumentComparison["unitSystem"],
): string {
  const off = biased
    ? `${second} reads ${smallText(bias, system)} against ${first} (95 %); by chance so much in ${chanceText(chance)} of comparisons.`
    : `No bias stands out: ${second} less ${first} is ${smallText(bias, system)} (95 %).`;
  const between = `Of single differences 95 in 100 lie within ${betweenSmall(limits, system)}.`;
  const wide = spread?.differs
    ? ` The readings of ${spread.ratio > 1 ? second : first} spread more: by a factor of ${(spread.ratio > 1 ? spread.ratio : 1 / spread.ratio).toFixed(2)}.`
    : "";
  return `${off} ${between}${wide}`;
}
