import { describe, expect, it } from "vitest";
import { buildReport, type ReportInput } from "../../../kernel-helpers/notebook/report/index.js";
import { parsePage } from "./parse-page.js";
import { sampleInput } from "./sample-input.js";

const made = {
  question: "What is done with the journals?",
  choice: "turn undersize",
  by: "AB",
  on: "2026-05-04",
};

async function decidedOf(records: Readonly<Record<string, unknown>>): Promise<readonly Element[]> {
  const input: ReportInput = {
    ...sampleInput(),
    records: Object.entries(records).map(([name, record]) => ({
      name: `${name}.json`,
      text: typeof record === "string" ? record : JSON.stringify(record),
    })),
  };
  return [...parsePage(await buildReport(input)).querySelectorAll(".decided li")];
}

const wordsOf = (element: Element): string => (element.textContent ?? "").replace(/\s+/g, " ").trim();

describe("what was decided, at the head of the report", () => {
  it("is said with who and when, in the order of the sheets, and leads to the sheet", async () => {
    const items = await decidedOf({
      "05-taper": { decisions: { taper: { ...made, question: "Is the taper turned?", choice: "no" } } },
      "04-shaft-survey": { decisions: { shaft: made } },
    });
    expect(items.map(wordsOf)).toEqual([
      "What is done with the journals?turn undersizeAB, 2026-05-04",
      "Is the taper turned?noAB, 2026-05-04",
    ]);
    expect(items.map((item) => item.querySelector("a")!.getAttribute("href"))).toEqual([
      "#sheet-1",
      "#sheet-2",
    ]);
  });

  it("says what somebody must know who reads no further", async () => {
    const items = await decidedOf({
      "04-shaft-survey": {
        decisions: {
          a: { ...made, override: "the boxes are poured to it" },
          b: { ...made, now: { options: [] } },
          c: { ...made, withdrawn: true },
          d: made,
        },
        refused: { e: { question: "How is it held?", choice: "by hand", why: "breaks a limit" } },
      },
    });
    const remarks = items.map((item) => [...item.querySelectorAll("em")].map(wordsOf));
    expect(remarks).toEqual([
      ["against a limit, on purpose"],
      ["its figures have moved since"],
      ["the sheet does not make it any more"],
      [],
      ["refused: not decided"],
    ]);
  });

  it("is not there where nothing was decided, or no record can be read", async () => {
    for (const record of [
      {},
      "no JSON",
      "[]",
      "null",
      { decisions: 7, refused: "x" },
      { decisions: { a: null } },
    ])
      expect(await decidedOf({ "04-shaft-survey": record })).toEqual([]);
    expect(await decidedOf({ "99-not-run": { decisions: { a: made } } })).toEqual([]);
  });

  it("shows words of a record as words only", async () => {
    const attack = '</ol><script>alert(1)</script><img src=x onerror="alert(1)">';
    const [item] = await decidedOf({
      "04-shaft-survey": { decisions: { a: { ...made, question: attack, choice: attack, by: attack } } },
    });
    expect(item!.querySelector("script, img")).toBeNull();
    expect(wordsOf(item!)).toContain("<script>");
  });
});
