import type { Babbitt } from "../../handbook/index.js";
import {
  type Angle,
  type AnyQuantity,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  systemOf,
} from "../../quantity/index.js";
import { chanceToClean } from "../clean-up/clean-up.js";
import type { JournalCleanUp } from "../clean-up/clean-up-journals.js";
import {
  type BearingService,
  bearingPressure,
  type CornerRadius,
  type ShaftPlace,
  type ShaftSteel,
} from "../strength/index.js";
import { type PreparedPlace, preparePlace } from "../strength/shaft-safety.js";
import { bendLimits, type WeighedBending } from "./bend-limits.js";
import { caseNumbers, powerName } from "./case-numbers.js";
import type { SalvageWay } from "./salvage-ways.js";
import type { ShaftCase } from "./shaft-case.js";
import { shaftLoads } from "./shaft-loads.js";
import type { TwoBoxes } from "./two-box-loads.js";
import { weighOptionsInSteps } from "./weigh-options.js";
import type {
  Assumption,
  OptionsWeighed,
  PlainNumbers,
  WeighedLimit,
  WeighingStep,
  WeighOptionsInput,
} from "./weigh-types.js";

/** A worn journal with the size it would be turned to. */
export interface JournalTurned {
  /** The name of its box in the load case. */
  readonly name: string;
  readonly found: JournalCleanUp;
  /** The finished DIAMETER, with what it is turned and measured to. */
  readonly finished: Measured<Length>;
}

export interface WeighShaftInput extends Pick<WeighOptionsInput, "chosen" | "wanted" | "draws" | "seed"> {
  readonly shaft: ShaftCase;
  readonly ways: readonly SalvageWay[];
  /** One for each box of the load case, in its order. */
  readonly journals: readonly JournalTurned[];
  /** What the journals were made to, on DIAMETER. */
  readonly asMade: Measured<Length>;
  /** The corner where the turned journal ends. */
  readonly fillet: CornerRadius;
  /** Of a new shaft; default the old one's. */
  readonly newSteel?: ShaftSteel;
  readonly metal: Babbitt;
  readonly service: BearingService;
  /** With it lean in the boxes and distance from whirls are limits too. */
  readonly bending?: WeighedBending;
  /** What else might be true, by the names of the inputs; "tensile strength" moves the yield point along. */
  readonly assumptions?: readonly Assumption[];
  /** What this gave for the same input without `assumptions`: those alone are then drawn. */
  readonly weighed?: OptionsWeighed;
}

const tensileName = "tensile strength";
const enduranceName = "endurance limit, off the rule by";
const leavesOf = (box: string): string => `what ${box} leaves`;
const sizeOf = (box: string): string => `size turned, ${box}`;
const notchOf = (place: string): string => `stress concentration, ${place}`;

/**
 * Every way to save the journals held against every limit at once, in shafts drawn from what is known.
 *
 * Limits: each journal cleans up (what it leaves less what it is turned to); at the end of each journal and at each
 * seat the lesser factor against fatigue and yielding is what is demanded; each box is pressed no harder than usual in
 * its service; with `bending`, the shaft leans in no box by more than allowed, and runs far enough from every whirl. The steel under a sleeve or a deposit carries, nothing that is put on. Of the two ends of a journal the
 * one with the larger moment is taken.
 *
 * Drawn anew in each shaft: power, tension of each belt, masses, what each journal leaves, sizes turned, tensile
 * strength (yield moves along), endurance limit and stress concentration about the published rule, modulus.
 *
 * Valid when: see `shaftLoads`, `shaftSafety`, `cleanUp`, `weighOptions`. What a journal leaves is drawn normal, with
 * median and spread of the least of all its stations.
 *
 * @param input.shaft     load case of two boxes, wheels and seats
 * @param input.ways      of `salvageWays`; the one to prefer first
 * @param input.journals  one for each box
 * @param input.asMade    > 0 [m]
 * @param input.fillet    [m], or "sharp corner"
 * @returns margins, chances [-], what flips the choice, what to measure
 * @throws RangeError  a journal is missing, a size leaves no step or no steel; and as its parts
 * @source see its parts
 */
