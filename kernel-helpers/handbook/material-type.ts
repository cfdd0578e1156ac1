import type { Computed, Quantity, Temperature } from "../quantity/index.js";

/** One property of a material: the value to reckon with, the range it is known to, and where it stands. */
export interface MaterialProperty<K extends string> {
  readonly value: Computed<K>;
  /** The least and the most that the source allows; both equal to the value where it gives no range. */
  readonly low: Computed<K>;
  readonly high: Computed<K>;
  readonly source: string;
}

/** The families of the trade. */
export type MaterialFamily = "steel" | "grey iron" | "ductile iron" | "bronze" | "white metal";

/** What a fit, a lift or a pour needs to know of a metal, near room temperature unless said otherwise. */
export interface Material {
  readonly kind: "material";
  readonly name: string;
  /** Other names it is looked up by. */
  readonly also: readonly string[];
  readonly family: MaterialFamily;
  /** Breaks without giving way first: judged by its largest tension against the tensile strength. */
  readonly brittle: boolean;
  /** Young's modulus, in tension. */
  readonly modulus: MaterialProperty<"pressure">;
  /** Poisson's ratio [-]. */
  readonly poisson: MaterialProperty<"number">;
  readonly expansion: MaterialProperty<"thermal expansion">;
  /** Where it begins to give way; undefined for a brittle one. */
  readonly yield: MaterialProperty<"pressure"> | undefined;
  /** Ultimate tensile strength; undefined where no source gives it. */
  readonly tensile: MaterialProperty<"pressure"> | undefined;
  /** Ultimate compressive strength; undefined where it has none to speak of or no source gives it. */
  readonly compressive: MaterialProperty<"pressure"> | undefined;
  readonly density: MaterialProperty<"density">;
  readonly specificHeat: MaterialProperty<"specific heat">;
  readonly conductivity: MaterialProperty<"thermal conductivity">;
  /** How hot it may be made on the bench, and what happens above. */
  readonly hottest: { readonly value: Temperature; readonly why: string; readonly source: string };
}

/** A frozen property; without a range it is its own range. */
export function property<K extends string>(
  value: Computed<K>,
  source: string,
  range?: readonly [low: Computed<K>, high: Computed<K>],
): MaterialProperty<K> {
  const [low, high] = range ?? [value, value];
  return Object.freeze({ value, low, high, source });
}

/** A specific heat in J/(kg·K), a conductivity in W/(m·K). */
export function heatProperty<K extends "specific heat" | "thermal conductivity">(
  quantity: Quantity<K>,
  source: string,
  range?: readonly [low: Quantity<K>, high: Quantity<K>],
): MaterialProperty<K> {
  return property<K>(
    quantity as Computed<K>,
    source,
    range as readonly [low: Computed<K>, high: Computed<K>] | undefined,
  );
}
