import {
  type Length,
  type Mass,
  type Quantity,
  quantityFromSi,
  type RotationalSpeed,
  type UnitSystem,
} from "../../quantity/index.js";
import { unbalanceIn } from "./unbalance-vector.js";

/** The rotor, and how well it is to run. */
export interface PermissibleUnbalanceOptions {
  readonly mass: Mass;
  /** The highest speed in service. */
  readonly speed: RotationalSpeed;
  /** Balance quality grade G: the speed of the centre of mass about the axis [mm/s], e.g. 6.3. */
  readonly grade: number;
  /**
   * For a rotor between two bearings: how far its centre of mass lies from each. The bearing nearer to it bears the
   * larger share.
   */
  readonly toBearings?: readonly [Length, Length];
  readonly units?: UnitSystem;
}

export interface PermissibleUnbalance {
  readonly kind: "permissible unbalance";
  readonly grade: number;
  readonly mass: Mass;
  readonly speed: RotationalSpeed;
  /** Of the whole rotor. */
  readonly amount: Quantity<"mass unbalance">;
  /** The same as how far the centre of mass may lie from the axis. */
  readonly eccentricity: Length;
  /** At the two bearings, where `toBearings` was given. */
  readonly atBearings: readonly [Quantity<"mass unbalance">, Quantity<"mass unbalance">] | undefined;
}

/** The grades the standard prints, G in mm/s, for the message and the look. */
export const balanceGrades: readonly number[] = Object.freeze([
  0.4, 1, 2.5, 6.3, 16, 40, 100, 250, 630, 1600, 4000,
]);

/**
 * How much unbalance may stay in a rigid rotor of a balance quality grade.
 *
 * e = G/ω, U = m·e; between bearings U_A = U·b/(a + b), U_B = U·a/(a + b), a and b from the centre of mass to A and B
 *
 * Valid when: the rotor is rigid (runs well below its first bending critical speed) and its centre of mass lies
 * between the bearings where shares are asked for. The grade of a kind of machine stands in the standard: 6.3 for
 * fans, pump wheels and general machinery.
 *
 * @param options.mass  of the rotor, > 0 [kg]
 * @param options.speed  highest in service, > 0 [rad/s]
 * @param options.grade  one of `balanceGrades` [mm/s]
 * @param options.toBearings  from the centre of mass to each bearing, > 0 [m]
 * @returns permissible unbalance [kg·m], eccentricity of the centre of mass [m], shares at the bearings [kg·m]
 * @throws RangeError  mass, speed or a distance not above 0, or no grade of the standard
 * @example permissibleUnbalance({ mass: kilogram(2), speed: rpm(10000), grade: 6.3, units: "metric" }).amount.in("gramMillimetre").toFixed(1) // "12.0"
 * @source ISO 21940-11:2016, 6.2 (grades, formula) and 7.3.2 (shares of the bearings) (from memory)
 */
export function permissibleUnbalance(options: PermissibleUnbalanceOptions): PermissibleUnbalance {
  const { mass, speed, grade, toBearings, units = "inch" } = options;
  if (!(mass.si > 0)) throw new RangeError(`permissibleUnbalance: mass must be above 0, got ${mass}`);
  if (!(speed.si > 0)) throw new RangeError(`permissibleUnbalance: speed must be above 0, got ${speed}`);
  if (!balanceGrades.includes(grade))
    throw new RangeError(
      `permissibleUnbalance: grade must be one of ${balanceGrades.join(", ")} (mm/s), got ${grade}`,
    );
  const eccentricity = (grade * 1e-3) / speed.si;
  const amount = mass.si * eccentricity;
  return Object.freeze({
    kind: "permissible unbalance",
    grade,
    mass,
    speed,
    amount: unbalanceIn(amount, units),
    eccentricity: quantityFromSi("length", eccentricity, units === "inch" ? "thou" : "micrometre"),
    atBearings: toBearings && sharesOf(amount, toBearings, units),
  });
}

function sharesOf(
  amount: number,
  [a, b]: readonly [Length, Length],
  units: UnitSystem,
): readonly [Quantity<"mass unbalance">, Quantity<"mass unbalance">] {
  if (!(a.si > 0 && b.si > 0))
    throw new RangeError(
      `permissibleUnbalance: distances to the bearings must be above 0, got ${a} and ${b}`,
    );
  const whole = a.si + b.si;
  return Object.freeze([
    unbalanceIn((amount * b.si) / whole, units),
    unbalanceIn((amount * a.si) / whole, units),
  ]);
}
