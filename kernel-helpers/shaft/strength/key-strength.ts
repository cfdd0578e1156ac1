import type { Material } from "../../handbook/index.js";
import {
  type Force,
  isQuantity,
  type Length,
  type Measured,
  measured,
  type Pressure,
  quantityFromSi,
  systemOf,
  type Torque,
} from "../../quantity/index.js";
import type { Uncertain } from "../../statistics/index.js";
import { type CarriedInput, carriedThrough } from "./carried-through.js";
import { givenValue } from "./given-values.js";
import type { LengthGiven, SafetyFactor, SafetyVerdict, TorqueGiven } from "./safety-types.js";
import { factorOf } from "./shaft-safety.js";
import type { ShaftSteel } from "./shaft-steel.js";

/** The forms of key. A taper key is driven tight; what it holds by friction is not counted here. */
export type KeyForm = "square" | "rectangular" | "taper" | "gib-head taper";

/** A key in its seats. */
export interface KeyInSeats {
  readonly form: KeyForm;
  readonly width: Length;
  /** Of a taper key at the large end of the hub. */
  readonly height: Length;
  /** Straight sides in contact with the hub: without round ends. */
  readonly length: Length;
  readonly steel: ShaftSteel;
  /** How many keys share the torque, default 1. Two share it as 1.5 of one. */
  readonly count?: 1 | 2;
}

/** What the key is asked to bear. */
export interface KeyLoad {
  readonly torque: TorqueGiven;
  /** DIAMETER of the shaft at the key; at a taper, half-way along. */
  readonly diameter: LengthGiven;
  /** Depth of the shaft's seat at its SIDE: after a cut that of `keyseatAfterCut`. Default half of the key. */
  readonly seatDepth?: Length;
  readonly shaftSteel: ShaftSteel;
  readonly hub: Material;
  readonly demanded: number;
}

/** One way in which a key joint may give. */
export interface KeyCheck {
  readonly what:
    | "shear of the key"
    | "side of the shaft's seat"
    | "side of the hub's keyway"
    | "side of the key";
  readonly stress: Pressure;
  readonly strength: Pressure;
  readonly basis: string;
  readonly factor: SafetyFactor;
}

/** A key judged. */
export interface KeyStrength {
  readonly kind: "key strength";
  readonly key: KeyInSeats;
  readonly hub: string;
  readonly diameter: Measured<Length>;
  readonly torque: Measured<Torque>;
  readonly seatDepth: Length;
  /** Depth of the key in the hub. */
  readonly hubDepth: Length;
  /** Force on the side of the key. */
  readonly force: Measured<Force>;
  readonly demanded: number;
  readonly checks: readonly KeyCheck[];
  readonly weakest: KeyCheck["what"];
  readonly verdict: SafetyVerdict;
  readonly warnings: readonly string[];
}

/** Shear yield over tension yield, distortion energy [-]. */
const shearShare = 1 / Math.sqrt(3);
/** A grey iron face may be pressed to this share of its compressive strength; it has no yield point [-]. */
const ironShare = 0.5;

/**
 * Whether a key bears its torque: sheared across, and pressed on the sides of the shaft's seat, of the hub's keyway and
 * of the key itself, each with its factor of safety and the chance that it is below what is demanded.
 *
 * F = 2T/d; shear F/(w l) against S_y/√3; sides F/(l h_s) and F/(l (h − h_s)) against the yield of the softer; grey iron
 * against half its compressive strength
 *
 * Valid when: the torque is steady; for one that reverses or jolts demand more (2.5 and up: common practice, no source).
 * The key fits on both sides. What a tight hub or a taper carries by friction is not counted, which is the safe side. Two
 * keys are counted as 1.5 (common practice, no source).
 *
 * @param key   form, width, height, length of straight side [m], steel, count
 * @param load  torque [N·m], DIAMETER [m], depth of the seat at its side [m], metals, demanded factor [-]
 * @returns the checks with stresses [Pa] and factors [-], the weakest, the verdict
 * @throws RangeError  impossible sizes; a seat as deep as the key is high; a hub metal without strength
 * @throws TypeError   a value is missing or of another kind
 * @example
 * const steel = shaftSteel({ name: "1020 cold drawn", tensile: ksi(78), yield: ksi(65), basis: "example" });
 * const key = { form: "square", width: inch(0.375), height: inch(0.375), length: inch(1.34), steel: steel };
 * const load = { torque: lbfInch(4200), diameter: inch(1.4375), shaftSteel: steel, hub: material("steel 4140"), demanded: 2.8 };
 * keyStrength(key, load).weakest // "side of the hub's keyway": annealed 4140 yields at 60 ksi
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, section 7-7, example 7-6 (from memory); taper key
 * 1:96 and 1:100: ASME B17.1, ISO 774
 */
