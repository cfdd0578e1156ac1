import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildTimeout } from "../../support/built.js";
import { Bench, closeBench, hasChromium, openBrowser } from "./bench.js";

const reads =
  'import { openRebuild } from "journalbox";\nopenRebuild({ sheet: "a-reads" }).table("shaft-survey").rowCount';

describe.skipIf(!hasChromium())("overview page", { timeout: 40_000 }, () => {
  let browser: Browser;
  let bench: Bench;

  beforeAll(async () => {
    browser = await openBrowser();
    bench = await Bench.open(browser, {
      "a-reads": { head: "text: # What was read", count: reads },
      "b-fails": { fault: 'throw new RangeError("too worn")' },
    });
  }, buildTimeout);
  afterAll(async () => {
    await closeBench(bench);
    await browser.close();
  });

  it("names the rebuild, says that it is invented, and links sheets and tables", async () => {
    const page = await bench.tab();
    await page.getByRole("heading", { level: 1, name: "Line shaft of a grist mill" }).waitFor();
    await page.locator(".invented", { hasText: "invented" }).waitFor();
    const sheets = page.locator("[data-sheet] a");
    expect(await sheets.evaluateAll((links) => links.map((link) => link.getAttribute("href")))).toEqual([
      "/sheet/a-reads",
      "/sheet/b-fails",
    ]);
    expect(await sheets.first().textContent()).toContain("What was read");
    const tables = page.locator("[data-table] a");
    expect(await tables.evaluateAll((links) => links.map((link) => link.getAttribute("href")))).toContain(
      "/table/shaft-survey",
    );
    await page.close();
  });

  it("runs all sheets with a line that says how far it is, and says how each stands", async () => {
    const page = await bench.tab();
    const state = (sheet: string, word: string) =>
      page.locator(`[data-sheet="${sheet}"] .standing`, { hasText: word });
    await state("a-reads", "never run").waitFor();
    const said = await page.locator(".progress").evaluateHandle((line) => {
      const texts: string[] = [];
      new MutationObserver(() => texts.push(line.textContent ?? "")).observe(line, { childList: true });
      return texts;
    });
    await page.getByRole("button", { name: "Run all" }).click();
    await page.locator(".progress", { hasText: "b-fails stopped at a fault" }).waitFor();
    expect(await said.jsonValue()).toContain("a-reads: cell 2 of 2.");
    await state("a-reads", "fresh").waitFor();
    await state("b-fails", "failed").waitFor();
    await state("b-fails", "too worn").waitFor();
    bench.write("tables/shaft-survey.csv", (text) => text.replace("2.43", "2.42"));
    await state("a-reads", "stale").waitFor();
    await state("a-reads", "tables/shaft-survey.csv has changed").waitFor();
    await page.close();
  });
});
