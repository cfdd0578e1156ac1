import type { RandomGenerator } from "../../kernel-helpers/statistics/index.js";
import type { TrueBand } from "../support/synthetic-shaft.js";

/** What is judged of a survey of bands. */
export type BandPromise =
  | "no false band"
  | "number"
  | "number not wrongly sure"
  | "edges"
  | "edge interval"
  | "depth"
  | "depth if number exact";

/** A kind of shaft, its truth drawn anew for every survey. Inches; stations 1, 2, 3, … in, angles 0° and 90°. */
export interface BandCase {
  readonly shaft: string;
  readonly promises: readonly BandPromise[];
  readonly bands: (random: RandomGenerator) => readonly TrueBand[];
  /** Set where the stated noise is wrong, or the wear too faint to be sure of: these promises are only told. */
  readonly notPromised?: readonly BandPromise[];
  /** True standard deviation of a reading over the stated one; default 1. */
  readonly roughness?: number;
  /** Share of the readings that are gross errors; default 0. */
  readonly gross?: number;
  /** Read with an instrument of 0.0001 in steps whose setting is off by an unknown amount, stated as calibration. */
  readonly instrument?: boolean;
}

export const nominal = 2.4375;

/** The nominal with one worn stretch of one height, stations 11 to 20 of 30, worn by `least` to `most` inches. */
function flatWear(least: number, most: number): BandCase["bands"] {
  return (random) => [
    { to: 10, diameter: nominal },
    { to: 20, diameter: nominal - (least + (most - least) * random.uniform()) },
    { to: 30, diameter: nominal },
  ];
}

/** As before, the worn stretch tapered by 0.2 to 0.4 thou an inch either way, with a step at both of its ends. */
function slopingWear(random: RandomGenerator): readonly TrueBand[] {
  const slope = (random.uniform() < 0.5 ? -1 : 1) * (0.0002 + 0.0002 * random.uniform());
  return flatWear(0.003, 0.006)(random).map((band, k) => (k === 1 ? { ...band, slope } : band));
}

const unworn =
  (stations: number): BandCase["bands"] =>
  () => [{ to: stations, diameter: nominal }];

const all = ["number", "edges", "edge interval", "depth"] as const;

export const bandCases: readonly BandCase[] = [
  { shaft: "unworn, 12 stations", promises: ["no false band"], bands: unworn(12) },
  { shaft: "unworn, 24 stations", promises: ["no false band"], bands: unworn(24) },
  { shaft: "unworn, 40 stations", promises: ["no false band"], bands: unworn(40) },
  {
    shaft: "unworn, 24 stations, 1.5 % gross errors",
    promises: ["no false band"],
    bands: unworn(24),
    gross: 0.015,
  },
  {
    shaft: "unworn, 24 stations, scatter twice the stated",
    promises: ["no false band"],
    notPromised: ["no false band"],
    bands: unworn(24),
    roughness: 2,
  },
  { shaft: "flat wear of 1 to 4 thou", promises: all, bands: flatWear(0.001, 0.004) },
  {
    shaft: "flat wear of 1 to 4 thou, 1.5 % gross errors",
    promises: all,
    bands: flatWear(0.001, 0.004),
    gross: 0.015,
  },
  {
    shaft: "sloping wear of 3 to 6 thou, 1.5 % gross errors",
    promises: all,
    bands: slopingWear,
    gross: 0.015,
  },
  {
    shaft: "faint flat wear of 0.25 to 0.5 thou",
    promises: ["number", "number not wrongly sure", "edge interval", "depth if number exact"],
    notPromised: ["number"],
    bands: flatWear(0.00025, 0.0005),
  },
  {
    shaft: "flat wear of 1 to 4 thou, scatter twice the stated",
    promises: [...all, "number not wrongly sure", "depth if number exact"],
    notPromised: ["number", "depth"],
    bands: flatWear(0.001, 0.004),
    roughness: 2,
  },
  {
    shaft: "flat wear of 1 to 4 thou, 0.1 thou steps, setting off by 0.1 thou (1 u)",
    promises: ["depth"],
    bands: flatWear(0.001, 0.004),
    instrument: true,
  },
];
