import { describe, expect, it } from "vitest";
import { degree, inch, measured, mm, thou } from "../kernel-helpers/quantity/index.js";
import * as statistics from "../kernel-helpers/statistics/index.js";
import * as survey from "../kernel-helpers/survey/index.js";
import { expectClose } from "./support/expect-close.js";
import { lengthTable } from "./support/length-table.js";

/**
 * Every public helper of statistics and survey against bad input: each either refuses it with a message that says what
 * was found ("got …") and what would be enough, or stands in `notAsked` with the reason. A helper that joins an index
 * without either makes the last test fail.
 */

/** A call that must be refused, and what of the message says what was found and what would be enough. */
type Refusal = readonly [call: () => unknown, message: RegExp];

type Trouble = "too few" | "zero spread" | "contradictory repeats" | "uncertainty" | "not finite";

/** For each trouble a refusal, or why there is none to ask for. */
type Rows = Readonly<Record<Trouble, Refusal | readonly Refusal[] | string>>;

const nan = Number.NaN;
const s = statistics;
const v = survey;
const x = [0, 1, 2, 3, 4];
const y = [1, 3.1, 4.9, 7.2, 9];
/** The third place read twice, 8 apart. */
const xx = [0, 1, 2, 2, 3, 4];
const yy = [1, 3, 5, 13, 7, 9];
const exact = x.map((at) => 1 + 2 * at);
const noUncertainty = "takes no uncertainty";
const noReadings = "takes no readings";
const oneEach = "takes no two readings of one place";
const repeatsOf = (name: string): RegExp =>
  new RegExp(
    `^${name}: repeated readings must agree within their uncertainty, got .* = 5 and .* = 13 at .* = 2, .* standard uncertainties of a difference apart; read there once more and strike the wrong one, or state the uncertainty that the repeats show, .* times as large`,
  );
const scatterOf = (name: string): RegExp =>
  new RegExp(
    `^${name}: the readings must scatter about .*, got \\d+ that lie on it to the last digit; give .*step/√12`,
  );

/** A line of known or learnt uncertainty: the rows all kinds of it share. */
function lineRows(
  name: string,
  lineOf: (x: readonly number[], y: readonly number[], u: number | undefined) => unknown,
  fewest: number,
): Rows {
  return {
    "too few": [
      () => lineOf([1], [1], undefined),
      new RegExp(`^${name}: x needs at least ${fewest} values, got 1`),
    ],
    "zero spread": [
      [
        () => lineOf([2, 2, 2, 2, 2], y, 1),
        new RegExp(`^${name}: x must take at least two different values, got 2`),
      ],
      [() => lineOf(x, exact, undefined), scatterOf(name)],
    ],
    "contradictory repeats": [() => lineOf(xx, yy, 0.001), repeatsOf(name)],
    uncertainty: [
      [() => lineOf(x, y, -1), new RegExp(`^${name}: .* must be .*0.*, got -1`)],
      [() => lineOf(x, y, 0), new RegExp(`^${name}: .* must be greater than 0, got 0`)],
      [() => lineOf(x, y, nan), new RegExp(`^${name}: .* must be a finite number, got NaN`)],
    ],
    "not finite": [
      [
        () => lineOf([0, 1, Infinity, 3, 4], y, 1),
        new RegExp(`^${name}: x\\[2\\] must be a finite number, got Infinity`),
      ],
      [
        () => lineOf(x, [1, 2, nan, 4, 5], 1),
        new RegExp(`^${name}: y\\[2\\] must be a finite number, got NaN`),
      ],
    ],
  };
}

/** A division along a line: what all of them share. */
function divisionRows(
  name: string,
  divide: (x: readonly number[], y: readonly number[], u: number) => unknown,
  repeats: Refusal,
): Rows {
  return {
    "too few": [() => divide([1], [1], 1), new RegExp(`^${name}: .*(at least|needs) 2 .*got 1`)],
    "zero spread": "one place is one band; a slope is fitted over three different places only",
    "contradictory repeats": repeats,
    uncertainty: [
      [() => divide(x, y, -1), new RegExp(`^${name}: u must be greater than 0, got -1`)],
      [() => divide(x, y, 0), new RegExp(`^${name}: u must be greater than 0, got 0`)],
    ],
    "not finite": [
      [
        () => divide([0, 1, nan, 3, 4], y, 1),
        new RegExp(`^${name}: positions\\[2\\] must be a finite number, got NaN`),
      ],
      [
        () => divide(x, [1, 2, 3, Infinity, 5], 1),
        new RegExp(`^${name}: values\\[3\\] must be a finite number, got Inf`),
      ],
    ],
  };
}

const u2 = (u: number | undefined): { u?: number } => (u === undefined ? {} : { u });
const known = s.fitLine(x, y, { u: 0.1 });
const turn = [0, 1, 2, 3, 4, 5].map((k) => (k * Math.PI) / 3);
/** Two of two at each place: as many say the one as the other. */
const evenX = [0, 0, 1, 1];
const evenY = [5, 13, 5, 13];
const repeatedEven =
  /: repeated readings must agree .*got values\[0\] = 5 and values\[1\] = 13 at position = 0, .* read there once more/;