export function keyStrength(key: KeyInSeats, load: KeyLoad): KeyStrength {
  const where = "keyStrength";
  checkKey(where, key);
  const { width, height, length } = key;
  const torque = givenValue(where, "torque", load.torque, "torque or energy", "more than 0");
  const diameter = givenValue(where, "diameter", load.diameter, "length", "more than 0");
  if (load.shaftSteel?.kind !== "shaft steel")
    throw new TypeError(
      `${where}: shaftSteel must be a shaft steel, or a bound chosen by name: assumedSteel("mild steel of the period"); got ${String(load.shaftSteel)}`,
    );
  if (load.hub?.kind !== "material")
    throw new TypeError(
      `${where}: hub must be a metal of the handbook, e.g. material("grey iron class 20"), got ${String(load.hub)}`,
    );
  if (!(load.demanded > 0 && load.demanded < 100))
    throw new RangeError(
      `${where}: demanded must be the least factor of safety, e.g. 2, got ${String(load.demanded)}`,
    );
  const seatDepth = load.seatDepth ?? height.over(2);
  if (!isQuantity(seatDepth, "length") || !(seatDepth.si > 0))
    throw new RangeError(
      `${where}: seatDepth must be more than 0, got ${String(load.seatDepth)}; without a seat there is no key`,
    );
  if (seatDepth.si >= height.si)
    throw new RangeError(
      `${where}: the seat must be less deep than the key is high (${height}), got ${seatDepth}: nothing is left in the hub`,
    );
  if (width.si >= diameter.si)
    throw new RangeError(
      `${where}: width must be smaller than the diameter (${diameter.measured.value}), got ${width}`,
    );
  const shares = key.count === 2 ? 1.5 : 1;
  const hubDepth = height.minus(seatDepth);
  const inch = systemOf(diameter.measured.value.writtenIn ?? "mm") === "inch";
  const hub = hubStrength(where, load.hub, inch);
  const areas = { shear: width.si * length.si, seat: seatDepth.si * length.si, hub: hubDepth.si * length.si };
  const check = (
    what: KeyCheck["what"],
    area: number,
    strength: Measured<Pressure>,
    basis: string,
    share = 1,
  ): KeyCheck => {
    const inputs: Readonly<Record<"torque" | "diameter" | "strength", CarriedInput>> = {
      torque,
      diameter,
      strength: { input: strength, si: strength.value.si, u: strength.standardUncertainty.si },
    };
    const log = carriedThrough(
      (n) => Math.log((share * n.strength * area * shares * n.diameter) / (2 * n.torque)),
      inputs,
    );
    return Object.freeze<KeyCheck>({
      what,
      stress: pressure((2 * torque.si) / (diameter.si * area * shares), inch),
      strength: pressure(share * strength.value.si, inch),
      basis,
      factor: factorOf(log, load.demanded),
    });
  };
  const keyYield = key.steel.yield;
  const checks: readonly KeyCheck[] = Object.freeze([
    check("shear of the key", areas.shear, keyYield, `yield of ${key.steel.name} over √3`, shearShare),
    check("side of the shaft's seat", areas.seat, load.shaftSteel.yield, `yield of ${load.shaftSteel.name}`),
    check("side of the hub's keyway", areas.hub, hub.strength, hub.basis),
    check("side of the key", Math.min(areas.seat, areas.hub), keyYield, `yield of ${key.steel.name}`),
  ]);
  const weakest = checks.reduce((worst, next) =>
    next.factor.factor.value < worst.factor.factor.value ? next : worst,
  );
  const force: Uncertain<"number"> = carriedThrough((n) => (2 * n.torque) / n.diameter, { torque, diameter });
  return Object.freeze<KeyStrength>({
    kind: "key strength",
    key: Object.freeze({ ...key }),
    hub: load.hub.name,
    diameter: diameter.measured,
    torque: torque.measured,
    seatDepth,
    hubDepth,
    force: measured(forceOf(force.value, inch), forceOf(force.standardUncertainty, inch)),
    demanded: load.demanded,
    checks,
    weakest: weakest.what,
    verdict: checks.some(({ factor }) => factor.high < load.demanded)
      ? "does not hold"
      : checks.every(({ factor }) => factor.low >= load.demanded)
        ? "holds"
        : "cannot tell yet",
    warnings: Object.freeze(warningsOf(key, diameter.measured.value, hubDepth, seatDepth)),
  });
}

