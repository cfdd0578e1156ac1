import { isQuantity, type Length, quantityFromSi } from "../../quantity/index.js";
import type { CornerRadius, ShaftFeature, StressConcentration, StressPeak } from "./feature-types.js";
import { notchFit, notchFits, rangeOfFits } from "./notch-fits.js";

const where = "stressConcentration";
const peterson = "Peterson's Stress Concentration Factors, 3rd edition, 2008";
const shigley = "Shigley & Nisbett, Mechanical Engineering Design, 9th edition";

/**
 * Relative standard uncertainty of the fatigue factor by feature: the coefficients of variation of Shigley's table 6-15
 * (from memory); for keyseats and hubs, which it leaves out, that of a groove (common practice, no source).
 */
const scatter = { hole: 0.1, shoulder: 0.11, groove: 0.15, seat: 0.15 } as const;

/** Torsion of steep shoulders: K_ts = A (r/d)^b by D/d. */
const steepTorsion: readonly (readonly [ratio: number, a: number, b: number])[] = [
  [1.09, 0.90337, -0.12692],
  [1.2, 0.83425, -0.21649],
  [1.33, 0.84897, -0.23161],
  [2, 0.86331, -0.23865],
];

/**
 * How much a feature of a shaft raises the stress, in bending and in torsion, with the range in which the published
 * numbers hold.
 *
 * shoulder, groove: K_t = Σ C_i (2t/D)^i, C_i = a + b √(t/r) + c t/r, nominal stress of the smaller diameter; for t/r
 * below the charts K_t − 1 goes down with √(t/r). Keyseat: corner 1.426 + 0.1643 z − 0.0019 z² in bending,
 * 1.953 + 0.1434 z − 0.0021 z² in torsion, z = 0.1 d/r; end of an end-milled seat 1.6 and 3.4. Hole:
 * 3 − 6.69x + 44.74x² − 53.31x³ in bending, (4 − 6.06x + 32.76x² − 38.33x³)/√3 in torsion, x = hole over diameter, of
 * the whole section. Hub with a press fit or a key: fatigue factors of DIN 743, see `fatigueFactors`.
 *
 * Valid when: one feature at the place; two that meet (a keyseat that runs into a fillet) are worse than either. Torsion
 * is given so that √3 times factor times nominal shear is the von Mises stress.
 *
 * @param feature   what is at the place
 * @param diameter  of the place [m], > 0
 * @returns the stress peaks with their factors [-], the range and the source
 * @throws RangeError  an impossible shape, or one outside the published range
 * @throws TypeError   a radius or size is missing: the message offers the assumption by name
 * @example stressConcentration({ shape: "shoulder", larger: inch(1.65), fillet: inch(0.11) }, inch(1.1)).peaks[0].bending // 1.743
 * @source W. D. Pilkey & D. F. Pilkey, Peterson's Stress Concentration Factors, 3rd edition, 2008, charts 2.41, 2.47,
 * 3.10, 3.12 (read), 5.1 (coefficients read in a public copy); hole: Pilkey, Formulas for Stress, Strain, and
 * Structural Matrices, table 6-1 (from memory); steep shoulders in torsion: R. L. Norton, Machine Design, figure C-3
 * (from memory); sharp corners and sled runners: Shigley & Nisbett, 9th edition, table 7-1 (from memory)
 */
export function stressConcentration(feature: ShaftFeature, diameter: Length): StressConcentration {
  return concentrationAs(feature, diameter, (peaks, rest) =>
    Object.freeze<StressConcentration>({
      kind: "stress concentration",
      feature: Object.freeze({ ...feature }),
      diameter,
      peaks: Object.freeze(peaks.map((peak) => Object.freeze(peak))),
      fromFatigueTests: feature.shape === "press-fitted hub" || feature.shape === "keyed hub",
      ...rest,
      warnings: Object.freeze([...(rest.warnings ?? [])]),
    }),
  );
}

/** The peaks alone, for whoever asks ten thousand times; none where fatigue tests tell. See `stressConcentration`. */
export function stressPeaks(feature: ShaftFeature, diameter: Length): readonly StressPeak[] {
  return concentrationAs(feature, diameter, (peaks) => peaks);
}

