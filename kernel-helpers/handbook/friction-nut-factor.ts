/** The nut factor K of T = K F d for one state of thread and seat, as a range about the published figure. */
export interface NutFactor {
  readonly state: string;
  /** As published, where a table gives it. */
  readonly published: number | undefined;
  readonly low: number;
  readonly high: number;
  readonly because: string;
  readonly source: string;
}

const shigley =
  "Shigley & Nisbett, Mechanical Engineering Design, 9th ed., table 8-15; spread of about 30 % either way, tables 8-13 and 8-14";

/** Twice the standard deviation over the mean of the preloads published for one torque, rounded [-]. */
const scatter = 0.3;

/**
 * Nut factors by the state of the thread, as ranges: the published figure and the scatter that two published rows of
 * preloads at one torque show (twice their standard deviation is 29 % of the mean unlubricated, 17 % lubricated).
 *
 * K is torque over preload and diameter. At a given torque the preload is uncertain by the same share, turned round.
 *
 * @source R. G. Budynas & J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., table 8-15 (K), tables 8-13
 * (from memory) and 8-14 (scatter); rusted: common practice, no source
 */
export const nutFactors: readonly NutFactor[] = Object.freeze([
  published("black, dry", 0.3),
  published("zinc plated", 0.2),
  published("lubricated", 0.18),
  published("cadmium plated", 0.16),
  published("anti-seize", 0.12),
  Object.freeze({
    state: "rusted",
    published: undefined,
    low: 0.3,
    high: 0.6,
    because: "a stain, to scale in the flanks and under the nut",
    source: "common practice, no source",
  }),
]);

/**
 * The nut factor K for a state of the thread.
 *
 * Valid when: nut turned on a hexagon's seat of ordinary size; steel on steel or on iron.
 *
 * @param state  of thread and seat: "lubricated", "black, dry", "anti-seize", "zinc plated", "cadmium plated", "rusted" [-]
 * @returns least and greatest K [-], with the reason
 * @throws RangeError  there is no such state; the message lists those there are
 * @example nutFactorOf("lubricated").published // 0.18
 * @source see `nutFactors`
 */
export function nutFactorOf(state: string): NutFactor {
  const found = nutFactors.find((one) => one.state === state.trim().toLowerCase().replace(/\s+/g, " "));
  if (found === undefined)
    throw new RangeError(
      `nutFactorOf: state must be one of ${nutFactors.map((one) => `"${one.state}"`).join(", ")}, got "${state}"`,
    );
  return found;
}

function published(state: string, factor: number): NutFactor {
  return Object.freeze({
    state,
    published: factor,
    low: factor * (1 - scatter),
    high: factor * (1 + scatter),
    because: `${factor} published, ± 30 % as bolts tightened alike differ`,
    source: shigley,
  });
}
