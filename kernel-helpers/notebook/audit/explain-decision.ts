import type { Decision } from "../../record/index.js";
import type { CarryingReadings } from "../../view/results/audit-types.js";
import { figureMoves } from "../../view/results/decision-moves.js";
import { cellsBehind } from "./cells-behind.js";
import { type RunGives, runGives } from "./judge-decision.js";
import { type QuietRuns, runsIn } from "./quiet-runs.js";
import { type RebuildState, writeFiles } from "./rebuild-state.js";
import { type RunOn, whatCarries } from "./what-carries.js";

/** A copy of the rebuild, and a kernel that runs its sheets. */
export interface Bench {
  readonly folder: string;
  readonly runs: QuietRuns;
}

export interface ExplainInput {
  /** Where sheets are run, one run at a time on each; at least one. */
  readonly benches: readonly Bench[];
  readonly decision: Decision;
  readonly now: RebuildState;
  /** What the run of all sheets on the readings as they are gives. */
  readonly gives: RunGives;
  /** The sheets behind the decision, in order of run. */
  readonly behind: readonly string[];
  readonly onProgress?: (what: string) => void;
}

type Code = RebuildState["code"];

/**
 * Finds the readings that carry a decision. Only the cells that lead up to it are run for that, provided that they give
 * on the readings as they are what all cells give; otherwise the sheets behind it are run whole. A step that overturns
 * the decision is told only where the whole sheets overturn it too.
 */
export async function explainDecision(input: ExplainInput): Promise<CarryingReadings> {
  const { benches, decision, now, gives, behind, onProgress } = input;
  const whole: Code = new Map([...now.code].filter(([name]) => behind.includes(name)));
  const runsOf = async (code: Code): Promise<Runs> => {
    const { folder, runs } = benches[0]!;
    const sheets = [...code].map(([name, cells]) => ({ name, cells }));
    writeFiles(folder, now.files);
    const first = runGives(folder, decision, await runs.run(folder, sheets));
    const earlier = runsIn(folder, code.keys());
    const read = new Set([...earlier.values()].flatMap(({ record }) => Object.keys(record.inputs)));
    const runOn = benches.map(
      (bench): RunOn =>
        async (files) => {
          writeFiles(bench.folder, files);
          return runGives(bench.folder, decision, await bench.runs.run(bench.folder, sheets, earlier));
        },
    );
    return { first, read, runOn };
  };
  const all = await runsOf(whole);
  const part = cellsBehind(decision.sheet, now.code);
  const short = part && (await runsOf(part));
  if (part === undefined || short === undefined || !givesTheSame(gives, short.first)) {
    const workers = all.runOn.map((runOn) => ({ runOn }));
    return whatCarries({
      files: now.files,
      read: all.read,
      gives,
      workers,
      cells: cellsText(whole),
      onProgress,
    });
  }
  const workers = short.runOn.map((runOn, i) => ({ runOn, confirm: all.runOn[i]! }));
  const cells = cellsText(part, whole);
  return whatCarries({ files: now.files, read: short.read, gives, workers, cells, onProgress });
}

interface Runs {
  /** What a run on the readings as they are gives. */
  readonly first: RunGives;
  /** The files read in it. */
  readonly read: ReadonlySet<string>;
  /** Runs on other readings, on each bench. */
  readonly runOn: readonly RunOn[];
}

/** The same choice from the same options, figures and limits. */
function givesTheSame(a: RunGives, b: RunGives): boolean {
  if (a.grounds === undefined || b.grounds === undefined) return false;
  const breaks = ({ grounds }: RunGives): string =>
    JSON.stringify(grounds!.options.map(({ name, breaks: broken }) => [name, broken]));
  return (
    a.choice === b.choice &&
    a.refused === b.refused &&
    breaks(a) === breaks(b) &&
    figureMoves(a.grounds, b.grounds).length === 0
  );
}

function cellsText(run: Code, whole: Code = run): string {
  const count = (code: Code): number => [...code.values()].reduce((sum, cells) => sum + cells.length, 0);
  if (run === whole) return `All ${count(whole)} cells of the sheets behind it were run each time.`;
  return `Each time the ${count(run)} cells that lead up to it were run, of ${count(whole)} in the sheets behind it; on the readings as they are they give the same as all.`;
}
