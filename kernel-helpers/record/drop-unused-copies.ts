import { dropUnused, keptPath } from "./kept-inputs.js";
import { readOutcomes } from "./sheet-outcome.js";
import { readRecords } from "./sheet-record.js";

/**
 * Removes copies of inputs that no record, no decision and no outcome refers to any more, once they have lain for an
 * hour: a run that goes on beside this one may be about to refer to them.
 *
 * @param now  the time [ms since 1970]
 */
export function dropUnusedCopies(directory: string, now: number): void {
  const used = new Set<string>();
  const use = (inputs: Readonly<Record<string, string | null>>): void => {
    for (const [file, sha256] of Object.entries(inputs))
      if (sha256 !== null) used.add(keptPath(file, sha256));
  };
  const useCode = (code: Readonly<Record<string, string>>): void =>
    use(Object.fromEntries(Object.entries(code).map(([sheet, sha256]) => [`${sheet}.ts`, sha256])));
  for (const { sheet, inputs, code, decisions } of readRecords(directory)) {
    use(inputs);
    if (code !== undefined) useCode({ [sheet]: code });
    for (const decision of Object.values(decisions))
      for (const { basis } of [decision, ...(decision.superseded ?? [])]) {
        use(basis.inputs);
        useCode(basis.code ?? {});
      }
  }
  for (const { inputs } of readOutcomes(directory)) use(inputs);
  dropUnused(directory, used, now);
}
