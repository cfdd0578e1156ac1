import { readingUncertainty } from "./instrument.js";
import type { RepeatabilityStudy } from "./instrument-study-types.js";
import type { Instrument } from "./table.js";

/** How well one reading of an instrument is known, and from where. */
export interface ReadingKnown {
  /** Standard uncertainty of one reading: scatter and rounding together [m]. */
  readonly u: number;
  /** Infinite where it is only stated [-]. */
  readonly degreesOfFreedom: number;
  readonly from: "study" | "statement";
  /** A sentence that says which was reckoned with, and why. */
  readonly text: string;
}

/**
 * The uncertainty of one reading: from a repeatability study where there is one of this instrument that shows the
 * scatter, else as stated.
 *
 * A study of another instrument says nothing of this one; one whose readings scatter less than half a step shows the
 * step and not the hand, and then what is stated stands. A study that names no instrument is taken to be of this one, and
 * the sentence says so.
 */
export function readingKnown(instrument: Instrument, study: RepeatabilityStudy | undefined): ReadingKnown {
  const stated = (because: string): ReadingKnown => ({
    u: readingUncertainty(instrument).si,
    degreesOfFreedom: Number.POSITIVE_INFINITY,
    from: "statement",
    text: `Reckoned with the repeatability stated in rebuild.json${because}.`,
  });
  if (study === undefined) return stated(", which no study has tried");
  if (study.instrument !== undefined && study.instrument.id !== instrument.id)
    return stated(`: the study in ${study.file} is of ${study.instrument.title}`);
  if (study.resolutionLimited)
    return stated(`: in ${study.file} the step read off hides how well the instrument repeats`);
  const unnamed =
    study.instrument === undefined ? ", which names no instrument and is taken to be of this one" : "";
  return {
    u: study.readingUncertainty.si,
    degreesOfFreedom: study.degreesOfFreedom,
    from: "study",
    text: `Reckoned with the repeatability found by ${study.count} readings of one place in ${study.file}${unnamed}.`,
  };
}
