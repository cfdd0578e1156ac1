import { material, type StandardThread } from "../handbook/index.js";
import {
  type Area,
  degF,
  type Length,
  type Mass,
  quantityFromSi,
  type Temperature,
  type Time,
} from "../quantity/index.js";
import { type HeatCeiling, heatCeiling } from "./heat-ceilings.js";
import { coolingTime } from "./heat-cooling.js";

/** Something near the nut that the heat must not spoil. */
export interface HeatNeighbour {
  /** As `heatCeiling` knows it: "paint", "oil", "Babbitt 2", … */
  readonly name: string;
  /** The share of the nut's rise that reaches it, 1 where it touches [-]; a judgement, to be watched with a temperature stick. */
  readonly share: number;
}

/** The nut to be warmed. */
export interface HeatNutInput {
  readonly thread: StandardThread;
  readonly acrossFlats: Length;
  readonly height: Length;
  /** A metal of the handbook; "steel" without it. */
  readonly material?: string;
  readonly shop: Temperature;
  /** How hot the nut is to be made; as hot as the neighbours allow without it. */
  readonly to?: Temperature | undefined;
  readonly neighbours: readonly HeatNeighbour[];
}

/** How hot a neighbour lets the nut become. */
export interface NeighbourLimit extends HeatCeiling {
  readonly share: number;
  /** The nut's temperature at which the neighbour reaches its ceiling. */
  readonly nutAt: Temperature;
}

/** Warming a nut: how hot, what that gives, and how long it lasts. */
export interface HeatNut {
  readonly kind: "nut heat";
  readonly thread: StandardThread;
  readonly material: string;
  readonly shop: Temperature;
  readonly nut: Temperature;
  /** The hottest the nut may become. */
  readonly hottest: Temperature;
  /** Lowest first: the one that is reached first. */
  readonly limits: readonly NeighbourLimit[];
  /** What the bore of the nut grows over a stud that has stayed cold, on diameter. */
  readonly growth: Length;
  /** The same for each 100 °F or 50 °C. */
  readonly growthPerStep: Length;
  readonly mass: Mass;
  /** Until half of the growth is gone, and until it may be touched, in air. */
  readonly halfGone: { readonly low: Time; readonly high: Time };
  /** Bare metal at this temperature may be touched for a second. */
  readonly touch: Temperature;
  readonly touchable: { readonly low: Time; readonly high: Time };
}

/** Bare metal may be touched for a second. */
const touch = degF(140);

/**
 * What warming a nut gives, and what it may spoil.
 *
 * growth of the bore on diameter: α d (T − T₀), the stud left cold
 * limit of a neighbour: nut at T₀ + (ceiling − T₀)/share
 * cooling: `coolingTime`, mass and surface of a hexagon
 *
 * Valid when: the nut is warmed quickly and evenly all round, the stud not. Once the stud has the same heat the growth is
 * gone. The share of the rise that reaches a neighbour is a judgement: watch it with a temperature stick.
 *
 * @param input.acrossFlats  wrench size of the nut [m], above the thread's diameter
 * @param input.height  of the nut [m], > 0
 * @param input.shop  room temperature [K]
 * @param input.to  temperature of the nut [K], above the room's
 * @param input.neighbours  what is near, each with the share of the rise that reaches it, above 0 to 1 [-]
 * @returns the hottest allowed [K], limits lowest first, growth [m], times [s]
 * @throws RangeError  a value is outside its bound; or the nut is to be made hotter than a neighbour allows, which is named
 * @example heatNut({ thread: threadNamed("1 1/2 in BSW"), acrossFlats: inch(2.41), height: inch(1.5), shop: degF(65), to: degF(365), neighbours: [] }).growth.in("thou") // 2.925
 * @source expansion and heat: the handbook's; touching: ISO 13732-1 (from memory); shares: common practice, no source
 */
export function heatNut(input: HeatNutInput): HeatNut {
  const { thread, acrossFlats, height, shop, neighbours } = input;
  const metal = material(input.material ?? "steel");
  if (!(acrossFlats > thread.majorDiameter))
    throw new RangeError(
      `heatNut: the nut must be wider across flats than its thread, ${thread.majorDiameter}, got ${acrossFlats}`,
    );
  if (!(height.si > 0)) throw new RangeError(`heatNut: height must be more than 0, got ${height}`);
  const limits = [...neighbours, { name: metal.name, share: 1 }]
    .map((one) => limitOf(one, shop))
    .sort((a, b) => a.nutAt.kelvin - b.nutAt.kelvin);
  const hottest = limits[0]!.nutAt;
  const nut = input.to ?? hottest;
  if (!(nut > shop))
    throw new RangeError(`heatNut: the nut must be made warmer than the shop, ${shop}, got ${nut}`);
  const passed = limits.find(({ nutAt }) => nutAt < nut);
  if (passed !== undefined)
    throw new RangeError(
      `heatNut: the nut must stay below ${passed.nutAt}, or ${passed.name} passes its ceiling of ${passed.ceiling} (${passed.why}); got ${nut}`,
    );
  const alpha = metal.expansion.value;
  const grow = (difference: number): Length =>
    quantityFromSi(
      "length",
      alpha.si * thread.majorDiameter.si * difference,
      thread.threadsPerInch === undefined ? "micrometre" : "thou",
    );
  const { mass, area } = hexagon(input, metal.density.value.si);
  const body = { mass, area, specificHeat: metal.specificHeat.value };
  const half = shop.plus(nut.minus(shop).over(2));
  const none = quantityFromSi("time", 0, "minute");
  return Object.freeze({
    kind: "nut heat",
    thread,
    material: metal.name,
    shop,
    nut,
    hottest,
    limits: Object.freeze(limits),
    growth: grow(nut.kelvin - shop.kelvin),
    growthPerStep: grow(thread.threadsPerInch === undefined ? 50 : (100 * 5) / 9),
    mass,
    halfGone: span(coolingTime(body, nut, half, shop)),
    touch,
    touchable:
      nut > touch && touch > shop
        ? span(coolingTime(body, nut, touch, shop))
        : span({ low: none, high: none }),
  });
}

function limitOf({ name, share }: HeatNeighbour, shop: Temperature): NeighbourLimit {
  if (!(share > 0 && share <= 1))
    throw new RangeError(`heatNut: share of ${name} must lie above 0 and not above 1, got ${share}`);
  const ceiling = heatCeiling(name);
  if (!(ceiling.ceiling > shop))
    throw new RangeError(
      `heatNut: the shop must be cooler than the ceiling of ${name}, ${ceiling.ceiling}, got ${shop}`,
    );
  return Object.freeze({
    ...ceiling,
    share,
    nutAt: shop.plus(ceiling.ceiling.minus(shop).over(share)),
  });
}

/** Mass of a hexagon with a hole, and the surface that air reaches: sides and one face. */
function hexagon({ thread, acrossFlats, height }: HeatNutInput, density: number): { mass: Mass; area: Area } {
  const face = (Math.sqrt(3) / 2) * acrossFlats.si ** 2 - (Math.PI / 4) * thread.majorDiameter.si ** 2;
  const sides = 2 * Math.sqrt(3) * acrossFlats.si * height.si;
  const inches = acrossFlats.writtenIn === "inch";
  return {
    mass: quantityFromSi("mass", density * face * height.si, inches ? "pound" : "kilogram"),
    area: quantityFromSi("area", face + sides, inches ? "inch2" : "mm2"),
  };
}

function span({ low, high }: { readonly low: Time; readonly high: Time }): {
  readonly low: Time;
  readonly high: Time;
} {
  return Object.freeze({ low, high });
}