const ofStatistics: Readonly<Record<string, Rows>> = {
  fitLine: lineRows("fitLine", (a, b, u) => s.fitLine(a, b, u2(u)), 3),
  fitLineRobust: {
    ...lineRows("fitLineRobust", (a, b, u) => s.fitLineRobust(a, b, u2(u)), 5),
    // One wrong reading is named by the others; where as many say the one as the other, nothing is.
    "contradictory repeats": [
      () => s.fitLineRobust([1, 1, 2, 2, 3, 3], [5, 13, 5, 13, 5, 13], { u: 0.001 }),
      /^fitLineRobust: repeated readings must agree .*got y\[0\] = 5 and y\[1\] = 13 at x = 1, .*read there once more/,
    ],
  },
  lineInfluence: lineRows("lineInfluence", (a, b, u) => s.lineInfluence(a, b, u2(u)), 3),
  fitLineDeming: lineRows(
    "fitLineDeming",
    (a, b, u) => s.fitLineDeming(a, b, { ratio: 1, ...(u === undefined ? {} : { ux: u }) }),
    3,
  ),
  fitLineOrthogonal: lineRows("fitLineOrthogonal", (a, b, u) => s.fitLineOrthogonal(a, b, u2(u)), 3),
  fitLineBothErrors: {
    ...lineRows(
      "fitLineBothErrors",
      (a, b, u) => s.fitLineBothErrors(a, b, { ux: u ?? 1, uy: u ?? 1, scaleByScatter: u === undefined }),
      3,
    ),
    uncertainty: [
      [
        () => s.fitLineBothErrors(x, y, { ux: -1, uy: 1 }),
        /^fitLineBothErrors: ux must be 0 or greater, got -1/,
      ],
      [
        () => s.fitLineBothErrors(x, y, { ux: 0, uy: 0 }),
        /^fitLineBothErrors: ux\[0\] or uy\[0\] must be greater than 0, got 0 for both/,
      ],
      [
        () => s.fitLineBothErrors(x, y, { ux: 1, uy: 1, correlation: 1 }),
        /correlation\[0\] must lie between -1 and 1, got 1/,
      ],
    ],
  },
  leastSquares: {
    "too few": [
      () =>
        s.leastSquares(
          [
            [1, 0],
            [1, 1],
          ],
          [1, 2],
        ),
      /^leastSquares: y needs at least 3 values, got 2/,
    ],
    "zero spread": [
      [
        () =>
          s.leastSquares(
            [
              [1, 2],
              [1, 2],
              [1, 2],
            ],
            [1, 2, 3],
          ),
        /^leastSquares: no column of design may be a sum of the others, got column 1/,
      ],
      [
        () =>
          s.leastSquares(
            x.map((at) => [1, at]),
            exact,
          ),
        scatterOf("leastSquares"),
      ],
    ],
    "contradictory repeats": "the design says nothing of places; χ² tells",
    uncertainty: [
      () =>
        s.leastSquares(
          x.map((at) => [1, at]),
          y,
          { weights: [1, 1, -1, 1, 1] },
        ),
      /^leastSquares: weights\[2\] must be greater than 0, got -1/,
    ],
    "not finite": [
      () =>
        s.leastSquares(
          x.map((at) => [1, at === 2 ? nan : at]),
          y,
        ),
      /^leastSquares: design\[2\]\[1\] must be a finite number, got NaN/,
    ],
  },
  curvature: {
    "too few": [() => s.curvature([0, 1], [0, 1], 1), /^curvature: x needs at least 3 values, got 2/],
    "zero spread": [
      [
        () => s.curvature([0, 0, 1, 1], [0, 0, 1, 1], 1),
        /^curvature: x must take at least 3 different values, got 2/,
      ],
      [() => s.curvature(x, exact), scatterOf("curvature")],
    ],
    "contradictory repeats": [() => s.curvature(xx, yy, 0.001), repeatsOf("curvature")],
    uncertainty: [() => s.curvature(x, y, 0), /^curvature: u must be greater than 0, got 0/],
    "not finite": [
      () => s.curvature(x, [1, 2, nan, 4, 5], 1),
      /^curvature: y\[2\] must be a finite number, got NaN/,
    ],
  },
  fitHarmonics: {
    "too few": [
      () => s.fitHarmonics([0, 1], [1, 2], { orders: [1] }),
      /^fitHarmonics: 3 different angles are needed for 1 orders, got 2/,
    ],
    "zero spread": [
      () =>
        s.fitHarmonics(
          turn,
          turn.map(() => 3),
          { orders: [1] },
        ),
      scatterOf("fitHarmonics"),
    ],
    "contradictory repeats": [
      () => s.fitHarmonics([0, 1, 2, 2, 3, 4], yy, { orders: [1], u: 0.001 }),
      repeatsOf("fitHarmonics"),
    ],
    uncertainty: [
      () => s.fitHarmonics(turn, turn, { orders: [1], u: -1 }),
      /^fitHarmonics: u must be greater than 0, got -1/,
    ],
    "not finite": [
      () => s.fitHarmonics([...turn.slice(1), nan], turn, { orders: [1], u: 1 }),
      /^fitHarmonics: angles\[5\] must be a finite number, got NaN/,
    ],
  },
  fitApproach: {
    "too few": [() => s.fitApproach([0, 1], [0, 1]), /^fitApproach: at least 4 readings are needed, got 2/],
    "zero spread": [
      [
        () => s.fitApproach([1, 1, 1, 1], [1, 2, 3, 4]),
        /^fitApproach: the readings must span some time, got all at 1/,
      ],
      [
        () =>
          s.fitApproach(
            x,
            x.map((t) => 8 - 5 * Math.exp(-t / 2)),
          ),
        scatterOf("fitApproach"),
      ],
    ],
    "contradictory repeats": [() => s.fitApproach(xx, yy, { u: 0.001 }), repeatsOf("fitApproach")],
    uncertainty: [() => s.fitApproach(x, y, { u: 0 }), /^fitApproach: u must be greater than 0, got 0/],
    "not finite": [
      () => s.fitApproach(x, [1, nan, 3, 4, 5]),
      /^fitApproach: y\[1\] must be a finite number, got NaN/,
    ],
  },
  sharedTimeConstant: {
    "too few": [
      () =>
        s.sharedTimeConstant([
          { t: [0, 1], y: [0, 1] },
          { t: x, y },
        ]),
      /^sharedTimeConstant: at least three readings a stretch and one more are needed, got 2, 5/,
    ],
    "zero spread": "stretches that show no bend count by their straight line; it says so",
    "contradictory repeats": "an F test: repeats that scatter make both models as bad",
    uncertainty: [
      () =>
        s.sharedTimeConstant([
          { t: x, y, u: -1 },
          { t: x, y, u: 1 },
        ]),
      /u must be greater than 0, got -1/,
    ],
    "not finite": [
      () =>
        s.sharedTimeConstant([
          { t: x, y: [1, 2, nan, 4, 5] },
          { t: x, y },
        ]),
      /y\[2\] must be a finite number, got NaN/,
    ],
  },
  partition: divisionRows("partition", (a, b, u) => s.partition(a, b, { u }), [
    () => s.partition(evenX, evenY, { u: 0.001 }),
    new RegExp(`^partition${repeatedEven.source}`),
  ]),
  robustPartition: divisionRows("robustPartition", (a, b, u) => s.robustPartition(a, b, { u }), [
    () => s.robustPartition(evenX, evenY, { u: 0.001 }),
    new RegExp(`^robustPartition${repeatedEven.source}`),
  ]),
  bandPosterior: divisionRows("bandPosterior", (a, b, u) => s.bandPosterior(a, b, { u }), [
    () => s.bandPosterior(evenX, evenY, { u: 0.001 }),
    new RegExp(`^bandPosterior${repeatedEven.source}`),
  ]),
  kinkedLine: {
    ...divisionRows("kinkedLine", (a, b, u) => s.kinkedLine(a, b, { u }), [
      () => s.kinkedLine(xx, yy, { u: 0.001 }),
      repeatsOf("kinkedLine"),
    ]),
    "zero spread": [
      () => s.kinkedLine([2, 2, 2], [1, 1, 1], { u: 1 }),
      /^kinkedLine: needs 2 to 500 different positions, got 1/,
    ],
  },
  repeatsTest: {
    "too few": [() => s.repeatsTest([], [], 1), /^repeatsTest: x needs at least 1 values, got 0/],
    "zero spread": "places all alike are one place read again and again: what it tests",
    "contradictory repeats": "this is what it finds: it says so in `contradictory`",
    uncertainty: [() => s.repeatsTest(x, y, 0), /^repeatsTest: u must be greater than 0, got 0/],
    "not finite": [
      () => s.repeatsTest(x, [1, 2, nan, 4, 5], 1),
      /^repeatsTest: y\[2\] must be a finite number, got NaN/,
    ],
  },
  predictLine: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: [
      () => s.predictLine(known, 1, { ux: -1 }),
      /^predictLine: ux must be 0 or greater and finite, got -1/,
    ],
    "not finite": [() => s.predictLine(known, nan), /^predictLine: x must be a finite number, got NaN/],
  },
  inverseLine: {
    "too few": noReadings,
    "zero spread": [
      () => s.inverseLine(s.fitLine(x, [1, 1, 1, 1, 1], { u: 1 }), 1),
      /^inverseLine: the line must not be level, got slope 0/,
    ],
    "contradictory repeats": noReadings,
    uncertainty: [
      () => s.inverseLine(known, 1, { uy: -1 }),
      /^inverseLine: uy must be 0 or greater and finite, got -1/,
    ],
    "not finite": [
      () => s.inverseLine(known, Infinity),
      /^inverseLine: y must be a finite number, got Infinity/,
    ],
  },
  predictInterval: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: [
      [
        () => s.predictInterval(known, 1, { of: "reading" }),
        /^predictInterval: uReading must be given .*got none/,
      ],
      [
        () => s.predictInterval(known, 1, { of: "reading", uReading: -1 }),
        /^predictInterval: uReading must be 0 or greater and finite, got -1/,
      ],
    ],
    "not finite": [() => s.predictInterval(known, nan, { of: "line" }), /x must be a finite number, got NaN/],
  },
  inverseInterval: {
    "too few": noReadings,
    "zero spread": [
      () => s.inverseInterval(s.fitLine(x, [1, 1, 1, 1, 1], { u: 1 }), 1, { of: "line" }),
      /^inverseInterval: the slope must differ from 0 by more than .*got slope 0/,
    ],
    "contradictory repeats": noReadings,
    uncertainty: [
      () => s.inverseInterval(known, 5, { of: "reading", uReading: -1 }),
      /^inverseInterval: uReading must be 0 or greater and finite, got -1/,
    ],
    "not finite": [
      () => s.inverseInterval(known, nan, { of: "line" }),
      /^inverseInterval: y must be a finite number/,
    ],
  },
  monteCarlo: {
    "too few": [
      () => s.monteCarlo(({ a }) => a, { a: s.normalAbout(0, 1) }, { seed: 1, draws: 0 }),
      /^monteCarlo: draws must be a whole number from 1000 to 10000000, got 0/,
    ],
    "zero spread": [
      [
        () => s.monteCarlo(() => 5, { a: s.normalAbout(0, 1) }, { seed: 1, draws: 1000 }),
        /^monteCarlo: the results must differ from draw to draw, got 5 in all 1000; give an input .* above 0/,
      ],
      [
        () => s.monteCarlo(({ a }) => a, { a: 3 }, { seed: 1, draws: 1000 }),
        /^monteCarlo: at least one input must be uncertain, got only exact ones: a/,
      ],
    ],
    "contradictory repeats": noReadings,
    uncertainty: [
      () =>
        s.monteCarlo(
          ({ a }) => a as number,
          { a: { ...measured(1, 1), standardUncertainty: -1 } as never },
          { seed: 1, draws: 1000 },
        ),
      /^monteCarlo: a must have an uncertainty of 0 or more and finite, got -1/,
    ],
    "not finite": [
      // Defined at the estimate and about it, but not where one draw in some thousands falls.
      () => s.monteCarlo(({ a }) => Math.sqrt(a), { a: s.normalAbout(3, 1) }, { seed: 1, draws: 100_000 }),
      /^monteCarlo: the function must give a finite number in every draw, got NaN for a = -.*; give inputs whose draws/,
    ],
  },
  shortestInterval: {
    "too few": [
      () => s.shortestInterval([1], 0.95),
      /^shortestInterval: values needs at least 2 values, got 1/,
    ],
    "zero spread": "draws all alike have an interval of no width; monteCarlo refuses them",
    "contradictory repeats": oneEach,
    uncertainty: noUncertainty,
    "not finite": [
      () => s.shortestInterval([1, nan, 3], 0.95),
      /values\[1\] must be a finite number, got NaN/,
    ],
  },
  runsTest: {
    "too few": [() => s.runsTest([1]), /^runsTest: residuals needs at least 2 values, got 1/],
    "zero spread": [
      () => s.runsTest([1, 1, 1]),
      /^runsTest: residuals must lie on both sides of 0, got 3 above and 0/,
    ],
    "contradictory repeats": oneEach,
    uncertainty: noUncertainty,
    "not finite": [
      () => s.runsTest([1, nan, -1]),
      /^runsTest: residuals\[1\] must be a finite number, got NaN/,
    ],
  },
  compensatedSum: {
    "too few": "the empty sum is 0",
    "zero spread": oneEach,
    "contradictory repeats": oneEach,
    uncertainty: noUncertainty,
    "not finite": [
      () => s.compensatedSum([1, nan]),
      /^compensatedSum: values\[1\] must be a finite number, got NaN/,
    ],
  },
  countDirections: {
    "too few": "none of no angles",
    "zero spread": "what it counts",
    "contradictory repeats": oneEach,
    uncertainty: noUncertainty,
    "not finite": [
      () => s.countDirections([0, nan]),
      /^countDirections: angles\[1\] must be a finite number, got NaN/,
    ],
  },
  foundAmong: {
    "too few": "among no tests none is found",
    "zero spread": oneEach,
    "contradictory repeats": oneEach,
    uncertainty: noUncertainty,
    "not finite": [
      () => s.foundAmong([0.1, nan], 0.05),
      /^foundAmong: chances\[1\] must lie from 0 to 1, got NaN/,
    ],
  },
  fromReadings: {
    "too few": [() => s.fromReadings([1]), /^fromReadings: two or more readings are needed, got 1/],
    "zero spread": [
      () => s.fromReadings([1, 1, 1]),
      /^fromReadings: readings must differ .*fromResolution\), got 1/,
    ],
    "contradictory repeats":
      "takes no stated uncertainty that repeats could contradict: their scatter is what it tells",
    uncertainty: noUncertainty,
    "not finite": [
      () => s.fromReadings([1, nan]),
      /^fromReadings: readings\[1\] must be .*finite number, got NaN/,
    ],
  },
  welchSatterthwaite: {
    "too few": [() => s.welchSatterthwaite([], []), /contributions needs at least 1 values, got 0/],
    "zero spread": oneEach,
    "contradictory repeats": oneEach,
    uncertainty: [
      [
        () => s.welchSatterthwaite([1, -1], [3, 3]),
        /^welchSatterthwaite: contributions\[1\] must be 0 or more, got -1/,
      ],
      [() => s.welchSatterthwaite([1, 1], [3, 0]), /degreesOfFreedom\[1\] must be greater than 0 .*got 0/],
    ],
    "not finite": [
      () => s.welchSatterthwaite([1, nan], [3, 3]),
      /contributions\[1\] must be a finite number, got NaN/,
    ],
  },
  budget: {
    "too few": [
      () => s.budget(s.exactly(3)),
      /^budget: the value must have an uncertain source, got the exact 3/,
    ],
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: [
      () => s.budget(s.uncertain(measured(3, 0), "rule")),
      /^budget: the value must have an uncertainty to share out, got 0 for 3 from rule; give a source .* above 0/,
    ],
    "not finite": "an uncertain value is always finite: see uncertain",
  },
  propagate: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: [
      () =>
        s.propagate(({ a }) => a, {
          a: { kind: "distribution", shape: "normal", centre: 1, width: -1 } as never,
        }),
      /standard uncertainty must be 0 or more, got -1/,
    ],
    "not finite": [
      () => s.propagate(() => nan, { a: s.normalAbout(0, 1) }),
      /^propagate: the function must give a quantity or a finite number, got NaN/,
    ],
  },
  derivative: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: [
      () => s.derivative(Math.exp, 1, { where: "exp", input: "x", width: -1 }),
      /^exp: the width about x must be 0 or more and finite, got -1/,
    ],
    "not finite": [
      () => s.derivative(Math.exp, nan, { where: "exp", input: "x", width: 1 }),
      /^exp: x must be a finite number, got NaN/,
    ],
  },
  correlated: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: [
      () => s.correlated({ a: measured(1, 1), b: measured(1, 1) }, [["a", "b", 2]]),
      /^correlated: correlation of a and b must lie from −1 to 1, got 2/,
    ],
    "not finite": [
      () => s.correlated({ a: 3 } as never, []),
      /^correlated: a must be a measured value, got 3/,
    ],
  },
  uncertain: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: [
      () => s.uncertain(measured(1, -1), "rule"),
      /standard uncertainty must be 0 or more, got -1/,
    ],
    "not finite": [() => s.exactly(nan), /^exactly: a quantity or a finite number was expected, got NaN/],
  },
};