export function weighShaft(input: WeighShaftInput): OptionsWeighed {
  const steps = weighShaftInSteps(input);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * As `weighShaft`, in steps: it rests after each block of shafts drawn and tells how far it is, so that a sheet may show
 * it: `await inSteps(weighShaftInSteps({ ... }))`.
 *
 * Valid when: as `weighShaft`, which gives the same to the last digit.
 *
 * @param input  as `weighShaft`
 * @returns steps { what, done, of } [-], and in the end what `weighShaft` returns
 * @throws RangeError  as `weighShaft`, at the first step
 * @source see `weighShaft`
 */
export function* weighShaftInSteps(input: WeighShaftInput): Generator<WeighingStep, OptionsWeighed> {
  const { shaft, ways, journals, asMade, fillet, metal, service, bending } = input;
  const where = "weighShaft";
  const numbers = caseNumbers(where, shaft);
  if (shaft.duty?.steel?.kind !== "shaft steel")
    throw new TypeError(
      `${where}: the steel of the shaft is missing in duty; where nobody knows it, choose a bound by name: assumedSteel("mild steel of the period")`,
    );
  const names = shaft.boxes.map(({ name }) => name);
  if (journals.length !== names.length || journals.some(({ name }, i) => name !== names[i]))
    throw new RangeError(
      `${where}: a journal must be given for each box, in their order (${names.join(", ")}), got ${journals.map(({ name }) => name).join(", ") || "none"}`,
    );
  for (const { name, finished } of journals)
    if (!(finished.value.si < asMade.value.si))
      throw new RangeError(
        `${where}: ${name} turned to ${finished.value} is not below what it was made to, ${asMade.value}`,
      );
  const ends = shaft.boxes.map(({ name, from, to }) => {
    const { momentAt } = numbers.carried({});
    const station = momentAt(from.si) >= momentAt(to.si) ? from : to;
    return { name: `end of ${name}`, box: name, station };
  });
  const loads = shaftLoads(shaft, ends);
  const loadOf = (name: string) => loads.places.find((place) => place.name === name)!;
  const steelOf = (way: SalvageWay): ShaftSteel =>
    way.undercut === undefined ? (input.newSteel ?? shaft.duty.steel) : shaft.duty.steel;

  const inputs: Record<string, Measured<AnyQuantity | number> | AnyQuantity | number> = {};
  for (const { name, estimate, u } of numbers.inputs)
    inputs[name] = estimate === 0 ? measured(degrees(0), degrees(u)) : about1(u);
  inputs[tensileName] = shaft.duty.steel.tensile;
  journals.forEach(({ name, found, finished }) => {
    inputs[leavesOf(name)] = leastLeft(found);
    inputs[sizeOf(name)] = finished;
  });

  // The steel that carries at each journal, on diameter, for a size as drawn.
  const carries = (way: SalvageWay, size: number): number =>
    way.undercut === undefined ? asMade.value.si : size - way.undercut.si;
  const prepared = new Map<string, PreparedPlace>();
  const place = (way: SalvageWay, of: ShaftPlace): PreparedPlace => {
    const made = preparePlace(`${where}: ${way.name}`, of, { ...shaft.duty, steel: steelOf(way) });
    prepared.set(`${way.name}\n${of.name}`, made);
    inputs[notchOf(of.name)] ??= about1(made.inputs.notch.u);
    inputs[enduranceName] ??= about1(made.inputs.endurance.u);
    return made;
  };
  const unit = systemOf(asMade.value.writtenIn ?? "mm") === "inch" ? "inch" : "mm";
  for (const way of ways) {
    ends.forEach(({ name, station }, i) => {
      const { moment, torque } = loadOf(name);
      const size = carries(way, journals[i]!.finished.value.si);
      if (!(size > 0))
        throw new RangeError(
          `${where}: ${way.at}: an undercut of ${way.undercut} leaves no steel in ${journals[i]!.name}`,
        );
      const feature =
        way.undercut === undefined
          ? ({ shape: "plain" } as const)
          : ({ shape: "shoulder", larger: asMade.value, fillet } as const);
      const diameter = quantityFromSi("length", size, unit);
      place(way, { name, station, diameter, moment: moment.value, torque: torque.value, feature });
    });
    for (const seat of shaft.seats) {
      const { moment, torque } = loadOf(seat.name);
      place(way, { ...seat, moment: moment.value, torque: torque.value });
    }
  }

  const byName = new Map(ways.map((way) => [way.name, way]));
  const perShaft = keptForOneShaft();
  const carriedIn = (x: PlainNumbers): TwoBoxes => perShaft(x, "carried", () => numbers.carried(x));
  const factor = (
    x: PlainNumbers,
    option: string,
    name: string,
    station: number,
    box: string | undefined,
  ): number => {
    const way = byName.get(option)!;
    const { evaluate, numbers: at } = prepared.get(`${option}\n${name}`)!;
    // A seat is as strong in every way of one steel, and so is a journal as made.
    const alike = box === undefined || way.undercut === undefined;
    const key = `${name}\n${alike ? (way.undercut === undefined ? "new steel" : "old steel") : option}`;
    return perShaft(x, key, () => {
      const stronger = x[tensileName]! / shaft.duty.steel.tensile.value.si;
      const found = evaluate({
        ...at,
        diameter: box === undefined ? at.diameter : carries(way, x[sizeOf(box)]!),
        moment: carriedIn(x).momentAt(station),
        torque: numbers.torqueAt(station, x[powerName]!),
        // A new shaft's steel is not what is drawn for the old one.
        tensile: way.undercut === undefined ? at.tensile : at.tensile * stronger,
        yield: way.undercut === undefined ? at.yield : at.yield * stronger,
        notch: x[notchOf(name)]!,
        endurance: x[enduranceName]!,
      });
      return Math.min(found.fatigue, found.yielding) - shaft.duty.demanded;
    });
  };
  const pressures = shaft.boxes.map((box, i) =>
    bearingPressure({
      diameter: asMade.value,
      length: box.to.minus(box.from),
      force: loads.boxes[i]!.force.value,
      metal,
      service,
    }),
  );
  const bent =
    bending === undefined
      ? undefined
      : bendLimits(
          where,
          shaft,
          ways,
          bending,
          numbers,
          {
            estimates: Object.fromEntries(
              journals.map(({ name, finished }) => [sizeOf(name), finished.value.si]),
            ),
            sizesOf: (way, x) => names.map((name) => carries(way, x[sizeOf(name)]!)),
          },
          perShaft,
        );
  Object.assign(inputs, bent?.inputs);
  const limits: WeighedLimit[] = [
    ...names.map(
      (name): WeighedLimit => ({
        name: `${name} cleans up`,
        kind: "length",
        unit: unit === "inch" ? "thou" : "micrometre",
        margin: (x, option) => {
          const way = byName.get(option)!;
          return way.undercut === undefined ? undefined : x[leavesOf(name)]! - carries(way, x[sizeOf(name)]!);
        },
      }),
    ),
    ...[
      ...ends.map(({ name, station, box }) => ({
        name,
        station: station.si,
        box: box as string | undefined,
      })),
      ...shaft.seats.map(({ name, station }) => ({ name, station: station.si, box: undefined })),
    ].map(
      ({ name, station, box }): WeighedLimit => ({
        name: `strength, ${name}`,
        kind: "number",
        margin: (x, option) => factor(x, option, name, station, box),
      }),
    ),
    ...pressures.map(
      ({ usual, length }, i): WeighedLimit => ({
        name: `pressure, ${names[i]}`,
        kind: "pressure",
        unit: unit === "inch" ? "psi" : "megapascal",
        margin: (x, option) => {
          const { onFirst, onSecond } = carriedIn(x);
          const on = i === 0 ? onFirst : onSecond;
          const way = byName.get(option)!;
          // What is put on brings the journal back to what it was made to.
          const size = way.undercut?.si === 0 ? x[sizeOf(names[i]!)]! : asMade.value.si;
          return usual.high.si - Math.hypot(on.x, on.y) / (size * length.si);
        },
      }),
    ),
    ...(bent?.limits ?? []),
  ];
  const { chosen, wanted, draws, seed, assumptions, weighed } = input;
  return yield* weighOptionsInSteps({
    inputs,
    options: ways.map(({ name }) => name),
    limits,
    seed,
    ...(chosen === undefined ? {} : { chosen }),
    ...(wanted === undefined ? {} : { wanted }),
    ...(draws === undefined ? {} : { draws }),
    ...(assumptions === undefined ? {} : { assumptions }),
    ...(weighed === undefined ? {} : { weighed }),
  });
}

function degrees(si: number): Angle {
  return quantityFromSi("angle", si, "degree");
}

function about1(u: number): Measured<number> | number {
  return u > 0 ? measured(1, u) : 1;
}

/** Keeps what was worked out for one drawn shaft until the next one comes. */
function keptForOneShaft(): <V>(x: PlainNumbers, key: string, work: () => V) => V {
  let of: PlainNumbers | undefined;
  const kept = new Map<string, unknown>();
  return <V>(x: PlainNumbers, key: string, work: () => V): V => {
    if (x !== of) {
      of = x;
      kept.clear();
    }
    if (kept.has(key)) return kept.get(key) as V;
    const value = work();
    kept.set(key, value);
    return value;
  };
}

/** Median and spread of the least that any station leaves: the sizes that clean up with 50 % and with 84 %. */
function leastLeft({ cleanUp }: JournalCleanUp): Measured<Length> {
  const { value, standardUncertainty } = cleanUp.plan;
  const reach = 12 * standardUncertainty.si;
  const shown = (si: number): Length => quantityFromSi("length", si, value.writtenIn as never);
  const sizeWith = (chance: number): number => {
    let [clean, dirty] = [value.si - reach, value.si + reach];
    for (let i = 0; i < 60; i++) {
      const middle = (clean + dirty) / 2;
      if (chanceToClean(cleanUp, shown(middle)) >= chance) clean = middle;
      else dirty = middle;
    }
    return clean;
  };
  if (standardUncertainty.si === 0) return cleanUp.plan;
  const median = sizeWith(0.5);
  return measured(shown(median), shown(median - sizeWith(0.841344746)));
}
