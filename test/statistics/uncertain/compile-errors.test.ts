import { join } from "node:path";
import { expectCells } from "../../support/expect-cells.js";

const folder = join(__dirname, "..", "..", "..", "kernel-helpers", "statistics");
const cell = (code: string): string =>
  `import { inch, mm, lbf, rpm, lbfFoot, degree, measured, type Area, type Length, type Measured, type Pressure } from "../quantity/index.js";
import { budget, correlated, exactly, fromReadings, monteCarlo, normalAbout, propagate, rectangularAbout, uncertain, type Uncertain } from "./index.js";
const bore = uncertain(measured(inch(2.44), inch(0.001)), "bore");
const load = uncertain(measured(lbf(100), lbf(1)), "load");
const ratio = uncertain(measured(0.5, 0.01), "ratio");
${code}
export {};`;

/** What must not compile, and words that must stand in the message. */
const wrong = {
  "length plus force": ["bore.plus(load);", '"force"', '"length"'],
  "length minus exact force": ["bore.minus(lbf(1));", '"force"', '"length"'],
  "length plus number": ["bore.plus(1);", "number", '"length"'],
  "number plus length": ["ratio.plus(inch(1));", '"length"', "number"],
  "area as a length": ['const l: Uncertain<"length"> = bore.times(bore);', '"area"', '"length"'],
  "ratio as a length": ['const l: Uncertain<"length"> = bore.over(inch(1));', '"number"', '"length"'],
  "sine of a length": ["bore.sin();", '"length"', '"angle"'],
  "exponent of a force": ["load.exp();", '"force"', '"number"'],
  "power of a length": ["bore.power(2);", '"length"', '"number"'],
  "length in pounds-force": ['bore.as("lbf");', '"lbf"', '"length"'],
  "measured force for a length": ["const m: Measured<Length> = load.toMeasured();", '"force"', "Length"],
  "exact for uncertain": ['const l: Uncertain<"length"> = inch(1);', '"length"', "Uncertain"],
  "uncertain for exact": ["const l: Length = bore;", "Uncertain", "Quantity"],
  "source without a name": ["uncertain(measured(inch(1), inch(0.1)));", "argument"],
  "budget of a measured value": ["budget(measured(inch(1), inch(0.1)));", "Measured", "AnyUncertain"],
  "distribution of two kinds": ["normalAbout(inch(1), lbf(1));", '"force"', '"length"'],
  "propagated as another kind": [
    'const l: Uncertain<"length"> = propagate((x) => x.bore.times(x.bore), { bore });',
    '"area"',
    '"length"',
  ],
  "input that is not there": ["propagate((x) => x.boer, { bore });", "boer"],
  "simulation without a seed": [
    "monteCarlo((x) => x.bore, { bore: measured(inch(1), inch(1)) }, {});",
    "seed",
  ],
} as const;

const right = {
  sums: 'const l: Uncertain<"length"> = bore.plus(mm(2)).minus(bore).times(3).over(2).absolute().as("thou");',
  kinds: `const a: Uncertain<"area"> = bore.times(bore);
    const p: Uncertain<"pressure"> = load.over(bore.times(inch(2)));
    const w: Uncertain<"power"> = exactly(lbfFoot(3)).times(rpm(200));
    const l: Uncertain<"length"> = a.squareRoot();
    const value: Length = bore.value;
    const u: Pressure = p.standardUncertainty;
    const m: Measured<Area> = a.toMeasured();`,
  numbers: `const n: Uncertain<"number"> = bore.over(bore).times(ratio).exp().log().power(ratio).plus(1);
    const value: number = n.value;
    const m: Measured<number> = n.toMeasured();
    const angle: Uncertain<"angle"> = ratio.atan();
    const s: Uncertain<"number"> = angle.sin().plus(exactly(degree(3)).cos()).plus(ratio.tan());
    const l: Uncertain<"length"> = ratio.times(bore);`,
  correlation: `const { a, n } = correlated({ a: measured(mm(1), mm(1)), n: measured(2, 1) }, [["a", "n", 0.5]]);
    const l: Uncertain<"length"> = a.times(n);`,
  propagation: `const p: Uncertain<"pressure"> = propagate((x) => x.load.over(x.bore.times(x.bore)).times(x.k), { load, bore, k: 2 });
    const n: Uncertain<"number"> = propagate((x) => Math.sin(x.r) + x.k, { r: measured(1, 0.1), k: 2 });
    const mixed: Uncertain<"length"> = propagate((x) => bore.times(x.r), { r: rectangularAbout(1, 0.1) });`,
  simulation: `const a = monteCarlo((x) => x.l.times(x.l), { l: rectangularAbout(mm(1), mm(0.1)) }, { seed: 1 });
    const high: Area = a.shortest.high;
    const u: number = monteCarlo((x) => x.r * 2, { r: measured(1, 0.1) }, { seed: 1 }).standardUncertainty;`,
  budgets: "const share: number = budget(bore.minus(inch(1)), { title: 'clearance' }).rows[0]!.share;",
  readings: "const m: Measured<Length> = fromReadings([inch(1), mm(26)]);",
} as const;

expectCells("uncertain values", folder, cell, wrong, right);
