import { availableParallelism } from "node:os";
import { join } from "node:path";
import { setUnitSystem, unitSystem } from "../../quantity/index.js";
import type { LeftOut } from "../../record/bundle/index.js";
import {
  type CellCode,
  type Decision,
  fileText,
  inputsBehind,
  readRebuildFile,
  readSheetRecord,
  rebuildFileName,
  recordPath,
  restoreDecision,
  type SheetRecord,
  sheetsWithRecord,
  type Verification,
  verifyRebuild,
  versions,
} from "../../record/index.js";
import type { Audit, AuditedDecision, AuditedResult } from "../../view/results/audit-types.js";
import type { RunningKernel } from "../client/running-kernel.js";
import { sheetsInOrder } from "../sheets-in-order.js";
import { attributeMoves } from "./attribute-moves.js";
import { comparePublished } from "./compare-published.js";
import { type Bench, explainDecision } from "./explain-decision.js";
import { findCauses } from "./find-causes.js";
import { judgeDecision, type RunGives, runGives } from "./judge-decision.js";
import { besideLeftOut, judgeFromCopy, matchLeftOut } from "./match-left-out.js";
import { QuietRuns } from "./quiet-runs.js";
import { codeNow, type RebuildState, temporaryCopy, writeFiles } from "./rebuild-state.js";
import { sheetsBehind } from "./sheets-behind.js";

export interface AuditOptions {
  /** The folder that holds rebuild.json. */
  readonly directory: string;
  /** False to compare hashes only, and execute nothing of the rebuild; true where not given. */
  readonly rerun?: boolean;
  /** True to find, reading by reading, which of them carry each decision and how far each may move. */
  readonly explain?: boolean;
  /** The decision to explain, by name; all of them where not given. */
  readonly only?: string | undefined;
  /** Starts the kernel in which the copy is run: how foreign code is kept in a sandbox. */
  readonly startKernel?: (folder: string) => Promise<RunningKernel>;
  /** What was left out of the rebuild when it was shared. */
  readonly leftOut?: LeftOut;
  /** Told what is being done. */
  readonly onProgress?: (what: string) => void;
}

/**
 * Checks a rebuild: compares every file with the hashes the last run left, runs all sheets again in clean state in a
 * temporary copy, and judges every decision on record by what comes out. Nothing in the folder itself is written.
 *
 * @throws RebuildFileFaults  rebuild.json cannot be read
 * @throws RangeError  no decision on record has the name of that to be explained
 */
export async function auditRebuild(options: AuditOptions): Promise<Audit> {
  const { unitSystem: system } = readRebuildFile(join(options.directory, rebuildFileName));
  const before = unitSystem();
  setUnitSystem(system);
  try {
    return await auditInUnits(options);
  } finally {
    setUnitSystem(before);
  }
}

/** The audit, with figures told in the rebuild's unit system. */
async function auditInUnits(options: AuditOptions): Promise<Audit> {
  const { directory, rerun = true, onProgress } = options;
  const { title } = readRebuildFile(join(directory, rebuildFileName));
  onProgress?.("comparing hashes");
  const verification = verifyRebuild(directory);
  const { findings, notWhole } = matchLeftOut(directory, verification.findings, options.leftOut);
  const records = legibleRecords(directory, verification);
  const outcome = rerun ? await new RunAgain(options, records, verification).audit() : notRun(records);
  return Object.freeze({
    kind: "audit",
    schema: 1,
    title,
    files: {
      compared: verification.files,
      findings: findings.map(({ file, what, text }) => ({ file, what, text })),
      notWhole,
    },
    rerun,
    ...outcome,
    versions: { ...versions() },
  });
}

/** The records that can be read; what is wrong with the others is among the findings. */
function legibleRecords(directory: string, { findings }: Verification): readonly SheetRecord[] {
  const unreadable = findings.filter(({ what }) => what === "unreadable").map(({ file }) => file);
  return sheetsWithRecord(directory)
    .filter((sheet) => !unreadable.includes(recordPath(sheet)))
    .flatMap((sheet) => readSheetRecord(directory, sheet) ?? []);
}

type Outcome = Pick<Audit, "failed" | "decisions" | "results">;

function notRun(records: readonly SheetRecord[]): Outcome {
  const decisions = decisionsOf(records).map((decision) =>
    audited(decision, {
      verdict: "cannot be checked",
      why: "The sheets were not run again.",
      moved: [],
      because: [],
    }),
  );
  return { failed: [], decisions, results: [] };
}

/** More kernels than this cost more in memory than they gain in time. */
const mostBenches = 4;

/** The rebuild run again in a temporary copy, and judged. */
class RunAgain {
  readonly #options: AuditOptions;
  readonly #records: readonly SheetRecord[];
  readonly #verification: Verification;

  constructor(options: AuditOptions, records: readonly SheetRecord[], verification: Verification) {
    this.#options = options;
    this.#records = records;
    this.#verification = verification;
  }

  async audit(): Promise<Outcome> {
    return this.#onBench(async (bench) => this.#judgeAll(bench));
  }

