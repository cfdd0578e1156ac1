#!/usr/bin/env node
import { styleText } from "node:util";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

// Loaded only when called: `journalbox kernel where` need not wait for the report's libraries.
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  open: async () => (await import("./open.js")).openCommand,
  start: async () => (await import("./start.js")).startCommand,
  new: async () => (await import("./new.js")).newCommand,
  check: async () => (await import("./check.js")).checkCommand,
  run: async () => (await import("./run.js")).runCommand,
  share: async () => (await import("./share.js")).shareCommand,
  verify: async () => (await import("./verify.js")).verifyCommand,
  audit: async () => (await import("./audit.js")).auditCommand,
  kernel: async () => (await import("./kernel.js")).kernelCommand,
};

async function main(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === "help" || name === "--help" || name === "-h") return help(rest[0]);
  if (name === "--version" || name === "-v") {
    const { versions } = await import("../record/index.js");
    console.log(versions().journalbox);
    return 0;
  }
  const load = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (load === undefined)
    throw new UsageError(`"${name}" is no command; there are ${Object.keys(commands).join(", ")}`);
  const command = await load();
  if (rest.includes("--help") || rest.includes("-h")) return help(name);
  try {
    return await command.run(rest);
  } catch (error) {
    if (error instanceof UsageError) console.error(`${error.message}\n\n${command.usage}`);
    else throw error;
    return 2;
  }
}

async function help(name: string | undefined): Promise<number> {
  if (name !== undefined && Object.hasOwn(commands, name)) {
    console.log((await commands[name]!()).usage);
    return 0;
  }
  console.log("journalbox: a notebook for rebuilding worn machinery\n");
  for (const [each, load] of Object.entries(commands))
    console.log(`  journalbox ${each.padEnd(8)} ${(await load()).summary}`);
  console.log(
    "\njournalbox help <command> tells how a command is called; journalbox --version, the version.",
  );
  return 0;
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    const message = error instanceof Error ? error.message : String(error);
    console.error(`${styleText("red", "journalbox:")} ${message}`);
    // The stack is for those who work on Journalbox; a user acts on the message.
    if (process.env.JOURNALBOX_DEBUG !== undefined && error instanceof Error) console.error(error.stack);
    process.exitCode = error instanceof UsageError ? 2 : 1;
  },
);
