import {
  type AnyQuantity,
  isQuantity,
  type Measured,
  measured,
  quantityFromSi,
  systemOf,
} from "../../quantity/index.js";
import type { CarriedNumber } from "../carried/carried-input.js";
import { carry } from "../carried/carry.js";
import { bearingPressure, type SafetyFactor, type SafetyVerdict } from "../strength/index.js";
import { caseNumbers } from "./case-numbers.js";
import type {
  ComparedFigure,
  ComparedMeasure,
  ComparedValue,
  CompareShaftsInput,
  ShaftsCompared,
} from "./compare-types.js";
import { type ReckonedState, stateReckoner } from "./reckon-state.js";
import { shaftLoads } from "./shaft-loads.js";

/**
 * A shaft before and after a cut, side by side: shear, moment, deflection, slope in its boxes, load and pressure of
 * these, critical speeds, factors of safety, keys; each with its uncertainty, its change, and its limit.
 *
 * Both states are solved for the same loads, and again with each uncertain input one standard uncertainty up and down,
 * so that a change of one in a thousand is seen though the loads are known to a tenth only.
 *
 * change = after/before − 1
 *
 * Valid when: see `shaftBending`, `criticalSpeeds`, `shaftLoads`. The boxes hold the shaft in their middle and let it
 * lean; a long box holds it straighter, and bears on its ends instead.
 *
 * @param input.shaft   the load case
 * @param input.before  stretches of the whole shaft: DIAMETERS [m]
 * @param input.after   likewise
 * @param input.material  of the handbook, or modulus [Pa] and density [kg/m³]
 * @param input.speed   > 0 [rad/s]
 * @param input.slopeAllowed  above 0, below 0.1; default 0.001 [-]
 * @param input.keepAway  above 0, below 1; default 0.2 [-]
 * @param input.modes  1 or more; default 3
 * @returns figures [N·m, N, m, -, Pa, rad/s] with standard uncertainties, changes [-], verdicts at 95 %
 * @throws TypeError   something is no quantity of its kind; no material
 * @throws RangeError  as its parts; the strengths are not of the same places
 * @example
 * const belt = beltPulls({ power: hp(5), speed: rpm(110), diameter: inch(30), wrap: degree(170), friction: { low: 0.3, high: 0.3 }, towards: degree(270) });
 * const box = (name, from) => ({ name: name, from: inch(from), to: inch(from + 8) });
 * const duty = { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 1.5 };
 * const wheels = [{ name: "pulley", station: inch(29), mass: pound(60), belt: belt }];
 * const shaft = { loadCase: "5 hp", boxes: [box("near box", 5), box("far box", 45)], wheels: wheels, seats: [], duty: duty };
 * const bar = [{ from: inch(0), to: inch(58), diameter: inch(2.4375) }];
 * const cut = turnedDown(bar, { from: inch(5), to: inch(13), diameter: inch(2.4) });
 * const compared = compareShafts({ shaft: shaft, before: bar, after: cut, material: material("steel") });
 * compared.figures.find(({ name }) => name === "largest moment").after.value.value.in("lbfInch").toFixed(0) // "5382"
 * @source slope in sleeve bearings below 0.001: common practice, no source; distance from a whirl: likewise
 */
