/** One line of a study's table: how often a promise was kept. */
export interface StudyRow {
  readonly shaft: string;
  readonly promise: string;
  /** Least and greatest share wished for [-]; undefined where nothing is promised and the share is only told. */
  readonly wished: readonly [number, number] | undefined;
  /** Mean share stated by the results themselves [-], where they state one. */
  readonly stated: number | undefined;
  readonly kept: number;
  readonly trials: number;
  /** Simulated surveys behind it; more than the trials where some have nothing to judge. */
  readonly surveys: number;
}

/** Counts how often a promise was kept, and the mean of what was stated. */
export class Tally {
  kept = 0;
  trials = 0;
  #stated = 0;

  add(kept: boolean, stated = Number.NaN): void {
    this.trials += 1;
    this.kept += kept ? 1 : 0;
    this.#stated += stated;
  }

  /** Mean of the shares stated [-]; undefined where none was. */
  get stated(): number | undefined {
    return Number.isFinite(this.#stated) && this.trials > 0 ? this.#stated / this.trials : undefined;
  }
}

/** Share found [-]. */
export function shareOf({ kept, trials }: StudyRow): number {
  return kept / trials;
}

/**
 * The 95 % interval of a share seen in independent trials.
 *
 * (p + z²/2n ± z √(p(1 − p)/n + z²/4n²)) / (1 + z²/n), p = kept/n, z = 1.959964
 *
 * @param kept  how many trials went well [-]
 * @param trials  how many there were, > 0 [-]
 * @returns lower and upper end [-]
 * @source E. B. Wilson, Journal of the American Statistical Association 22 (1927) 209-212 (from memory)
 */
export function shareInterval(kept: number, trials: number): readonly [number, number] {
  const z = 1.959963984540054;
  const p = kept / trials;
  const middle = p + z ** 2 / (2 * trials);
  const half = z * Math.sqrt((p * (1 - p)) / trials + z ** 2 / (4 * trials ** 2));
  const scale = 1 + z ** 2 / trials;
  return [Math.max(0, (middle - half) / scale), Math.min(1, (middle + half) / scale)];
}