function checkKey(where: string, key: KeyInSeats): void {
  const forms: readonly KeyForm[] = ["square", "rectangular", "taper", "gib-head taper"];
  if (!forms.includes(key?.form))
    throw new TypeError(
      `${where}: form must be one of ${forms.map((f) => `"${f}"`).join(", ")}, got ${JSON.stringify(key?.form)}`,
    );
  for (const field of ["width", "height", "length"] as const) {
    const value = key[field];
    if (!isQuantity(value, "length") || !(value.si > 0))
      throw new TypeError(`${where}: ${field} of the key must be a length above 0, got ${String(value)}`);
  }
  if (key.steel?.kind !== "shaft steel")
    throw new TypeError(
      `${where}: steel of the key must be a shaft steel, or a bound chosen by name: assumedSteel("mild steel of the period"); got ${String(key.steel)}`,
    );
  if (![undefined, 1, 2].includes(key.count))
    throw new RangeError(`${where}: count must be 1 or 2, got ${String(key.count)}`);
  if (key.form === "square" && Math.abs(key.width.si / key.height.si - 1) > 0.02)
    throw new RangeError(
      `${where}: a square key is as high as it is wide (${key.width}), got ${key.height}; take form "rectangular"`,
    );
}

function hubStrength(
  where: string,
  hub: Material,
  inch: boolean,
): { readonly strength: Measured<Pressure>; readonly basis: string } {
  if (hub.yield !== undefined)
    return {
      strength: measured(hub.yield.low, pressure(0, inch)),
      basis: `yield of ${hub.name}`,
    };
  if (hub.compressive !== undefined)
    return {
      strength: measured(hub.compressive.low.times(ironShare), pressure(0, inch)),
      basis: `half the compressive strength of ${hub.name}, which has no yield point (common practice, no source)`,
    };
  throw new RangeError(`${where}: the handbook gives no yield or compressive strength for ${hub.name}`);
}

function warningsOf(key: KeyInSeats, diameter: Length, hubDepth: Length, seatDepth: Length): string[] {
  const warnings: string[] = [];
  if (key.length.si > 1.5 * diameter.si)
    warnings.push(
      "The key is longer than 1.5 diameters: shaft and hub twist apart along it, so that one end carries most (Shigley, section 7-7).",
    );
  if (key.form === "taper" || key.form === "gib-head taper")
    warnings.push(
      "A taper key is judged by its sides, as if it were not driven tight. Driving it tight pulls the hub to one side: a wheel that must run true wants a parallel key.",
    );
  if (key.form === "gib-head taper")
    warnings.push("A gib head on a turning shaft catches sleeves: guard it.");
  if (Math.min(hubDepth.si, seatDepth.si) < 0.3 * key.height.si)
    warnings.push(
      "The key bears on less than a third of its height on one side and will roll: a stepped key, or a deeper seat.",
    );
  return warnings;
}

function pressure(si: number, inch: boolean): Pressure {
  return quantityFromSi("pressure", si, inch ? "ksi" : "megapascal");
}

function forceOf(si: number, inch: boolean): Force {
  return quantityFromSi("force", si, inch ? "lbf" : "newton");
}
