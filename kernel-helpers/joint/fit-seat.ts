import { type Length, type Measured, measured, quantityFromSi } from "../quantity/index.js";
import type { TaperFit } from "../survey/index.js";
import { requireQuantity, requireSmaller } from "./fit-check.js";

/** Where a hub sits on a shaft's taper. */
export interface SeatOnTaper {
  readonly kind: "seat on taper";
  /** Of the shaft half-way along the hub, by the fitted line. */
  readonly diameter: Measured<Length>;
  /** In contact, along the axis. */
  readonly length: Length;
  /** Diameter per length, without sign [-]. */
  readonly taper: Measured<number>;
}

/**
 * The seat of a hub on a surveyed taper, from where it begins and ends to bear.
 *
 * d = d₁ + t(x − x₁), half-way; u²(x) = linear between the variances at the ends + u(t)²(x − x₁)(x − x₂)
 *
 * Valid when: it bears within the stretch that was read, or not far outside it, and the taper goes on straight.
 *
 * @param taper  the fitted taper of the shaft
 * @param from   station where the hub begins to bear, at the small end [m]
 * @param to     station where it ends to bear [m]
 * @returns mean diameter with its standard uncertainty [m], length [m], taper [-]
 * @throws RangeError  the faces stand in the wrong order, or further outside the readings than the readings are long
 * @example
 * const rows = ["0,2.0000", "2,2.1250", "4,2.2500", "6,2.3750"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "taper-survey", file: "taper-survey.csv" });
 * const taper = fitTaper(profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(1) }));
 * seatOnTaper(taper, inch(1), inch(5)).diameter.value.in("inch").toFixed(4) // "2.1875"
 * @source JCGM 100:2008 (GUM), 5.2.2, equation 13; a straight line's variance is a parabola along it
 */
export function seatOnTaper(taper: TaperFit, from: Length, to: Length): SeatOnTaper {
  const where = "seatOnTaper";
  const { smallEnd: a, largeEnd: b } = taper;
  // A station may stand at 0 or below.
  if (from.dimension !== "length" || to.dimension !== "length")
    throw new TypeError(`${where}: from and to must be stations with their unit, got ${from} and ${to}`);
  requireSmaller(where, ["from", from], ["to", to]);
  requireQuantity(where, "taper.length", taper.length, "length", "more than 0");
  const [first, last] = [Math.min(a.station.si, b.station.si), Math.max(a.station.si, b.station.si)];
  const read = last - first;
  if (from.si < first - read || to.si > last + read)
    throw new RangeError(
      `${where}: the hub must sit on the stretch that was read, from ${a.station} to ${b.station}, got ${from} to ${to}`,
    );
  const x = (from.si + to.si) / 2;
  const share = (x - a.station.si) / (b.station.si - a.station.si);
  const between = (p: number, q: number): number => p + share * (q - p);
  const value = between(a.diameter.value.si, b.diameter.value.si);
  const variance =
    between(a.diameter.standardUncertainty.si ** 2, b.diameter.standardUncertainty.si ** 2) +
    taper.taper.standardUncertainty ** 2 * (x - a.station.si) * (x - b.station.si);
  const unit = from.writtenIn;
  return Object.freeze({
    kind: "seat on taper",
    diameter: measured(
      quantityFromSi("length", value, unit),
      quantityFromSi("length", Math.sqrt(Math.max(0, variance)), unit),
      taper.taper.degreesOfFreedom,
    ),
    length: to.minus(from),
    taper: measured(
      Math.abs(taper.taper.value),
      taper.taper.standardUncertainty,
      taper.taper.degreesOfFreedom,
    ),
  });
}
