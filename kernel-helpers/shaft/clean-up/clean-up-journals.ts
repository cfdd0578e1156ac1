import { type Length, quantityFromSi, type UnitSystem } from "../../quantity/index.js";
import type { RunOut, WearBands } from "../../survey/index.js";
import type { WornJournal } from "../journals/index.js";
import { type CleanUp, chanceToClean, cleanUp } from "./clean-up.js";

/** What one journal cleans up to, and the size that suggests itself. */
export interface JournalCleanUp {
  readonly name: string;
  readonly cleanUp: CleanUp;
  /** The largest DIAMETER in whole steps that cleans up with the chance asked for. */
  readonly suggested: Length;
  /** The chance that the size suggested cleans up all along [-]. */
  readonly chance: number;
}

/** What every worn journal of a shaft cleans up to. */
export interface JournalCleanUps {
  readonly kind: "journals cleaned up";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  readonly journals: readonly JournalCleanUp[];
  /** Sizes are suggested in steps of this. */
  readonly step: Length;
  /** The chance asked for [-]. */
  readonly wanted: number;
}

/** How sizes are suggested. */
export interface CleanUpJournalsOptions {
  readonly runOut?: RunOut;
  /** Default 0.0005 in, or 0.01 mm. */
  readonly step?: Length;
  /** Standard uncertainty of the size as it is turned; default: it comes out exactly. */
  readonly turning?: Length;
  /** Chance that the size suggested cleans up all along, above 0 and below 1; default 0.95 [-]. */
  readonly chance?: number;
}

const fewest = 10_000;

/**
 * What every worn journal cleans up to, each as by `cleanUp`, with the largest size in whole steps that cleans up all
 * along with the chance asked for. The journal worn deepest by its mean need not be the one that must go down most:
 * wear on one side counts twice.
 *
 * Valid when: see `cleanUp`. A journal for a poured box need not be a standard size (common practice, no source).
 *
 * @param wear      the bands of the shaft
 * @param journals  as `wornJournals` names them
 * @param options.runOut  indicator readings of the same shaft
 * @param options.turning  standard uncertainty of the size as turned, ≥ 0 [m]
 * @param options.step    sizes are suggested in steps of this, > 0 [m]
 * @param options.chance  above 0 and below 1 [-]
 * @returns each journal with its clean-up and the size suggested [m], on diameter
 * @throws RangeError  no journal, a step not above 0, a chance out of its range; and as `cleanUp`
 * @example
 * const rows = ["0,2.4375", "1,2.4375", "2,2.4375", "3,2.4345", "4,2.4345", "5,2.4345"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
 * cleanUpJournals(wear, wornJournals(wear, ["box"])).journals[0].suggested.in("inch").toFixed(4) // "2.4310"
 * @source see `cleanUp` and `chanceToClean`
 */
export function cleanUpJournals(
  wear: WearBands,
  journals: readonly WornJournal[],
  options: CleanUpJournalsOptions = {},
): JournalCleanUps {
  const { runOut, chance: wanted = 0.95 } = options;
  if (journals.length === 0)
    throw new RangeError("cleanUpJournals: at least one worn journal must be given, got none");
  const inch = wear.profile.unitSystem === "inch";
  const step = options.step ?? quantityFromSi("length", inch ? 1.27e-5 : 1e-5, inch ? "inch" : "mm");
  if (!(step.si > 0)) throw new RangeError(`cleanUpJournals: step must be above 0, got ${step}`);
  if (!(wanted > 0 && wanted < 1))
    throw new RangeError(`cleanUpJournals: chance must be above 0 and below 1, got ${wanted}`);
  const found = journals.map(({ name, band }): JournalCleanUp => {
    const left = cleanUp(wear, { from: band.from, to: band.to, ...(runOut === undefined ? {} : { runOut }) });
    const { suggested, chance } = suggestedSize(left, step, wanted, options.turning);
    return Object.freeze({ name, cleanUp: left, suggested, chance });
  });
  return Object.freeze<JournalCleanUps>({
    kind: "journals cleaned up",
    title: wear.profile.title,
    unitSystem: wear.profile.unitSystem,
    journals: Object.freeze(found),
    step,
    wanted,
  });
}

function suggestedSize(
  left: CleanUp,
  step: Length,
  wanted: number,
  turning: Length | undefined,
): { readonly suggested: Length; readonly chance: number } {
  const first = Math.floor(left.plan.value.si / step.si);
  const unit = left.unitSystem === "inch" ? "inch" : "mm";
  for (let down = 0; down < fewest && first - down > 0; down++) {
    const suggested = quantityFromSi("length", (first - down) * step.si, unit);
    const chance = chanceToClean(left, suggested, turning);
    if (chance >= wanted) return { suggested, chance };
  }
  throw new RangeError(
    `cleanUpJournals: no size in steps of ${step} cleans up with a chance of ${wanted}; the readings are too uncertain for such steps`,
  );
}
