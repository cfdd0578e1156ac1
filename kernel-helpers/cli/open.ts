import { parseArgs } from "node:util";
import { type LiveServer, startLiveServer } from "../live/server/index.js";
import { demoFolder, findRebuild } from "../record/index.js";
import type { Command } from "./command.js";
import { foreignIn } from "./foreign-rebuild.js";
import { openBrowser } from "./open-browser.js";
import { prepareLater } from "./prepare-later.js";
import { UsageError } from "./usage-error.js";

/** journalbox open: a rebuild as live pages in the browser of this machine. */
export const openCommand: Command = {
  summary: "opens a rebuild in the browser: worksheets to edit and run, tables to type readings into",
  usage: `journalbox open [folder] [--port N] [--no-browser]

Serves the rebuild in the folder (the one you stand in without it) to the browser of this machine, and opens
it there. Where no rebuild.json lies there or above, the demo rebuild is opened. Nobody else can see it: the
address holds a token, and is good on this machine only. Ctrl-C ends it, kernels included. The kernel of a
sheet that no tab has shown for an hour is ended; what was typed is on disk or kept in the browser, and opening
the sheet again starts another.

  --port N      the port to use; else the first free one from 8470
  --no-browser  only print the address`,

  async run(args) {
    const { folder, port, browser } = read(args);
    const foreign = foreignIn(folder === undefined ? [] : [folder]);
    if (foreign !== undefined)
      throw new UsageError(
        `${foreign.path} is somebody else's rebuild, and the live page runs code without a sandbox; "journalbox run" keeps it in one`,
      );
    const found = findRebuild(folder ?? process.cwd());
    if (found === undefined && folder !== undefined)
      throw new UsageError(`no rebuild.json in ${folder} or above it`);
    const notice =
      found === undefined
        ? "No rebuild.json lies in the folder this was started from or above it, so this is the demo rebuild with invented readings."
        : "";
    const server = await startLiveServer({ directory: found ?? demoFolder(), notice, port });
    console.log(`Journalbox is open at\n\n  ${server.address}\n\nCtrl-C ends it.`);
    if (browser) openBrowser(server.addressWithTicket());
    prepareLater();
    await untilToldToEnd(server);
    return 0;
  },
};

/** Waits for Ctrl-C or a signal to end, then ends everything. A second Ctrl-C does not wait for the kernels. */
async function untilToldToEnd(server: LiveServer): Promise<void> {
  const signals = ["SIGINT", "SIGTERM", "SIGHUP"] as const;
  await new Promise<void>((told) => {
    for (const signal of signals) process.once(signal, () => told());
  });
  process.once("SIGINT", () => process.exit(130));
  await server.close();
}

function read(args: readonly string[]): { folder?: string; port?: number; browser: boolean } {
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { port: { type: "string" }, "no-browser": { type: "boolean" } },
    });
    if (positionals.length > 1) throw new Error(`one folder at the most, got ${positionals.join(" ")}`);
    return { folder: positionals[0], port: portFrom(values.port), browser: values["no-browser"] !== true };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

function portFrom(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const port = Number(text);
  if (!/^\d+$/.test(text) || port < 1 || port > 65535)
    throw new Error(`--port must be a whole number from 1 to 65535, got ${text}`);
  return port;
}
