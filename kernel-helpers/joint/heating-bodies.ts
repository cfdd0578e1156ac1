/** Two bodies that share heat across a joint, as SI numbers: hub and the stretch of shaft within it. */
export interface TwoBodies {
  /** Heat capacities [J/K]. */
  readonly hub: number;
  readonly shaft: number;
  /** Across the joint, from mean to mean temperature [W/K]. */
  readonly joint: number;
  /** Mean of the hub less its bore, for one watt that goes in outside and is stored [K/W]. */
  readonly ahead: number;
  /** The same for one watt that leaves at the bore [K/W]. */
  readonly within: number;
}

/** Sizes [m] and properties, SI. */
export interface BodiesInput {
  readonly diameter: number;
  readonly outside: number;
  readonly length: number;
  readonly hubMass: number;
  readonly hubSpecificHeat: number;
  readonly hubConductivity: number;
  readonly shaftDensity: number;
  readonly shaftSpecificHeat: number;
  readonly shaftConductivity: number;
  /** [W/(m²·K)] */
  readonly conductance: number;
}

/**
 * Hub and shaft as two bodies of one temperature each, with what the metal of each adds to the resistance of the
 * joint between their means.
 *
 * 1/G = 1/(h π d L) + R_hub + 1/(8 π k_s L); R_hub = (1/2πkL)·2{b²[b²/2·ln(b/a) − (b² − a²)/4] − (b² − a²)²/8}/(b² − a²)²
 * of the uniform cooling of a hollow cylinder through its bore, a and b radii; ahead = (1/2πkL)·2{(b² − a²)²/8 −
 * a²b²·ln(b/a)/2 + a²(b² − a²)/4}/(b² − a²)² of its uniform heating from outside
 *
 * Valid when: heating is slow against the time heat takes through the wall, about a minute for a hub. Against
 * conduction ring by ring the difference of the two is up to a tenth too large in the first minute, within 1 % from
 * three minutes on, and too small after the flame is taken off, so that the window closes later than reckoned.
 * Heat that runs off along the shaft, and into spokes and air, is left out: the first is the safe side.
 *
 * @source quasi-steady conduction in a cylinder, H. S. Carslaw & J. C. Jaeger, Conduction of Heat in Solids, chapter 7
 * (method from memory, formulas derived)
 */
export function twoBodies(input: BodiesInput): TwoBodies {
  const { diameter, outside, length, conductance } = input;
  const [a2, b2] = [(diameter / 2) ** 2, (outside / 2) ** 2];
  const wall = b2 - a2;
  const log = Math.log(outside / diameter);
  const per = 1 / (2 * Math.PI * input.hubConductivity * length);
  const within = (per * 2 * (b2 * ((b2 / 2) * log - wall / 4) - wall ** 2 / 8)) / wall ** 2;
  const ahead = (per * 2 * (wall ** 2 / 8 - (a2 * b2 * log) / 2 + (a2 * wall) / 4)) / wall ** 2;
  const shaft = 1 / (8 * Math.PI * input.shaftConductivity * length);
  return Object.freeze({
    hub: input.hubMass * input.hubSpecificHeat,
    shaft: (Math.PI / 4) * diameter ** 2 * length * input.shaftDensity * input.shaftSpecificHeat,
    joint: 1 / (1 / (conductance * Math.PI * diameter * length) + within + shaft),
    ahead,
    within,
  });
}

/** Mean temperatures over the room's [K]. */
export interface Warmth {
  readonly hub: number;
  readonly shaft: number;
}

/**
 * Mean warmth of hub and shaft under a flame of constant power that is taken off at some time.
 *
 * difference D: D' = P/C_h − λ(D − P·ahead), λ = G(1/C_h + 1/C_s); so D = P(1/(λC_h) + ahead)(1 − e^(−λt)), after the
 * flame D e^(−λ(t − t₁)); all heat stays in the two: C_h·hub + C_s·shaft = P·min(t, t₁)
 *
 * @param bodies  from `twoBodies`
 * @param power   into the hub [W]
 * @param off     when the flame is taken off [s]
 * @param time    [s]
 * @returns warmth over the room [K]
 */
export function warmthAt(bodies: TwoBodies, power: number, off: number, time: number): Warmth {
  const { hub, shaft } = bodies;
  const rate = rateOf(bodies);
  const lit = Math.min(time, off);
  const most = power * (1 / (rate * hub) + bodies.ahead);
  const difference = most * -Math.expm1(-rate * lit) * Math.exp(-rate * (time - lit));
  const mean = (power * lit) / (hub + shaft);
  return {
    hub: mean + (difference * shaft) / (hub + shaft),
    shaft: mean - (difference * hub) / (hub + shaft),
  };
}

/** How fast the two even out, λ [1/s]. */
export function rateOf({ joint, hub, shaft }: TwoBodies): number {
  return joint * (1 / hub + 1 / shaft);
}
