import type { ShaftDuty, ShaftPlace, ShaftSafety, ShaftStrength } from "./safety-types.js";
import { safetyOf } from "./shaft-safety.js";

/**
 * The strength of a shaft at the places where it may break, each as by `shaftSafety`, with the weakest named.
 *
 * Valid when: every place that matters is in the list: keyseats, steps, ends of hubs and tapers, worn journals, and the
 * place of the largest moment. The verdict is that of the worst place.
 *
 * @param places  the places [m, N·m], at least one, each with a name of its own
 * @param duty    what holds for the whole shaft
 * @returns each place with its factors [-]; the weakest by name; the verdict
 * @throws RangeError  no place, or two of one name; and as `shaftSafety`, naming the place
 * @example
 * const duty = { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 2 };
 * const load = { moment: lbfInch(4000), torque: lbfInch(6875), diameter: inch(2.4375) };
 * const seat = { name: "keyseat", ...load, feature: { shape: "keyseat", ends: "end-milled", corner: inch(1 / 32) } };
 * weakestPlace([{ name: "journal", ...load, feature: { shape: "plain" } }, seat], duty).weakest // "keyseat"
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, section 7-4
 */
export function weakestPlace(places: readonly ShaftPlace[], duty: ShaftDuty): ShaftStrength {
  const where = "weakestPlace";
  if (!Array.isArray(places) || places.length === 0)
    throw new RangeError(
      `${where}: at least one place must be given: a keyseat, a step, the end of a hub, a journal; got none`,
    );
  const names = places.map((place) => place?.name);
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (twice !== undefined)
    throw new RangeError(`${where}: each place must have a name of its own, got two called ${twice}`);
  const judged = places.map((place) => safetyOf(where, place, duty));
  const weakest = judged.reduce((worst, next) => (isWeaker(next, worst) ? next : worst));
  return Object.freeze<ShaftStrength>({
    kind: "shaft strength",
    places: Object.freeze(judged),
    weakest: weakest.name,
    verdict: judged.some(({ verdict }) => verdict === "does not hold")
      ? "does not hold"
      : judged.some(({ verdict }) => verdict === "cannot tell yet")
        ? "cannot tell yet"
        : "holds",
    demanded: duty.demanded,
    criterion: duty.criterion ?? "Goodman",
    steel: duty.steel,
    warnings: Object.freeze([...new Set(judged.flatMap(({ warnings }) => warnings))]),
  });
}

function isWeaker(a: ShaftSafety, b: ShaftSafety): boolean {
  const [chanceA, chanceB] = [a[a.governing].chanceBelow, b[b.governing].chanceBelow];
  // Chances of far places are both as good as 0 or 1: then the factor decides.
  if (Math.abs(chanceA - chanceB) > 1e-9) return chanceA > chanceB;
  return a[a.governing].factor.value < b[b.governing].factor.value;
}
