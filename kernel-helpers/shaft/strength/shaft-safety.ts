import {
  type Measured,
  measured,
  type Pressure,
  type Quantity,
  quantityFromSi,
  systemOf,
} from "../../quantity/index.js";
import { normalCdf, type Uncertain } from "../../statistics/index.js";
import { type CarriedInput, carriedThrough } from "./carried-through.js";
import { type EnduranceConditions, enduranceLimit } from "./endurance-limit.js";
import { fatigueFactors } from "./fatigue-factors.js";
import { type GivenValue, givenValue } from "./given-values.js";
import {
  type NotchNumbers,
  notchNumbers,
  type SafetyNumbers,
  type SafetyOfNumbers,
  safetyOfNumbers,
} from "./safety-numbers.js";
import type { SafetyFactor, SafetyVerdict, ShaftDuty, ShaftPlace, ShaftSafety } from "./safety-types.js";

/** 97.5 % of the standard normal distribution. */
const z95 = 1.959964;

type Inputs = Readonly<Record<keyof SafetyNumbers, CarriedInput>>;

/** A place with its inputs read and checked, ready to be evaluated. */
export interface PreparedPlace {
  readonly place: ShaftPlace;
  readonly diameter: GivenValue<"length">;
  readonly bore: GivenValue<"length"> | undefined;
  readonly moment: GivenValue<"torque or energy">;
  readonly steadyMoment: GivenValue<"torque or energy"> | undefined;
  readonly torque: GivenValue<"torque or energy">;
  readonly torqueSwing: GivenValue<"torque or energy"> | undefined;
  readonly inputs: Inputs;
  readonly numbers: SafetyNumbers;
  readonly evaluate: (numbers: SafetyNumbers) => SafetyOfNumbers;
}

/**
 * Whether a turning shaft bears its load at one place: factors of safety against fatigue and against yielding, each with
 * its standard uncertainty and the chance that it is below what is demanded.
 *
 * Distortion energy: σ_a, σ_m as of `safetyOfNumbers`; fatigue by Goodman unless another criterion is named; yielding
 * S_y/σ_max without stress concentration, of the section that the feature leaves. The factor is taken as
 * lognormal: chance below = Φ((ln demanded − ln n)/u(ln n)).
 *
 * Valid when: long life (more than a million turns: half a year at some rpm), round section, ductile steel, no crack, no
 * rust pits, dry. The uncertainty carries moment, torque, diameter and bore as given, the scatter of the endurance limit
 * (14 % with the steel known by its tensile strength alone), of the surface and of the stress concentration. It does not
 * carry a load nobody thought of: that is what the factor demanded is for. With a reliability the limit is lowered
 * instead, and the steel's scatter not counted again.
 *
 * @param place  diameter, bore [m]; moment, steady moment, torque, its swing [N·m], resultants, ≥ 0; feature
 * @param duty   steel; surface; demanded [-], > 0; criterion, temperature, reliability [-]
 * @returns stresses [Pa], factors [-] with uncertainty, verdict at 95 %
 * @throws TypeError   a value is missing or of another kind
 * @throws RangeError  nothing loads the place, the bore leaves no wall, the feature is impossible or out of range
 * @example
 * const steel = shaftSteel({ name: "1050 annealed and tempered", tensile: ksi(105), yield: ksi(82), basis: "certificate" });
 * const feature = { shape: "shoulder", larger: inch(1.65), fillet: inch(0.11) };
 * const place = { name: "shoulder", diameter: inch(1.1), moment: lbfInch(1260), torque: lbfInch(1100), feature };
 * const duty = { steel: steel, surface: "machined", demanded: 1.5, reliability: 0.99 };
 * shaftSafety(place, duty).fatigue.factor.value // 1.58
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, section 7-4 (equations 7-5 to 7-16; example 7-1);
 * lognormal factor: section 6-17; uncertainty: JCGM 100:2008, 5.1
 */
export function shaftSafety(place: ShaftPlace, duty: ShaftDuty): ShaftSafety {
  return safetyOf("shaftSafety", place, duty);
}

