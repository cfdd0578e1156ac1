import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { expect } from "vitest";
import { type LiveServer, startLiveServer } from "../../../kernel-helpers/live/server/index.js";
import { type Cell, readNotebook, writeNotebook } from "../../../kernel-helpers/notebook/index.js";
import { packageRoot } from "../../../kernel-helpers/record/index.js";
import { ensureBuilt } from "../../support/built.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { ensurePageBuilt } from "./built-page.js";

const executablePath = "/usr/bin/chromium";

/** Whether the page can be driven here; says so in a visible line where it cannot. */
export function hasChromium(): boolean {
  const isThere = existsSync(executablePath);
  if (!isThere) process.stderr.write(`NOT TESTED HERE: the live page, for there is no ${executablePath}\n`);
  return isThere;
}

export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath,
    args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update"],
  });
}

/** A browser for the tests of a file, on pages built from the sources of today. */
export async function openBrowser(): Promise<Browser> {
  await ensureBuilt();
  await ensurePageBuilt();
  return launchChromium();
}

/** Closes a bench, and fails the test where its pages asked for an address elsewhere or threw. */
export async function closeBench(bench: Bench): Promise<void> {
  await bench.close();
  expect(bench.strangers).toEqual([]);
  expect(bench.faults).toEqual([]);
}

/** A cell of a sheet: `text: ...` is a text cell, all else is code. */
export type Cells = Readonly<Record<string, string>>;

/** A rebuild of its own, with the demo's readings and one sheet, a server that shows it, and a browser. */
export class Bench {
  readonly folder: string = temporaryFolder();
  /** Addresses outside this machine that a page asked for. */
  readonly strangers: string[] = [];
  /** What scripts of the pages threw. */
  readonly faults: string[] = [];
  readonly #context: BrowserContext;
  #server: LiveServer;

  private constructor(context: BrowserContext, server: LiveServer, folder: string) {
    this.#context = context;
    this.#server = server;
    this.folder = folder;
  }

  static async open(browser: Browser, sheets: Readonly<Record<string, Cells>>): Promise<Bench> {
    const demo = join(packageRoot(), "worksheets", "demo");
    const folder = temporaryFolder();
    cpSync(join(demo, "rebuild.json"), join(folder, "rebuild.json"));
    cpSync(join(demo, "tables"), join(folder, "tables"), { recursive: true });
    mkdirSync(join(folder, "sheets"));
    for (const [name, cells] of Object.entries(sheets)) writeSheet(sheetPath(folder, name), cells);
    const server = await startLiveServer({ directory: folder });
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    context.setDefaultTimeout(45_000); // a busy machine is slow, and that is no fault of the page
    const bench = new Bench(context, server, folder);
    context.on("request", (request) => {
      const { protocol, hostname } = new URL(request.url());
      if (protocol.startsWith("http") && hostname !== "127.0.0.1") bench.strangers.push(request.url());
    });
    // What the page's policy stops has not left the browser.
    context.on("requestfailed", (request) => {
      const at = bench.strangers.indexOf(request.url());
      if (request.failure()?.errorText === "csp" && at >= 0) bench.strangers.splice(at, 1);
    });
    return bench;
  }

  async close(): Promise<void> {
    await this.#context.close();
    await this.#server.close();
  }

  get port(): number {
    return this.#server.access.port;
  }

  stopServer(): Promise<void> {
    return this.#server.close();
  }

  /** The next run of the server, at the same address; it has another token. */
  async startServer(): Promise<void> {
    this.#server = await startLiveServer({ directory: this.folder, port: this.port });
  }

  /** A tab that the server lets in, at the overview. */
  async tab(): Promise<Page> {
    const page = await this.#context.newPage();
    page.on("pageerror", (error) => this.faults.push(String(error.stack ?? error)));
    await page.goto(this.#server.address);
    return page;
  }

  /** A tab with a sheet open in it, whose kernel answers. */
  async sheet(name: string): Promise<Page> {
    const page = await this.tab();
    await page.goto(`http://127.0.0.1:${this.port}/sheet/${name}`);
    await ready(page);
    return page;
  }

  /** The sources of a sheet's cells as they are on disk. */
  onDisk(name: string): readonly string[] {
    return readNotebook(sheetPath(this.folder, name)).cells.map(({ source }) => source);
  }

  write(path: string, change: (text: string) => string): void {
    const file = join(this.folder, path);
    writeFileSync(file, change(readFileSync(file, "utf8")));
  }

  writeSheet(name: string, cells: Cells): void {
    writeSheet(sheetPath(this.folder, name), cells);
  }
}

function sheetPath(folder: string, name: string): string {
  return join(folder, "sheets", `${name}.ipynb`);
}

function writeSheet(path: string, cells: Cells): void {
  writeNotebook(path, {
    metadata: {},
    cells: Object.entries(cells).map(([id, source]) => cellOf(id, source)),
  });
}

function cellOf(id: string, source: string): Cell {
  if (source.startsWith("text: "))
    return { cell_type: "markdown", id, metadata: {}, source: source.slice(6) };
  return { cell_type: "code", id, metadata: {}, source, outputs: [], execution_count: null };
}

// ---- what a user sees and does

/** Waits until the progress line says that the kernel can be used. */
export async function ready(page: Page): Promise<void> {
  await page.locator(".sheet-top .progress", { hasText: "Ready." }).waitFor();
}

/** The cell at a place, counted from 0. */
export function cell(page: Page, place: number) {
  return page.locator(".jp-Notebook .jp-Cell").nth(place);
}

/** Goes into a cell, to the end of what is written there, and types on. */
export async function type(page: Page, place: number, text: string): Promise<void> {
  await cell(page, place).locator(".cm-content").click();
  await page.keyboard.press("Control+End");
  await page.keyboard.insertText(text);
}

/** Waits until the margin of a cell says this of it. */
export async function standing(page: Page, place: number, word: string): Promise<void> {
  await cell(page, place).locator(`.margin[data-standing="${word}"]`).waitFor();
}

/** A bar under the head, by what it says. */
export function notice(page: Page, text: string | RegExp) {
  return page.locator(".notice", { hasText: text });
}

/** The state in the head of a sheet. */
export function state(page: Page, word: string) {
  return page.locator(".sheet-head .state", { hasText: word });
}