  /** Lets work be done in a temporary copy with a kernel of its own; both are gone afterwards. */
  async #onBench<T>(work: (bench: Bench) => Promise<T>): Promise<T> {
    const { directory, startKernel } = this.#options;
    const { folder, remove } = temporaryCopy(directory);
    try {
      const runs = await QuietRuns.start(folder, startKernel?.(folder));
      try {
        return await work({ folder, runs });
      } finally {
        await runs.close();
      }
    } finally {
      remove();
    }
  }

  /** The same with as many copies and kernels as this machine runs side by side; the first is there already. */
  async #onBenches<T>(first: Bench, work: (benches: readonly Bench[]) => Promise<T>): Promise<T> {
    const count = Math.min(availableParallelism(), mostBenches);
    const more = async (benches: readonly Bench[]): Promise<T> =>
      benches.length >= count ? work(benches) : this.#onBench((bench) => more([...benches, bench]));
    return more([first]);
  }

  async #judgeAll(bench: Bench): Promise<Outcome> {
    const { folder, runs } = bench;
    const { directory, explain, only, onProgress } = this.#options;
    const names = decisionsOf(this.#records).map(({ name }) => name);
    if (only !== undefined && !names.includes(only))
      throw new RangeError(
        `audit: the decision to explain must be on record, got ${only} of ${names.join(", ")}`,
      );
    const code = codeNow(sheetsInOrder(directory).sheets);
    onProgress?.(`running ${code.size} sheets again`);
    const failed = await runs.run(folder, quietSheets(code));
    const results = besideLeftOut(
      this.#records.flatMap((record) =>
        this.#resultsMoved(record, readSheetRecord(folder, record.sheet), code),
      ),
      this.#options.leftOut,
    );
    const given = decisionsOf(this.#records).map((decision) => ({
      decision,
      gives: runGives(folder, decision, failed),
    }));
    const judgeOn = async (benches: readonly Bench[]): Promise<readonly AuditedDecision[]> => {
      const decisions: AuditedDecision[] = [];
      for (const { decision, gives } of given)
        decisions.push(await this.#judge(decision, gives, { benches, code }));
      return decisions;
    };
    const decisions = await (explain ? this.#onBenches(bench, judgeOn) : judgeOn([bench]));
    return { failed, decisions, results };
  }

  /** The results of a sheet that do not come out as recorded, with what changed behind it. */
  #resultsMoved(
    record: SheetRecord,
    again: SheetRecord | undefined,
    code: RebuildState["code"],
  ): readonly AuditedResult[] {
    const { directory, leftOut } = this.#options;
    const moved = comparePublished(record, again, leftOut !== undefined);
    if (moved.length === 0) return [];
    const because = changesBehind(directory, record, code);
    return moved.map((result) => ({ ...result, because }));
  }

  async #judge(
    decision: Decision,
    gives: RunGives,
    { benches, code }: { readonly benches: readonly Bench[]; readonly code: RebuildState["code"] },
  ): Promise<AuditedDecision> {
    const { folder, runs } = benches[0]!;
    const { directory, only, onProgress } = this.#options;
    const explain = this.#options.explain && (only === undefined || only === decision.name);
    const basis = this.#records.find(({ sheet }) => sheet === decision.sheet)!.decisions[decision.name]!
      .basis;
    const judgement = judgeFromCopy(
      judgeDecision(decision, gives),
      Object.keys(basis.inputs),
      this.#options.leftOut,
    );
    const behind = sheetsBehind(decision.sheet, code);
    const runIn = async (state: RebuildState): Promise<RunGives> => {
      writeFiles(folder, state.files);
      const sheets = quietSheets(state.code).filter(({ name }) => behind.includes(name));
      return runGives(folder, decision, await runs.run(folder, sheets));
    };
    const files = new Map(
      Object.keys(basis.inputs).flatMap((file) => {
        const text = fileText(directory, file);
        return text === undefined ? [] : [[file, text] as const];
      }),
    );
    const now: RebuildState = { files, code };
    const causes = findCauses(directory, basis, now);
    let because: readonly string[] = [];
    if (judgement.verdict === "stands") because = causes.causes.map(({ label }) => label);
    else {
      onProgress?.(`looking what moved “${decision.name}”`);
      because = await attributeMoves(decision, causes, runIn);
      if (because.length === 0 && judgement.verdict !== "cannot be checked")
        because = [this.#noCause(decision)];
    }
    const carried =
      explain && gives.grounds !== undefined && gives.refused === undefined
        ? await explainDecision({ benches, decision, now, gives, behind, onProgress })
        : undefined;
    writeFiles(folder, files);
    return audited(decision, { ...judgement, because, ...(carried && { carried }) });
  }

  /** Why figures differ though nothing behind them changed. */
  #noCause({ file }: Decision): string {
    const altered = this.#verification.findings.some((finding) => finding.file === file);
    return altered
      ? `${file}, which was altered after the run: nothing that it stood on has changed`
      : "nothing that it stood on has changed: its sheet does not give the same twice, or the record was altered together with its hash";
  }
}

/** What changed behind a sheet since its record was written: tables, rebuild.json, code and versions, in words. */
function changesBehind(
  directory: string,
  record: SheetRecord,
  code: RebuildState["code"],
): readonly string[] {
  const behind = inputsBehind(directory, record);
  const own = record.code === undefined ? {} : { [record.sheet]: record.code };
  const basis = { inputs: behind.inputs, code: { ...behind.code, ...own }, versions: record.versions };
  const { causes, versions: others } = findCauses(directory, basis, { files: new Map(), code });
  return [...causes.map(({ label }) => label), ...(others === "" ? [] : [others])];
}

function audited(
  { name, sheet, question, choice, by, on }: Decision,
  judged: Pick<AuditedDecision, "verdict" | "why" | "moved" | "because" | "carried">,
): AuditedDecision {
  return Object.freeze({ name, sheet, question, choice, by, on, ...judged });
}

function quietSheets(
  code: RebuildState["code"],
): { readonly name: string; readonly cells: readonly CellCode[] }[] {
  return [...code].map(([name, cells]) => ({ name, cells }));
}

function decisionsOf(records: readonly SheetRecord[]): readonly Decision[] {
  return records.flatMap(({ sheet, decisions }) =>
    Object.entries(decisions).map(([name, decision]) =>
      restoreDecision(sheet, recordPath(sheet), name, decision),
    ),
  );
}
