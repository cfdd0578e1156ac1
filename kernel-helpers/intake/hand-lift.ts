import { type Mass, quantityFromSi } from "../quantity/index.js";

/** What one person may lift at best [kg]: 51 lb. */
const one = 23;
/** The share of the sum of what each could lift alone. */
const shares: readonly number[] = [1, 2 / 3, 1 / 2];

/**
 * The most that one to three people may lift by hand, at best: the load held close, at knuckle height, lifted seldom,
 * upright, with a good grip, on a firm floor.
 *
 * m = 23 kg · n · share, share 1, 2/3, 1/2 for n = 1, 2, 3
 *
 * Valid when: all of that holds. Reaching out, stooping, twisting and carrying each take much off it; a person who knows
 * his own limit goes by that.
 *
 * @param persons  1, 2 or 3 [-]
 * @param unit  shown in pounds or kilograms
 * @returns the most [kg]
 * @throws RangeError  another number of people
 * @example handLiftLimit(2, "kilogram").in("kilogram") // 30.6667
 * @source one person: T. R. Waters, V. Putz-Anderson, A. Garg, Applications Manual for the Revised NIOSH Lifting Equation,
 * DHHS (NIOSH) publication 94-110, load constant; two and three: Health and Safety Executive, Manual handling, L23, 3rd
 * edition, paragraph 120 (both read in public copies)
 */
export function handLiftLimit(persons: number, unit: "pound" | "kilogram" = "kilogram"): Mass {
  const share = shares[persons - 1];
  if (share === undefined)
    throw new RangeError(
      `handLiftLimit: persons must be 1, 2 or 3, got ${persons}: more get in each other's way`,
    );
  return quantityFromSi("mass", one * persons * share, unit);
}
