import { cpSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from "playwright-core";
import { type LiveServer, startLiveServer } from "../../../../kernel-helpers/live/server/index.js";
import { pageShell } from "../../../../kernel-helpers/live/server/page-shell.js";
import { securityHeaders } from "../../../../kernel-helpers/live/server/security-headers.js";
import { packageRoot } from "../../../../kernel-helpers/record/index.js";
import { temporaryFolder } from "../../../support/temporary-folder.js";

const root = packageRoot();
const executablePath = "/usr/bin/chromium";

/** Whether the editor can be driven here; says so in a visible line where it cannot. */
export function hasChromium(): boolean {
  const isThere = existsSync(executablePath);
  if (!isThere)
    process.stderr.write(`NOT TESTED HERE: the table editor, for there is no ${executablePath}\n`);
  return isThere;
}

export async function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-background-networking",
      "--disable-component-update",
      // A page put in by the test counts as foreign, and would not be let through to the events of this machine.
      "--disable-features=LocalNetworkAccessChecks",
    ],
  });
}

/** The editor's script and style, bundled from the sources of today. */
export async function bundleGrid(): Promise<{ readonly script: string; readonly style: string }> {
  const { outputFiles } = await build({
    entryPoints: { grid: join(root, "kernel-helpers/live/grid/main.ts") },
    outdir: "page",
    bundle: true,
    write: false,
    format: "esm",
    target: "es2022",
    logLevel: "silent",
  });
  const text = (end: string): string => outputFiles.find(({ path }) => path.endsWith(end))!.text;
  return { script: text(".js"), style: text(".css") };
}

/** A rebuild of its own with a server that shows it. */
export class Bench {
  readonly folder: string = temporaryFolder();
  server: LiveServer | undefined;
  readonly #bundle: Awaited<ReturnType<typeof bundleGrid>>;
  readonly #browser: Browser;
  readonly troubles: string[] = [];

  constructor(
    browser: Browser,
    bundle: Awaited<ReturnType<typeof bundleGrid>>,
    tables: Readonly<Record<string, string>>,
  ) {
    this.#browser = browser;
    this.#bundle = bundle;
    cpSync(join(root, "worksheets/demo/rebuild.json"), join(this.folder, "rebuild.json"));
    cpSync(join(root, "worksheets/demo/tables"), join(this.folder, "tables"), { recursive: true });
    for (const [name, text] of Object.entries(tables)) this.write(name, text);
  }

  async start(port?: number): Promise<void> {
    this.server = await startLiveServer({ directory: this.folder, ...(port === undefined ? {} : { port }) });
  }

  async stop(): Promise<void> {
    await this.server?.close();
    this.server = undefined;
  }

  read(name: string): string {
    return readFileSync(join(this.folder, "tables", `${name}.csv`), "utf8");
  }

  write(name: string, text: string): void {
    writeFileSync(join(this.folder, "tables", `${name}.csv`), text);
  }

  /** A browser of somebody's own, let in by the token. */
  async visitor(options: BrowserContextOptions = {}): Promise<BrowserContext> {
    const context = await this.#browser.newContext({ viewport: { width: 1200, height: 900 }, ...options });
    context.setDefaultTimeout(45_000);
    await context.route("**/static/grid.js", (route) =>
      route.fulfill({ contentType: "text/javascript", body: this.#bundle.script }),
    );
    await context.route("**/static/grid.css", (route) =>
      route.fulfill({ contentType: "text/css", body: this.#bundle.style }),
    );
    // The server shows a page only where one was built; this is the page it would show, with its own headers.
    await context.route("**/table/*", (route) => {
      const name = new URL(route.request().url()).pathname.split("/").at(-1)!;
      const headers = securityHeaders(this.server!.access.port);
      const needs = { script: "grid.js", style: "grid.css", parts: [] };
      const body = pageShell({ page: "table", name, title: name, rebuild: "bench", needs });
      return route.fulfill({ contentType: "text/html", headers: { ...headers }, body });
    });
    await this.letIn(context);
    return context;
  }

  /** Shows a browser the address with the token, as after a new start of the server. */
  async letIn(context: BrowserContext): Promise<void> {
    await context.request.get(this.server!.address);
  }

  async open(context: BrowserContext, table: string): Promise<Page> {
    const page = await context.newPage();
    page.on("pageerror", (error) => this.troubles.push(error.message));
    page.on("console", (message) => {
      // A server that is away is what some tests are about.
      if (
        message.type() === "error" &&
        !/ERR_CONNECTION|WebSocket|Failed to load resource/.test(message.text())
      )
        this.troubles.push(message.text());
    });
    await page.goto(`http://127.0.0.1:${this.server!.access.port}/table/${table}`);
    await page
      .locator("h2", { hasText: /fault|empty|doubt/i })
      .first()
      .waitFor();
    return page;
  }
}

/** The input of a cell, by its column and what stands before its row: `line 5` or `new row`. */
export function cell(page: Page, column: string, row: string): ReturnType<Page["locator"]> {
  return page.getByLabel(`${column}, ${row}`, { exact: true });
}
