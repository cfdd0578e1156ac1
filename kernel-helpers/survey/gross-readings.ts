import { quantityFromSi } from "../quantity/index.js";
import { decimalsWritten, likelySlip } from "./likely-slip.js";
import type { GrossReading, Profile } from "./profile-types.js";
import { unitOf } from "./unit-of.js";

/** What a reading should have been, in SI. */
export interface Expected {
  /** At 20 °C [m]. */
  readonly diameter: number;
  /** Standard uncertainty of the reading about it [m]. */
  readonly u: number;
}

/** A reading put aside that is gross with less than this may still be the truth. */
const sure = 0.99;

/**
 * Whether a reading put aside is gross beyond doubt: with 99 % or more, or where no probability is told. A shaft is not
 * passed over one that is not: what is smallest counts it in.
 *
 * @param probability  that it is a gross error [-]; undefined where none is told
 */
export function isSurelyGross(probability: number | undefined): boolean {
  return probability === undefined || probability >= sure;
}

/**
 * Gross readings in the order of the profile, each with what it is off by, the slip that may explain it, and how probably
 * it is gross (0 stands for less than 0.01).
 */
export function grossReadings(
  profile: Profile,
  gross: ReadonlySet<number>,
  expected: (reading: number) => Expected,
  probability?: (reading: number) => number | undefined,
): readonly GrossReading[] {
  const unit = unitOf(profile);
  const list = [...gross].sort((a, b) => a - b);
  if (list.length === 0) return Object.freeze([]);
  const sound = profile.readings.filter((_, i) => !gross.has(i));
  const decimals = decimalsWritten(sound.map(({ asRead }) => asRead.in(unit)));
  return Object.freeze(
    list.map((index) => {
      const reading = profile.readings[index]!;
      const { diameter, u } = expected(index);
      const residual = reading.diameter.si - diameter;
      // Back to the temperature of the reading, for it is the reading as written that may have slipped.
      const asRead = reading.asRead.si / reading.diameter.si;
      return Object.freeze({
        reading: index,
        residual: quantityFromSi("length", residual, unit),
        residualInU: residual / u,
        probability: probability?.(index),
        likely: likelySlip({
          unit,
          read: reading.asRead.in(unit),
          expected: quantityFromSi("length", diameter * asRead).in(unit),
          u: quantityFromSi("length", u).in(unit),
          decimals,
        }),
      });
    }),
  );
}
