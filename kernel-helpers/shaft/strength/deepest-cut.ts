import { type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";
import { normalQuantile } from "../../statistics/index.js";
import { carriedThrough } from "./carried-through.js";
import type { SafetyNumbers } from "./safety-numbers.js";
import type { ShaftDuty, ShaftPlace } from "./safety-types.js";
import { type PreparedPlace, preparePlace } from "./shaft-safety.js";

/** How far a place may be turned down before it no longer bears its load as demanded. */
export interface DeepestCut {
  readonly kind: "deepest cut";
  readonly name: string;
  /** DIAMETER it has now. */
  readonly diameter: Measured<Length>;
  readonly demanded: number;
  /** DIAMETER at which the factor is what is demanded, as likely above as below; undefined where even today's is too small or no cut comes to it. */
  readonly smallest: Measured<Length> | undefined;
  /** DIAMETER at which the chance to be below what is demanded is `risk`. */
  readonly sure: Length | undefined;
  /** The chance taken at `sure` [-]. */
  readonly risk: number;
  /** What may be turned off, ON DIAMETER, down to `sure`; 0 where nothing may. */
  readonly cut: Length;
  /** What decides. */
  readonly governing: "fatigue" | "yielding" | undefined;
  /** How the search ended, in words. */
  readonly ended:
    | "found"
    | "too small already"
    | "too small already to be sure"
    | "no limit down to where the published figures end";
  readonly warnings: readonly string[];
}

/** Cuts are tried down to this share of today's diameter. */
const leastShare = 0.25;
const steps = 300;

/**
 * The deepest cut that a place of a shaft still bears: the smallest diameter at which its factor of safety is what is
 * demanded, and the one at which that is sure but for a small chance.
 *
 * n(d) = demanded, by stepping down and bisection; u(d) = u(ln n)/(d ln n/dd), of all inputs but the diameter;
 * d_sure: ln n(d) = ln demanded + z u(ln n) for fatigue and yielding both, z of the risk
 *
 * Valid when: moment and torque stay as they are, and the cut leaves the feature in being: a shoulder's larger diameter
 * and fillet, a corner's radius. A keyseat must be cut as much deeper, which `keyseatAfterCut` tells.
 *
 * @param place  as it is or will be before the cut [m, N·m]
 * @param duty   steel, surface, demanded factor [-]
 * @param options.risk  chance to be below what is demanded at the sure diameter, 0.001 to 0.5, default 0.05 [-]
 * @returns diameters [m] and what decides
 * @throws RangeError  as `shaftSafety`; a risk out of range
 * @example
 * const duty = { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 2 };
 * const place = { name: "journal", diameter: mm(60), moment: newtonMetre(400), torque: newtonMetre(600), feature: { shape: "plain" } };
 * deepestCut(place, duty).smallest.value.in("mm") // 43.69
 * @source inverse of `shaftSafety`; uncertainty of a root: implicit derivative, JCGM 100:2008, 5.1.3
 */
export function deepestCut(
  place: ShaftPlace,
  duty: ShaftDuty,
  options: { readonly risk?: number } = {},
): DeepestCut {
  const where = "deepestCut";
  const { risk = 0.05 } = options;
  if (!(risk >= 0.001 && risk <= 0.5))
    throw new RangeError(`${where}: risk must be from 0.001 to 0.5, got ${String(risk)}`);
  const prepared = preparePlace(where, place, duty);
  const { diameter } = prepared;
  const today = diameter.si;
  const logs = marginOf(prepared, duty.demanded);
  const shown = (si: number): Length => quantityFromSi("length", si, diameter.measured.value.writtenIn);
  const made = (found: Pick<DeepestCut, "smallest" | "sure" | "governing" | "ended">): DeepestCut =>
    Object.freeze<DeepestCut>({
      kind: "deepest cut",
      name: place.name,
      diameter: diameter.measured,
      demanded: duty.demanded,
      risk,
      ...found,
      cut: shown(found.sure === undefined ? 0 : Math.max(0, today - found.sure.si)),
      warnings: Object.freeze(warningsOf(place)),
    });
  const z = normalQuantile(1 - risk);
  const plain = smallestWith(today, (d) => logs(d).margin, prepared);
  if (plain === "too small already")
    return made({
      smallest: undefined,
      sure: undefined,
      governing: logs(today).governing,
      ended: "too small already",
    });
  if (plain === "no limit")
    return made({
      smallest: undefined,
      sure: undefined,
      governing: undefined,
      ended: "no limit down to where the published figures end",
    });
  const { governing } = logs(plain);
  const u = uncertaintyAt(prepared, plain, governing);
  const smallest = measured(shown(plain), shown(u / slopeAt(logs, plain)));
  // Sure is what is sure against both ways of failing, each with its own uncertainty there.
  const surely = (d: number): number =>
    Math.min(
      ...(["fatigue", "yielding"] as const).map((of) => logs(d)[of] - z * uncertaintyAt(prepared, d, of)),
    );
  if (surely(today) < 0)
    return made({ smallest, sure: undefined, governing, ended: "too small already to be sure" });
  return made({ smallest, sure: shown(bisected(surely, plain, today)), governing, ended: "found" });
}

type Logs = (diameter: number) => {
  readonly fatigue: number;
  readonly yielding: number;
  readonly margin: number;
  readonly governing: "fatigue" | "yielding";
};

/** By how much the logarithms of the factors are above that of what is demanded, and the lesser of the two. */
function marginOf({ numbers, evaluate }: PreparedPlace, demanded: number): Logs {
  return (diameter) => {
    const found = evaluate({ ...numbers, diameter });
    const [fatigue, yielding] = [Math.log(found.fatigue / demanded), Math.log(found.yielding / demanded)];
    const governing = fatigue <= yielding ? "fatigue" : "yielding";
    return { fatigue, yielding, margin: Math.min(fatigue, yielding), governing };
  };
}

/** The smallest diameter below today's down to which the margin stays at 0 or above. */
function smallestWith(
  today: number,
  margin: (diameter: number) => number,
  { numbers }: PreparedPlace,
): number | "too small already" | "no limit" {
  if (margin(today) < 0) return "too small already";
  const least = Math.max(leastShare * today, numbers.bore * 1.0001);
  let good = today;
  for (let i = 1; i <= steps; i++) {
    const next = today - ((today - least) * i) / steps;
    const there = marginOrEnd(margin, next);
    if (there === undefined) return "no limit";
    if (there < 0) return bisected(margin, next, good);
    good = next;
  }
  return "no limit";
}

/** Undefined where the published figures end: a step that has grown too sharp for the charts. */
function marginOrEnd(margin: (diameter: number) => number, diameter: number): number | undefined {
  try {
    return margin(diameter);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function bisected(margin: (diameter: number) => number, low: number, high: number): number {
  let [bad, good] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = (bad + good) / 2;
    if (middle <= bad || middle >= good) break;
    if (margin(middle) < 0) bad = middle;
    else good = middle;
  }
  return good;
}

/** Standard uncertainty of ln n at a diameter that is chosen, not measured. */
function uncertaintyAt(
  { inputs, evaluate }: PreparedPlace,
  diameter: number,
  of: "fatigue" | "yielding",
): number {
  const chosen = { ...inputs, diameter: { input: diameter, si: diameter, u: 0 } };
  return carriedThrough((numbers: SafetyNumbers) => Math.log(evaluate(numbers)[of]), chosen)
    .standardUncertainty;
}

function slopeAt(logs: Logs, diameter: number): number {
  const step = 1e-4 * diameter;
  return (logs(diameter + step).margin - logs(diameter).margin) / step;
}

function warningsOf({ feature }: ShaftPlace): string[] {
  if (feature.shape === "keyseat" || feature.shape === "keyed hub")
    return [
      "A keyseat must be cut as much deeper as the shaft is turned down, or its key has less to bear on: see keyseatAfterCut.",
    ];
  return [];
}