export function compareShafts(input: CompareShaftsInput): ShaftsCompared {
  const where = "compareShafts";
  const { shaft, speed, slopeAllowed = 0.001, keepAway = 0.2, modes = 3, bearing, strength } = input;
  if (!(slopeAllowed > 0 && slopeAllowed < 0.1))
    throw new RangeError(`${where}: slopeAllowed must lie between 0 and 0.1, got ${String(slopeAllowed)}`);
  if (!(keepAway > 0 && keepAway < 1))
    throw new RangeError(`${where}: keepAway must lie between 0 and 1, got ${String(keepAway)}`);
  if (!(Number.isInteger(modes) && modes >= 1))
    throw new RangeError(`${where}: modes must be a whole number from 1, got ${String(modes)}`);
  if (speed !== undefined && !(isQuantity(speed, "rotational speed") && speed.si > 0))
    throw new RangeError(`${where}: speed must be more than 0, got ${String(speed)}`);
  const imperial = systemOf(shaft.boxes[0]?.from.writtenIn ?? "mm") === "inch";
  const numbers = caseNumbers(where, shaft);
  const states = [input.before, input.after].map((stretches) =>
    stateReckoner(where, shaft, stretches, input.material, { modes, speed: speed?.si }),
  ) as [ReckonedState, ReckonedState];
  const [before, after] = states;

  // One number for what both share: load case, modulus, diameters of the stretches that are the same.
  const diameters = [...new Set(states.flatMap((state) => state.diameters))];
  const loose: CarriedNumber[] = [
    ...numbers.inputs.map(({ name, estimate, u }) => ({
      name,
      si: estimate,
      u,
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      unit: undefined,
    })),
    before.modulus,
    ...diameters.map((one, i) => ({ ...plainOf(one), name: `diameter ${i}` })),
  ];
  const cases = numbers.inputs.length;
  const figures = (values: readonly number[]): readonly number[] => {
    const factors = Object.fromEntries(numbers.inputs.map(({ name }, i) => [name, values[i]!]));
    const sized = new Map(diameters.map((one, i) => [one, values[cases + 1 + i]!]));
    const [b, a] = states.map((state) =>
      state.reckon(numbers.wheels(factors), values[cases]!, (one) => sized.get(one)!),
    );
    return [...b!, ...a!, ...a!.map((x, i) => x / b![i]! - 1)];
  };
  const found = carry(figures, loose);
  const { names } = before;
  const count = names.length;

  const pressures =
    bearing === undefined
      ? undefined
      : shaft.boxes.map(({ from, to }, i) =>
          bearingPressure({
            diameter: quantityFromSi(
              "length",
              after.diameterAt((from.si + to.si) / 2),
              imperial ? "inch" : "mm",
            ),
            length: to.minus(from),
            force: shaftLoads(shaft).boxes[i]!.force,
            ...bearing,
          }),
        );
  const limitOf = (measure: ComparedMeasure, box: number): ComparedFigure["limit"] => {
    if (measure === "slope") return { value: slopeAllowed, side: "at most" };
    if (measure === "share") return { value: keepAway, side: "at least" };
    if (measure === "pressure") return { value: pressures![box]!.usual.high, side: "at most" };
    return undefined;
  };
  const rows = names.flatMap(({ name, measure, box }, i): ComparedFigure[] => {
    if (measure === "pressure" && bearing === undefined) return [];
    const limit = limitOf(measure, box);
    const value = (k: number): ComparedValue => {
      const [x, u] = [found.values[k]!, found.u[k]!];
      const [low, high] = [x - 2 * u, x + 2 * u];
      const shown = (si: number): AnyQuantity | number => shownAs(measure, si, imperial);
      return Object.freeze({
        value: measured(shown(x) as never, shown(u) as never, found.degreesOfFreedom[k]!) as Measured<
          AnyQuantity | number
        >,
        low,
        high,
        verdict: limit && verdictOf(low, high, Number(limit.value.valueOf()), limit.side),
      });
    };
    return [
      Object.freeze({
        name,
        measure,
        before: value(i),
        after: value(count + i),
        change: Object.freeze({
          value: found.values[2 * count + i]!,
          standardUncertainty: found.u[2 * count + i]!,
        }),
        limit: limit && Object.freeze(limit),
      }),
    ];
  });
  const all = [...rows, ...strengthRows(where, strength), ...keyRows(input.keys ?? [])];
  return Object.freeze<ShaftsCompared>({
    kind: "shafts compared",
    loadCase: shaft.loadCase,
    figures: Object.freeze(all),
    verdict: overall(all),
    warnings: Object.freeze([
      ...after.warnings,
      ...(speed === undefined
        ? ["No running speed was given: nothing tells how far from a critical speed it runs."]
        : []),
      ...(strength === undefined ? ["Without strength: factors of safety are not compared."] : []),
      ...(bearing === undefined ? ["Without bearing: pressure in the boxes is not compared."] : []),
    ]),
  });
}

