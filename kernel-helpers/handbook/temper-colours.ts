import { degF, type Temperature } from "../quantity/index.js";

/** A colour of steel and the temperature it shows at, in °F as printed. */
export interface HeatColour {
  /** temper: the skin of oxide on bright steel; heat: the glow. */
  readonly kind: "temper" | "heat";
  readonly colour: string;
  readonly degreesFahrenheit: number;
  /** The upper end, where a range is printed. */
  readonly upTo: number | undefined;
}

/**
 * Temper and heat colours of steel as printed. Lists differ by about 20 °F at the same name, and a colour deepens with
 * the time at heat.
 *
 * @source W. H. Dooley, Applied Science for Metal Workers; the spread between lists: a gauge-plate maker's sheet;
 * the influence of time: common practice, no source
 */
export const heatColours: readonly HeatColour[] = Object.freeze([
  row("temper", "very pale yellow", 430),
  row("temper", "straw yellow", 460),
  row("temper", "dark straw", 480),
  row("temper", "brownish yellow", 500),
  row("temper", "yellow tinged with purple", 520),
  row("temper", "light purple", 530),
  row("temper", "dark purple", 550),
  row("temper", "dark blue", 570),
  row("temper", "pale blue", 610),
  row("temper", "blue tinged with green", 630),
  row("heat", "first sign of red", 957),
  row("heat", "dull red", 1290),
  row("heat", "dark cherry", 1470),
  row("heat", "cherry red", 1655),
  row("heat", "bright red", 1870),
  row("heat", "dull orange", 2010),
  row("heat", "bright orange", 2190),
  row("heat", "white heat", 2370),
  row("heat", "bright white", 2550),
  row("heat", "dazzling white", 2730, 2910),
]);

/**
 * The colour bright steel shows at a temperature: the last one of the list that has been passed.
 *
 * Valid when: bright bare steel, minutes at heat; good to about 20 °F (10 °C). Under scale, paint or oil no temper
 * colour shows.
 *
 * @param temperature  of the steel's surface [K]
 * @returns the row of the list; undefined below the first temper colour
 * @example heatColourAt(degF(500))!.colour // "brownish yellow"
 * @example heatColourAt(degF(200)) // undefined
 * @source see `heatColours`
 */
export function heatColourAt(temperature: Temperature): HeatColour | undefined {
  return heatColours.findLast((one) => degF(one.degreesFahrenheit) <= temperature);
}

function row(kind: "temper" | "heat", colour: string, degreesFahrenheit: number, upTo?: number): HeatColour {
  return Object.freeze({ kind, colour, degreesFahrenheit, upTo });
}
