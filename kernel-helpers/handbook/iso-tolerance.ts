import { formatNumber, type Length, quantityFromSi } from "../quantity/index.js";
import { isoDeviations, isoGrades, isoSteps, type TabledLetter } from "./iso-tolerance-rows.js";

/** A tolerance zone of ISO 286 on a nominal size. Deviations are ON DIAMETER, from the nominal. */
export interface IsoZone {
  readonly kind: "tolerance zone";
  /** e.g. "h7", "H7". */
  readonly name: string;
  readonly of: "shaft" | "hole";
  readonly nominal: Length;
  /** Upper and lower deviation from the nominal: es, ei of a shaft, ES, EI of a hole. */
  readonly upper: Length;
  readonly lower: Length;
  readonly largest: Length;
  readonly smallest: Length;
  readonly source: string;
}

/** A hole and a shaft of one nominal size. */
export interface IsoFit {
  readonly kind: "standard fit";
  readonly name: string;
  readonly hole: IsoZone;
  readonly shaft: IsoZone;
  /** DIAMETRAL clearance, hole less shaft, from least to most; below 0 it is an interference. */
  readonly least: Length;
  readonly most: Length;
  readonly type: "clearance" | "transition" | "interference";
}

const source = "ISO 286-1:2010, tables 1 to 5 (IT5 to IT11 read in a public reprint, the rest from memory)";
const letters = [...Object.keys(isoDeviations), "h", "js"].sort();

/**
 * The standard tolerance of ISO 286, the width of a zone, ON DIAMETER.
 *
 * Valid when: nominal over 0 up to 500 mm.
 *
 * @param nominal  diameter [m]
 * @param grade  1 to 18, for IT1 to IT18
 * @returns the width [m]
 * @throws RangeError  the size or the grade is outside
 * @example isoTolerance(mm(60), 7).in("micrometre") // 30
 * @source ISO 286-1:2010, table 1 (IT5 to IT11 read in a public reprint, the others from memory)
 */
export function isoTolerance(nominal: Length, grade: number): Length {
  const row = Object.hasOwn(isoGrades, grade) ? isoGrades[grade] : undefined;
  if (row === undefined) throw new RangeError(`isoTolerance: grade must be 1 to 18, got ${grade}`);
  return micrometresOf(row[stepOf("isoTolerance", nominal)]!, nominal);
}

/**
 * A tolerance zone of ISO 286 by its name: a small letter for a shaft, a capital for a hole, and the grade.
 *
 * Shaft, above the nominal (k to s): lower deviation from the table, upper = lower + IT. Below (a to g): upper from the
 * table, lower = upper − IT. h: 0 and −IT. js: ± IT/2. k beyond grades 4 to 7: 0. A hole lies opposite its shaft,
 * EI = −es for A to H; for K, M, N up to IT8 and P, R, S up to IT7, over 3 mm, ES = −ei + Δ with Δ = ITn − ITn₋₁; M6
 * over 250 to 315 mm: −9 µm.
 *
 * Valid when: nominal up to 500 mm; letters a to g, h, js, k, m, n, p, r, s; no a, b below 1 mm.
 *
 * @param nominal  diameter [m]
 * @param name  e.g. "h7", "f7", "H7"
 * @returns deviations and limits, ON DIAMETER [m]
 * @throws RangeError  no such zone here, or a size outside
 * @example isoZone(mm(60), "f7").smallest.in("mm") // 59.94
 * @source ISO 286-1:2010, tables 1 to 5 and 4.3.2.5 (delta rule) (from memory but IT5 to IT11)
 */
export function isoZone(nominal: Length, name: string): IsoZone {
  const parts = /^([a-z]{1,2}|[A-Z]{1,2})([1-9]|1[0-8])$/.exec(name.trim());
  const letter = parts?.[1] ?? "";
  if (parts === null || !letters.includes(letter.toLowerCase()))
    throw new RangeError(
      `isoZone: must be a letter (${letters.join(", ")}; capitals for a hole) and a grade 1 to 18, e.g. "h7", got "${name}"`,
    );
  const grade = Number(parts[2]);
  const width = isoTolerance(nominal, grade).in("micrometre");
  const hole = letter === letter.toUpperCase();
  const [low, high] = hole
    ? holeZone(nominal, letter.toLowerCase(), grade, width)
    : shaftZone(nominal, letter, grade, width);
  const [lower, upper] = [micrometresOf(low, nominal), micrometresOf(high, nominal)];
  return Object.freeze<IsoZone>({
    kind: "tolerance zone",
    name: `${letter}${grade}`,
    of: hole ? "hole" : "shaft",
    nominal,
    upper,
    lower,
    largest: nominal.plus(upper),
    smallest: nominal.plus(lower),
    source,
  });
}