function plainOf(one: ReckonedState["diameters"][number]): Omit<CarriedNumber, "name"> {
  return "standardUncertainty" in one
    ? {
        si: one.value.si,
        u: one.standardUncertainty.si,
        degreesOfFreedom: one.degreesOfFreedom,
        unit: one.value.writtenIn,
      }
    : { si: one.si, u: 0, degreesOfFreedom: Number.POSITIVE_INFINITY, unit: one.writtenIn };
}

function verdictOf(low: number, high: number, limit: number, side: "at most" | "at least"): SafetyVerdict {
  const [good, bad] = side === "at most" ? [high <= limit, low > limit] : [low >= limit, high < limit];
  return good ? "holds" : bad ? "does not hold" : "cannot tell yet";
}

function shownAs(measure: ComparedMeasure, si: number, imperial: boolean): AnyQuantity | number {
  switch (measure) {
    case "moment":
      return quantityFromSi("torque or energy", si, imperial ? "lbfInch" : "newtonMetre");
    case "force":
      return quantityFromSi("force", si, imperial ? "lbf" : "newton");
    case "deflection":
      return quantityFromSi("length", si, imperial ? "thou" : "micrometre");
    case "pressure":
      return quantityFromSi("pressure", si, imperial ? "psi" : "megapascal");
    case "speed":
      return quantityFromSi("rotational speed", si, "rpm");
    default:
      return si;
  }
}

function factorValue({ factor, low, high }: SafetyFactor, verdict: SafetyVerdict): ComparedValue {
  return Object.freeze({ value: factor, low, high, verdict });
}

function strengthRows(where: string, strength: CompareShaftsInput["strength"]): readonly ComparedFigure[] {
  if (strength === undefined) return [];
  const [before, after] = [strength.before.places, strength.after.places];
  if (before.map(({ name }) => name).join("\n") !== after.map(({ name }) => name).join("\n"))
    throw new RangeError(
      `${where}: strength must be of the same places before and after, got ${before.map(({ name }) => name).join(", ")} and ${after.map(({ name }) => name).join(", ")}`,
    );
  return after.map((place, i): ComparedFigure => {
    // The way in which it is nearest to giving after the cut.
    const way = place.governing;
    const [b, a] = [before[i]![way], place[way]];
    return Object.freeze({
      name: `factor against ${way}, ${place.name}`,
      measure: "factor",
      before: factorValue(b, factorVerdict(b, strength.after.demanded)),
      after: factorValue(a, factorVerdict(a, strength.after.demanded)),
      change: Object.freeze({ value: a.factor.value / b.factor.value - 1, standardUncertainty: undefined }),
      limit: Object.freeze({ value: strength.after.demanded, side: "at least" }),
    });
  });
}

function factorVerdict({ low, high }: SafetyFactor, demanded: number): SafetyVerdict {
  return verdictOf(low, high, demanded, "at least");
}

function keyRows(keys: NonNullable<CompareShaftsInput["keys"]>): readonly ComparedFigure[] {
  return keys.map(({ name, before, after }): ComparedFigure => {
    const of = (key: typeof before): SafetyFactor =>
      key.checks.find(({ what }) => what === after.weakest)!.factor;
    const [b, a] = [of(before), of(after)];
    return Object.freeze({
      name: `${name}, ${after.weakest}`,
      measure: "factor",
      before: factorValue(b, factorVerdict(b, after.demanded)),
      after: factorValue(a, factorVerdict(a, after.demanded)),
      change: Object.freeze({ value: a.factor.value / b.factor.value - 1, standardUncertainty: undefined }),
      limit: Object.freeze({ value: after.demanded, side: "at least" }),
    });
  });
}

function overall(figures: readonly ComparedFigure[]): ShaftsCompared["verdict"] {
  const broken = figures.filter(({ after }) => after.verdict === "does not hold");
  if (broken.some(({ before }) => before.verdict !== "does not hold")) return "the cut breaks a limit";
  if (broken.length > 0) return "broken as made";
  return figures.some(({ after }) => after.verdict === "cannot tell yet") ? "cannot tell yet" : "holds";
}
