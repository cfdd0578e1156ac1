import type { Decision, DecisionGrounds } from "../../record/index.js";
import type { MovedFigure } from "../../view/results/audit-types.js";
import { figureMoves } from "../../view/results/decision-moves.js";
import type { Causes } from "./find-causes.js";
import type { RunGives } from "./judge-decision.js";
import type { RebuildState } from "./rebuild-state.js";

/** More causes than this are named and not tried one by one. */
const mostTried = 16;

/**
 * Which of the changes moved a decision. One change alone is the cause; of several, each is brought about by itself in
 * the state the decision was made on, and those that move a figure there are named with what they move.
 *
 * @param runIn  runs the rebuild in a state, and tells what it gives for the decision
 */
export async function attributeMoves(
  decision: Decision,
  { causes, before: then, versions }: Causes,
  runIn: (state: RebuildState) => Promise<RunGives>,
): Promise<readonly string[]> {
  const all = [...causes.map(({ label }) => label), ...(versions === "" ? [] : [versions])];
  if (all.length <= 1) return all;
  if (then === undefined || causes.length > mostTried)
    return [
      ...all,
      then === undefined
        ? "(which of these cannot be told: the earlier state was not kept whole)"
        : "(too many to try one by one)",
    ];
  const because: string[] = [];
  const grounds = (await runIn(then)).grounds;
  if (grounds === undefined)
    return [...all, "(which of these cannot be told: the earlier state does not run any more)"];
  const byVersion = figureMoves(decision, grounds);
  if (byVersion.length > 0)
    because.push(
      effectText(versions || "the run itself, which does not give the same twice", byVersion, decision),
    );
  for (const { label, apply } of causes) {
    const gives = await runIn(apply(then));
    const effect = gives.grounds && figureMoves(grounds, gives.grounds);
    if (gives.refused !== undefined) because.push(`${label}: by itself it overturns the decision`);
    else if (effect === undefined)
      because.push(`${label}: with it alone the sheet does not come to the decision`);
    else if (effect.length > 0 || limitsDiffer(grounds, gives.grounds!))
      because.push(effectText(label, effect, decision));
  }
  return because.length > 0 ? because : [`${all.join("; ")}: only together`];
}

/** A cause with what it does to the option chosen or, where it leaves that alone, to the first figure it moves. */
function effectText(label: string, moves: readonly MovedFigure[], { choice }: Decision): string {
  const move = moves.find(({ of }) => of === choice) ?? moves[0];
  if (move === undefined) return label;
  const by = move.by === "" ? `from ${move.before} to ${move.after}` : `by ${move.by}`;
  return `${label}: moves ${move.figure} of “${move.of}” ${by}`;
}

function limitsDiffer(a: DecisionGrounds, b: DecisionGrounds): boolean {
  const breaks = ({ options }: DecisionGrounds): string =>
    JSON.stringify(options.map(({ name, breaks: broken }) => [name, broken.length]));
  return breaks(a) !== breaks(b);
}
