import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Output, writeNotebook } from "../../../kernel-helpers/notebook/index.js";
import { blocksMimeType } from "../../../kernel-helpers/view/index.js";
import { buildTimeout } from "../../support/built.js";
import { Bench, cell, hasChromium, openBrowser } from "./bench.js";

const attack = '<script>window.hacked = true</script><img src="x" onerror="window.hacked = true">';
const figure = {
  data: [{ type: "scatter", x: [1, 2], y: [1, 2] }],
  layout: { width: 400, height: 300 },
};
const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="400" height="300"><script>top.hacked = true</script><rect width="400" height="300" fill="#eee"/></svg>`;
const picture = `data:image/svg+xml;base64,${Buffer.from(svg).toString("base64")}`;

/** What a notebook from a stranger could bring along, and a result of our own. */
const outputs: Readonly<Record<string, Record<string, unknown>>> = {
  html: { "text/html": `<p>kept words</p>${attack}<a href="javascript:window.hacked=true">a link</a>` },
  markdown: { "text/markdown": `*kept words*\n\n${attack}` },
  svg: { "image/svg+xml": svg },
  javascript: { "application/javascript": "window.hacked = true", "text/plain": "kept words" },
  away: { "text/html": '<p>kept words</p><img src="http://203.0.113.7/seen.png">' },
  own: {
    [blocksMimeType]: {
      title: `A result ${attack}`,
      blocks: [
        { type: "text", text: `<b>not bold</b>${attack}` },
        { type: "figure", figure, alt: "two points" },
      ],
    },
    "text/html": `<div data-journalbox-figure="a1"><img src="${picture}"></div>${attack}`,
    "text/plain": "kept words",
  },
  badBlocks: { [blocksMimeType]: { title: 3, blocks: "none" }, "text/plain": "kept words" },
};

describe.skipIf(!hasChromium())("outputs on a sheet page", { timeout: 40_000 }, () => {
  let browser: Browser;
  let bench: Bench;
  let page: Page;
  const names = Object.keys(outputs);

  beforeAll(async () => {
    browser = await openBrowser();
    bench = await Bench.open(browser, { foreign: Object.fromEntries(names.map((name) => [name, name])) });
    mkdirSync(join(bench.folder, "out"));
    writeNotebook(join(bench.folder, "out", "foreign.ipynb"), {
      metadata: {},
      cells: names.map((name) => ({
        cell_type: "code",
        id: name,
        metadata: {},
        source: name,
        execution_count: 1,
        outputs: [{ output_type: "display_data", data: outputs[name]!, metadata: {} } as Output],
      })),
    });
    page = await bench.sheet("foreign");
  }, buildTimeout);
  afterAll(async () => {
    await bench?.close();
    await browser?.close();
  });

  it.each(["html", "markdown", "javascript", "away", "badBlocks"])(
    "of %s the words are shown",
    async (name) => {
      await cell(page, names.indexOf(name))
        .locator(".jp-OutputArea-output", { hasText: "kept words" })
        .waitFor();
    },
  );

  it("a drawing is an image, in which nothing runs", async () => {
    const image = cell(page, names.indexOf("svg")).locator("img");
    await image.waitFor();
    expect(await image.getAttribute("src")).toMatch(/^data:image\/svg\+xml/);
  });

  it("a result of our own is drawn from its blocks, as text", async () => {
    const own = cell(page, names.indexOf("own"));
    await own.locator(".jb p", { hasText: "<b>not bold</b>" }).waitFor();
    expect(await own.locator(".jb b, .jb script").count()).toBe(0);
  });

  it("a figure is a picture first, and a live plot when it comes into view", async () => {
    const place = cell(page, names.indexOf("own")).locator(".figure-place");
    expect(await place.locator(":scope > img").getAttribute("src")).toBe(picture);
    await place.scrollIntoViewIfNeeded();
    await place.locator(".jb-live .main-svg").first().waitFor();
    await place.locator(":scope > img").waitFor({ state: "hidden" });
    await page.emulateMedia({ media: "print" });
    await place.locator(":scope > img").waitFor({ state: "visible" });
    await place.locator(".jb-live").waitFor({ state: "hidden" });
    await page.emulateMedia({ media: "screen" });
  });

  it("a result is seen whole on a phone, not only there", async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    const output = cell(page, names.indexOf("own")).locator(".jp-OutputArea-output");
    const [frame, result] = [await output.boundingBox(), await output.locator(".jb").boundingBox()];
    expect(result!.height).toBeGreaterThan(100);
    expect(frame!.height).toBeGreaterThanOrEqual(result!.height);
    await page.setViewportSize({ width: 1280, height: 720 });
  });

  it("no script of an output has run, no handler is left, and nothing was asked of another machine", async () => {
    expect(await page.evaluate("window.hacked")).toBeUndefined();
    expect(await page.locator(".jp-OutputArea-output :is([onerror], script)").count()).toBe(0);
    expect(await page.locator('.jp-OutputArea-output a[href^="javascript"]').count()).toBe(0);
    expect(bench.strangers).toEqual([]);
  });
});
