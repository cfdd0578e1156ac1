import { type Area, type Length, type Quantity, quantityFromSi } from "../quantity/index.js";

/** The families of screw thread this handbook knows. */
export type ThreadFamily = "unified" | "Whitworth" | "ISO metric";

/** A screw thread that stands in a published table or follows from a published rule. All diameters are basic sizes. */
export interface StandardThread {
  /** What the trade calls it: "1 1/2-6 UNC", "1 1/2 in BSW", "M36 × 3". */
  readonly name: string;
  /** Coarse, fine, or one pitch for many sizes: "UNC", "UNF", "8-UN", "BSW", "BSF", "metric coarse", … */
  readonly series: string;
  readonly family: ThreadFamily;
  /** Outside diameter of the bolt's thread. */
  readonly majorDiameter: Length;
  /** From one crest to the next, along the axis. */
  readonly pitch: Length;
  /** Whole or half threads in an inch; undefined for a metric thread. */
  readonly threadsPerInch: number | undefined;
  /** Included angle between the flanks [°]: 55 or 60. */
  readonly flankAngle: 55 | 60;
  readonly pitchDiameter: Length;
  /** At the root of the bolt's thread, the deepest that any edition of its standard cuts it. */
  readonly rootDiameter: Length;
  /** The section a pull is reckoned on. */
  readonly stressArea: Area;
  readonly source: string;
}

/** What tells one thread from another of its form. */
export interface ThreadSize {
  readonly name: string;
  readonly series: string;
  readonly majorDiameter: Length;
  readonly pitch: Length;
  readonly threadsPerInch: number | undefined;
  readonly source: string;
}

/** The form of a thread's profile: how far its diameters lie apart, in pitches. */
interface ThreadForm {
  readonly family: ThreadFamily;
  readonly flankAngle: 55 | 60;
  /** Major diameter less pitch diameter, in pitches [-]. */
  readonly toPitch: number;
  /** Major diameter less root diameter, in pitches [-]. */
  readonly toRoot: number;
  /** Major diameter less the diameter of the stress area, in pitches [-]. */
  readonly toStress: number;
}

const forms: { readonly [F in ThreadFamily]: ThreadForm } = {
  unified: { family: "unified", flankAngle: 60, toPitch: 0.649519, toRoot: 1.299038, toStress: 0.9743 },
  Whitworth: {
    family: "Whitworth",
    flankAngle: 55,
    toPitch: 0.640327,
    toRoot: 1.280654,
    toStress: (0.640327 + 1.280654) / 2,
  },
  "ISO metric": {
    family: "ISO metric",
    flankAngle: 60,
    toPitch: 0.649519,
    toRoot: 1.226869,
    toStress: (0.649519 + 1.226869) / 2,
  },
};

/**
 * A thread of one of the three forms, its diameters from major diameter and pitch.
 *
 * unified: d2 = d − 0.649519 p, root d − 1.299038 p, As = π/4 (d − 0.9743 p)²
 * Whitworth: d2 = d − 0.640327 p, root d − 1.280654 p, As = π/4 ((d2 + root)/2)²
 * ISO metric: d2 = d − 0.649519 p, root d − 1.226869 p, As = π/4 ((d2 + root)/2)²
 *
 * Valid when: the thread has its full form. Of the roots that editions of the unified standard print, this is the
 * deepest (the flat root of the American National form), so a stud is never taken for thicker than it is.
 * Diameters are basic sizes, without tolerance.
 *
 * @param family  whose form it has [-]
 * @param size  its name and series, major diameter d [m], pitch p [m]
 * @returns the thread; diameters [m], stress area [m²]
 * @throws RangeError  major diameter or pitch is not more than 0, or no core is left
 * @example threadOfForm("unified", { name: "3/4-16 UNF", series: "UNF", majorDiameter: inch(0.75), pitch: inch(1 / 16), threadsPerInch: 16, source: "" }).stressArea.in("inch2") // 0.373
 * @source ASME B1.1 (stress area and pitch diameter); American National form, depth 0.6495 p (from memory);
 * BS 84, depth 0.640327 p; ISO 724 and ISO 898-1 (from memory)
 */
export function threadOfForm(family: ThreadFamily, size: ThreadSize): StandardThread {
  const { majorDiameter, pitch } = size;
  if (!(pitch.si > 0)) throw new RangeError(`threadOfForm: pitch must be more than 0, got ${pitch}`);
  const { flankAngle, toPitch, toRoot, toStress } = forms[family];
  const less = (pitches: number): Length => majorDiameter.minus(pitch.times(pitches));
  const rootDiameter = less(toRoot);
  if (!(rootDiameter.si > 0))
    throw new RangeError(
      `threadOfForm: a thread needs a core, so the major diameter must be more than ${pitch.times(toRoot)}, got ${majorDiameter}`,
    );
  return Object.freeze({
    ...size,
    family,
    flankAngle,
    pitchDiameter: less(toPitch),
    rootDiameter,
    stressArea: circle(less(toStress)),
  });
}

function circle(diameter: Quantity<"length">): Area {
  return quantityFromSi(
    "area",
    (Math.PI / 4) * diameter.si ** 2,
    diameter.writtenIn === "inch" ? "inch2" : "mm2",
  );
}
