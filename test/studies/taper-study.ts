import { inch } from "../../kernel-helpers/quantity/index.js";
import {
  coverageFactor,
  type RandomGenerator,
  randomGenerator,
} from "../../kernel-helpers/statistics/index.js";
import { fitTaper, profileOf } from "../../kernel-helpers/survey/index.js";
import { type ShaftReading, shaftTable } from "../support/shaft-table.js";
import { spoilt } from "./gross-errors.js";
import { type StudyRow, Tally } from "./study-row.js";

/** A kind of taper: 4 1/2 in long, read at 0° and 90°, its true taper drawn anew for every survey. */
export interface TaperCase {
  readonly shaft: string;
  readonly stations: number;
  /** Standard uncertainty of a station's position [in]. */
  readonly stationU: number;
  /** True scatter of reading and station over the stated ones; default 1. */
  readonly roughness?: number;
  /** Share of the readings that are gross errors; default 0. */
  readonly gross?: number;
}

export const taperCases: readonly TaperCase[] = [
  { shaft: "taper, 6 stations, positions ± 5 thou (1 u)", stations: 6, stationU: 0.005 },
  { shaft: "taper, 12 stations, positions exact", stations: 12, stationU: 0 },
  { shaft: "taper, 12 stations, positions ± 5 thou (1 u)", stations: 12, stationU: 0.005 },
  {
    shaft: "taper, 12 stations, positions ± 5 thou (1 u), 1.5 % gross errors",
    stations: 12,
    stationU: 0.005,
    gross: 0.015,
  },
  {
    shaft: "taper, 6 stations, positions ± 5 thou (1 u), scatter twice the stated",
    stations: 6,
    stationU: 0.005,
    roughness: 2,
  },
  {
    shaft: "taper, 12 stations, positions ± 5 thou (1 u), scatter twice the stated",
    stations: 12,
    stationU: 0.005,
    roughness: 2,
  },
];

const readingU = 0.0002;
const length = 4.5;

/**
 * Surveys tapers of one kind again and again, and counts how often the stated interval holds the true one; where the
 * true scatter is not the stated one also how often that is noticed.
 */
export function taperStudy(of: TaperCase, surveys: number, seed: number): readonly StudyRow[] {
  const random = randomGenerator(seed);
  const [all, noticed] = [new Tally(), new Tally()];
  for (let i = 0; i < surveys; i++) {
    const taper = (0.3 + 0.7 * random.uniform()) / 12; // 0.3 to 1 in per foot
    const readings = spoilt(coneReadings(of, taper, random), of.gross ?? 0, random);
    const profile = profileOf(shaftTable(readings), {
      readingUncertainty: inch(readingU),
      stationUncertainty: inch(of.stationU),
    });
    const { value, standardUncertainty, degreesOfFreedom } = fitTaper(profile).taper;
    const holds = Math.abs(value - taper) <= coverageFactor(0.95, degreesOfFreedom) * standardUncertainty;
    all.add(holds);
    noticed.add(degreesOfFreedom < Number.POSITIVE_INFINITY);
  }
  const row = (promise: string, { kept, trials }: Tally, wished: StudyRow["wished"]): StudyRow => ({
    shaft: of.shaft,
    promise,
    wished,
    stated: undefined,
    kept,
    trials,
    surveys,
  });
  const promise = "95 % interval of the taper holds it";
  if (of.roughness === undefined) return [row(promise, all, [0.93, 0.97])];
  return [
    row("uncertainties widened for the scatter seen", noticed, undefined),
    row(promise, all, [0.93, 0.97]),
  ];
}

function coneReadings(of: TaperCase, taper: number, random: RandomGenerator): ShaftReading[] {
  const rough = of.roughness ?? 1;
  return Array.from({ length: of.stations }, (_, i) => {
    const station = (length * i) / (of.stations - 1);
    const at = station + rough * of.stationU * random.normal();
    return [0, 90].map((angle) => ({
      station,
      angle,
      diameter: 2 + taper * at + rough * readingU * random.normal(),
    }));
  }).flat();
}