/** Of type B and the distributions: one number with one width. */
const widths: Readonly<Record<string, (centre: number, width: number) => unknown>> = {
  fromCertificate: (value, width) => s.fromCertificate(value, width, { k: 2 }),
  fromLimits: (value, width) => s.fromLimits(value, width),
  fromResolution: (value, width) => s.fromResolution(value, width),
  normalAbout: (value, width) => s.normalAbout(value, width),
  rectangularAbout: (value, width) => s.rectangularAbout(value, width),
  triangularAbout: (value, width) => s.triangularAbout(value, width),
  arcsineAbout: (value, width) => s.arcsineAbout(value, width),
  studentTAbout: (value, width) => s.studentTAbout(value, width, 3),
};

const repeated = { readingUncertainty: thou(0.1), stationUncertainty: thou(1) };
/** A table must say that places are read again, else a place read twice is taken for a slip. */
const saidToRepeat = { remarks: ["repeats: some places"] };
const surveyOf = (rows: readonly (readonly number[])[]): survey.Profile =>
  v.profileOf(lengthTable("station [in], angle [deg], diameter [in]", rows, saidToRepeat), repeated);
/** Two against two at each station, so that nothing tells which is wrong. */
const undecided = [0, 1, 2].flatMap((at) => [
  [at, 0, 2.4375],
  [at, 0, 2.4295],
  [at, 90, 2.4375],
  [at, 90, 2.4295],
]);
const honest = [0, 1, 2, 3, 4, 5].map((at) => [at, 0, at < 3 ? 2.4375 : 2.433]);
const onePlace =
  /: readings of one place must agree within their uncertainty, got 2\.\d+ in on line \d+ \("diameter \[in\]"\) and 2\.\d+ in on line \d+ \("diameter \[in\]"\) of tables\/bench\.csv at station .*, 0 °|: readings of one place must agree/;
