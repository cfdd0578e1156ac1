import { join } from "node:path";
import { expectCells } from "../support/expect-cells.js";

const folder = join(__dirname, "..", "..", "kernel-helpers", "quantity");
const names =
  "inch, mm, lbf, rpm, hertz, lbfFoot, degF, deltaF, pound, second, radian, psi, inch2, measured, quantityFromSi";
const types =
  "Power, Length, Area, Force, Pressure, RotationalSpeed, Torque, Density, Measured, Quantity, Temperature";
const cell = (code: string): string =>
  `import { ${names} } from "./index.js";\nimport type { ${types} } from "./index.js";\n${code}\nexport {};`;

/** What must not compile, and the words that must stand in the message. */
const wrong = {
  "length plus force": ["inch(1).plus(lbf(2));", '"force"', '"length"'],
  "mass for a force": ["const f: Force = pound(2);", '"mass"', '"force"'],
  "temperature plus temperature": ["degF(1).plus(degF(2));", "Temperature", '"temperature difference"'],
  "difference for a temperature": [
    "const t: Temperature = deltaF(2);",
    '"temperature difference"',
    "Temperature",
  ],
  "rotational speed minus frequency": ["rpm(1).minus(hertz(2));", '"frequency"', '"rotational speed"'],
  "torque as power": ["const p: Power = lbfFoot(1);", '"torque or energy"', "Power"],
  "torque times rotational speed as torque": [
    "const t: Torque = lbfFoot(1).times(rpm(2));",
    '"power"',
    '"torque or energy"',
  ],
  "turns per time as frequency": [
    'const f: Quantity<"frequency"> = radian(1).over(second(2));',
    '"rotational speed"',
    '"frequency"',
  ],
  "length less than force": ["export const x = inch(1) < lbf(2);", '"length"', '"force"'],
  "length less than number": ["export const x = inch(1) < 2;", '"length"', "number"],
  "length plus sign length": ["export const x = inch(1) + inch(2);", "'+'", '"length"'],
  "length in pounds-force": ['inch(1).in("lbf");', '"lbf"', '"length"'],
  "length as pressure": ['inch(1).as("psi");', '"psi"', '"length"'],
  "number without unit": ["inch(1).plus(2);", "number", '"length"'],
  "text as a number": ['inch("2 7/16");', "string", "number"],
  "ratio as a length": ["const l: Length = inch(1).over(inch(2));", "number", "Length"],
  "area as a length": ["const l: Length = inch(1).times(inch(2));", '"area"', "Length"],
  "uncertainty of another kind": ["measured(inch(1), lbf(2));", '"force"', '"length"'],
  "SI value in a unit of another kind": ['quantityFromSi("length", 1, "psi");', '"psi"', '"length"'],
  "temperature as a factor": ["inch(1).times(degF(1));", "Temperature", "number"],
} as const;

const right = {
  sums: "const l: Length = inch(1).plus(mm(2)).minus(inch(0.5)).times(3).over(2).absolute();",
  kinds: `const a: Area = inch(1).times(mm(2));
    const p: Pressure = lbf(1).over(a);
    const t: Torque = lbf(1).times(inch(2));
    const w: Power = t.times(rpm(200));
    const w2: Power = lbf(1).times(inch(2).over(second(3)));
    const n: RotationalSpeed = w.over(t).times(radian(1)).over(radian(1)).times(radian(1));
    const n2: RotationalSpeed = radian(1).over(second(2));
    const d: Density = pound(1).over(inch(1).times(inch(1)).times(inch(1)));
    const l: Length = inch2(4).squareRoot();
    const back: Force = psi(2).times(inch2(3));`,
  numbers: `const ratio: number = inch(1).over(mm(2));
    const growth: number = deltaF(100).times(deltaF(1)).over(deltaF(1)).over(deltaF(1));
    const unnamed = psi(1).times(psi(2)).over(psi(2)).in("psi");`,
  temperatures: `const t: Temperature = degF(400).minus(deltaF(20)).plus(deltaF(1));
    const rise: number = degF(400).minus(degF(68)).in("deltaF");
    const hotter: boolean = degF(400) > degF(68);`,
  comparing: "const smaller: boolean = inch(1) < mm(30) && rpm(1) >= rpm(1);",
  measuring:
    "const m: Measured<Length> = measured(inch(1), inch(0.1), 9); const r: Measured<number> = measured(1, 0.1);",
  writing: "const unit = inch(1).writtenIn; const again: Length = quantityFromSi('length', 1, unit);",
} as const;

expectCells("quantities", folder, cell, wrong, right);
