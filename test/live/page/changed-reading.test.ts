import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Locator } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildTimeout } from "../../support/built.js";
import { Bench, closeBench, hasChromium, openBrowser, ready, state } from "./bench.js";

const sheet = {
  head: "text: # The shaft",
  open: 'import { openRebuild, profileOf } from "journalbox";\nconst rebuild = openRebuild();\nprofileOf(rebuild.table("shaft-survey"))',
};

/** Readings of the first angle, as the live plot has them [in]. */
function drawn(plot: Locator): Promise<readonly number[]> {
  return plot.evaluate((element) =>
    [...(element as unknown as { readonly data: { readonly y: ArrayLike<number> }[] }).data].flatMap(
      ({ y }) => Array.from(y ?? []),
    ),
  );
}

describe.skipIf(!hasChromium())("a reading that is changed", { timeout: 90_000 }, () => {
  let browser: Browser;
  let bench: Bench;

  beforeAll(async () => {
    browser = await openBrowser();
    bench = await Bench.open(browser, { "a-shaft": sheet });
  }, buildTimeout);
  afterAll(async () => {
    await closeBench(bench);
    await browser.close();
  });

  it("is typed into its table, makes the sheet stale, and is seen in the plot, all from links and buttons", async () => {
    const page = await bench.tab();
    await page.getByRole("link", { name: "The shaft" }).click();
    await ready(page);
    await page.getByRole("button", { name: "Start over, run all" }).click();
    await state(page, "fresh").waitFor();
    const plot = page.locator(".jb-live").first();
    await page.locator(".figure-place").first().scrollIntoViewIfNeeded();
    await plot.locator(".main-svg").first().waitFor();
    expect((await drawn(plot)).some((y) => Math.abs(y - 2.4345) < 2e-4)).toBe(false);

    await page.getByRole("link", { name: "All worksheets" }).click();
    await page.getByRole("link", { name: "shaft-survey" }).click();
    await page.getByLabel("diameter @ 0 deg [in], line 11", { exact: true }).click();
    await page.keyboard.type("2.4345");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText(/stale/).first().waitFor();
    expect(readFileSync(join(bench.folder, "tables/shaft-survey.csv"), "utf8")).toMatch(/^4, ?2\.4345,/m);

    await page.getByRole("link", { name: "The shaft" }).click();
    await state(page, "stale").waitFor();
    await ready(page);
    await page.getByRole("button", { name: "Start over, run all" }).click();
    await state(page, "fresh").waitFor();
    await page.locator(".figure-place").first().scrollIntoViewIfNeeded();
    await plot.locator(".main-svg").first().waitFor();
    expect((await drawn(plot)).some((y) => Math.abs(y - 2.4345) < 2e-4)).toBe(true);
    await page.close();
  });
});