const ring = [0, 45, 90, 135, 180, 225, 270, 315];
const ringOf = (extra: readonly (readonly number[])[]): survey.Table =>
  lengthTable("angle [deg], reading [thou]", [
    ...ring.map((a) => [a, Math.cos((a * Math.PI) / 180)]),
    ...extra,
  ]);
const ringsOf = (extra: readonly (readonly number[])[]): survey.Table =>
  lengthTable("station [in], angle [deg], reading [thou]", [
    ...[0, 10, 20].flatMap((at) => ring.map((a) => [at, a, Math.cos((a * Math.PI) / 180)])),
    ...extra,
  ]);
const indicator = { readingUncertainty: thou(0.05) };
const centres = { setUp: { held: "between centres" as const }, ...indicator };
const indicatorRepeats =
  /: readings of one place must agree within their uncertainty, got 1 thou on line \d+ and 9 thou on line \d+ of tables\/bench\.csv.*read there once more and strike the wrong one/;
const repeatOf = (readings: readonly number[], options: survey.RepeatabilityOptions = {}): unknown =>
  v.repeatabilityStudy(
    lengthTable(
      "reading [thou]",
      readings.map((r) => [r]),
    ),
    options,
  );
const pairsOf = (rows: readonly (readonly number[])[]): unknown =>
  v.compareInstruments(lengthTable("old [thou], new [thou]", rows), { first: "old", second: "new" });
