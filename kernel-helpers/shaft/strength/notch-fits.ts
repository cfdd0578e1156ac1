/**
 * Published curve fits of Peterson's charts for steps and grooves in round bars:
 * K_t = C₁ + C₂ x + C₃ x² + C₄ x³ with x = 2t/D, each C = a + b √(t/r) + c t/r; t is the depth, r the radius,
 * D the larger diameter, and the nominal stress that of the smaller.
 *
 * @source W. D. Pilkey & D. F. Pilkey, Peterson's Stress Concentration Factors, 3rd edition, 2008: shoulder charts
 * 3.10 and 3.12 (coefficients read in several public copies), groove charts 2.41 and 2.47 (read in two public
 * copies with a slip each: the sum of the rows, which comes to 1 at x = 1, and the joint at t/r = 2 decide)
 */
interface NotchFit {
  /** Where the fit holds, on t/r. */
  readonly from: number;
  readonly to: number;
  /** Four rows of a, b, c. */
  readonly rows: readonly (readonly [number, number, number])[];
}

/** A fit in its two stretches; its name in messages. */
type Fits = readonly NotchFit[];

const shoulderBending: Fits = [
  {
    from: 0.1,
    to: 2,
    rows: [
      [0.947, 1.206, -0.131],
      [0.022, -3.405, 0.915],
      [0.869, 1.777, -0.555],
      [-0.81, 0.422, -0.26],
    ],
  },
  {
    from: 2,
    to: 20,
    rows: [
      [1.232, 0.832, -0.008],
      [-3.813, 0.968, -0.26],
      [7.423, -4.868, 0.869],
      [-3.839, 3.07, -0.6],
    ],
  },
];

const shoulderTorsion: Fits = [
  {
    from: 0.25,
    to: 4,
    rows: [
      [0.905, 0.783, -0.075],
      [-0.437, -1.969, 0.553],
      [1.557, 1.073, -0.578],
      [-1.061, 0.171, 0.086],
    ],
  },
];

const grooveBending: Fits = [
  {
    from: 0.25,
    to: 2,
    rows: [
      [0.594, 2.958, -0.52],
      [0.422, -10.545, 2.692],
      [0.501, 14.375, -4.486],
      [-0.613, -6.573, 2.177],
    ],
  },
  {
    from: 2,
    to: 50,
    rows: [
      [0.965, 1.926, 0],
      [-2.773, -4.414, -0.017],
      [4.785, 4.681, 0.096],
      [-1.995, -2.241, -0.074],
    ],
  },
];

const grooveTorsion: Fits = [
  {
    from: 0.25,
    to: 2,
    rows: [
      [0.966, 1.056, -0.022],
      [-0.192, -4.037, 0.674],
      [0.808, 5.321, -1.231],
      [-0.567, -2.364, 0.566],
    ],
  },
  {
    from: 2,
    to: 50,
    rows: [
      [1.089, 0.924, 0.018],
      [-1.504, -2.141, -0.047],
      [2.486, 2.289, 0.091],
      [-1.056, -1.104, -0.059],
    ],
  },
];

/** The fits by feature and load. */
export const notchFits: Readonly<
  Record<"shoulder" | "groove", Readonly<Record<"bending" | "torsion", Fits>>>
> = Object.freeze({
  shoulder: { bending: shoulderBending, torsion: shoulderTorsion },
  groove: { bending: grooveBending, torsion: grooveTorsion },
});

/** The range of t/r in which a fit holds. */
export function rangeOfFits(fits: Fits): readonly [from: number, to: number] {
  return [fits[0]!.from, fits.at(-1)!.to];
}

/** The value of a fit [-]; t/r must lie in its range. */
export function notchFit(fits: Fits, depthOverRadius: number, twiceDepthOverDiameter: number): number {
  const fit = fits.find(({ to }) => depthOverRadius <= to) ?? fits.at(-1)!;
  const root = Math.sqrt(depthOverRadius);
  return fit.rows.reduce(
    (sum, [a, b, c], power) => sum + (a + b * root + c * depthOverRadius) * twiceDepthOverDiameter ** power,
    0,
  );
}
