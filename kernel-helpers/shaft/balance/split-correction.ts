import {
  type Angle,
  formatNumber,
  type Length,
  type Mass,
  type Measured,
  quantityFromSi,
  unitNamed,
} from "../../quantity/index.js";
import { direction, polar } from "./complex.js";

/** A place that exists to fasten at: a spoke, a hole. */
export interface CorrectionPlace {
  readonly angle: Angle;
  /** From the axis; that of the mass wanted where left out. */
  readonly radius?: Length | undefined;
  /** The most that can be fastened there. */
  readonly most?: Mass | undefined;
}

/** What the mass wanted belongs to. */
export interface SplitCorrectionOptions {
  /** From the axis to where the mass is wanted; needed where a place has a radius of its own. */
  readonly radius?: Length;
}

/** A correction split between places that exist. */
export interface SplitCorrection {
  readonly kind: "split correction";
  readonly mass: Mass;
  readonly angle: Angle;
  /** One where a place is right there, else two neighbours. */
  readonly shares: readonly CorrectionShare[];
  readonly warnings: readonly string[];
}

/** A share of a correction at a place that exists. */
export interface CorrectionShare {
  readonly angle: Angle;
  readonly mass: Mass;
  /** Standard uncertainty of the mass; undefined where the mass wanted came without. */
  readonly uMass: Mass | undefined;
  /** Undefined where it is that of the mass wanted. */
  readonly radius: Length | undefined;
}

/**
 * Splits a correcting mass between the two places next to it: spokes, or holes that are there.
 *
 * m₁ = m·(r/r₁)·sin(β)/sin(α + β), m₂ = m·(r/r₂)·sin(α)/sin(α + β), α and β from the wanted angle to the two places,
 * r₁ and r₂ their radii. u²(m₁) = (r/r₁)²·(u²(m)·sin²β + m²·u²(angle)·cos²β)/sin²(α + β)
 *
 * Valid when: some two neighbouring places lie less than half a turn apart with the wanted angle between them.
 *
 * @param mass  wanted, with or without uncertainty, ≥ 0 [kg]
 * @param angle  wanted, with or without uncertainty [rad]
 * @param places  places that exist, or their angles, at least 2 [rad]; radius > 0 [m], most > 0 [kg]
 * @param options.radius  where the mass is wanted, > 0 [m]
 * @returns one share where a place is right there, else two, together equal to the mass wanted [kg]; a warning where a
 * share is more than its place takes
 * @throws RangeError  fewer than 2 places, a mass below 0, a radius or a most not above 0, a place with a radius but none
 * of the mass wanted, or a gap of half a turn or more round the wanted angle
 * @example splitCorrection(ounce(5), degree(30), [0, 90, 180, 270].map(degree)).shares[0].mass.in("ounce").toFixed(2) // "4.33"
 * @source law of sines
 */
export function splitCorrection(
  mass: Mass | Measured<Mass>,
  angle: Angle | Measured<Angle>,
  places: readonly (Angle | CorrectionPlace)[],
  options: SplitCorrectionOptions = {},
): SplitCorrection {
  const [wanted, at] = [plain<Mass>(mass), plain<Angle>(angle)];
  const known = "standardUncertainty" in mass || "standardUncertainty" in angle;
  const there = places.map((place): CorrectionPlace => ("angle" in place ? place : { angle: place }));
  check(wanted.value, there, options);
  // How far on from the wanted angle each place lies, from 0 to below a turn.
  const ahead = there.map((place) => direction(polar(1, place.angle.si - at.value.si)));
  const smallest = (values: readonly number[]): number =>
    values.reduce((best, value, i) => (value < values[best]! ? i : best), 0);
  const next = smallest(ahead);
  const behind = ahead.map((value) => (2 * Math.PI - value) % (2 * Math.PI));
  const previous = smallest(behind);
  const [beta, alpha] = [ahead[next]!, behind[previous]!];
  const unit = wanted.value.writtenIn ?? "kilogram";
  const massIn = (si: number): Mass => quantityFromSi("mass", si, unit as never);
  /** What one place takes of a unit mass at the angle wanted, and how that changes with the angle. */
  const share = (i: number, part: number, slope: number): CorrectionShare => {
    const { angle: where, radius } = there[i]!;
    const reach = radius === undefined ? 1 : options.radius!.si / radius.si;
    const u = reach * Math.hypot(part * wanted.u, wanted.value.si * slope * at.u);
    return Object.freeze({
      angle: where,
      mass: massIn(reach * part * wanted.value.si),
      uMass: known ? massIn(u) : undefined,
      radius,
    });
  };
  const exact = 1e-9;
  const whole = Math.sin(alpha + beta);
  if (Math.min(alpha, beta) >= exact && alpha + beta >= Math.PI - exact)
    throw new RangeError(
      `splitCorrection: two places less than half a turn apart must lie on either side of ${at.value}, the nearest are ${there[previous]!.angle} and ${there[next]!.angle}`,
    );
  const shares =
    Math.min(alpha, beta) < exact
      ? [share(beta < exact ? next : previous, 1, 0)]
      : [
          share(previous, Math.sin(beta) / whole, Math.cos(beta) / whole),
          share(next, Math.sin(alpha) / whole, Math.cos(alpha) / whole),
        ];
  return Object.freeze<SplitCorrection>({
    kind: "split correction",
    mass: wanted.value,
    angle: at.value,
    shares: Object.freeze(shares),
    warnings: Object.freeze(warningsOf(shares, there)),
  });
}

function plain<Q extends Mass | Angle>(value: Q | Measured<Q>): { readonly value: Q; readonly u: number } {
  return "standardUncertainty" in value
    ? { value: value.value as Q, u: (value.standardUncertainty as Q).si }
    : { value: value as Q, u: 0 };
}

function check(mass: Mass, places: readonly CorrectionPlace[], { radius }: SplitCorrectionOptions): void {
  if (!(mass.si >= 0)) throw new RangeError(`splitCorrection: mass must be 0 or more, got ${mass}`);
  if (places.length < 2)
    throw new RangeError(`splitCorrection: at least 2 places are needed, got ${places.length}`);
  if (radius !== undefined && !(radius.si > 0))
    throw new RangeError(`splitCorrection: radius must be above 0, got ${radius}`);
  for (const place of places) {
    if (place.radius !== undefined && !(place.radius.si > 0))
      throw new RangeError(
        `splitCorrection: the radius at ${place.angle} must be above 0, got ${place.radius}`,
      );
    if (place.radius !== undefined && radius === undefined)
      throw new RangeError(
        `splitCorrection: the place at ${place.angle} has a radius of its own: give radius, where the mass is wanted`,
      );
    if (place.most !== undefined && !(place.most.si > 0))
      throw new RangeError(`splitCorrection: the most at ${place.angle} must be above 0, got ${place.most}`);
  }
}

function warningsOf(shares: readonly CorrectionShare[], places: readonly CorrectionPlace[]): string[] {
  return shares.flatMap(({ angle, mass }) => {
    const most = places.find((place) => place.angle === angle)?.most;
    return most === undefined || mass.si <= most.si
      ? []
      : [
          `At ${angle} there is room for ${most}, and ${inUnitOf(mass)} is wanted: fasten something denser there, or take metal away on the heavy side.`,
        ];
  });
}

function inUnitOf(mass: Mass): string {
  const { si, symbol } = unitNamed((mass.writtenIn ?? "kilogram") as never);
  return `${formatNumber(mass.si / si, 3)} ${symbol}`;
}