/** The same, under the name of the helper that was called. */
export function safetyOf(where: string, place: ShaftPlace, duty: ShaftDuty): ShaftSafety {
  const prepared = preparePlace(where, place, duty);
  const { diameter, inputs, evaluate } = prepared;
  const criterion = duty.criterion ?? "Goodman";
  const conditions: EnduranceConditions = {
    diameter: diameter.measured.value,
    surface: place.surface ?? duty.surface,
    ...(duty.temperature === undefined ? {} : { temperature: duty.temperature }),
    ...(duty.reliability === undefined ? {} : { reliability: duty.reliability }),
  };
  const tensile = duty.steel.tensile.value;
  const factors = fatigueFactors(place.feature, diameter.measured.value, tensile);
  const carried = (of: keyof SafetyOfNumbers): Uncertain<"number"> =>
    carriedThrough((numbers) => Math.log(evaluate(numbers)[of]), inputs);
  const inch = systemOf(diameter.measured.value.writtenIn ?? "mm") === "inch";
  const stress = (of: "alternating" | "mean" | "largest"): Measured<Pressure> => {
    // A stress that is not there has no logarithm.
    if (evaluate(prepared.numbers)[of] === 0) return measured(pressure(0, inch), pressure(0, inch));
    const log = carried(of);
    const value = Math.exp(log.value);
    return measured(pressure(value, inch), pressure(value * log.standardUncertainty, inch));
  };
  const [fatigue, yielding] = [
    factorOf(carried("fatigue"), duty.demanded),
    factorOf(carried("yielding"), duty.demanded),
  ];
  const governing = governs(fatigue, yielding);
  return Object.freeze<ShaftSafety>({
    kind: "shaft safety",
    name: place.name,
    station: place.station,
    diameter: diameter.measured,
    bore: prepared.bore?.measured,
    moment: prepared.moment.measured,
    steadyMoment: prepared.steadyMoment?.measured,
    torque: prepared.torque.measured,
    torqueSwing: prepared.torqueSwing?.measured,
    stress: Object.freeze({
      alternating: stress("alternating"),
      mean: stress("mean"),
      largest: stress("largest"),
    }),
    factors,
    endurance: enduranceLimit(tensile, conditions),
    steel: duty.steel,
    criterion,
    demanded: duty.demanded,
    reliability: duty.reliability ?? 0.5,
    fatigue,
    yielding,
    governing,
    verdict: verdictOf(fatigue, yielding, duty.demanded),
    warnings: Object.freeze(warningsOf(place, duty, factors.concentration.warnings)),
  });
}

/** Reads and checks a place and what holds for the shaft. */
export function preparePlace(where: string, place: ShaftPlace, duty: ShaftDuty): PreparedPlace {
  if (typeof place?.name !== "string" || place.name.trim() === "")
    throw new TypeError(`${where}: each place must have a name, got ${JSON.stringify(place?.name)}`);
  const at = `${where}: ${place.name}`;
  if (duty?.steel?.kind !== "shaft steel")
    throw new TypeError(
      `${where}: duty.steel must be a shaft steel: shaftSteel(material("steel 1040")), steelOfHardness(...), or, where nobody knows, a bound chosen by name: assumedSteel("mild steel of the period"); got ${String(duty?.steel)}`,
    );
  if (typeof duty.demanded !== "number" || !(duty.demanded > 0 && duty.demanded < 100))
    throw new RangeError(
      `${where}: demanded must be the least factor of safety, more than 0, e.g. 2; got ${String(duty.demanded)}`,
    );
  const diameter = givenValue(at, "diameter", place.diameter, "length", "more than 0");
  const bore =
    place.bore === undefined ? undefined : givenValue(at, "bore", place.bore, "length", "0 or more");
  if (bore !== undefined && bore.si >= diameter.si)
    throw new RangeError(
      `${at}: bore must be smaller than the diameter (${diameter.measured.value}), got ${bore.measured.value}`,
    );
  const load = (field: "moment" | "steadyMoment" | "torque" | "torqueSwing") =>
    givenValue(at, field, place[field], "torque or energy", "0 or more");
  const [moment, torque] = [load("moment"), load("torque")];
  const steadyMoment = place.steadyMoment === undefined ? undefined : load("steadyMoment");
  const torqueSwing = place.torqueSwing === undefined ? undefined : load("torqueSwing");
  if (moment.si + torque.si + (steadyMoment?.si ?? 0) + (torqueSwing?.si ?? 0) === 0)
    throw new RangeError(
      `${at}: nothing loads this place: moment and torque are both 0. Fill in the load case, or leave the place out`,
    );
  const { tensile, yield: gives } = duty.steel;
  const criterion = duty.criterion ?? "Goodman";
  const surface = place.surface ?? duty.surface;
  const conditions = { ...duty, surface, criterion };
  const limit = enduranceLimit(tensile.value, { ...conditions, diameter: diameter.measured.value });
  const { relativeUncertainty } = fatigueFactors(
    place.feature,
    diameter.measured.value,
    tensile.value,
  ).concentration;
  const inputs: Inputs = {
    diameter,
    bore: bore ?? nothing,
    moment,
    steadyMoment: steadyMoment ?? nothing,
    torque,
    torqueSwing: torqueSwing ?? nothing,
    tensile: strength(tensile),
    yield: strength(gives),
    notch: about1(relativeUncertainty),
    endurance: about1(limit.relativeUncertainty),
  };
  const numbers = Object.fromEntries(
    Object.entries(inputs).map(([name, { si }]) => [name, si]),
  ) as unknown as SafetyNumbers;
  let known: NotchNumbers | undefined;
  return {
    place,
    diameter,
    bore,
    moment,
    steadyMoment,
    torque,
    torqueSwing,
    inputs,
    numbers,
    evaluate: (given) => {
      if (known?.diameter !== given.diameter || known.tensile !== given.tensile)
        known = notchNumbers(place.feature, given.diameter, given.tensile, conditions);
      return safetyOfNumbers(given, place.feature, conditions, known);
    },
  };
}

