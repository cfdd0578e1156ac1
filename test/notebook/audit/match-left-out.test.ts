import { describe, expect, it } from "vitest";
import { comparePublished } from "../../../kernel-helpers/notebook/audit/compare-published.js";
import type { Judgement } from "../../../kernel-helpers/notebook/audit/judge-decision.js";
import {
  besideLeftOut,
  judgeFromCopy,
  matchLeftOut,
} from "../../../kernel-helpers/notebook/audit/match-left-out.js";
import type { LeftOut } from "../../../kernel-helpers/record/bundle/index.js";
import type { FileFinding, SheetRecord } from "../../../kernel-helpers/record/index.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

const hash = (digit: string): string => digit.repeat(64);
const folder = temporaryFolder({
  "record/manifest-sha256.txt": [
    `${hash("a")}  tables/t.csv`,
    `${hash("b")}  tables/u.csv`,
    `${hash("c")}  record/inputs/t.aaaaaaaaaaaa.csv`,
    `${hash("d")}  record/04-survey.json`,
    `${hash("e")}  out/report.html`,
    "",
  ].join("\n"),
});
const remark = [{ what: 'the column "remark"', count: 1 }];
const leftOut: LeftOut = {
  schema: 1,
  files: [
    { file: "record/04-survey.json", sha256: hash("d"), parts: [{ what: "texts", count: 2 }] },
    { file: "record/inputs/t.aaaaaaaaaaaa.csv", sha256: hash("c"), parts: remark, whole: true },
    { file: "tables/t.csv", sha256: hash("a"), parts: remark },
    // Another state than the run left: it was altered before it was shared.
    { file: "tables/u.csv", sha256: hash("f"), parts: remark },
  ],
  cannotRun: [],
  mayDiffer: ["04-survey"],
};
const finding = (file: string, what: FileFinding["what"], comparedWith?: string[]): FileFinding => ({
  file,
  what,
  text: "",
  changes: [],
  ...(comparedWith && { comparedWith }),
});
const match = (...findings: FileFinding[]): { found: string[]; notWhole: Record<string, string> } => {
  const matched = matchLeftOut(folder, findings, leftOut);
  return {
    found: matched.findings.map(({ file }) => file),
    notWhole: Object.fromEntries(matched.notWhole.map(({ file, text }) => [file, text])),
  };
};

describe("matchLeftOut(directory, findings, leftOut)", () => {
  it("tells of a file that something was left out of what that was, and that the rest cannot be checked", () => {
    expect(match(finding("tables/t.csv", "altered"))).toEqual({
      found: [],
      notWhole: {
        "tables/t.csv":
          'the column "remark" (1 entry); whether the rest is as the run left it cannot be told',
      },
    });
  });
  it("tells of a copy that is not there", () => {
    expect(match(finding("record/inputs/t.aaaaaaaaaaaa.csv", "missing")).notWhole).toEqual({
      "record/inputs/t.aaaaaaaaaaaa.csv": "the file itself, a copy of an earlier state",
    });
  });
  it("keeps as found what had been altered before it was shared, and what nobody said was left out", () => {
    const found = ["tables/u.csv", "tables/v.csv", "sheets/04-survey.ipynb"];
    expect(match(...found.map((file) => finding(file, "altered"))).found).toEqual(found);
    expect(match(finding("tables/t.csv", "added"), finding("tables/t.csv", "unreadable")).found).toHaveLength(
      2,
    );
  });
  it("takes a record that does not fit a shortened one for a consequence, and one that does not fit another for a finding", () => {
    const { found, notWhole } = match(
      finding("record/05-taper.json", "does not fit", ["record/04-survey.json"]),
      finding("record/06-decide.json", "does not fit", ["record/05-taper.json"]),
    );
    expect(notWhole).toEqual({ "record/05-taper.json": "what it was made from: record/04-survey.json" });
    expect(found).toEqual(["record/06-decide.json"]);
  });
  it("expects the report to be another, where something was left out, and only there", () => {
    expect(match(finding("out/report.html", "altered")).found).toEqual([]);
    const none = { ...leftOut, files: [] };
    expect(matchLeftOut(folder, [finding("out/report.html", "altered")], none).findings).toHaveLength(1);
    expect(matchLeftOut(folder, [finding("out/report.html", "altered")], undefined).findings).toHaveLength(1);
  });
});

describe("what a copy that is not whole lets be judged", () => {
  const moved: Judgement = { verdict: "no longer follows", why: "Run again, it is refused.", moved: [] };
  it("a decision that does not come out cannot be checked where it stood on what is not whole, and is told what is missing", () => {
    expect(judgeFromCopy(moved, ["tables/t.csv"], leftOut)).toMatchObject({
      verdict: "cannot be checked",
      why: 'It stood on what is not whole in this copy. Left out of tables/t.csv: the column "remark" (1 entry). Without that: Run again, it is refused.',
    });
  });
  it("a decision that stood on whole files is judged as ever, and one that stands stands", () => {
    expect(judgeFromCopy(moved, ["tables/whole.csv"], leftOut)).toBe(moved);
    const stands: Judgement = { verdict: "stands", why: "", moved: [] };
    expect(judgeFromCopy(stands, ["tables/t.csv"], leftOut)).toBe(stands);
  });
  it("a text left out of a result is not compared, and a number beside it is", () => {
    const record = (published: object): SheetRecord => ({ sheet: "04-survey", published }) as SheetRecord;
    const recorded = record({ wear: { remark: "(left out)", size: 3 } });
    const again = record({ wear: { remark: "ridge", size: 3 } });
    expect(comparePublished(recorded, again, true)).toEqual([]);
    expect(comparePublished(recorded, again)).toHaveLength(1); // in a folder of one's own nothing was left out
    const results = comparePublished(recorded, record({ wear: { remark: "ridge", size: 4 } }), true);
    const told = results.map((result) => ({ ...result, because: [] }));
    expect(besideLeftOut(told, leftOut)).toMatchObject([
      {
        text: "size: 3 on record, 4 now",
        remark: "Its sheet read what is not whole here, and this may come of that",
      },
    ]);
  });
});
