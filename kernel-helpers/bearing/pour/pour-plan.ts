import {
  type AnyQuantity,
  type KindName,
  type Length,
  type Quantity,
  quantityFromSi,
  temperature,
} from "../../quantity/index.js";
import { clearanceNeeded } from "../film/clearance-needed.js";
import { type ChillTimes, chillTimes } from "./chill-time.js";
import { jointsToLoad } from "./joints-to-load.js";
import { ironSpecificHeat, pourSizes, steelDensity } from "./pour-sizes.js";
import type { Chill, PourOptions, PourPlan } from "./pour-types.js";

/** Contact of white metal with sooted or chalked iron, poor and good [W/(m²·K)]; from memory, a wide range. */
const contact = [500, 2000] as const;
/** It no longer runs when this share is frozen; common practice, no source. */
const stopsAt = 1 / 3;
/** The metal must be this much above its liquidus to be poured at all [K]; common practice, no source. */
const leastSuperheat = 20;
/** More than this over the proper temperature burns the tin and coarsens the metal [K]; common practice, no source. */
const overheated = 30;
const gravity = 9.80665;
/** A lining thinner than this does not run [m]; common practice, no source. */
const thinnestLining = 0.003;

/**
 * What a box needs to be poured: mandrel, metal to melt, times, and whether it fills before it freezes.
 *
 * Mandrel: see `pourSizes`. Volume = π/4·(shell² − mandrel²)·length − 2·shim·wall·length + anchors + riser; to melt =
 * mass·(1 + loss), its uncertainty by bore and length of a rough shell. Times: see `chillTimes`, with good and with poor contact. Lift at most ρ·g·d·L·(riser + d).
 *
 * Valid when: mandrel and shell of iron or steel, dry, at even heat; grooves cut after pouring (no metal saved).
 *
 * @param options.journal  diameter, > 0 [m]
 * @param options.clearance  DIAMETRAL, > 0 [m]
 * @param options.allowance  on DIAMETER, ≥ 0 [m]
 * @param options.shellBore, options.length  > 0 [m]
 * @param options.castingUncertainty  standard, of shell bore and length, ≥ 0 [m]
 * @param options.shellMass  > 0 [kg]
 * @param options.loss  0 to 0.5 [-]
 * @param options.fillTime  > 0 [s]
 * @returns sizes, metal, times, verdict
 * @throws RangeError  a value out of its range, a mandrel that does not fit into the shell with a wall, metal not hot
 * enough to pour, or a preheat at which it would not freeze
 * @example
 * const hold = { anchors: { count: 6, mouth: quantity(0.2, "inch2"), depth: inch(0.25) }, shims: thou(60), loss: 0.15 };
 * const feed = { riser: { diameter: inch(1), height: inch(2) }, fillTime: second(2), shop: degF(65), loadAt: degree(0) };
 * const heat = { alloy: babbitt(2), shellPreheat: degF(250), mandrelPreheat: degF(300), shellMass: pound(30) };
 * const size = { journal: measured(inch(2.4375), thou(0.2)), clearance: thou(4), allowance: thou(15) };
 * const plan = pourPlan({ name: "far box", ...size, ...hold, ...feed, ...heat, shellBore: inch(3.25), length: inch(8) });
 * plan.toMelt.in("pound").toFixed(0) // "10"
 * @source elementary; common practice for preheat and loss, no source; alloy: ASTM B23
 */