const nothing: CarriedInput = { input: 0, si: 0, u: 0 };

function about1(u: number): CarriedInput {
  return { input: measured(1, u), si: 1, u };
}

function strength(of: Measured<Pressure>): CarriedInput {
  return { input: of, si: of.value.si, u: of.standardUncertainty.si };
}

/** What the sources are called in a result. */
const sourceWords: Readonly<Record<string, string>> = {
  moment: "bending moment",
  steadyMoment: "steady bending moment",
  torqueSwing: "swing of the torque",
  tensile: "tensile strength",
  yield: "yield strength",
  notch: "stress concentration",
  endurance: "endurance limit",
};

/** The factor whose logarithm this is. */
export function factorOf(log: Uncertain<"number">, demanded: number): SafetyFactor {
  const [value, u] = [log.value, log.standardUncertainty];
  const n = Math.exp(value);
  const off = Math.log(demanded) - value;
  return Object.freeze<SafetyFactor>({
    factor: measured(n, n * u, log.degreesOfFreedom),
    low: n * Math.exp(-z95 * u),
    high: n * Math.exp(z95 * u),
    chanceBelow: u === 0 ? (off > 0 ? 1 : 0) : normalCdf(off / u),
    shares: Object.freeze(
      log.sources
        .map(({ source, share }) => Object.freeze({ source: sourceWords[source.name] ?? source.name, share }))
        .sort((a, b) => b.share - a.share),
    ),
  });
}

function governs(fatigue: SafetyFactor, yielding: SafetyFactor): "fatigue" | "yielding" {
  const [f, y] = [fatigue.chanceBelow, yielding.chanceBelow];
  if (f !== y) return f > y ? "fatigue" : "yielding";
  return fatigue.factor.value <= yielding.factor.value ? "fatigue" : "yielding";
}

function verdictOf(fatigue: SafetyFactor, yielding: SafetyFactor, demanded: number): SafetyVerdict {
  if (fatigue.low >= demanded && yielding.low >= demanded) return "holds";
  return fatigue.high < demanded || yielding.high < demanded ? "does not hold" : "cannot tell yet";
}

function warningsOf({ feature }: ShaftPlace, duty: ShaftDuty, more: readonly string[]): string[] {
  const warnings = [...more];
  if (duty.steel.assumed)
    warnings.push(
      `Nobody has tested this steel: ${duty.steel.name} is assumed. A hardness reading on the shaft would tell.`,
    );
  if (feature.shape === "keyseat")
    warnings.push(
      "The keyseat is taken without a hub clamped on it; where a hub is tight on the key, the place where it begins is a place of its own (keyed hub).",
    );
  return warnings;
}

function pressure(si: number, inch: boolean): Quantity<"pressure"> {
  return quantityFromSi("pressure", si, inch ? "ksi" : "megapascal");
}
