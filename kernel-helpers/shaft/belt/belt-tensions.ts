import { type Force, type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";
import { quantitiesOf, type Table, textOf } from "../../survey/index.js";
import { carriedInput, type MaybeMeasured } from "../carried/carried-input.js";
import { carry } from "../carried/carry.js";

/** How belts at rest were pulled aside. */
export interface BeltTensionsOptions {
  /** By belt: length of a straight part, from where it leaves one pulley to where it meets the other. */
  readonly spans: Readonly<Record<string, MaybeMeasured<Length>>>;
  /** Standard uncertainty of one reading of the dip. */
  readonly dipUncertainty: Length;
  /** Standard uncertainty of one reading of the force. */
  readonly forceUncertainty: Force;
  /** Force that would stretch a belt to twice its length, were it elastic so far: its modulus times its section. */
  readonly stiffness?: MaybeMeasured<Force>;
}

/** What one straight part of a belt tells. */
export interface StrandTension {
  readonly strand: string;
  readonly tension: Measured<Force>;
  /** Deepest dip the force made, over the span [-]. */
  readonly deepest: number;
  /** Readings with a force. */
  readonly readingCount: number;
}

/** Tension of a belt at rest. */
export interface BeltTension {
  readonly belt: string;
  readonly span: Length;
  readonly strands: readonly StrandTension[];
  /** Mean of its straight parts: F_i, what is to be given to `beltPulls`. */
  readonly tension: Measured<Force>;
}

/** Tensions of belts at rest, from how far a force pulls them aside. */
export interface BeltTensions {
  readonly kind: "belt tensions";
  readonly title: string;
  /** In the order of the table. */
  readonly belts: readonly BeltTension[];
  readonly stretchCounted: boolean;
  readonly warnings: readonly string[];
}

/** Deeper than this share of the span, the stretch a dip makes is told where it is not counted. */
const deep = 1 / 64;
/** Straight parts of one belt may differ by so many standard uncertainties. */
const differ = 3;

/**
 * Tension of belts at rest from the dip a force makes in the middle of a straight part.
 *
 * W = 4T·r/√(1 + 4r²) + 8S·r³, r = (dip − dip without force)/span, S the belt's modulus times its section (0 where it
 * is not given); T by least squares over the readings of a strand. The dip without force takes out the belt's own sag.
 *
 * Valid when: the machine stands and is not held by its load (rocked a little by hand), the force acts square to the
 * straight part in its middle (pulled by a spring balance, or hung where that part lies level), the belt does not creep.
 * Where S is not given the tension found is too large by 2S·r²: keep the dip below 1/64 of the span.
 *
 * @param table  columns belt, strand [text], force, dip; one row a reading, one with force 0 a strand at least
 * @param options.spans  by belt, > 0 [m]
 * @param options.dipUncertainty  standard, > 0 [m]
 * @param options.forceUncertainty  standard, > 0 [N]
 * @param options.stiffness  ≥ 0 [N]
 * @returns tension of each strand and of each belt [N], with standard uncertainties
 * @throws RangeError  a gap, a force below 0, a strand without a reading at force 0 or without one with a force, a force
 * that makes no dip, a dip that stretches the belt by more than all its tension, a belt without span
 * @example
 * const rows = ["drive,upper,0,0", "drive,upper,16,1"];
 * const bytes = new TextEncoder().encode(["belt [text],strand [text],force [lbf],dip [in]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "belt-tension", file: "belt-tension.csv" });
 * const options = { spans: { drive: inch(64) }, dipUncertainty: inch(0.02), forceUncertainty: lbf(0.2) };
 * beltTensions(table, options).belts[0].tension.value.in("lbf").toFixed(1) // "256.1"
 * @source statics of a string pulled aside; the dip of 1/64 of the span, at which the force is 1/16 of the tension:
 * usual in makers' instructions for tensioning belts, force/deflection method
 */
export function beltTensions(table: Table, options: BeltTensionsOptions): BeltTensions {
  const { dipUncertainty, forceUncertainty, stiffness } = options;
  for (const [name, value] of [
    ["dipUncertainty", dipUncertainty],
    ["forceUncertainty", forceUncertainty],
  ] as const)
    if (!(value.si > 0)) throw new RangeError(`beltTensions: ${name} must be above 0, got ${value}`);
  const readings = readingsOf(table);
  const names = [...new Set(readings.map(({ belt }) => belt))];
  const imperial = table.unitSystem !== "metric";
  const force = (si: number): Force => quantityFromSi("force", si, imperial ? "lbf" : "newton");
  const belts = names.map((belt): BeltTension => {
    const given = options.spans[belt];
    if (given === undefined)
      throw new RangeError(
        `beltTensions: ${table.file} has the belt "${belt}", but spans has only ${Object.keys(options.spans)
          .map((name) => `"${name}"`)
          .join(", ")}`,
      );
    const span = carriedInput("beltTensions", `span of "${belt}"`, given, "length", "more than 0");
    const own = readings.filter((reading) => reading.belt === belt);
    const strands = [...new Set(own.map(({ strand }) => strand))].map((strand) =>
      strandReadings(
        table,
        belt,
        strand,
        own.filter((reading) => reading.strand === strand),
      ),
    );
    const fixed = { degreesOfFreedom: Number.POSITIVE_INFINITY, unit: undefined };
    const inputs = [
      span,
      stiffness === undefined
        ? { name: "stiffness", si: 0, u: 0, ...fixed }
        : carriedInput("beltTensions", "stiffness", stiffness, "force", "0 or more"),
      ...strands.flatMap(({ strand, rows }) =>
        rows.flatMap(({ line, w, dip }) => [
          { name: `${strand} ${line} dip`, si: dip, u: dipUncertainty.si, ...fixed },
          { name: `${strand} ${line} force`, si: w, u: w === 0 ? 0 : forceUncertainty.si, ...fixed },
        ]),
      ),
    ];
    const counts = strands.map(({ rows }) => rows.length);
    const found = carry((numbers) => {
      const each = tensionsOf(numbers, counts);
      return [...each, each.reduce((sum, t) => sum + t, 0) / each.length];
    }, inputs);
    strands.forEach(({ strand }, i) => {
      if (!(found.values[i]! > 0))
        throw new RangeError(
          `beltTensions: ${table.file}: "${strand}" of "${belt}": the dips stretch a belt of this stiffness by more than its whole tension; a smaller force, or another stiffness`,
        );
    });
    const at = (k: number): Measured<Force> => measured(force(found.values[k]!), force(found.u[k]!));
    return Object.freeze({
      belt,
      span: quantityFromSi("length", span.si, (span.unit ?? (imperial ? "inch" : "mm")) as never),
      strands: Object.freeze(
        strands.map(({ strand, rows, deepest }, i) =>
          Object.freeze({
            strand,
            tension: at(i),
            deepest: deepest / span.si,
            readingCount: rows.filter(({ w }) => w > 0).length,
          }),
        ),
      ),
      tension: at(strands.length),
    });
  });
  return Object.freeze<BeltTensions>({
    kind: "belt tensions",
    title: table.name,
    belts: Object.freeze(belts),
    stretchCounted: stiffness !== undefined,
    warnings: Object.freeze(belts.flatMap((belt) => warningsOf(belt, stiffness !== undefined))),
  });
}

interface Reading {
  readonly line: number;
  readonly belt: string;
  readonly strand: string;
  readonly w: number;
  readonly dip: number;
}

function readingsOf(table: Table): readonly Reading[] {
  const [belts, strands] = [textOf(table, "belt"), textOf(table, "strand")];
  const [forces, dips] = [quantitiesOf(table, "force", "force"), quantitiesOf(table, "dip", "length")];
  return table.lines.map((line, row) => {
    const at = `beltTensions: ${table.file} line ${line}`;
    const [belt, strand, w, dip] = [belts[row], strands[row], forces[row], dips[row]];
    if (belt === undefined || belt === "" || strand === undefined || strand === "")
      throw new RangeError(`${at}: belt and strand must be named, got "${belt ?? ""}" and "${strand ?? ""}"`);
    if (w === undefined || dip === undefined)
      throw new RangeError(`${at}: a reading needs force and dip, got a gap; write 0 for no force`);
    if (w.si < 0) throw new RangeError(`${at}: force must be 0 or more, got ${w}`);
    return { line, belt, strand, w: w.si, dip: dip.si };
  });
}

function strandReadings(
  { file }: Table,
  belt: string,
  strand: string,
  rows: readonly Reading[],
): { readonly strand: string; readonly rows: readonly Reading[]; readonly deepest: number } {
  const which = `beltTensions: ${file}: "${strand}" of "${belt}"`;
  const free = rows.filter(({ w }) => w === 0);
  if (free.length === 0)
    throw new RangeError(`${which} needs its dip without a force: a row with force 0, got none`);
  if (free.length === rows.length) throw new RangeError(`${which} needs a reading with a force, got none`);
  const sag = free.reduce((sum, { dip }) => sum + dip, 0) / free.length;
  const still = rows.find(({ w, dip }) => w > 0 && !(dip > sag));
  if (still !== undefined)
    throw new RangeError(
      `beltTensions: ${file} line ${still.line}: a force must make the dip deeper than it is without one, got no more`,
    );
  return { strand, rows, deepest: Math.max(...rows.map(({ dip }) => dip)) - sag };
}

/** Span, stiffness, then dip and force of each reading, strand by strand. */
function tensionsOf(numbers: readonly number[], counts: readonly number[]): readonly number[] {
  const [span, stiffness, ...rest] = numbers as [number, number, ...number[]];
  let from = 0;
  return counts.map((count) => {
    const rows = Array.from({ length: count }, (_, i) => [
      rest[from + 2 * i]!,
      rest[from + 2 * i + 1]!,
    ]) as readonly (readonly [number, number])[];
    from += 2 * count;
    const free = rows.filter(([, w]) => w === 0);
    const sag = free.reduce((sum, [dip]) => sum + dip, 0) / free.length;
    let [over, under] = [0, 0];
    for (const [dip, w] of rows) {
      if (w === 0) continue;
      const r = (dip - sag) / span;
      const x = (4 * r) / Math.sqrt(1 + 4 * r * r);
      over += x * (w - 8 * stiffness * r ** 3);
      under += x * x;
    }
    return over / under;
  });
}

function warningsOf({ belt, strands }: BeltTension, stretchCounted: boolean): string[] {
  const [first, second] = strands;
  const apart =
    first !== undefined &&
    second !== undefined &&
    Math.abs(first.tension.value.si - second.tension.value.si) >
      differ * Math.hypot(first.tension.standardUncertainty.si, second.tension.standardUncertainty.si);
  return [
    ...(strands.length === 1
      ? [
          `Of "${belt}" one straight part was read: the other may hold more or less, the load may still pull. Rock the machine by hand and read both.`,
        ]
      : []),
    ...(apart
      ? [
          `The straight parts of "${belt}" differ by more than their uncertainty: the load still pulls at rest. Their mean holds all the same.`,
        ]
      : []),
    ...(!stretchCounted && strands.some(({ deepest }) => deepest > deep)
      ? [
          `"${belt}" was pulled aside by more than 1/64 of its span, and its stretch is not counted: it reads too tight.`,
        ]
      : []),
  ];
}