const gaugesOf = (rows: readonly (readonly number[])[], options: survey.CalibrationOptions = {}): unknown =>
  v.calibrationLine(lengthTable("reading [in], reference [in]", rows), options);
const cellOfNoNumber = (header: string, row: string): (() => unknown) => {
  const bytes = new TextEncoder().encode(`${header}\n${row}`);
  return () => v.readTable(bytes, { name: "bench", file: "tables/bench.csv" });
};
/** What is not a finite number is refused as the table is read, before any helper sees it. */
const readBefore = "readTable refuses it with file, row and column, before the helper sees it";
const wear = v.wearBands(surveyOf(honest), { nominal: inch(2.4375) });
const flat = v.wearBands(surveyOf(honest.map(([at, angle]) => [at!, angle!, 2.4375])), {
  nominal: inch(2.4375),
});

const ofSurvey: Readonly<Record<string, Rows>> = {
  readTable: {
    "too few": [
      cellOfNoNumber("reading [in]", ""),
      /tables\/bench\.csv.*found a header and no rows, expected/s,
    ],
    "zero spread": "a table may say the same in each row; helpers judge",
    "contradictory repeats": "helpers judge, by line",
    uncertainty: "instruments are read from rebuild.json: see instrumentFrom",
    "not finite": [
      [
        cellOfNoNumber("reading [in]", "NaN"),
        /tables\/bench\.csv line 2, column "reading \[in\]": found "NaN", expected/,
      ],
      [cellOfNoNumber("reading [in]", "1e999"), /line 2, column "reading \[in\]": found "1e999", expected/],
    ],
  },
  profileOf: {
    "too few": [
      () => v.profileOf(lengthTable("station [in], angle [deg], diameter [in]", [[0, 0, nan]]), repeated),
      /tables\/bench\.csv line 2/,
    ],
    "zero spread": "a profile may be of one station; helpers judge",
    "contradictory repeats": "a warning, for neighbours may tell which is wrong: see the test below",
    uncertainty: [
      () =>
        v.profileOf(lengthTable("station [in], diameter [in]", [[0, 1]]), { readingUncertainty: inch(0) }),
      /^profileOf: readingUncertainty must be a length greater than 0, got 0 in/,
    ],
    "not finite": readBefore,
  },
  wearBands: {
    "too few": [
      () =>
        v.wearBands(
          surveyOf([
            [0, 0, 2.4375],
            [1, 0, 2.4375],
          ]),
        ),
      /^wearBands: at least 3 stations along the shaft are needed, got 2 with 2 readings/,
    ],
    "zero spread": "stations differ by what a station is; equal diameters are one band",
    "contradictory repeats": [
      () => v.wearBands(surveyOf(undecided)),
      new RegExp(`^wearBands${onePlace.source}`),
    ],
    uncertainty: "comes with the profile: see profileOf",
    "not finite": readBefore,
  },
  fitTaper: {
    "too few": [
      () =>
        v.fitTaper(
          surveyOf([
            [0, 0, 2.4],
            [1, 0, 2.5],
          ]),
        ),
      /^fitTaper: at least 3 stations .*are needed.*, got 2/,
    ],
    "zero spread": "stations differ by what a station is",
    "contradictory repeats": [
      () => v.fitTaper(surveyOf(undecided)),
      new RegExp(`^fitTaper${onePlace.source}`),
    ],
    uncertainty: "comes with the profile: see profileOf",
    "not finite": readBefore,
  },
  ovalityOf: {
    "too few": [
      () => v.ovalityOf(surveyOf(honest), inch(0)),
      /^ovalityOf: at least one station read at two different directions is needed, got none/,
    ],
    "zero spread": "angles all alike are too few directions",
    "contradictory repeats": [
      () => v.ovalityOf(surveyOf(undecided), inch(0)),
      new RegExp(`^ovalityOf${onePlace.source}`),
    ],
    uncertainty: "comes with the profile: see profileOf",
    "not finite": readBefore,
  },
  meanBetween: {
    "too few": [
      () => v.meanBetween(surveyOf(honest), inch(0), inch(0)),
      /^meanBetween: at least two readings must lie between 0 in and 0 in, got 1/,
    ],
    "zero spread": "equal readings take the stated uncertainty of one: see the test below",
    "contradictory repeats": "profileOf warns, and their scatter is in the uncertainty",
    uncertainty: "comes with the profile: see profileOf",
    "not finite": readBefore,
  },
  roundnessOf: {
    "too few": [
      () =>
        v.roundnessOf(
          lengthTable("angle [deg], reading [thou]", [
            [0, 1],
            [90, 2],
          ]),
          centres,
        ),
      /^roundnessOf: at least 3 different angles are needed at each station, got 2/,
    ],
    "zero spread": "angles all alike are too few angles; equal readings are a round shaft",
    "contradictory repeats": [
      () => v.roundnessOf(ringOf([[360, 9]]), centres),
      new RegExp(`^roundnessOf${indicatorRepeats.source}`),
    ],
    uncertainty: [
      () => v.roundnessOf(ringOf([]), { ...centres, readingUncertainty: thou(-1) }),
      /^roundnessOf: readingUncertainty must be a length greater than 0, got [-−]1 thou/,
    ],
    "not finite": readBefore,
  },
  runOut: {
    "too few": [
      () =>
        v.runOut(
          lengthTable("station [in], angle [deg], reading [thou]", [
            [0, 0, 1],
            [0, 90, 2],
          ]),
          indicator,
        ),
      /^runOut: at least 3 different angles are needed at each station, got 2/,
    ],
    "zero spread": "angles all alike are too few angles; equal readings are a true shaft",
    "contradictory repeats": [
      () => v.runOut(ringsOf([[10, 360, 9]]), indicator),
      new RegExp(`^runOut${indicatorRepeats.source}`),
    ],
    uncertainty: [
      () => v.runOut(ringsOf([]), { readingUncertainty: thou(0) }),
      /^runOut: readingUncertainty must be a length greater than 0, got 0 thou/,
    ],
    "not finite": readBefore,
  },
  wornSide: {
    "too few": [
      () => v.wornSide({ kind: "taper" } as never),
      /^wornSide: evidence must be wear bands or run-out, got taper/,
    ],
    "zero spread": "no side stands out: it says so",
    "contradictory repeats": "its evidence was refused before: see wearBands and runOut",
    uncertainty: [
      () => v.wornSide(wear, { within: degree(0) }),
      /^wornSide: within must be an angle over 0 and below 90°, got 0/,
    ],
    "not finite": readBefore,
  },
  nextReadings: {
    "too few": [
      () => v.nextReadings(flat, { about: "edge" }),
      /^nextReadings: the shaft must have at least 2 bands for an edge, got 1/,
    ],
    "zero spread": "comes from a result that was refused before",
    "contradictory repeats": "comes from a result that was refused before",
    uncertainty: "comes from a result that was refused before",
    "not finite": [
      () => v.nextReadings(wear, { about: "depth", band: nan }),
      /^nextReadings: band must be a whole number from 1 to 2, got NaN/,
    ],
  },
  judgeLimit: {
    "too few": "judges each band of a result; there is at least one",
    "zero spread": "comes from a result that was refused before",
    "contradictory repeats": "comes from a result that was refused before",
    uncertainty: "comes from a result that was refused before",
    "not finite": "a length is finite by its making",
  },
  repeatabilityStudy: {
    "too few": [
      () => repeatOf([1, 2]),
      /^repeatabilityStudy: at least 3 readings of one place are needed, got 2 in column "reading \[thou\]" of tables\/bench\.csv/,
    ],
    "zero spread": [
      [
        () => repeatOf([1, 1, 1]),
        /all alike tell no scatter unless .*got 3 alike in column .* of tables\/bench\.csv; give \{ resolution \}/,
      ],
      [
        () => repeatOf([1, 2, 3, 4]),
        /drift evenly tell no scatter unless .*got 4 on one line in column .* of tables\/bench\.csv; give \{ resolution \}/,
      ],
    ],
    "contradictory repeats":
      "a warning that names the farthest line, against the repeatability stated: see below",
    uncertainty: [
      () => repeatOf([1, 2, 4], { resolution: thou(0) }),
      /^repeatabilityStudy: resolution must be a length greater than 0, got 0 thou/,
    ],
    "not finite": readBefore,
  },
  compareInstruments: {
    "too few": [
      () =>
        pairsOf([
          [1, 2],
          [2, 3],
        ]),
      /^compareInstruments: at least 3 places read by both "old \[thou\]" and "new \[thou\]" are needed, got 2 in tables/,
    ],
    "zero spread": [
      () =>
        pairsOf([
          [1, 2],
          [2, 3],
          [3, 4],
        ]),
      /^compareInstruments: differences must scatter to be judged, got 3 all alike between .* of tables\/bench\.csv; estimate/,
    ],
    "contradictory repeats": "a row is a place read once by each; their differences are what it judges",
    uncertainty: noUncertainty,
    "not finite": readBefore,
  },
  calibrationLine: {
    "too few": [
      () =>
        gaugesOf([
          [1, 1],
          [2, 2],
        ]),
      /^calibrationLine: at least 3 gauges are needed \(2 with \{ uncertainty \}\), got 2 in column "reading \[in\]" of tables/,
    ],
    "zero spread": [
      [
        () =>
          gaugesOf([
            [1, 1],
            [1, 1],
            [1, 1],
          ]),
        /gauges of two sizes at least are needed .*, got 3 readings all alike in column/,
      ],
      [
        () =>
          gaugesOf([
            [0.0001, 0],
            [1.0003, 1],
            [2.0005, 2],
          ]),
        /^calibrationLine: errors must scatter .*got 3 exactly on it in column .* of tables\/bench\.csv; give \{ uncertainty \}/,
      ],
    ],
    "contradictory repeats": [
      () =>
        gaugesOf(
          [
            [0, 0],
            [1, 1],
            [1.008, 1],
            [2, 2],
          ],
          { uncertainty: thou(0.01) },
        ),
      /^calibrationLine: errors at one reference must agree .*got 0 thou on line 3 and 8 thou on line 4 of tables\/bench\.csv.*read that gauge once more/,
    ],
    uncertainty: [
      [
        () =>
          gaugesOf(
            [
              [0, 0],
              [1, 1],
              [2, 2],
            ],
            { uncertainty: thou(0) },
          ),
        /^calibrationLine: uncertainty must be a length greater than 0, got 0 thou/,
      ],
      [
        () =>
          gaugesOf(
            [
              [0, 0],
              [1, 1],
              [2, 2],
            ],
            { uncertainty: thou(1), common: thou(-1) },
          ),
        /^calibrationLine: common must be 0 or more, got [-−]1 thou/,
      ],
    ],
    "not finite": readBefore,
  },
  correctedReading: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: [
      () =>
        v.correctedReading(
          gaugesOf(
            [
              [0, 0],
              [1, 1.001],
              [2, 2],
            ],
            { uncertainty: thou(1) },
          ) as survey.CalibrationLine,
          inch(1),
          thou(-1),
        ),
      /^correctedReading: u must be 0 or more, got [-−]1 thou/,
    ],
    "not finite": "a length is finite by its making",
  },
  canSettle: {
    "too few": [
      () => v.canSettle(wearMic, { margin: thou(1), readings: 0 }),
      /^canSettle: readings must be a whole number of at least 1, got 0/,
    ],
    "zero spread": [
      () => v.canSettle(wearMic, { margin: thou(0) }),
      /^canSettle: margin must be a length greater than 0, got 0 thou/,
    ],
    "contradictory repeats": noReadings,
    uncertainty: "comes with the instrument: see instrumentFrom",
    "not finite": [
      () => v.canSettle(wearMic, { margin: thou(1), readings: nan }),
      /^canSettle: readings must be a whole number of at least 1, got NaN/,
    ],
  },
  instrumentFrom: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: [
      [
        () => v.instrumentFrom("mic", { title: "Mic", resolution: "0 thou", repeatability: "0.1 thou" }),
        /^instrument "mic": resolution must be greater than 0, got 0/,
      ],
      [
        () => v.instrumentFrom("mic", { title: "Mic", resolution: "1 thou", repeatability: "-0.1 thou" }),
        /^instrument "mic": repeatability must be 0 or more, got [-−]/,
      ],
    ],
    "not finite": "read as text with its unit; NaN is no quantity",
  },
  compareMeasured: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": "two results that differ are what it judges",
    uncertainty: [
      () => v.compareMeasured(["a", measured(1, 0)], ["b", measured(1, 0)]),
      /^compareMeasured: at least one value must have an uncertainty, got 0 and 0/,
    ],
    "not finite": "a measured value is finite by its making",
  },
  stationOfDiameter: {
    "too few": "takes a fitted taper",
    "zero spread": "a taper of 0 within its uncertainty is refused: test/survey/station-of-diameter.test.ts",
    "contradictory repeats": "its taper was refused before: see fitTaper",
    uncertainty: "comes with the taper",
    "not finite": "a length is finite by its making",
  },
  taperSetting: {
    "too few": noReadings,
    "zero spread": [
      () => v.taperSetting({ taper: measured(0, 0.1) }),
      /^taperSetting: taper must be a finite number other than 0, got 0/,
    ],
    "contradictory repeats": noReadings,
    uncertainty: "a measured value has none below 0 by its making",
    "not finite": [
      () => v.taperSetting({ taper: measured(1, 0.1) }, { betweenCentres: mm(-1) }),
      /^taperSetting: betweenCentres must be a length greater than 0, got [-−]1 mm/,
    ],
  },
  identifyTaper: {
    "too few": [
      () => v.identifyTaper({ taper: measured(0.05, 0.001) } as never, { candidates: [] }),
      /^identifyTaper: at least 1 candidate is needed, got 0/,
    ],
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: "a measured value has none below 0 by its making",
    "not finite": "a measured value is finite by its making",
  },
  toReferenceTemperature: {
    "too few": noReadings,
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: "impossible conditions are refused: test/survey/reference-temperature.test.ts",
    "not finite": [
      () => v.toReferenceTemperature(3 as never, {} as never),
      /^toReferenceTemperature: length must be a length, got 3/,
    ],
  },
  veeFactor: {
    "too few": [
      () => v.veeFactor(0, degree(90)),
      /^veeFactor: order must be a whole number of at least 1, got 0/,
    ],
    "zero spread": noReadings,
    "contradictory repeats": noReadings,
    uncertainty: noUncertainty,
    "not finite": [
      () => v.veeFactor(nan, degree(90)),
      /^veeFactor: order must be a whole number of at least 1, got NaN/,
    ],
  },
};

