import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { pageFolder } from "../../../kernel-helpers/live/server/page-needs.js";
import { buildTimeout } from "../../support/built.js";
import { Bench, cell, closeBench, hasChromium, openBrowser } from "./bench.js";

/** What all pages together may have, without plotly.js [bytes, gzipped]. */
const most = 1_000_000;

describe.skipIf(!hasChromium())("the files of the pages", { timeout: 60_000 }, () => {
  let browser: Browser;
  let bench: Bench;

  beforeAll(async () => {
    browser = await openBrowser();
    bench = await Bench.open(browser, {
      "a-formula": { head: "text: # Play\n\nIt is $p = F / A$, `const`.", one: "1 + 1" },
    });
  }, buildTimeout);
  afterAll(async () => {
    await closeBench(bench);
    await browser.close();
  });

  it("are less than a megabyte gzipped, all programs and styles of all pages together", () => {
    const files = readdirSync(pageFolder(), { recursive: true, withFileTypes: true });
    const packed = files.filter(({ name }) => name.endsWith(".gz"));
    const bytes = packed.reduce(
      (sum, { parentPath, name }) => sum + statSync(join(parentPath, name)).size,
      0,
    );
    expect(bytes).toBeLessThan(most);
    // Not because something is missing, or lies beside them unpacked.
    expect(bytes).toBeGreaterThan(most / 2);
    expect(files.filter(({ name }) => /\.(js|css|map)$/.test(name))).toEqual([]);
  });
  it("are sent gzipped, and are a sheet with its fonts in less than a megabyte", async () => {
    const page = await bench.sheet("a-formula");
    await cell(page, 0).locator(".katex").first().waitFor();
    const sent = await staticFiles(page);
    expect(sent.some(({ path }) => path.endsWith(".woff2"))).toBe(true);
    expect(sent.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThan(most);
    for (const { path, bytes, unpacked } of sent)
      if (unpacked > 1000 && !path.endsWith(".woff2")) expect(bytes, path).toBeLessThan(unpacked);
    await page.close();
  });
  it("are all named by the page, so that none waits for another to be asked for", async () => {
    for (const path of ["/", "/sheet/a-formula", "/table/shaft-survey"]) {
      const page = await bench.tab();
      await page.goto(`http://127.0.0.1:${bench.port}${path}`);
      await page.locator("main").waitFor();
      if (path.startsWith("/sheet/")) await cell(page, 0).locator(".katex").first().waitFor();
      const named = await page
        .locator("head > [href^='/static/'], head > [src^='/static/']")
        .evaluateAll((all) => all.map((each) => each.getAttribute("href") ?? each.getAttribute("src")));
      const asked = (await staticFiles(page)).filter((each) => !each.path.endsWith(".woff2"));
      expect(asked.map((each) => each.path).sort(), path).toEqual([...named].sort());
      await page.close();
    }
  });
  it("are taken from what the browser kept when a page is opened again", async () => {
    const page = await bench.sheet("a-formula");
    await page.goto(`http://127.0.0.1:${bench.port}/sheet/a-formula`);
    await cell(page, 0).locator(".katex").first().waitFor();
    const files = await staticFiles(page);
    expect(files.length).toBeGreaterThan(4);
    expect(files.filter(({ fetched }) => fetched > 0)).toEqual([]);
    await page.close();
  });
});

async function staticFiles(page: Page) {
  return page.evaluate(() =>
    (performance.getEntriesByType("resource") as PerformanceResourceTiming[])
      .map(({ name, encodedBodySize, decodedBodySize, transferSize }) => ({
        path: new URL(name).pathname,
        bytes: encodedBodySize,
        unpacked: decodedBodySize,
        fetched: transferSize,
      }))
      .filter(({ path }) => path.startsWith("/static/")),
  );
}
