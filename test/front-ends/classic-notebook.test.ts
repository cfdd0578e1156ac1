import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, statSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { freePorts } from "../../kernel-helpers/notebook/client/free-ports.js";
import { buildTimeout, ensureBuilt } from "../support/built.js";
import { isHere, newBench } from "./jupyter.js";

// Jupyter's classic notebook in a real browser: what somebody sees who already works there.
const executablePath = "/usr/bin/chromium";
const what = "the worksheets in the classic notebook";
const here = isHere(["jupyter-notebook", "--version"], what) && isHere([executablePath, "--version"], what);

const token = "for-this-test-only";

describe.runIf(here)("the classic notebook", () => {
  const bench = newBench();
  let server: ChildProcess;
  let browser: Browser;
  let page: Page;
  let address: string;
  const faults: string[] = [];

  beforeAll(async () => {
    await ensureBuilt();
    const [port] = await freePorts(1);
    address = `http://127.0.0.1:${port}`;
    server = spawn(
      "jupyter-notebook",
      [
        "--no-browser",
        "--allow-root",
        "--ip=127.0.0.1",
        `--port=${port}`,
        "--port-retries=0",
        `--NotebookApp.token=${token}`,
        `--notebook-dir=${join(bench.folder, "mill")}`,
      ],
      { env: bench.environment, stdio: "ignore" },
    );
    await untilUp(address);
    browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
    page = await browser.newPage({ viewport: { width: 1200, height: 1600 } });
    page.on("pageerror", (error) => faults.push(error.message));
  }, buildTimeout + 60_000);

  afterAll(async () => {
    await browser?.close();
    if (server === undefined || server.exitCode !== null) return;
    server.kill("SIGTERM");
    await once(server, "exit");
  });

  const open = async (sheet: string): Promise<void> => {
    await page.goto(`${address}/notebooks/sheets/${sheet}.ipynb?token=${token}`);
    await page.waitForFunction("window.Jupyter?.notebook?.kernel?.is_connected()");
  };
  /** Runs something as if the user had, and waits until the kernel has answered all of it. */
  const runAll = async (): Promise<void> => {
    await page.evaluate("Jupyter.notebook.execute_all_cells()");
    await page.waitForFunction(
      "Jupyter.notebook.get_cells().every((c) => c.cell_type !== 'code' || Number.isInteger(c.input_prompt_number))",
    );
  };

  it("opens a worksheet with our kernel and runs all of it, without an error", async () => {
    await open("04-shaft-survey");
    expect(await page.textContent(".kernel_indicator_name")).toBe("Journalbox (TypeScript)");
    await runAll();
    expect(await page.locator(".output_error, .output_stderr").allTextContents()).toEqual([]);
    expect(await page.locator("div.output_result").count()).toBeGreaterThan(5);
  }, 60_000);
  it("shows live figures, which answer the pointer", async () => {
    const figures = page.locator(".js-plotly-plot");
    await figures.first().waitFor();
    expect(await figures.count()).toBeGreaterThan(1);
    await figures.first().scrollIntoViewIfNeeded();
    const { x, y } = await middleOf(page, ".js-plotly-plot .point");
    await page.mouse.move(x - 30, y - 30);
    await page.mouse.move(x, y, { steps: 5 });
    await page.locator(".js-plotly-plot .hoverlayer text").first().waitFor({ state: "attached" });
    expect(faults).toEqual([]);
    const picture = join(bench.folder, "04-shaft-survey.png");
    await page.screenshot({ path: picture });
    if (process.env.KEEP_SCREENSHOT !== undefined)
      await page.screenshot({ path: process.env.KEEP_SCREENSHOT });
    expect(statSync(picture).size).toBeGreaterThan(10_000);
  });
  it("gives the doc comment of a helper, and completes its name", async () => {
    const ask = (request: string): Promise<unknown> =>
      page.evaluate(`new Promise((told) => Jupyter.notebook.kernel.${request}, (m) => told(m.content)))`);
    expect(await ask('inspect("wearBands", 4')).toMatchObject({ found: true });
    expect(await ask('complete("wearBan", 7')).toMatchObject({ matches: ["wearBands"] });
  });
  it("stops a loop that never ends, and keeps the names", async () => {
    const loop =
      'import { writeFileSync } from "node:fs"; await null; writeFileSync("looping", ""); for (;;) {}';
    await page.evaluate(
      `Jupyter.notebook.insert_cell_at_bottom("code").set_text(${JSON.stringify(loop)}); Jupyter.notebook.get_cells().at(-1).execute()`,
    );
    await expect.poll(() => existsSync(join(bench.sheets, "looping")), { timeout: 60_000 }).toBe(true);
    await page.evaluate("Jupyter.notebook.kernel.interrupt()");
    await page.locator(".output_error").first().waitFor();
    expect(await page.locator(".output_error").first().textContent()).toMatch(
      /^Interrupted: the cell was interrupted/,
    );
    await page.evaluate(
      "Jupyter.notebook.insert_cell_at_bottom('code').set_text('survey.kind'); Jupyter.notebook.get_cells().at(-1).execute()",
    );
    await page.locator("div.output_result", { hasText: /^'table'$/ }).waitFor();
  });
  it("starts the kernel anew, without the names of before", async () => {
    await page.evaluate("Jupyter.notebook.kernel.restart()");
    await page.waitForFunction("Jupyter.notebook.kernel.is_connected() && !Jupyter.notebook.kernel_busy");
    await page.evaluate("Jupyter.notebook.get_cells().at(-1).execute()");
    await page.locator(".output_error", { hasText: "survey is not known here" }).waitFor();
  });
});

/** The middle of the first such thing on the screen. */
async function middleOf(page: Page, selector: string): Promise<{ x: number; y: number }> {
  const box = await page.locator(selector).first().boundingBox();
  if (box === null) throw new Error(`nothing to point at: ${selector}`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function untilUp(address: string): Promise<void> {
  for (let tries = 0; tries < 900; tries += 1) {
    const up = await fetch(`${address}/api?token=${token}`).then(
      ({ ok }) => ok,
      () => false, // nobody listens yet
    );
    if (up) return;
    await pause(100);
  }
  throw new Error("the notebook server did not start within 90 s");
}
