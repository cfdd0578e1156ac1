import {
  type Measured,
  measured,
  type Quantity,
  quantityFromSi,
  type RotationalSpeed,
  type Torque,
} from "../../quantity/index.js";
import { approachAt, fitApproach, fitLine } from "../../statistics/index.js";
import { quantitiesOf, type Table } from "../../survey/index.js";

/** The rotor, and how well its speed was read. */
export interface CoastDownOptions {
  /** Of everything that turns, taken to the shaft's speed; its uncertainty, where it has one, counts in the torque. */
  readonly inertia: Quantity<"moment of inertia"> | Measured<Quantity<"moment of inertia">>;
  /** Standard uncertainty of one reading of the speed. */
  readonly speedUncertainty: RotationalSpeed;
}

/** Friction from a machine left to run down. */
export interface CoastDown {
  readonly kind: "coast-down";
  readonly title: string;
  /** Friction torque at the first speed read, and at the last. */
  readonly atFirst: { readonly speed: RotationalSpeed; readonly torque: Measured<Torque> };
  readonly atLast: { readonly speed: RotationalSpeed; readonly torque: Measured<Torque> };
  /** Whether the drag falls with the speed, or is alike at all speeds within the uncertainty. */
  readonly drag: "falls with speed" | "steady";
  readonly readings: readonly { readonly time: number; readonly speed: number; readonly left: number }[];
  /** The line or curve fitted, from the first reading to the last [s], [rad/s]. */
  readonly curve: readonly { readonly time: number; readonly speed: number }[];
}

/**
 * Friction torque from a coast-down: speed against time with nothing driving.
 *
 * T = −J·dω/dt; (u(T)/T)² = (u(ω̇)/ω̇)² + (u(J)/J)². The speed is fitted by a straight line (steady drag) and by an exponential approach (drag that falls
 * with the speed); the second is taken where it is better by more than its one more parameter is worth (χ² less by
 * 4 or more, about two standard uncertainties).
 *
 * Valid when: nothing drives and no belt drags along that does not in service; air drag of spokes counts as friction.
 *
 * @param table  columns time and speed [s], [rad/s], at least 4 rows
 * @param options.inertia  > 0 [kg·m²]
 * @param options.speedUncertainty  standard, > 0 [rad/s]
 * @returns torque at the first and the last speed [N·m], with standard uncertainty from readings and inertia
 * @throws RangeError  fewer than 4 readings, times out of order, a speed that grows, or a value not above 0
 * @example
 * const bytes = new TextEncoder().encode("time [s],speed [rpm]\n0,110\n10,100\n20,90\n30,80");
 * const table = readTable(bytes, { name: "coast-down", file: "coast-down.csv" });
 * const options = { inertia: quantity(10, "kilogramSquareMetre"), speedUncertainty: rpm(0.5) };
 * coastDown(table, options).atFirst.torque.value.in("newtonMetre").toFixed(3) // "1.047"
 * @source Newton's second law for rotation
 */
export function coastDown(table: Table, options: CoastDownOptions): CoastDown {
  const { speedUncertainty } = options;
  const known = options.inertia as Measured<Quantity<"moment of inertia">>;
  const [inertia, uInertia] =
    known.kind === "measured"
      ? [known.value, known.standardUncertainty.si]
      : [options.inertia as Quantity<"moment of inertia">, 0];
  if (!(inertia.si > 0)) throw new RangeError(`coastDown: inertia must be above 0, got ${inertia}`);
  if (!(speedUncertainty.si > 0))
    throw new RangeError(`coastDown: speedUncertainty must be above 0, got ${speedUncertainty}`);
  const [times, speeds] = [
    quantitiesOf(table, "time", "time"),
    quantitiesOf(table, "speed", "rotational speed"),
  ];
  const rows = table.lines.flatMap((line, row) => {
    const [time, speed] = [times[row], speeds[row]];
    return time === undefined || speed === undefined ? [] : [{ line, t: time.si, w: speed.si }];
  });
  if (rows.length < 4)
    throw new RangeError(`coastDown: at least 4 readings are needed, got ${rows.length} in ${table.file}`);
  rows.forEach(({ line, t, w }, i) => {
    const before = rows[i - 1];
    if (before === undefined) return;
    if (t <= before.t) throw new RangeError(`coastDown: ${table.file} line ${line}: times must grow`);
    if (w > before.w + 4 * speedUncertainty.si)
      throw new RangeError(
        `coastDown: ${table.file} line ${line}: the speed grew; something drives, or it is a slip`,
      );
  });
  const t = rows.map((row) => row.t - rows[0]!.t);
  const w = rows.map((row) => row.w);
  const u = speedUncertainty.si;
  const line = fitLine(t, w, { u });
  const curve = bend(t, w, u, line.chiSquare!);
  const end = t.at(-1)!;
  const slopeAt = (time: number): { slope: number; u: number; speed: number } => {
    if (curve === undefined)
      return { slope: line.slope, u: line.uSlope, speed: line.intercept + line.slope * time };
    // Slope of the curve and its uncertainty, by its own covariance.
    const step = 1e-4 * end;
    const fade = Math.exp(-time / curve.timeConstant) / curve.timeConstant;
    const way = curve.end - curve.start;
    const slopes = [fade, -fade, (way * fade * (time / curve.timeConstant - 1)) / curve.timeConstant];
    const variance = slopes.reduce(
      (sum, a, i) => sum + slopes.reduce((row, b, j) => row + a * b * curve.covariance[i]![j]!, 0),
      0,
    );
    const [above, below] = [approachAt(curve, time + step).value, approachAt(curve, time - step).value];
    return {
      slope: (above - below) / (2 * step),
      u: Math.sqrt(Math.max(0, variance)),
      speed: approachAt(curve, time).value,
    };
  };
  const unit = table.unitSystem === "metric" ? "newtonMetre" : "lbfInch";
  const torqueAt = (time: number): CoastDown["atFirst"] => {
    const { slope, u: uSlope, speed } = slopeAt(time);
    return Object.freeze({
      speed: quantityFromSi("rotational speed", speed, "rpm"),
      torque: measured(
        quantityFromSi("torque or energy", -inertia.si * slope, unit),
        quantityFromSi("torque or energy", Math.hypot(inertia.si * uSlope, slope * uInertia), unit),
      ),
    });
  };
  return Object.freeze({
    kind: "coast-down",
    title: table.name,
    atFirst: torqueAt(0),
    atLast: torqueAt(end),
    drag: curve === undefined ? "steady" : "falls with speed",
    curve: Object.freeze(
      Array.from({ length: points + 1 }, (_, i) => {
        const time = (end * i) / points;
        return Object.freeze({ time, speed: slopeAt(time).speed });
      }),
    ),
    readings: Object.freeze(
      rows.map(({ t: time, w: speed }, i) =>
        Object.freeze({ time, speed, left: curve === undefined ? line.residuals[i]! : curve.residuals[i]! }),
      ),
    ),
  });
}

/** Steps of the curve drawn. */
const points = 40;
/** One more parameter must lower χ² by at least this. */
const worthIt = 4;

function bend(
  t: readonly number[],
  w: readonly number[],
  u: number,
  straight: number,
): ReturnType<typeof fitApproach> | undefined {
  try {
    const fit = fitApproach(t, w, { u });
    return straight - fit.residualSumOfSquares >= worthIt && fit.end < w.at(-1)! ? fit : undefined;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