export function pourPlan(options: PourOptions): PourPlan {
  check(options);
  const { name, alloy, journal, clearance, allowance, shellBore, length, riser, shims, loss } = options;
  const { shellPreheat, mandrelPreheat, shop, fillTime } = options;
  const pouring = options.pouring ?? alloy.pouring;
  const inchShop = shellBore.writtenIn === "inch" || shellBore.writtenIn === "thou";
  const of = <K extends KindName>(kind: K, si: number, inInch: string, metric: string): Quantity<K> =>
    quantityFromSi(kind, si, (inchShop ? inInch : metric) as never);
  const long = (si: number): Length => of("length", si, "inch", "mm");
  const small = (si: number): Length => of("length", si, "thou", "micrometre");
  const sizes = pourSizes(options);
  const [d, s, l] = [sizes.mandrelHot, shellBore.si, length.si];
  const wall = (s - d) / 2;
  if (!(wall > 0.001))
    throw new RangeError(
      `pourPlan: ${name}: a mandrel of ${long(d)} in a shell of ${shellBore} leaves a wall of ${long(wall)}: at least 1 mm is needed; is the shell's bore right?`,
    );
  const lining = (Math.PI / 4) * (s ** 2 - d ** 2) * l - 2 * shims.si * wall * l;
  const anchors = options.anchors.count * options.anchors.mouth.si * options.anchors.depth.si;
  const head = (Math.PI / 4) * riser.diameter.si ** 2 * riser.height.si;
  const whole = lining + anchors + head;
  const volume = (si: number): Quantity<"volume"> => of("volume", si, "inch3", "litre");
  const mass = alloy.density.si * whole;
  // Of the volume: by the shell's bore, π/2·s·l·u, and by the length, π/4·(s² − d²)·u.
  const u = options.castingUncertainty?.si;
  const rough = u === undefined ? undefined : (Math.PI / 4) * u * Math.hypot(2 * s * l, s ** 2 - d ** 2);
  const cast = alloy.density.si * (lining + anchors);
  const mandrelMass = steelDensity * (Math.PI / 4) * sizes.mandrel ** 2 * l;
  const takes = [options.shellMass.si * ironSpecificHeat, mandrelMass * ironSpecificHeat] as const;
  const mould = takes[0] + takes[1];
  const heats = {
    metal: cast * alloy.specificHeat.si,
    freezing:
      cast * (alloy.latentHeat.si + alloy.specificHeat.si * (alloy.liquidus.kelvin - alloy.solidus.kelvin)),
    mould,
    poured: pouring.kelvin,
    liquidus: alloy.liquidus.kelvin,
    solidus: alloy.solidus.kelvin,
    mouldAt: (takes[0] * shellPreheat.kelvin + takes[1] * mandrelPreheat.kelvin) / mould,
  };
  const surface = Math.PI * (s + d) * l;
  const chillAt = (coefficient: number): Chill =>
    chill(
      chillTimes({ ...heats, conductance: coefficient * surface }, stopsAt),
      coefficient,
      alloy.name,
      name,
    );
  const [slow, quick] = [chillAt(contact[0]), chillAt(contact[1])];
  const meets = meeting(heats, cast * alloy.specificHeat.si);
  const scale = shop.toJSON().scale;
  const verdict =
    fillTime.si <= quick.beginsToFreeze.si
      ? "fills"
      : fillTime.si > slow.stopsRunning.si
        ? "freezes before it fills"
        : "cannot tell yet";
  return Object.freeze({
    kind: "pour plan",
    name,
    alloy,
    journal,
    clearance,
    allowance,
    finishedBore: long(sizes.finished),
    mandrel: long(sizes.mandrel),
    castBore: Object.freeze({ least: long(sizes.leastBore), largest: long(sizes.largestBore) }),
    toTakeOff: Object.freeze({
      least: small(sizes.finished - sizes.largestBore),
      most: small(sizes.finished - sizes.leastBore),
    }),
    wall: long(wall),
    shellBore,
    length,
    shims,
    riser,
    volumes: Object.freeze({
      lining: volume(lining),
      anchors: volume(anchors),
      riser: volume(head),
      whole: volume(whole),
    }),
    mass: of("mass", mass, "pound", "kilogram"),
    toMelt: of("mass", mass * (1 + loss), "pound", "kilogram"),
    toMeltUncertainty:
      rough === undefined
        ? undefined
        : of("mass", (1 + loss) * alloy.density.si * rough, "pound", "kilogram"),
    shellPreheat,
    mandrelPreheat,
    pouring,
    pouringWithin: quantityFromSi(
      "temperature difference",
      overheated,
      scale === "degF" ? "deltaF" : "deltaC",
    ),
    shop,
    loadAt: options.loadAt,
    joints: jointsToLoad(options.loadAt),
    fillTime,
    chill: Object.freeze({ quick, slow }),
    meets: temperature(
      scale === "degF" ? (meets * 9) / 5 - 459.67 : meets - 273.15,
      scale === "degF" ? scale : "degC",
    ),
    verdict,
    because: reason(verdict, quick, slow),
    lift: of("force", alloy.density.si * gravity * d * l * (riser.height.si + d), "lbf", "newton"),
    warnings: Object.freeze(warningsOf(options, pouring.kelvin, shellPreheat.kelvin)),
  });
}

function chill(times: ChillTimes, coefficient: number, alloy: string, name: string): Chill {
  const { liquidus, share, solidus } = times;
  if (liquidus === undefined || share === undefined)
    throw new RangeError(
      `pourPlan: ${name}: shell and mandrel are too hot or too light to freeze ${alloy}: less preheat or chills are needed`,
    );
  const seconds = (si: number): Quantity<"time"> => quantityFromSi("time", si);
  return Object.freeze({
    contact: quantityFromSi("heat transfer coefficient", coefficient),
    beginsToFreeze: seconds(liquidus),
    stopsRunning: seconds(share),
    solid: solidus === undefined ? undefined : seconds(solidus),
  });
}

/** Where lining and mould meet if they keep all their heat [K]. */
function meeting(
  heats: {
    metal: number;
    freezing: number;
    mould: number;
    poured: number;
    liquidus: number;
    solidus: number;
    mouldAt: number;
  },
  solid: number,
): number {
  const { metal, freezing, mould, poured, liquidus, solidus, mouldAt } = heats;
  const given = metal * (poured - liquidus) + freezing;
  const mixed = (mould * mouldAt + given + solid * solidus) / (mould + solid);
  if (mixed <= solidus) return mixed;
  // Some of it stays molten: they meet within the melting range.
  const thick = freezing / (liquidus - solidus);
  return (mould * mouldAt + metal * (poured - liquidus) + thick * liquidus) / (mould + thick);
}