/**
 * A fit of ISO 286: DIAMETRAL clearance between the tightest and the loosest pair; below 0 an interference.
 *
 * Valid when: as `isoZone`.
 *
 * @param nominal  diameter [m]
 * @param name  hole then shaft, e.g. "H7/f7"
 * @returns both zones, least and most clearance [m], and the type of fit
 * @throws RangeError  the name is not a hole and a shaft, or as `isoZone`
 * @example isoFit(mm(60), "H7/f7").most.in("micrometre") // 90
 * @source ISO 286-1:2010 (see `isoZone`)
 */
export function isoFit(nominal: Length, name: string): IsoFit {
  const [first, second, ...more] = name.split("/").map((part) => part.trim());
  if (first === undefined || second === undefined || more.length > 0)
    throw new RangeError(`isoFit: must be a hole and a shaft, e.g. "H7/f7", got "${name}"`);
  const [hole, shaft] = [isoZone(nominal, first), isoZone(nominal, second)];
  if (hole.of !== "hole" || shaft.of !== "shaft")
    throw new RangeError(`isoFit: the hole's capital stands first, e.g. "H7/f7", got "${name}"`);
  const [least, most] = [hole.lower.minus(shaft.upper), hole.upper.minus(shaft.lower)];
  return Object.freeze<IsoFit>({
    kind: "standard fit",
    name: `${hole.name}/${shaft.name}`,
    hole,
    shaft,
    least,
    most,
    type: least.si >= -1e-12 ? "clearance" : most.si <= 1e-12 ? "interference" : "transition",
  });
}

/** Lower and upper deviation of a shaft [µm]. */
function shaftZone(nominal: Length, letter: string, grade: number, width: number): [number, number] {
  if (letter === "h") return [-width, 0];
  if (letter === "js") return [-width / 2, width / 2];
  const deviation = deviationOf(nominal, letter);
  if (letter < "h") return [-deviation - width, -deviation];
  const lower = letter === "k" && (grade < 4 || grade > 7) ? 0 : deviation;
  return [lower, lower + width];
}

/** Lower and upper deviation of a hole [µm]. */
function holeZone(nominal: Length, letter: string, grade: number, width: number): [number, number] {
  if (letter === "h") return [0, width];
  if (letter === "js") return [-width / 2, width / 2];
  const deviation = deviationOf(nominal, letter);
  if (letter < "h") return [deviation, deviation + width];
  const size = nominal.in("mm");
  const most = letter <= "n" ? 8 : 7;
  if (letter === "k" && grade > 8 && size > 3)
    throw new RangeError(`isoZone: K is given up to grade 8 only, got K${grade}`);
  if (letter === "n" && grade > 8 && size > 3) return [-width, 0];
  const delta = grade >= 3 && grade <= most && size > 3 ? width - stepWidth(nominal, grade - 1) : 0;
  const upper = letter === "m" && grade === 6 && size > 250 && size <= 315 ? -9 : -deviation + delta;
  return [upper - width, upper];
}

function stepWidth(nominal: Length, grade: number): number {
  return isoGrades[grade]![stepOf("isoZone", nominal)]!;
}

function deviationOf(nominal: Length, letter: string): number {
  const size = millimetres(nominal);
  if ((letter === "a" || letter === "b") && size < 1)
    throw new RangeError(`isoZone: ${letter} is not used below 1 mm, got ${nominal}`);
  return isoDeviations[letter as TabledLetter].find(([end]) => size <= end)![1];
}

function stepOf(caller: string, nominal: Length): number {
  const size = millimetres(nominal);
  const at = size > 0 ? isoSteps.findIndex((end) => size <= end) : -1;
  if (at < 0)
    throw new RangeError(
      `${caller}: nominal must be over 0 up to 500 mm, got ${nominal} (${formatNumber(size)} mm)`,
    );
  return at;
}

/** Without the last bits, so that 80 mm is not over 80 mm. */
function millimetres(length: Length): number {
  return Number((length.si * 1000).toPrecision(12));
}

function micrometresOf(value: number, like: Length): Length {
  const inchShop = like.writtenIn === "inch" || like.writtenIn === "thou" || like.writtenIn === "foot";
  return quantityFromSi("length", value * 1e-6, inchShop ? "thou" : "micrometre");
}
