/** Told again and again how much of a long piece of work is done, of how much. */
export type Progress = (done: number, of: number) => void;

/** Told at so many steps, whatever the pace: the executed notebook is the same at every run. */
const steps = 20;

/**
 * Shows under a cell how far a long piece of work has come: one line, rewritten at every twentieth of the work, that stays
 * as "200 of 200 films" when it is done.
 *
 * @param what  what is counted, in the plural
 * @returns to be called with the number done and the number of all
 * @throws RangeError  no word for what is counted
 * @example typeof showProgress("films") // "function"
 * @source none: a line of text
 */
export function showProgress(what: string): Progress {
  if (what.trim() === "") throw new RangeError('showProgress: what must be named, e.g. "films", got ""');
  let told = 0;
  return (done, of) => {
    const step = Math.floor((done / of) * steps);
    if (step === told && done < of) return;
    told = step;
    process.stdout.write(`\r${done} of ${of} ${what}${done < of ? "" : "\n"}`);
  };
}
