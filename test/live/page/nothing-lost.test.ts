import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { buildTimeout } from "../../support/built.js";
import { Bench, cell, closeBench, hasChromium, notice, openBrowser, ready, standing, type } from "./bench.js";

const sheet = { head: "text: # Trial sheet", first: "1 + 1", second: "2 + 2" };

describe.skipIf(!hasChromium())("sheet page: nothing typed is lost", { timeout: 40_000 }, () => {
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

  const typed = (page: Page, place: number, text: string): Promise<void> =>
    cell(page, place).locator(".cm-content", { hasText: text }).waitFor();

  it("leaving with unsaved text asks first; after a reload the text is back and said to be", async () => {
    const page = await bench.sheet("trial");
    await type(page, 1, " // not saved");
    const asked = page.waitForEvent("dialog");
    const reloaded = page.reload();
    const dialog = await asked;
    expect(dialog.type()).toBe("beforeunload");
    await dialog.accept();
    await reloaded;
    await notice(page, "Text that you typed and had not saved is back").waitFor();
    await typed(page, 1, "// not saved");
    expect(bench.onDisk("trial")[1]).toBe("1 + 1");
  });

  it("after a tab was closed the text is back in the next, and not in a third", async () => {
    const page = await bench.sheet("trial");
    await type(page, 1, " // not saved");
    await page.locator('.saving[data-saving="unsaved"]').waitFor();
    await page.close(); // as a crash: nobody is asked
    const next = await bench.sheet("trial");
    await notice(next, "is back").waitFor();
    await typed(next, 1, "// not saved");
    const third = await bench.sheet("trial");
    await third.locator('.saving[data-saving="saved"]').waitFor();
    expect(await notice(third, "is back").count()).toBe(0);
    // Saved in the one, it is seen in the other.
    await next.getByRole("button", { name: "Save", exact: true }).click();
    await notice(third, "changed elsewhere").waitFor();
    await typed(third, 1, "// not saved");
  });

  it("two tabs that change the same sheet: the second is asked, and sees both", async () => {
    const one = await bench.sheet("trial");
    const two = await bench.sheet("trial");
    await type(two, 2, " // of two");
    await type(one, 1, " // of one");
    await one.keyboard.press("Control+s");
    await notice(two, "has changed on disk").waitFor();
    await two.keyboard.press("Control+s");
    await two.getByRole("button", { name: "Show both" }).click();
    const rows = two.locator(".versions tbody tr");
    await rows.first().waitFor();
    expect(await rows.allInnerTexts()).toEqual([
      expect.stringMatching(/2\s+1 \+ 1\s+1 \+ 1 \/\/ of one/),
      expect.stringMatching(/3\s+2 \+ 2 \/\/ of two\s+2 \+ 2/),
    ]);
    expect(bench.onDisk("trial").slice(1)).toEqual(["1 + 1 // of one", "2 + 2"]);
    await two.getByRole("button", { name: "Save mine over it" }).click();
    await two.locator('.saving[data-saving="saved"]').waitFor();
    expect(bench.onDisk("trial").slice(1)).toEqual(["1 + 1", "2 + 2 // of two"]);
  });

  it("the file on disk is taken, and the own text can be had back", async () => {
    const page = await bench.sheet("trial");
    await type(page, 1, " // mine");
    bench.writeSheet("trial", { ...sheet, first: "1 + 1 // another hand" });
    await notice(page, "has changed on disk").getByRole("button", { name: "Choose what stands" }).click();
    await page.getByRole("button", { name: "Take the one on disk" }).click();
    await typed(page, 1, "// another hand");
    await page.locator('.saving[data-saving="saved"]').waitFor();
    await notice(page, "Your text was put aside").getByRole("button", { name: "Bring it back" }).click();
    await typed(page, 1, "// mine");
    await page.locator('.saving[data-saving="unsaved"]').waitFor();
    expect(bench.onDisk("trial")[1]).toBe("1 + 1 // another hand");
  });

  it("the own text is kept as a copy beside the file on disk", async () => {
    const page = await bench.sheet("trial");
    await type(page, 1, " // mine");
    bench.writeSheet("trial", { ...sheet, first: "1 + 1 // another hand" });
    await notice(page, "has changed on disk").getByRole("button", { name: "Choose what stands" }).click();
    await page.getByRole("button", { name: "Keep mine as a copy" }).click();
    await notice(page, "Your text is saved as the sheet trial-copy").waitFor();
    await typed(page, 1, "// another hand");
    expect(bench.onDisk("trial-copy")[1]).toBe("1 + 1 // mine");
    expect(bench.onDisk("trial")[1]).toBe("1 + 1 // another hand");
  });

  it("while the server is away typing goes on; when it is back the page connects, and saves", async () => {
    const page = await bench.sheet("trial");
    await type(page, 1, " // before");
    await bench.stopServer();
    const bar = page.locator('.notice[data-about="server"]');
    await bar.waitFor();
    await type(page, 1, " and while it was away");
    await bench.startServer();
    await notice(page, "wants its new key").waitFor();
    await bench.tab(); // the new address, opened in another tab, lets this one in too
    await bar.waitFor({ state: "detached" });
    await notice(page, "with it the kernel").waitFor();
    await ready(page);
    await page.keyboard.press("Control+s");
    await page.locator('.saving[data-saving="saved"]').waitFor();
    expect(bench.onDisk("trial")[1]).toBe("1 + 1 // before and while it was away");
    await page.keyboard.press("Control+Enter");
    await standing(page, 1, "done");
  });
});
