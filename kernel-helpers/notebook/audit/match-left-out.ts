import { type LeftOut, type LeftOutFile, leftOutText } from "../../record/bundle/index.js";
import { type FileFinding, readManifest, reportFile } from "../../record/index.js";
import type { Audit, AuditedResult } from "../../view/results/audit-types.js";
import type { Judgement } from "./judge-decision.js";

/** What the hashes say of a shared copy: what is otherwise because something was left out, and what is found besides. */
export interface MatchedFindings {
  readonly findings: readonly FileFinding[];
  readonly notWhole: Audit["files"]["notWhole"];
}

/**
 * Tells findings that follow from what was left out of a shared copy from all others. A file that is not as the run left
 * it is one that something was left out of where the copy says so and names the hash that the run left; what is left of
 * it cannot be checked by that hash. A record that does not fit one of these follows from it too, and so does the
 * report, which is made anew for a copy.
 */
export function matchLeftOut(
  directory: string,
  findings: readonly FileFinding[],
  leftOut: LeftOut | undefined,
): MatchedFindings {
  if (leftOut === undefined || leftOut.files.length === 0) return { findings, notWhole: [] };
  const left = readManifest(directory)?.files ?? new Map<string, string>();
  const byFile = new Map(leftOut.files.map((one) => [one.file, one]));
  const isLeftOut = (file: string): LeftOutFile | undefined => {
    const one = byFile.get(file);
    return one !== undefined && left.get(file) === one.sha256 ? one : undefined;
  };
  const notWhole: { file: string; text: string }[] = [];
  const others = findings.filter(({ file, what, comparedWith = [] }) => {
    const one = isLeftOut(file);
    if (what === "altered" || what === "missing" || (what === "does not fit" && comparedWith.length === 0)) {
      const text = one === undefined ? undefined : notWholeText(one);
      if (text !== undefined) notWhole.push({ file, text });
      else if (file === reportFile && what === "altered")
        notWhole.push({ file, text: "made anew for this copy, without what was left out" });
      else return true;
      return false;
    }
    const because = comparedWith.filter((other) => isLeftOut(other) !== undefined);
    if (what !== "does not fit" || because.length === 0) return true;
    notWhole.push({ file, text: `what it was made from: ${because.join(", ")}` });
    return false;
  });
  return { findings: others, notWhole };
}

function notWholeText({ whole, parts }: LeftOutFile): string {
  if (whole === true) return "the file itself, a copy of an earlier state";
  const things = parts.map(({ what, count }) => `${what} (${count} ${count === 1 ? "entry" : "entries"})`);
  return `${things.join(", ")}; whether the rest is as the run left it cannot be told`;
}

/** What stands in a record in place of a text that was left out. */
const gone = "(left out)";

/** Results of which more differs than what was left out of them. */
export function besideLeftOut(
  results: readonly AuditedResult[],
  leftOut: LeftOut | undefined,
): readonly AuditedResult[] {
  if (leftOut === undefined) return results;
  return results.map((result) =>
    leftOut.mayDiffer.includes(result.sheet)
      ? {
          ...result,
          remark: "Its sheet read what is not whole here, and this may come of that",
        }
      : result,
  );
}

/** Whether a value of a record is one that was left out when it was shared, and so says nothing. */
export function isLeftOutText(value: unknown): boolean {
  return typeof value === "string" && value.includes(gone);
}

/**
 * A decision that stood on files which are not whole here, and does not come out as it did: that may come of what is
 * missing, so it cannot be checked from this copy.
 */
export function judgeFromCopy(
  judgement: Judgement,
  inputs: readonly string[],
  leftOut: LeftOut | undefined,
): Judgement {
  const missing = (leftOut?.files ?? []).filter(({ file }) => inputs.includes(file));
  if (missing.length === 0 || judgement.verdict === "stands") return judgement;
  const what = missing.map(leftOutText).join(" ");
  return {
    verdict: "cannot be checked",
    why: `It stood on what is not whole in this copy. ${what} Without that: ${judgement.why}`,
    moved: judgement.moved,
  };
}
