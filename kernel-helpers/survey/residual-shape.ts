import { formatWithUncertainty, measured, quantityFromSi, type UnitSystem } from "../quantity/index.js";
import { coverageFactor, curvature } from "../statistics/index.js";
import type { ResidualShape } from "./profile-types.js";
import { scattersTooMuch } from "./scatter-test.js";
import { kinkSentence, taperKinks } from "./taper-kinks.js";

/** With fewer stations a parabola takes all there is, and nothing is left to judge it by. */
const fewestStations = 4;

/**
 * Whether the flanks of a taper are straight, hollow, barrelled or kinked.
 *
 * A parabola is laid through the residuals; bow = its height in the middle over the chord of its ends, on diameter.
 * Barrel or hollow: |bow| > k·u(bow), 95 %, two-sided. Where the readings scatter about the parabola more than stated
 * (chi-square test, 1 %), u(bow) is widened by that ratio with n − 3 degrees of freedom; the bow itself is no scatter.
 *
 * Kinked: where a line with kinks explains the readings better than a bow, at equal cost of each parameter (see
 * `taperKinks`); then the bow is that of the parabola all the same.
 *
 * Valid when: the flank bows about as a parabola, or is straight between kinks; a step shows in part only.
 *
 * @param x  stations [m]
 * @param residuals  diameter less line, on diameter [m]
 * @param u  standard uncertainty of each [m]
 * @param taper  slope of the line taken away [-]
 * @param unitSystem  whether the sentence speaks of thousandths or micrometres [-]
 * @returns shape, bow on diameter [m], positive for a barrel, and a sentence
 * @source see `curvature`
 */
export function residualShapeOf(
  x: readonly number[],
  residuals: readonly number[],
  u: readonly number[],
  taper: number,
  unitSystem: UnitSystem,
): ResidualShape {
  if (x.length < fewestStations)
    return Object.freeze({
      shape: "cannot tell",
      bow: undefined,
      text: `Straight, hollow or barrel cannot be told from ${x.length} stations; at least ${fewestStations} are needed.`,
    });
  const { sag, uSag, tValue } = curvature(x, residuals, u);
  const spent = x.length - 3;
  const chiSquare = Math.max(0, residuals.reduce((sum, r, i) => sum + (r / u[i]!) ** 2, 0) - tValue ** 2);
  const tooMuch = scattersTooMuch(chiSquare, spent);
  const uBow = uSag * (tooMuch ? Math.sqrt(chiSquare / spent) : 1);
  const dof = tooMuch ? spent : Number.POSITIVE_INFINITY;
  const expanded = coverageFactor(0.95, dof) * uBow;

  const small = unitSystem === "inch" ? "thou" : "micrometre";
  const lengthOf = (si: number) => quantityFromSi("length", si, unitSystem === "inch" ? "inch" : "mm");
  const inSmall = (si: number): number => lengthOf(si).in(small);
  const symbol = unitSystem === "inch" ? "thou" : "µm";
  const [size, within] = formatWithUncertainty(Math.abs(inSmall(sag)), inSmall(expanded));
  const { kinks, beatsBow } = taperKinks(x, residuals, u, taper, chiSquare, unitSystem);
  if (kinks.length > 0 && beatsBow)
    return Object.freeze({
      shape: "kinked",
      bow: measured(lengthOf(sag), lengthOf(uBow), dof),
      kinks: Object.freeze(kinks),
      text: kinkSentence(kinks, unitSystem),
    });
  const shape = Math.abs(sag) <= expanded ? "straight" : sag > 0 ? "barrel" : "hollow";
  const text = {
    straight: `The flanks are straight, as far as these readings tell: no bow beyond ${within} ${symbol} on diameter shows.`,
    barrel: `The flanks bow out by ${size} ± ${within} ${symbol} on diameter in the middle: barrel.`,
    hollow: `The flanks bow in by ${size} ± ${within} ${symbol} on diameter in the middle: hollow.`,
  }[shape];
  return Object.freeze({ shape, bow: measured(lengthOf(sag), lengthOf(uBow), dof), text });
}
