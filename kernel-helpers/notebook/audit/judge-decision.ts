import {
  type Decision,
  type DecisionGrounds,
  readSheetRecord,
  recordPath,
  restoreDecision,
  restoreGrounds,
} from "../../record/index.js";
import type { DecisionVerdict, MovedFigure } from "../../view/results/audit-types.js";
import { figureMoves } from "../../view/results/decision-moves.js";
import type { QuietFailure } from "./quiet-runs.js";

/** What became of a decision in a run. */
export interface Judgement {
  readonly verdict: DecisionVerdict;
  readonly why: string;
  readonly moved: readonly MovedFigure[];
}

/** What a run gave for a decision: made, refused, or neither. */
export interface RunGives {
  readonly choice?: string;
  readonly grounds?: DecisionGrounds;
  readonly refused?: string;
  readonly failure?: string;
}

/** Looks up what a run in a folder gave for a decision. */
export function runGives(
  folder: string,
  { sheet, name }: Pick<Decision, "sheet" | "name">,
  failures: readonly QuietFailure[],
): RunGives {
  const record = readSheetRecord(folder, sheet);
  const refused = record?.refused[name];
  if (refused !== undefined)
    return { choice: refused.choice, grounds: restoreGrounds(refused), refused: refused.why };
  const made = record?.decisions[name];
  if (made === undefined) return { failure: failures.find((failure) => failure.sheet === sheet)?.why };
  const decision = restoreDecision(sheet, recordPath(sheet), name, made);
  return { choice: decision.choice, grounds: decision };
}

/**
 * Judges a decision by what a run gives for it. It follows no longer where the sheet refuses or makes another choice;
 * it stands, with figures moved, where the same choice may be taken on other figures.
 */
export function judgeDecision(decision: Decision, gives: RunGives): Judgement {
  const { choice, grounds, refused, failure } = gives;
  if (decision.withdrawn)
    return cannot("The sheet does not make this decision any more; it is kept on record only.");
  if (grounds === undefined)
    return cannot(
      failure === undefined
        ? `The sheet ${decision.sheet}, as it is now, does not come to this decision.`
        : `Its sheet stops before it: ${failure}`,
    );
  const moved = figureMoves(decision, grounds);
  if (refused !== undefined)
    return { verdict: "no longer follows", why: `Run again, it is refused: ${refused}.`, moved };
  if (choice !== decision.choice)
    return { verdict: "no longer follows", why: `Run again, the sheet chooses “${choice}”.`, moved };
  const limits = limitsText(decision, grounds);
  if (moved.length === 0 && limits === "")
    return { verdict: "stands", why: "Run again, the same choice follows from the same figures.", moved };
  return {
    verdict: "stands, figures moved",
    why: `The same choice may still be taken. ${limits || "No option breaks a limit that it did not break, and none has come free."}`,
    moved,
  };
}

function cannot(why: string): Judgement {
  return { verdict: "cannot be checked", why, moved: [] };
}

/** Which options have come to break a limit, or break it no more. */
function limitsText(then: DecisionGrounds, now: DecisionGrounds): string {
  const sentences: string[] = [];
  for (const option of now.options) {
    const before = then.options.find(({ name }) => name === option.name);
    if (before === undefined) sentences.push(`“${option.name}” is a new option.`);
    else if (before.breaks.length === 0 && option.breaks.length > 0)
      sentences.push(`“${option.name}” has come to break ${option.breaks.join("; ")}.`);
    else if (before.breaks.length > 0 && option.breaks.length === 0)
      sentences.push(`“${option.name}”, which broke ${before.breaks.join("; ")}, breaks no limit any more.`);
  }
  for (const { name } of then.options)
    if (!now.options.some((option) => option.name === name))
      sentences.push(`“${name}” is no option any more.`);
  return sentences.join(" ");
}