function concentrationAs<Result>(feature: ShaftFeature, diameter: Length, made: Made<Result>): Result {
  requireLength("diameter", diameter);
  switch (feature?.shape) {
    case "plain":
      return made([{ at: "the surface", bending: 1, torsion: 1, radius: undefined }], {
        range: "any diameter",
        source: "by definition",
        relativeUncertainty: 0,
      });
    case "shoulder":
      return shoulder(feature, diameter, made);
    case "groove":
      return groove(feature, diameter, made);
    case "keyseat":
      return keyseat(feature, diameter, made);
    case "transverse hole":
      return hole(feature, diameter, made);
    case "press-fitted hub":
    case "keyed hub":
      if (feature.shape === "keyed hub" && ![undefined, 1, 2].includes(feature.keys))
        throw new RangeError(`${where}: keys must be 1 or 2, got ${String(feature.keys)}`);
      return made([], {
        range: "tensile strength 400 to 1200 MPa; below, as at 400",
        source: "DIN 743-2, table of measured notch factors (read in public copies of the formula)",
        relativeUncertainty: scatter.seat,
      });
    default:
      throw new TypeError(
        `${where}: shape must be "plain", "shoulder", "groove", "keyseat", "transverse hole", "press-fitted hub" or "keyed hub", got ${JSON.stringify((feature as { shape?: unknown })?.shape)}`,
      );
  }
}

type Made<Result> = (
  peaks: readonly StressPeak[],
  rest: Pick<StressConcentration, "range" | "source" | "relativeUncertainty"> &
    Partial<Pick<StressConcentration, "warnings">>,
) => Result;
type Of<S extends ShaftFeature["shape"]> = Extract<ShaftFeature, { shape: S }>;

function shoulder<Result>({ larger, fillet }: Of<"shoulder">, diameter: Length, made: Made<Result>): Result {
  requireLength("larger", larger);
  const [d, big] = [diameter.si, larger.si];
  if (!(big > d))
    throw new RangeError(
      `${where}: a shoulder's larger diameter must be above the place's (${diameter}), got ${larger}`,
    );
  if (fillet === "sharp corner")
    return made([{ at: "the corner", bending: 2.7, torsion: 2.2, radius: undefined }], {
      range: "first estimate for a fillet of about 0.02 of the diameter, no relief for notch sensitivity",
      source: `${shigley}, table 7-1 (from memory)`,
      relativeUncertainty: scatter.shoulder,
      warnings: ["The fillet is taken as a sharp corner. A radius gauge or a wax print tells what it is."],
    });
  const radius = requireCorner("fillet", fillet);
  const depth = (big - d) / 2;
  const steepest = depth / radius;
  const bending = atDepth("shoulder", "bending", depth, radius, big);
  const torsion =
    steepest > rangeOfFits(notchFits.shoulder.torsion)[1]
      ? steepShoulder(big / d, radius / d)
      : atDepth("shoulder", "torsion", depth, radius, big);
  return made([{ at: "the fillet", bending, torsion, radius: fillet as Length }], {
    range: "step depth over fillet radius up to 20",
    source: `${peterson}, charts 3.10 and 3.12; fits and charts of other books differ by 4 to 8 %`,
    relativeUncertainty: scatter.shoulder,
  });
}

function steepShoulder(ratio: number, radiusRatio: number): number {
  const [first, last] = [steepTorsion[0]!, steepTorsion.at(-1)!];
  if (ratio < first[0] || radiusRatio < 0.01)
    throw new RangeError(
      `${where}: torsion at a step this sharp stands in no chart known here (diameters in ratio ${ratio.toFixed(3)}, fillet ${radiusRatio.toFixed(4)} of the diameter); take fillet: "sharp corner"`,
    );
  const at = (row: (typeof steepTorsion)[number]): number => row[1] * radiusRatio ** row[2];
  if (ratio >= last[0]) return at(last);
  const above = steepTorsion.findIndex(([r]) => r > ratio);
  const [low, high] = [steepTorsion[above - 1]!, steepTorsion[above]!];
  return at(low) + ((ratio - low[0]) / (high[0] - low[0])) * (at(high) - at(low));
}

function groove<Result>({ outside, radius }: Of<"groove">, diameter: Length, made: Made<Result>): Result {
  requireLength("outside", outside);
  if (!(outside.si > diameter.si))
    throw new RangeError(
      `${where}: a groove's outside diameter must be above the place's (${diameter}), got ${outside}`,
    );
  const r = requireCorner("radius", radius, false);
  const depth = (outside.si - diameter.si) / 2;
  return made(
    [
      {
        at: "the floor of the groove",
        bending: atDepth("groove", "bending", depth, r, outside.si),
        torsion: atDepth("groove", "torsion", depth, r, outside.si),
        radius,
      },
    ],
    {
      range: "groove depth over radius up to 50",
      source: `${peterson}, charts 2.41 and 2.47; formulas of other books differ by up to 8 %`,
      relativeUncertainty: scatter.groove,
    },
  );
}