const wearMic = v.instrumentFrom("mic", { title: "Mic", resolution: "0.1 thou", repeatability: "0.1 thou" });

/** Helpers that take no readings, and why nothing of the list can be asked of them. */
const notAsked: Readonly<Record<string, string>> = {
  positionOfEdge: "takes the weights that the posterior reckoned, no readings",
  shortestRunOfGaps: "takes the weights that the posterior reckoned, no readings",
  ...Object.fromEntries(
    "chiSquareCdf chiSquareQuantile chiSquareSurvival fCdf fQuantile fSurvival normalCdf normalQuantile studentTCdf studentTQuantile riceCdf coverageFactor"
      .split(" ")
      .map((name) => [
        name,
        "a distribution; its arguments are refused in test/statistics/distributions.test.ts or its own",
      ]),
  ),
  ...Object.fromEntries(
    "randomGenerator randomGeneratorFrom splitMix64"
      .split(" ")
      .map((name) => [name, "draws numbers, takes a seed"]),
  ),
  ...Object.fromEntries(
    "anglesOf column columnsNamed lengthsOf numbersOf quantitiesOf temperaturesOf textOf"
      .split(" ")
      .map((name) => [name, "hands over a column as it was read"]),
  ),
  approachAt: "evaluates a fitted approach",
  asMeasured: "a distribution in other words",
  distributionOf: "a measured value in other words",
  evaluateSegment: "evaluates a fitted segment",
  exactly: "a value without uncertainty; NaN is refused (row of uncertain)",
  fromTemperatureSwing: "one amplitude; refused at 0 in test/statistics/uncertain",
  harmonicOf: "a wave in other words",
  isUncertain: "asks the kind",
  asMadeDiameter: "asks wear bands",
  asMadeIfLeft: "asks wear bands",
  bandAt: "asks wear bands",
  smallestBand: "asks wear bands",
  surveyReport: "asks wear bands or a taper",
  deepestBand: "asks wear bands",
  depthBudget: "asks wear bands",
  taperBudget: "asks a taper",
  halfAngleOf: "a taper in other words",
  partFrom: "reads a part from rebuild.json",
  readingUncertainty: "an instrument in other words",
  readTableFile: "reads the file for readTable",
  referenceTemperatureFactor: "refuses as toReferenceTemperature",
  TableFaults: "the error itself",
};

