import {
  type Density,
  degF,
  kilogramPerCubicMetre,
  type Pressure,
  perC,
  psi,
  type Quantity,
  quantityFromSi,
  type Temperature,
  type ThermalExpansion,
} from "../quantity/index.js";

/** Share of a metal in an alloy, from least to most [%]. */
export type Percent = readonly [low: number, high: number];

/** A white metal by its ASTM B23 number, as one pours it. */
export interface Babbitt {
  readonly kind: "babbitt";
  readonly number: number;
  readonly name: string;
  readonly base: "tin" | "lead";
  readonly tin: Percent;
  readonly antimony: Percent;
  readonly lead: Percent;
  readonly copper: Percent;
  /** Where it begins to melt: "melting point" of the standard. */
  readonly solidus: Temperature;
  /** Where it is wholly molten. */
  readonly liquidus: Temperature;
  /** The standard's proper pouring temperature. */
  readonly pouring: Temperature;
  readonly density: Density;
  /** At 0.125 % set, in compression, at 68 and at 212 °F; undefined where no source gives it. */
  readonly yieldCold: Pressure | undefined;
  readonly yieldWarm: Pressure | undefined;
  readonly brinell: number;
  /** By the rule of mixtures. */
  readonly specificHeat: Quantity<"specific heat">;
  /** Heat of melting, by the rule of mixtures. */
  readonly latentHeat: Quantity<"specific energy">;
  readonly expansion: ThermalExpansion;
  readonly source: string;
}

const source =
  "ASTM B23-00, tables 1 and X1.1 (composition, yield point, melting and pouring temperature, as reprinted); specific gravity, Brinell number and liquidus, and all of numbers 8 and 15: from memory";
const noLead: Percent = [0, 0.35];
const noCopper: Percent = [0, 0.5];

/** Number, Sn, Sb, Pb, Cu [%], gravity, yield at 68 and 212 °F [psi], Brinell, melting, liquidus, pouring [°F]. */
type BabbittRow = readonly [
  number: number,
  tin: Percent,
  antimony: Percent,
  lead: Percent,
  copper: Percent,
  gravity: number,
  yieldCold: number | undefined,
  yieldWarm: number | undefined,
  brinell: number,
  solidus: number,
  liquidus: number,
  pouring: number,
];

const rows: readonly BabbittRow[] = [
  [1, [90, 92], [4, 5], noLead, [4, 5], 7.34, 4400, 2650, 17.0, 433, 700, 825],
  [2, [88, 90], [7, 8], noLead, [3, 4], 7.39, 6100, 3000, 24.5, 466, 669, 795],
  [3, [83, 85], [7.5, 8.5], noLead, [7.5, 8.5], 7.46, 6600, 3150, 27.0, 464, 792, 915],
  [4, [74, 76], [11, 13], [9.3, 10.7], [2.5, 3.5], 7.52, 5550, 2150, 24.5, 363, 583, 710],
  [7, [9.3, 10.7], [14, 16], [72.5, 76.5], noCopper, 9.73, 3550, 1600, 22.5, 464, 514, 640],
  [8, [4.5, 5.5], [14, 16], [77.9, 81.2], noCopper, 10.04, 3400, 1750, 20.0, 459, 522, 645],
  [15, [0.8, 1.2], [14.5, 17.5], [79.9, 83.9], noCopper, 10.05, undefined, undefined, 21.0, 479, 538, 662],
];

/** Specific heat [J/(kg·K)] and heat of melting [kJ/kg] of the metals; D. R. Lide, CRC Handbook (from memory). */
const elements = {
  tin: { specificHeat: 228, latentHeat: 59.2 },
  antimony: { specificHeat: 207, latentHeat: 163 },
  lead: { specificHeat: 129, latentHeat: 23.0 },
  copper: { specificHeat: 385, latentHeat: 205 },
} as const;

/** The white metals that are poured, by number. */
export const babbitts: readonly Babbitt[] = Object.freeze(rows.map(babbittOf));

/**
 * A white metal by its ASTM B23 number: composition, melting range, pouring temperature, strength, heat.
 *
 * Specific heat and heat of melting are those of its metals, by mass, at the middle of the composition.
 *
 * @param number  1, 2, 3, 4, 7, 8 or 15
 * @returns the alloy
 * @throws RangeError  it is not tabled; the message lists those that are
 * @example babbitt(2).liquidus.in("degF") // 669
 * @source see `source` of each; rule of mixtures: Neumann and Kopp's rule, common practice
 */
export function babbitt(number: number): Babbitt {
  const found = babbitts.find((alloy) => alloy.number === number);
  if (found === undefined)
    throw new RangeError(
      `babbitt: must be one of ASTM B23 alloys ${babbitts.map((alloy) => alloy.number).join(", ")}, got ${number}`,
    );
  return found;
}

function babbittOf(row: BabbittRow): Babbitt {
  const [number, tin, antimony, lead, copper, gravity, cold, warm, brinell, solidus, liquidus, pouring] = row;
  const middle = ([low, high]: Percent): number => (low + high) / 2;
  const shares = {
    tin: middle(tin),
    antimony: middle(antimony),
    lead: middle(lead),
    copper: middle(copper),
  } as const;
  const names = ["tin", "antimony", "lead", "copper"] as const;
  const whole = names.reduce((sum, name) => sum + shares[name], 0);
  const mixed = (of: "specificHeat" | "latentHeat"): number =>
    names.reduce((sum, name) => sum + shares[name] * elements[name][of], 0) / whole;
  const base = shares.tin > shares.lead ? "tin" : "lead";
  return Object.freeze({
    kind: "babbitt",
    number,
    name: `ASTM B23 alloy ${number}`,
    base,
    tin,
    antimony,
    lead,
    copper,
    solidus: degF(solidus),
    liquidus: degF(liquidus),
    pouring: degF(pouring),
    density: kilogramPerCubicMetre(gravity * 1000),
    yieldCold: cold === undefined ? undefined : psi(cold),
    yieldWarm: warm === undefined ? undefined : psi(warm),
    brinell,
    specificHeat: quantityFromSi("specific heat", mixed("specificHeat")),
    latentHeat: quantityFromSi("specific energy", mixed("latentHeat") * 1000),
    // As of the tin and lead alloys among the materials.
    expansion: perC(base === "tin" ? 21e-6 : 26e-6),
    source,
  });
}