function reason(verdict: PourPlan["verdict"], quick: Chill, slow: Chill): string {
  const s = ({ si }: { si: number }): string => si.toPrecision(2);
  const times = `Against good contact it begins to freeze after ${s(quick.beginsToFreeze)} s and stops running after ${s(quick.stopsRunning)} s; against soot or chalk after ${s(slow.beginsToFreeze)} and ${s(slow.stopsRunning)} s.`;
  return verdict === "fills"
    ? times
    : `${times} Pour faster, from a larger lip, or warm shell and mandrel more; a thicker coat of soot helps too.`;
}

function warningsOf(options: PourOptions, pouring: number, shell: number): string[] {
  const { alloy, shellPreheat } = options;
  const warnings: string[] = [];
  if (shell < 373.15)
    warnings.push(
      `A shell at ${shellPreheat} may still hold water: above the boiling point, long enough to drive it out of cracks and anchors, it cannot.`,
    );
  if (pouring > alloy.pouring.kelvin + overheated)
    warnings.push(
      `${options.pouring} is hotter than the ${alloy.pouring} proper for ${alloy.name}: more dross and fume, coarser metal.`,
    );
  if (pouring < alloy.pouring.kelvin - overheated)
    warnings.push(
      `${options.pouring} is colder than the ${alloy.pouring} proper for ${alloy.name}: cold shuts.`,
    );
  if (alloy.base === "lead" || alloy.lead[1] > 1)
    warnings.push(
      `${alloy.name} is ${alloy.lead[0]} to ${alloy.lead[1]} % lead: fume, dross and dust poison, at home too on clothes and shoes.`,
    );
  return warnings;
}

/** The least shell that holds a lining, as the shop writes it. */
function leastShell(bore: number, like: Length): Length {
  const inchShop = like.writtenIn === "inch" || like.writtenIn === "thou";
  const [step, unit] = inchShop ? [0.0254 / 16, "inch" as const] : [0.001, "mm" as const];
  return quantityFromSi("length", step * Math.ceil((bore + 2 * thinnestLining) / step - 1e-9), unit);
}

function check(options: PourOptions): void {
  const { name, alloy, journal, clearance, allowance, shellBore, length, shellMass, riser, shims } = options;
  const above: Readonly<Record<string, AnyQuantity>> = {
    journal: journal.value,
    clearance,
    shellBore,
    length,
    shellMass,
    fillTime: options.fillTime,
    "riser.diameter": riser.diameter,
    "anchors.mouth": options.anchors.mouth,
  };
  for (const [key, value] of Object.entries(above))
    if (!(value.si > 0))
      throw new RangeError(
        `pourPlan: ${name}: ${key} must be above 0, got ${value}${key === "clearance" ? clearanceNeeded(journal.value) : ""}`,
      );
  const notBelow: Readonly<Record<string, AnyQuantity>> = {
    allowance,
    shims,
    "riser.height": riser.height,
    "anchors.depth": options.anchors.depth,
    ...(options.castingUncertainty && { castingUncertainty: options.castingUncertainty }),
  };
  for (const [key, value] of Object.entries(notBelow))
    if (!(value.si >= 0)) throw new RangeError(`pourPlan: ${name}: ${key} must be 0 or more, got ${value}`);
  if (!(Number.isInteger(options.anchors.count) && options.anchors.count >= 0))
    throw new RangeError(
      `pourPlan: ${name}: anchors.count must be a whole number, got ${options.anchors.count}`,
    );
  if (!(options.loss >= 0 && options.loss <= 0.5))
    throw new RangeError(`pourPlan: ${name}: loss must lie between 0 and 0.5, got ${options.loss}`);
  if (clearance.si > journal.value.si / 100)
    throw new RangeError(
      `pourPlan: ${name}: a DIAMETRAL clearance of ${clearance} on ${journal.value} is more than a hundredth: is it in thousandths?`,
    );
  if (journal.value.si + clearance.si >= shellBore.si)
    throw new RangeError(
      `pourPlan: ${name}: the journal of ${journal.value} leaves no room for a lining in a shell of ${shellBore}: a bore of at least ${leastShell(journal.value.si + clearance.si, shellBore)} is needed; is it the DIAMETER of the shell?`,
    );
  const pouring = options.pouring ?? alloy.pouring;
  if (!(pouring.kelvin >= alloy.liquidus.kelvin + leastSuperheat))
    throw new RangeError(
      `pourPlan: ${name}: ${alloy.name} must be poured at least ${leastSuperheat} °C above its liquidus of ${alloy.liquidus}, got ${pouring}; ${alloy.pouring} is proper`,
    );
  for (const [key, value] of [
    ["shellPreheat", options.shellPreheat],
    ["mandrelPreheat", options.mandrelPreheat],
  ] as const) {
    if (!(value.kelvin < alloy.solidus.kelvin))
      throw new RangeError(
        `pourPlan: ${name}: ${key} must lie below the solidus of ${alloy.name}, ${alloy.solidus}, got ${value}`,
      );
    if (!(value.kelvin >= options.shop.kelvin))
      throw new RangeError(
        `pourPlan: ${name}: ${key} must not lie below the shop's ${options.shop}, got ${value}`,
      );
  }
}
