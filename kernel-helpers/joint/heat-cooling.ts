import {
  type Area,
  type Mass,
  type Quantity,
  quantityFromSi,
  type Temperature,
  type Time,
} from "../quantity/index.js";

/** Air and radiation from hot metal in a still shop, as a range [W/(m²·K)]. */
export const stillAir: { readonly low: number; readonly high: number; readonly because: string } =
  Object.freeze({
    low: 10,
    high: 30,
    because: "still air near room heat, to air and radiation at 500 °F",
  });

/** A warm body in air, taken to have one temperature all through. */
export interface CoolingBody {
  readonly mass: Mass;
  readonly specificHeat: Quantity<"specific heat">;
  /** The surface that the air reaches. */
  readonly area: Area;
  /** Heat carried off by the surface [W/(m²·K)]; `stillAir` without it. */
  readonly film?: { readonly low: number; readonly high: number };
}

/**
 * How long a warm part takes to cool to a temperature, as a range.
 *
 * t = τ ln((T₀ − T∞)/(T − T∞)),  τ = m c/(h A)
 *
 * Valid when: the part has one temperature all through (h V/(k A) < 0.1, which iron and steel of a few pounds keep to in
 * air), and loses its heat to air only. A nut that sits on a cold hub cools several times as fast: the range is the
 * longest it can take.
 *
 * @param body  mass [kg], specific heat [J/(kg·K)], surface [m²], film coefficient [W/(m²·K)]
 * @param from  temperature at the start [K]
 * @param to  temperature reached [K], below the start and above the air
 * @param air  temperature of the air [K]
 * @returns shortest and longest time, and time constant [s]
 * @throws RangeError  a value is outside its bound, or the temperatures are not in order
 * @example coolingTime({ mass: pound(2), specificHeat: quantityFromSi("specific heat", 486), area: inch2(20) }, degF(400), degF(140), degF(65)).low.in("minute") // 28.41
 * @source F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, lumped capacitance (from memory); film
 * coefficients: 2 to 25 free convection in gases from the same, radiation added by σ ε 4 T³ (from memory)
 */
export function coolingTime(
  body: CoolingBody,
  from: Temperature,
  to: Temperature,
  air: Temperature,
): {
  readonly low: Time;
  readonly high: Time;
  readonly timeConstant: { readonly low: Time; readonly high: Time };
} {
  const { mass, specificHeat, area, film = stillAir } = body;
  for (const [name, value] of [
    ["mass", mass],
    ["specific heat", specificHeat],
    ["area", area],
  ] as const)
    if (!(value.si > 0)) throw new RangeError(`coolingTime: ${name} must be more than 0, got ${value}`);
  if (!(film.low > 0 && film.high >= film.low))
    throw new RangeError(`coolingTime: film must run upwards from above 0, got ${film.low} to ${film.high}`);
  if (!(from > to && to > air))
    throw new RangeError(
      `coolingTime: temperatures must fall from the start to above the air, got ${from}, ${to}, air ${air}`,
    );
  const constant = (h: number): number => (mass.si * specificHeat.si) / (h * area.si);
  const times = Math.log((from.kelvin - air.kelvin) / (to.kelvin - air.kelvin));
  const time = (seconds: number): Time => quantityFromSi("time", seconds, "minute");
  return Object.freeze({
    low: time(constant(film.high) * times),
    high: time(constant(film.low) * times),
    timeConstant: Object.freeze({ low: time(constant(film.high)), high: time(constant(film.low)) }),
  });
}
