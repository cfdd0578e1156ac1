import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Readable, Writable } from "node:stream";
import { pathToFileURL } from "node:url";

const program = "/usr/bin/chromium";

/** Whether a browser is here to try a page in; where it is, the tests that need it must run. */
export const hasBrowser: boolean = existsSync(program);
if (!hasBrowser)
  process.stderr.write(`\nNOT TESTED HERE: the report in a browser, for there is no ${program}\n`);

const flags = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--window-size=1000,20000", // so tall that every figure is in sight
];

/** A page opened from a file, as a person would. */
export interface OpenPage {
  /** Addresses the page asked for, or tried to. */
  readonly asked: readonly string[];
  /** Takes the text of a file that the page handed over; waits until it has come whole. */
  takenAway(name: string): Promise<string>;
  /** Runs an expression in the page; it may be a promise. */
  evaluate(expression: string): Promise<unknown>;
  /** Waits until an expression is true in the page; fails after a minute. */
  until(expression: string): Promise<void>;
}

/** Opens HTML as a file in a fresh browser, lets `look` do its work, and closes the browser. */
export async function inBrowser(html: string, look: (page: OpenPage) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "report-"));
  const profile = `--user-data-dir=${join(folder, "profile")}`;
  const stdio = ["ignore", "ignore", "ignore", "pipe", "pipe"] as const;
  const browser = spawn(program, [...flags, profile, "--remote-debugging-pipe", "about:blank"], {
    stdio: [...stdio],
  });
  const ended = new Promise((resolve) => browser.once("exit", resolve));
  const tools = new DevTools(browser);
  try {
    const file = join(folder, "report.html");
    writeFileSync(file, html);
    await look(await open(tools, pathToFileURL(file).href, join(folder, "downloads")));
  } finally {
    void tools.send("Browser.close", {});
    await ended;
    // Its helpers write on for a moment after the browser has gone.
    rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
  }
}

async function open(tools: DevTools, url: string, downloadPath: string): Promise<OpenPage> {
  await tools.send("Browser.setDownloadBehavior", { behavior: "allow", downloadPath });
  const { targetId } = await tools.send("Target.createTarget", { url: "about:blank" });
  const { sessionId } = await tools.send("Target.attachToTarget", { targetId, flatten: true });
  const session = String(sessionId);
  const asked: string[] = [];
  tools.onEvent = (method, { request }) => {
    if (method === "Network.requestWillBeSent") asked.push(String((request as { url: string }).url));
  };
  await tools.send("Network.enable", {}, session);
  await tools.send("Page.enable", {}, session);
  await tools.send("Page.navigate", { url }, session);
  const evaluate = async (expression: string): Promise<unknown> => {
    const options = { expression, awaitPromise: true, returnByValue: true, userGesture: true };
    const { result } = await tools.send("Runtime.evaluate", options, session);
    return (result as { value?: unknown }).value;
  };
  const until = async (expression: string): Promise<void> => {
    for (let tries = 0; tries < 600; tries++) {
      if ((await evaluate(expression)) === true) return;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    throw new Error(`never true in the page: ${expression}`);
  };
  await until('document.readyState === "complete" && location.protocol === "file:"');
  // While a file is on its way it has another name.
  const takenAway = async (name: string): Promise<string> => {
    const path = join(downloadPath, name);
    for (let tries = 0; tries < 600 && !existsSync(path); tries++)
      await new Promise((resolve) => setTimeout(resolve, 100));
    const text = readFileSync(path, "utf8");
    rmSync(path);
    return text;
  };
  return { asked, takenAway, evaluate, until };
}

type Fields = Readonly<Record<string, unknown>>;

/** The browser's DevTools protocol over a pair of pipes: JSON messages, each ended by a zero byte. */
class DevTools {
  onEvent: (method: string, params: Fields) => void = () => undefined;
  readonly #input: Writable;
  readonly #waiting = new Map<number, (answer: Fields) => void>();
  #rest = "";
  #last = 0;

  constructor(browser: ChildProcess) {
    this.#input = browser.stdio[3] as Writable;
    const output = browser.stdio[4] as Readable;
    output.setEncoding("utf8").on("data", (chunk: string) => this.#read(chunk));
  }

  send(method: string, params: Fields, sessionId?: string): Promise<Fields> {
    this.#last += 1;
    const id = this.#last;
    this.#input.write(`${JSON.stringify({ id, method, params, sessionId })}\0`);
    return new Promise((resolve) => this.#waiting.set(id, resolve));
  }

  #read(chunk: string): void {
    const messages = (this.#rest + chunk).split("\0");
    this.#rest = messages.pop() ?? "";
    for (const message of messages) {
      const { id, method, params = {}, result = {} } = JSON.parse(message);
      if (id === undefined) this.onEvent(method, params);
      else this.#waiting.get(id)?.(result);
      this.#waiting.delete(id);
    }
  }
}