const messageOf = (call: () => unknown): string => {
  try {
    call();
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  return "not refused";
};

for (const [folder, table] of Object.entries({ statistics: ofStatistics, survey: ofSurvey })) {
  describe(`bad input of ${folder}`, () => {
    for (const [helper, rows] of Object.entries(table))
      it(helper, () => {
        for (const [trouble, asked] of Object.entries(rows)) {
          if (typeof asked === "string") {
            expect(asked.length, `${helper}, ${trouble}: a reason`).toBeGreaterThan(10);
            continue;
          }
          const list = (typeof asked[0] === "function" ? [asked] : asked) as readonly Refusal[];
          for (const [call, message] of list)
            expect(messageOf(call), `${helper}, ${trouble}`).toMatch(message);
        }
      });
  });
}

describe("bad input of type B and distributions", () => {
  for (const [helper, make] of Object.entries(widths))
    it(helper, () => {
      expect(messageOf(() => make(1, -1))).toMatch(new RegExp(`^${helper}: .* must be .*0.*, got -1`));
      expect(messageOf(() => make(1, nan))).toMatch(new RegExp(`^${helper}: .* must be .*, got NaN`));
      expect(messageOf(() => make(nan, 1))).toMatch(
        /must be a (finite number|quantity or a finite number).*got NaN/,
      );
    });
});

it("a survey whose repeats contradict each other is told by line, and goes on where neighbours tell which is wrong", () => {
  const profile = surveyOf([...honest, [1, 0, 2.4295]]);
  const told =
    /Lines 4 and 9 read one place, station 1 in at 0.*, and contradict each other: 8 thou apart, .*Read there once more and strike the wrong one/;
  expect(profile.warnings.join("\n")).toMatch(told);
  const found = v.wearBands(profile);
  expect(found.gross.map(({ reading }) => found.profile.readings[reading]!.line)).toEqual([9]);
  // Without an angle they may have been read round the shaft: then the angle is asked for.
  const table = lengthTable(
    "station [in], diameter [in]",
    [
      [0, 2.4375],
      [0, 2.4295],
      [1, 2.4375],
    ],
    saidToRepeat,
  );
  expect(v.profileOf(table, repeated).warnings.join("\n")).toMatch(
    /Lines 3 and 4 read station 0 in without an angle, and stand 8 thou apart.*write the angle of each/,
  );
  expect(surveyOf(honest).warnings.join("\n")).not.toMatch(/contradict|without an angle/);
});

it("equal readings have the stated uncertainty of one reading, never 0", () => {
  const mean = v.meanBetween(surveyOf(honest), inch(0), inch(2));
  expectClose(mean.standardUncertainty.in("thou"), 0.1, {
    rel: 1e-12,
    because: "the u stated, rounding only",
  });
});

it("readings of one place far worse than the instrument states are told with the line farthest off", () => {
  const table = lengthTable("reading [thou]", [[1], [1.1], [0.9], [9], [1.05]], {
    remarks: ["instrument reading: mic"],
    instruments: { mic: wearMic },
  });
  expect(v.repeatabilityStudy(table).warnings.join("\n")).toMatch(/Farthest from the mean is 9 on line 6/);
});

it("no helper joins an index without rows here, or a reason", () => {
  const exported = [...Object.entries(statistics), ...Object.entries(survey)].flatMap(([name, value]) =>
    typeof value === "function" ? [name] : [],
  );
  const listed = new Set([ofStatistics, ofSurvey, widths, notAsked].flatMap(Object.keys));
  expect(exported.filter((name) => !listed.has(name))).toEqual([]);
  expect([...listed].filter((name) => !exported.includes(name))).toEqual([]);
});
