/** The friction of a flat belt on a pulley's rim, as a range. */
export interface BeltFriction {
  readonly belt: string;
  /** In words: what is meant by it. */
  readonly means: string;
  /** Coefficients of friction [-]. */
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/**
 * Friction of flat belts on smooth pulleys.
 *
 * @example beltFrictions.map(({ belt }) => belt)[0] // "leather, dry"
 */
export const beltFrictions: readonly BeltFriction[] = Object.freeze(
  (
    [
      {
        belt: "leather, dry",
        means: "oak-tanned leather in good order on a clean iron rim",
        low: 0.25,
        high: 0.4,
        source:
          "upper end: R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 10th edition, table 17-2 (from memory); lower end: common practice, no source",
      },
      {
        belt: "leather, oily",
        means: "leather that has had oil from a box next to it, or a polished, glazed face",
        low: 0.12,
        high: 0.25,
        source: "common practice, no source",
      },
      {
        belt: "rubber and canvas, dry",
        means: "rubber-faced or balata canvas belt on a clean iron rim",
        low: 0.25,
        high: 0.35,
        source: "common practice, no source",
      },
      {
        belt: "polyamide, rubber faced",
        means: "modern flat belt with a polyamide core, clean",
        low: 0.5,
        high: 0.8,
        source:
          "R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 10th edition, table 17-2 (from memory)",
      },
    ] as const
  ).map((row) => Object.freeze(row)),
);

/**
 * The friction of a flat belt on its pulley by the kind and state of the belt: a range, for no table knows it better.
 *
 * @param belt  "leather, dry", "leather, oily", "rubber and canvas, dry" or "polyamide, rubber faced"
 * @returns the range of the coefficient of friction [-] with its source
 * @throws RangeError  it is none of these
 * @example beltFriction("leather, dry").low // 0.25
 * @source each row names its own
 */
export function beltFriction(belt: string): BeltFriction {
  const found = beltFrictions.find((row) => row.belt === String(belt).trim().toLowerCase());
  if (found === undefined)
    throw new RangeError(
      `beltFriction: belt must be one of ${beltFrictions.map((row) => `"${row.belt}"`).join(", ")}, got "${belt}"`,
    );
  return found;
}
