import { type ChildProcess, spawn } from "node:child_process";
import { cpSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { bench, describe } from "vitest";
import { freePorts } from "../../../kernel-helpers/notebook/client/free-ports.js";
import { packageRoot } from "../../../kernel-helpers/record/package-root.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { hasChromium, launchChromium, ready } from "./bench.js";

// From the command to a page that can be used, as somebody sees it whose browser is open already.
// Wanted: under 2 s on a warm disk.
const cli = join(packageRoot(), "dist", "cli", "main.js");
const folder = temporaryFolder();
for (const part of ["rebuild.json", "tables"])
  cpSync(join(packageRoot(), "worksheets", "demo", part), join(folder, part), { recursive: true });

/** Starts the command, and resolves with the address it prints. */
async function openRebuild(
  port: number,
): Promise<{ readonly server: ChildProcess; readonly address: string }> {
  const call = [cli, "open", folder, "--no-browser", "--port", String(port)];
  const server = spawn(process.execPath, call, { stdio: ["ignore", "pipe", "inherit"] });
  return new Promise((resolve, reject) => {
    let said = "";
    server.stdout!.on("data", (bytes: Buffer) => {
      said += String(bytes);
      const address = /http:\/\/\S+/.exec(said)?.[0];
      if (address !== undefined) resolve({ server, address });
    });
    server.once("exit", () => reject(new Error(`journalbox open ended and said ${said}`)));
  });
}

describe.runIf(hasChromium())("from the command to a page that can be used", () => {
  let browser: Browser;
  const options = {
    iterations: 5,
    warmupIterations: 1,
    time: 0,
    warmupTime: 0,
    setup: async () => {
      browser = await launchChromium();
    },
    teardown: async () => browser.close(),
  };

  async function use(
    look: (page: import("playwright-core").Page, origin: string) => Promise<void>,
  ): Promise<void> {
    const [port] = await freePorts(1);
    const { server, address } = await openRebuild(port!);
    const context = await browser.newContext();
    try {
      const page = await context.newPage();
      await page.goto(address);
      await look(page, new URL(address).origin);
    } finally {
      server.kill("SIGTERM"); // not waited for: the time is that until the page could be used
      await context.close();
    }
  }

  bench(
    "the list of worksheets",
    () =>
      use((page) =>
        page
          .getByRole("link", { name: /shaft survey/i })
          .first()
          .waitFor(),
      ),
    options,
  );
  bench(
    "a worksheet whose kernel answers",
    () =>
      use(async (page, origin) => {
        await page.goto(`${origin}/sheet/04-shaft-survey`);
        await ready(page);
      }),
    options,
  );
});
