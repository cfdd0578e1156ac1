/** Metal that gives its heat to a mould of limited heat capacity through a contact, as lumps. */
export interface ChillOptions {
  /** Heat capacity of the metal above its liquidus [J/K]. */
  readonly metal: number;
  /** Heat it gives up between liquidus and solidus, latent heat included [J]. */
  readonly freezing: number;
  /** Heat capacity of what takes up the heat [J/K]. */
  readonly mould: number;
  /** Contact coefficient times surface [W/K]. */
  readonly conductance: number;
  /** [K] */
  readonly poured: number;
  readonly liquidus: number;
  readonly solidus: number;
  readonly mouldAt: number;
}

/** Times from the first contact [s]; undefined where the mould warms up before it is reached. */
export interface ChillTimes {
  readonly liquidus: number | undefined;
  /** A given share of the heat of freezing is gone. */
  readonly share: number | undefined;
  readonly solidus: number | undefined;
}

/**
 * How long poured metal stays above its liquidus, runs, and takes to freeze, in a mould that warms up.
 *
 * C₁·dT₁/dt = −G·(T₁ − T₂) = −C₂·dT₂/dt: the difference dies away as e^(−G(1/C₁ + 1/C₂)t), in two stages, the second
 * with C₁ = heat of freezing/(liquidus − solidus), the first with the capacity of the melt.
 *
 * Valid when: metal and mould are each at one temperature throughout (thin wall, small box) and lose none to the air
 * meanwhile; heat of freezing spread evenly over the range.
 *
 * @param options  capacities [J/K], heat [J], conductance [W/K], temperatures [K]
 * @param share  of the heat of freezing, at which it no longer runs; above 0, below 1 [-]
 * @returns times [s]
 * @throws RangeError  a value not above 0, or temperatures that do not fall from pouring to liquidus, solidus and mould
 * @example
 * const heats = { metal: 400, freezing: 1e5, mould: 1e12, conductance: 100 };
 * chillTimes({ ...heats, poured: 700, liquidus: 600, solidus: 500, mouldAt: 400 }, 0.3).liquidus!.toFixed(3) // "1.622"
 * @source heat balance of two bodies; M. C. Flemings, Solidification Processing, chapter 1 (contact coefficient; from memory)
 */
export function chillTimes(options: ChillOptions, share: number): ChillTimes {
  const { metal, freezing, mould, conductance, poured, liquidus, solidus, mouldAt } = options;
  for (const [name, value] of Object.entries({ metal, freezing, mould, conductance }))
    if (!(value > 0)) throw new RangeError(`chillTimes: ${name} must be above 0, got ${value}`);
  if (!(poured > liquidus && liquidus > solidus && solidus > mouldAt))
    throw new RangeError(
      `chillTimes: temperatures must fall from pouring to liquidus, solidus and mould, got ${poured}, ${liquidus}, ${solidus}, ${mouldAt} K`,
    );
  if (!(share > 0 && share < 1))
    throw new RangeError(`chillTimes: share must lie between 0 and 1, got ${share}`);
  const molten = stage(metal, mould, conductance, poured, mouldAt, liquidus);
  if (molten === undefined)
    return Object.freeze({ liquidus: undefined, share: undefined, solidus: undefined });
  const warmed = mouldAt + (metal * (poured - liquidus)) / mould;
  const thick = freezing / (liquidus - solidus);
  const later = (kelvin: number): number | undefined => {
    const time = stage(thick, mould, conductance, liquidus, warmed, kelvin);
    return time === undefined ? undefined : molten + time;
  };
  return Object.freeze({
    liquidus: molten,
    share: later(liquidus - share * (liquidus - solidus)),
    solidus: later(solidus),
  });
}

/** Time in which a body falls from one temperature to another against a mould that starts at its own [s]. */
function stage(
  body: number,
  mould: number,
  conductance: number,
  from: number,
  mouldAt: number,
  to: number,
): number | undefined {
  const warmed = mouldAt + (body * (from - to)) / mould;
  if (!(to > warmed)) return undefined;
  return Math.log((from - mouldAt) / (to - warmed)) / (conductance * (1 / body + 1 / mould));
}
