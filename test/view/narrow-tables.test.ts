import { describe, expect, it } from "vitest";
import type { Presentation } from "../../kernel-helpers/view/blocks.js";
import { htmlTable } from "../../kernel-helpers/view/html-table.js";
import { renderHtml } from "../../kernel-helpers/view/render-html.js";
import { presentDecision } from "../../kernel-helpers/view/results/present-decision.js";
import { hasBrowser, inBrowser } from "../notebook/report/browser.js";

const needs = "preheat, a welder used to old steel, slow cooling, straightening";
const names = ["turn undersize", "spray build-up", "weld build-up", "sleeve", "new stub", "new shaft"];
const decision = presentDecision({
  kind: "decision",
  name: "shaft",
  question: "What is done with the worn journals?",
  options: names.map((name) => ({
    name,
    figures: { "steel that carries, pulley box": "2.4250 in", needs, reversible: "no" },
    breaks: [],
  })),
  limits: {},
  choice: "sleeve",
  reason: "it costs nothing",
  by: "AB",
  on: "2026-05-04",
  withdrawn: false,
  superseded: [],
});

/** Pixels by which the table is wider than its room, in a window and a room of these widths and the report's letters. */
async function overhang(
  presentation: Presentation,
  window: number,
  room: number,
  letters = "16px",
): Promise<number> {
  const shown = renderHtml(presentation, { picture: () => "", withStyle: true });
  const body = `<div style="width:${room}px;font:${letters}/1.5 Helvetica,Arial,sans-serif">${shown}</div>`;
  let over = Number.NaN;
  await inBrowser("<p>", async ({ evaluate }) => {
    over = (await evaluate(`new Promise((done) => {
      const frame = document.createElement("iframe");
      frame.style.width = "${window}px";
      frame.srcdoc = ${JSON.stringify(body).replaceAll("</", "<\\/")};
      frame.onload = () => {
        const around = frame.contentDocument.querySelector(".jb-scroll");
        done(around.scrollWidth - around.clientWidth);
      };
      document.body.append(frame);
    })`)) as number;
  });
  return over;
}

describe.skipIf(!hasBrowser)("the options of a decision, six of them with a sentence each", () => {
  it("fit a telephone of 390 pixels", async () => {
    expect(await overhang(decision, 390, 358)).toBe(0);
  });
  it("fit an A4 page between the report's margins, as columns", async () => {
    // 210 − 28 mm at 96 pixels an inch; the window is wide, so that rows are not set one under the other.
    expect(await overhang(decision, 1200, 688, "10pt")).toBe(0);
  });
  it("fit a telephone without being told to, as every table of few rows that is too wide for it does", async () => {
    const [table, ...rest] = decision.blocks;
    const { stacked: _, ...plain } = table as never as Record<string, unknown>;
    expect(await overhang({ ...decision, blocks: [plain, ...rest] } as never, 390, 358)).toBe(0);
  });
  it("would not fit either, were they not told to", async () => {
    const [table, ...rest] = decision.blocks;
    const wide = { ...decision, blocks: [{ ...table, stacked: false }, ...rest] } as never;
    expect(await overhang(wide, 390, 358)).toBeGreaterThan(100);
  });
});

describe("htmlTable(table), not told how it stands on a telephone", () => {
  const stacks = (columns: number, rows: number, words = "12.345 ± 0.012 mm"): boolean =>
    htmlTable({
      type: "table",
      columns: Array.from({ length: columns }, (_, i) => ({ title: `no ${i}`, align: "right" as const })),
      rows: Array.from({ length: rows }, () => ({ cells: Array.from({ length: columns }, () => words) })),
    }).includes("jb-stack");
  it("sets rows one under the other where columns of its widest cells do not fit 390 px", () => {
    expect([2, 3, 4].map((columns) => stacks(columns, 3))).toEqual([false, true, true]);
    expect(stacks(5, 3, "1.2")).toBe(false);
  });
  it("leaves a long table to scroll: its rows one under the other would be longer still", () => {
    expect([14, 15].map((rows) => stacks(4, rows))).toEqual([true, false]);
  });
});
