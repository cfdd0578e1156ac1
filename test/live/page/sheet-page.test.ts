import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { buildTimeout } from "../../support/built.js";
import {
  Bench,
  cell,
  closeBench,
  hasChromium,
  notice,
  openBrowser,
  ready,
  standing,
  state,
  type,
} from "./bench.js";

const sheet = {
  head: "text: # Trial sheet\n\nWith $\\pi$ in it.",
  open: 'import { openRebuild } from "journalbox";\nconst rebuild = openRebuild({ sheet: "trial" });\nconst survey = rebuild.table("shaft-survey");\nsurvey.rowCount',
  sum: "const sum = 20 + 22;\nsum",
};

describe.skipIf(!hasChromium())("sheet page", { timeout: 40_000 }, () => {
  let browser: Browser;
  let bench: Bench;

  beforeAll(async () => {
    browser = await openBrowser();
  }, buildTimeout);
  afterAll(() => browser?.close());
  beforeEach(async () => {
    bench = await Bench.open(browser, { trial: sheet });
  });
  afterEach(() => closeBench(bench));

  it("a cell is edited, run and saved; the file on disk has the text and no result", async () => {
    const page = await bench.sheet("trial");
    await page.locator(".katex").first().waitFor();
    await type(page, 2, " + 100");
    await standing(page, 2, "not run");
    await page.keyboard.press("Shift+Enter");
    await standing(page, 2, "done");
    await cell(page, 2).locator(".jp-OutputArea-output", { hasText: "142" }).waitFor();
    // Shift-Enter on the last cell adds one; it is taken out again and put back by its notice.
    expect(await page.locator(".jp-Cell").count()).toBe(4);
    await page.keyboard.press("Escape");
    await page.keyboard.press("d");
    await page.keyboard.press("d");
    await notice(page, "The cell is deleted.").waitFor();
    expect(await page.locator(".jp-Cell").count()).toBe(3);
    await page.keyboard.press("Control+s");
    await page.locator('.saving[data-saving="saved"]').waitFor();
    expect(bench.onDisk("trial")[2]).toBe("const sum = 20 + 22;\nsum + 100");
  });

  it("a run from top to bottom makes the sheet fresh, a changed reading makes it stale and says which", async () => {
    const page = await bench.sheet("trial");
    await state(page, "never run").waitFor();
    await page.getByRole("button", { name: "Start over, run all" }).click();
    await state(page, "fresh").waitFor();
    bench.write("tables/shaft-survey.csv", (text) => text.replace("2.43", "2.42"));
    await state(page, "stale").waitFor();
    await page.locator(".head-words", { hasText: "tables/shaft-survey.csv has changed" }).waitFor();
    await page.locator(".head-words button", { hasText: "Run all" }).click();
    await state(page, "fresh").waitFor();
  });

  it("a fault stops the run at its cell and leaves out the rest, as the progress line says", async () => {
    bench.writeSheet("trial", { ...sheet, sum: "null.length", last: "1" });
    const page = await bench.sheet("trial");
    await page.getByRole("button", { name: "Run all", exact: true }).first().click();
    await standing(page, 2, "stopped");
    await standing(page, 3, "not run");
    await page.locator(".progress", { hasText: "Stopped at cell 3. 1 more was not run." }).waitFor();
    await cell(page, 2).locator(".jp-OutputArea-output", { hasText: "null.length" }).waitFor();
  });

  it("results are there again when the sheet is opened again, until its code is another", async () => {
    const page = await bench.sheet("trial");
    await page.getByRole("button", { name: "Start over, run all" }).click();
    await state(page, "fresh").waitFor();
    await page.reload();
    await standing(page, 2, "from before");
    await cell(page, 2).locator(".jp-OutputArea-output", { hasText: "42" }).waitFor();
    bench.writeSheet("trial", { ...sheet, sum: "20 + 23" });
    await page.reload();
    await standing(page, 2, "not run");
  });

  it("a kernel that dies is said to be dead, takes no text along, and is started again", async () => {
    const page = await bench.sheet("trial");
    await type(page, 2, "\n// typed before");
    await cell(page, 1).locator(".cm-content").click();
    await page.keyboard.press("Control+a");
    await page.keyboard.insertText("process.kill(process.pid, 'SIGKILL');\nawait new Promise(() => {});");
    await page.keyboard.press("Control+Enter");
    const bar = notice(page, "The kernel has stopped");
    await bar.waitFor();
    await standing(page, 1, "cut off");
    await type(page, 2, " and after");
    await bar.getByRole("button", { name: "Start it again" }).click();
    await ready(page);
    await bar.waitFor({ state: "detached" });
    await cell(page, 2).locator(".cm-content", { hasText: "// typed before and after" }).waitFor();
    await type(page, 2, "");
    await page.keyboard.press("Control+Enter");
    await standing(page, 2, "done");
  });

  it("an endless loop is stopped, and the kernel goes on", async () => {
    bench.writeSheet("trial", { loop: "await new Promise(() => {});", sum: "1 + 1" });
    const page = await bench.sheet("trial");
    await page.getByRole("button", { name: "Run all", exact: true }).first().click();
    await standing(page, 0, "running");
    await standing(page, 1, "waiting");
    await page.locator(".progress", { hasText: "Cell 1 of 2 is running. 1 more to go." }).waitFor();
    await page.getByRole("button", { name: "Stop" }).click();
    await standing(page, 0, "stopped");
    await ready(page);
    await cell(page, 1).locator(".cm-content").click();
    await page.keyboard.press("Control+Enter");
    await standing(page, 1, "done");
  });

  it("Tab offers names, Shift-Tab shows the comment of the name", async () => {
    bench.writeSheet("trial", { ask: 'import { openRebuild } from "journalbox";\nopenReb' });
    const page = await bench.sheet("trial");
    await type(page, 0, "");
    await page.keyboard.press("Tab");
    await page.locator(".jp-Completer-item", { hasText: "openRebuild" }).waitFor();
    await page.keyboard.press("Enter");
    await cell(page, 0)
      .locator(".cm-line", { hasText: /^openRebuild$/ })
      .waitFor();
    await page.keyboard.press("Shift+Tab");
    await page.locator(".explanation", { hasText: "rebuild" }).waitFor();
    await page.keyboard.press("Escape");
    await page.locator(".explanation").waitFor({ state: "hidden" });
  });

  it("on a phone nothing is wider than the page, every button is large, and the head stays where it is", async () => {
    const page = await bench.sheet("trial");
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    const buttons = page.locator("main.sheet button:visible, main.sheet select:visible");
    for (const box of await buttons.evaluateAll((all) => all.map((each) => each.getBoundingClientRect()))) {
      expect(box.height).toBeGreaterThanOrEqual(44);
      expect(box.right).toBeLessThanOrEqual(390);
    }
    await cell(page, 2).evaluate((last) => last.scrollIntoView({ block: "start" }));
    expect((await page.locator(".sheet-head").boundingBox())!.y).toBe(0);
  });

  it("on paper the code has the width beside its margin, and all cells are there", async () => {
    const page = await bench.sheet("trial");
    await page.setViewportSize({ width: 794, height: 600 });
    await page.emulateMedia({ media: "print" });
    const code = (await cell(page, 1).locator(".cm-content").boundingBox())!;
    expect(code.width).toBeGreaterThan(600);
    const [sheetHeight, body] = await page.evaluate(() => [
      document.querySelector("main.sheet")!.scrollHeight,
      document.body.getBoundingClientRect().height,
    ]);
    expect(body).toBeGreaterThanOrEqual(sheetHeight!);
    expect(await page.locator(".tools").isVisible()).toBe(false);
  });
});
