/**
 * A fit as plain SI numbers: what a simulation evaluates thousands of times. Checked where it is made.
 */
export interface FitNumbers {
  /** Mean diameter of the seat [m]. */
  readonly diameter: number;
  /** Length in contact, along the axis [m]. */
  readonly length: number;
  /** Diameter per length [-], 0 for a straight fit. */
  readonly taper: number;
  /** DIAMETRAL interference [m]. */
  readonly interference: number;
  /** [-] */
  readonly friction: number;
  readonly hubOutside: number;
  readonly hubModulus: number;
  readonly hubPoisson: number;
  /** 0 for a solid shaft [m]. */
  readonly shaftBore: number;
  readonly shaftModulus: number;
  readonly shaftPoisson: number;
}

/**
 * How far a fit's two surfaces give to one pascal, on diameter and per diameter: the hub's bore opens and the
 * shaft's surface goes in.
 *
 * 1/p = d/δ · { [(D² + d²)/(D² − d²) + ν_h]/E_h + [(d² + b²)/(d² − b²) − ν_s]/E_s }
 *
 * @returns δ/(d p) [1/Pa]
 */
export function compliance(fit: Omit<FitNumbers, "length" | "taper" | "interference" | "friction">): number {
  const { diameter: d, hubOutside, shaftBore } = fit;
  const hub = wallRatio(hubOutside, d) + fit.hubPoisson;
  const shaft = wallRatio(d, shaftBore) - fit.shaftPoisson;
  return hub / fit.hubModulus + shaft / fit.shaftModulus;
}

/** (D² + d²)/(D² − d²): hoop stress at the bore for one pascal inside; 1 for a solid shaft. */
export function wallRatio(outside: number, bore: number): number {
  return (outside ** 2 + bore ** 2) / (outside ** 2 - bore ** 2);
}

/** Pressure between hub and shaft [Pa]; negative interference gives negative pressure, for the caller to judge. */
export function pressureOf(fit: FitNumbers): number {
  return fit.interference / (fit.diameter * compliance(fit));
}

/** What one pascal of pressure gives along the axis, on and off, and in torque. */
export function forcesPerPressure({
  diameter,
  length,
  taper,
  friction,
}: Pick<FitNumbers, "diameter" | "length" | "taper" | "friction">): {
  readonly on: number;
  readonly off: number;
  readonly torque: number;
} {
  const tangent = taper / 2;
  const seat = Math.PI * diameter * length;
  // The two ends of the seat; on a cone the large end has the longer arm, and the wall is 1/cos of the half angle long.
  const [small, large] = [diameter - (taper * length) / 2, diameter + (taper * length) / 2];
  const meanSquare = (small ** 2 + small * large + large ** 2) / 3;
  return {
    on: seat * (friction + tangent),
    off: seat * (friction - tangent),
    torque: (friction * Math.PI * length * meanSquare * Math.sqrt(1 + tangent ** 2)) / 2,
  };
}
