import { parseArgs } from "node:util";
import { auditRebuild } from "../notebook/audit/audit-rebuild.js";
import { canonicalJson, findRebuild } from "../record/index.js";
import { renderText } from "../view/render-text.js";
import type { Audit, DecisionVerdict } from "../view/results/audit-types.js";
import { presentAudit } from "../view/results/present-audit.js";
import type { Command } from "./command.js";
import { foreignIn } from "./foreign-rebuild.js";
import { UsageError } from "./usage-error.js";

/** journalbox audit: whether each decision still follows from its readings, and what was altered since. */
export const auditCommand: Command = {
  summary: "tells whether each decision still follows from its readings, and what was altered since",
  usage: `journalbox audit [folder] [--explain [--only decision]] [--no-run] [--json]
journalbox audit <bundle> [--run-their-code] [--network-may-stay-open] [--explain [--only decision]] [--json]

Compares every file of the rebuild in the folder (the one you stand in without it) with the hashes that the
last run left, runs all its sheets again in a temporary copy, and tells of each decision on record whether it
stands, stands on figures that moved (by how much, because of which reading or version), follows no longer,
or cannot be checked. The folder itself is left as it is.

  --explain  also which readings carry each decision, and how far each could move before it flips; every
             reading is moved by itself and what leads up to the decision computed again: seconds for a
             decision that follows from few readings by short work, tens of minutes for one that draws
             thousands of shafts behind each of hundreds of readings
  --only "hub removal"  explain this decision alone, by its name
  --no-run   compare hashes only: nothing of the rebuild is executed
  --json     print the outcome as JSON

A bundle, and a folder unpacked from one, is somebody else's: its hashes are compared, and its sheets are run
again only with --run-their-code, in the sandbox of this machine, which is told. What was left out when it
was shared cannot be checked and is listed by itself; the rest is judged as in a folder of one's own.

Exit code: 0 all is as it was left and every decision stands, 1 the audit itself failed, 2 the call was off,
3 figures moved or files were altered but every decision stands, 4 a decision follows no longer,
5 a decision cannot be checked (with --no-run: only where something was altered is it 3).`,

  async run(args) {
    const { folder, explain, only, rerun, json, runTheirCode, openNetwork } = read(args);
    const live = process.stderr.isTTY === true;
    const onProgress = (what: string): boolean => live && process.stderr.write(`\r\x1b[2K  ${what}`);
    const foreign = foreignIn(folder === undefined ? [] : [folder]);
    if (foreign !== undefined) {
      const options = { rerun, explain, only, runTheirCode, openNetwork, onProgress };
      return tell(await (await import("./audit-foreign.js")).auditForeign(foreign, options), json, live);
    }
    const directory = findRebuild(folder ?? process.cwd());
    if (directory === undefined)
      throw new UsageError(`no rebuild.json in ${folder ?? "this folder"} or above it`);
    return tell(await auditRebuild({ directory, rerun, explain, only, onProgress }), json, live);
  },
};

function tell(audit: Audit, json: boolean, live: boolean): number {
  if (live) process.stderr.write("\r\x1b[2K");
  console.log(json ? canonicalJson(audit).trimEnd() : renderText(presentAudit(audit)));
  return exitCode(audit);
}

function exitCode({ files, failed, decisions, results, rerun }: Audit): number {
  const any = (verdict: DecisionVerdict): boolean =>
    decisions.some((decision) => decision.verdict === verdict);
  if (any("no longer follows")) return 4;
  if (rerun && (any("cannot be checked") || failed.length > 0)) return 5;
  return files.findings.length > 0 || results.length > 0 || any("stands, figures moved") ? 3 : 0;
}

interface AuditCall {
  readonly folder?: string;
  readonly explain: boolean;
  readonly only?: string;
  readonly rerun: boolean;
  readonly json: boolean;
  readonly runTheirCode: boolean;
  readonly openNetwork: boolean;
}

function read(args: readonly string[]): AuditCall {
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        explain: { type: "boolean" },
        only: { type: "string" },
        "no-run": { type: "boolean" },
        json: { type: "boolean" },
        "run-their-code": { type: "boolean" },
        "network-may-stay-open": { type: "boolean" },
      },
    });
    if (positionals.length > 1) throw new Error(`one folder at the most, got ${positionals.join(" ")}`);
    if (values.explain && values["no-run"]) throw new Error("--explain runs the sheets, --no-run does not");
    if (values.only !== undefined && !values.explain)
      throw new Error("--only names a decision to explain, and goes with --explain");
    return {
      folder: positionals[0],
      only: values.only,
      explain: values.explain === true,
      rerun: values["no-run"] !== true,
      json: values.json === true,
      runTheirCode: values["run-their-code"] === true,
      openNetwork: values["network-may-stay-open"] === true,
    };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