/** A fit, and below its range the fall to 1 of a notch that grows shallow: K_t − 1 with √(t/r). */
function atDepth(
  feature: "shoulder" | "groove",
  load: "bending" | "torsion",
  depth: number,
  radius: number,
  larger: number,
): number {
  const fits = notchFits[feature][load];
  const [from, to] = rangeOfFits(fits);
  const steep = depth / radius;
  const x = (2 * depth) / larger;
  if (steep > to)
    throw new RangeError(
      `${where}: the ${feature} is sharper than the chart: depth over radius ${steep.toFixed(1)}, at most ${to}${feature === "shoulder" ? '; measure the fillet again or take fillet: "sharp corner"' : ""}`,
    );
  if (steep < from) return 1 + Math.max(0, notchFit(fits, from, x) - 1) * Math.sqrt(steep / from);
  return Math.max(1, notchFit(fits, steep, x));
}

function keyseat<Result>({ ends, corner }: Of<"keyseat">, diameter: Length, made: Made<Result>): Result {
  if (ends !== "end-milled" && ends !== "sled-runner")
    throw new TypeError(
      `${where}: ends of a keyseat must be "end-milled" (half round seen from above) or "sled-runner" (runs out), got ${JSON.stringify(ends)}`,
    );
  // The charts are of seats a quarter of the diameter wide: the half round end has half of that.
  const endRadius = quantityFromSi("length", diameter.si / 8, diameter.writtenIn);
  const end: StressPeak[] =
    ends === "end-milled"
      ? [{ at: "the end of the seat, at the surface", bending: 1.6, torsion: 3.4, radius: endRadius }]
      : [];
  const shape = {
    range:
      "seat a quarter of the diameter wide and an eighth deep; corner radius 0.005 to 0.04 of the diameter",
    relativeUncertainty: scatter.seat,
  };
  if (corner === "sharp corner")
    return made(
      [
        ...end,
        {
          at: "the corner of the floor",
          bending: ends === "end-milled" ? 2.14 : 1.7,
          torsion: 3,
          radius: undefined,
        },
      ],
      {
        ...shape,
        source: `${shigley}, table 7-1 (from memory); ${peterson}, chart 5.1`,
        warnings: [
          "The corner of the keyseat is taken as sharp: first estimates, with no relief for notch sensitivity. A radius gauge or a wax print tells what it is.",
        ],
      },
    );
  const radius = requireCorner("corner", corner);
  const ratio = radius / diameter.si;
  if (ratio < 0.005 || ratio > 0.04)
    throw new RangeError(
      `${where}: the corner radius of a keyseat must be from 0.005 to 0.04 of the diameter (${diameter}), got ${corner}; take corner: "sharp corner" for a sharper one, 0.04 of the diameter for a rounder one`,
    );
  const z = 0.1 / ratio;
  return made(
    [
      ...end,
      {
        at: "the corner of the floor",
        bending: ends === "end-milled" ? 1.426 + 0.1643 * z - 0.0019 * z ** 2 : 1.7,
        torsion: 1.953 + 0.1434 * z - 0.0021 * z ** 2,
        radius: corner as Length,
      },
    ],
    {
      ...shape,
      source:
        ends === "end-milled"
          ? `${peterson}, chart 5.1`
          : `${shigley}, table 7-1 (bending, from memory); ${peterson}, chart 5.1 (torsion)`,
    },
  );
}

function hole<Result>({ hole: across }: Of<"transverse hole">, diameter: Length, made: Made<Result>): Result {
  requireLength("hole", across);
  const x = across.si / diameter.si;
  if (x > 0.4)
    throw new RangeError(
      `${where}: a hole across the shaft may be up to 0.4 of its diameter (${diameter}) here, got ${across}`,
    );
  return made(
    [
      {
        at: "the edge of the hole",
        bending: 3 - 6.69 * x + 44.739 * x ** 2 - 53.307 * x ** 3,
        torsion: (4 - 6.055 * x + 32.764 * x ** 2 - 38.33 * x ** 3) / Math.sqrt(3),
        radius: across.over(2),
      },
    ],
    {
      range: "hole up to 0.4 of the diameter, through the axis; of the whole section",
      source: "Pilkey, Formulas for Stress, Strain, and Structural Matrices, table 6-1 (from memory)",
      relativeUncertainty: scatter.hole,
    },
  );
}

function requireLength(field: string, value: Length): void {
  if (!isQuantity(value, "length"))
    throw new TypeError(`${where}: ${field} must be a length with its unit, got ${String(value)}`);
  if (!(value.si > 0)) throw new RangeError(`${where}: ${field} must be more than 0, got ${value}`);
}

function requireCorner(field: string, value: CornerRadius | undefined, mayBeSharp = true): number {
  const offer = mayBeSharp ? `; where nobody can measure it, assume by name ${field}: "sharp corner"` : "";
  if (!isQuantity(value, "length"))
    throw new TypeError(`${where}: ${field} must be a radius with its unit, got ${String(value)}${offer}`);
  if (!(value.si > 0)) throw new RangeError(`${where}: ${field} must be more than 0, got ${value}${offer}`);
  return value.si;
}
