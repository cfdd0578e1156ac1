import { inch } from "../../kernel-helpers/quantity/index.js";
import {
  coverageFactor,
  type RandomGenerator,
  randomGenerator,
} from "../../kernel-helpers/statistics/index.js";
import {
  instrumentFrom,
  type Profile,
  profileOf,
  type WearBand,
  wearBands,
} from "../../kernel-helpers/survey/index.js";
import { type ShaftReading, shaftTable } from "../support/shaft-table.js";
import { syntheticShaft, type TrueBand } from "../support/synthetic-shaft.js";
import { type BandCase, type BandPromise, nominal } from "./band-cases.js";
import { spoilt } from "./gross-errors.js";
import { type StudyRow, Tally } from "./study-row.js";

/** Stated standard uncertainty of a reading [in]. */
const readingU = 0.00015;
const calibrationU = 0.0001;

const wished: Readonly<Record<BandPromise, { text: string; share: readonly [number, number] }>> = {
  "no false band": { text: "one band and no more", share: [0.95, 1] },
  number: { text: "number of bands exact", share: [0.97, 1] },
  "number not wrongly sure": {
    text: "no wrong number of bands told with 95 % or more",
    share: [0.95, 1],
  },
  edges: { text: "true edge found, in its gap between stations", share: [0.95, 1] },
  "edge interval": {
    text: "95 % interval of the edge holds it (surveys with the number exact)",
    share: [0.93, 0.97],
  },
  depth: { text: "95 % interval of the worn band's depth holds it", share: [0.93, 0.97] },
  "depth if number exact": {
    text: "95 % interval of the worn band's depth holds it (surveys with the number exact)",
    share: [0.93, 0.97],
  },
};

/** Surveys shafts of one kind again and again, and counts which promises were kept. */
export function bandStudy(of: BandCase, surveys: number, seed: number): readonly StudyRow[] {
  const random = randomGenerator(seed);
  const within = randomGenerator(seed + 1_000_000);
  const tallies = new Map(of.promises.map((promise) => [promise, new Tally()]));
  for (let i = 0; i < surveys; i++) {
    const bands = of.bands(random);
    judge(tallies, bands, profileOfShaft(of, bands, random), within);
  }
  return [...tallies].map(([promise, tally]) => ({
    shaft: of.shaft,
    promise: wished[promise].text,
    wished: of.notPromised?.includes(promise) === true ? undefined : wished[promise].share,
    stated: tally.stated,
    kept: tally.kept,
    trials: tally.trials,
    surveys,
  }));
}

function profileOfShaft(of: BandCase, bands: readonly TrueBand[], random: RandomGenerator): Profile {
  const seed = random.whole() % 2147483646;
  const noise = readingU * (of.roughness ?? 1);
  const sound = syntheticShaft({ bands, noise, seed });
  const readings = spoilt(sound, of.gross ?? 0, random);
  const stationUncertainty = inch(0.02);
  if (of.instrument !== true)
    return profileOf(shaftTable(readings), { readingUncertainty: inch(readingU), stationUncertainty });
  return profileOf(readOff(readings, calibrationU * random.normal()), { stationUncertainty });
}

/** The readings as an instrument shows them whose setting is off, and the table that names it. */
function readOff(readings: readonly ShaftReading[], off: number): ReturnType<typeof shaftTable> {
  const table = shaftTable(
    readings.map((reading) => ({ ...reading, diameter: reading.diameter + off })),
    { decimals: 4 },
  );
  const diameter = instrumentFrom("micrometer", {
    title: "Micrometer",
    resolution: "0.0001 in",
    repeatability: `${readingU} in`,
    calibration: `${calibrationU} in`,
  });
  return { ...table, conditions: { ...table.conditions, instruments: { diameter } } };
}

/** The true edges lie anywhere between the two stations that they part, which the readings cannot show. */
function judge(
  tallies: ReadonlyMap<BandPromise, Tally>,
  truth: readonly TrueBand[],
  profile: Profile,
  within: RandomGenerator,
): void {
  const found = wearBands(profile, {
    nominal: inch(nominal),
    edgeProbability: tallies.has("edge interval"),
  });
  const exact = found.bands.length === truth.length;
  tallies.get("no false band")?.add(exact);
  tallies.get("number")?.add(exact);

  const sureOf = (found.bandCountProbability?.all ?? []).findIndex((p) => p >= 0.95) + 1;
  tallies.get("number not wrongly sure")?.add(sureOf === 0 || sureOf === truth.length);

  const trueEdges = truth.slice(0, -1).map(({ to }) => to);
  const foundEdges = new Set(found.edges.map(({ after }) => Math.round(after.in("inch"))));
  for (const edge of trueEdges) tallies.get("edges")?.add(foundEdges.has(edge));
  if (exact)
    found.edges.forEach(({ reach }, k) => {
      if (reach === undefined) return;
      const edge = trueEdges[k]! + within.uniform();
      tallies.get("edge interval")?.add(reach.low.in("inch") <= edge && edge <= reach.high.in("inch"));
    });

  const holds = depthHolds(truth, found.bands);
  if (holds !== undefined) {
    tallies.get("depth")?.add(holds);
    if (exact) tallies.get("depth if number exact")?.add(holds);
  }
}

/**
 * Whether the depth stated for the band found in the middle of the worn stretch holds the true one, at the middle of
 * the band found, whatever its ends; undefined for a shaft without wear.
 */
function depthHolds(truth: readonly TrueBand[], found: readonly WearBand[]): boolean | undefined {
  if (truth.length < 2) return undefined;
  const middle = (truth[0]!.to + 1 + truth[1]!.to) / 2;
  const band = found.findLast(({ from }) => from.in("inch") <= middle)!;
  const { value, standardUncertainty, degreesOfFreedom } = band.depth!;
  const at = (band.from.in("inch") + band.to.in("inch")) / 2;
  const off = value.in("inch") - (nominal - trueDiameter(truth, at));
  return Math.abs(off) <= coverageFactor(0.95, degreesOfFreedom) * standardUncertainty.in("inch");
}

/** True diameter at a place [in]. */
function trueDiameter(bands: readonly TrueBand[], at: number): number {
  const k = bands.findIndex(({ to }) => at < to + 0.5);
  const { to, diameter, slope = 0 } = bands[k]!;
  const first = k === 0 ? 1 : bands[k - 1]!.to + 1;
  return diameter + slope * (at - (first + to) / 2);
}
