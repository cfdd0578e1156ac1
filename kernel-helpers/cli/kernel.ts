import { join } from "node:path";
import { parseArgs } from "node:util";
import { prepareQuickStart } from "../notebook/kernel/quick-start/prepare-quick-start.js";
import { isSwitchedOff } from "../notebook/kernel/quick-start/quick-start-file.js";
import {
  installKernelspec,
  type KernelspecOptions,
  readRegistration,
  removeKernelspec,
  whereKernelspec,
} from "../notebook/kernelspec.js";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

/** journalbox kernel: makes the kernel known to Jupyter, tells where, takes it back. */
export const kernelCommand: Command = {
  summary: "makes the kernel known to Jupyter (install), tells where (where), takes it back (remove)",
  usage: `journalbox kernel install [--prefix folder]
journalbox kernel where   [--prefix folder]
journalbox kernel remove  [--prefix folder]

Writes one file, kernel.json, into Jupyter's data folder of this user, or of the installation under the
given prefix. The file names this very installation and this very Node.js by their full paths: where either
is moved, Jupyter cannot start the kernel until it is installed again. "where" looks, and says so.

"install" also prepares the start of kernels, in this user's cache folder (about 50 MB). Setting
JOURNALBOX_QUICK_START=off leaves it unwritten and unused; it may be deleted at any time.

Exit code of where: 0 installed and fit to start, 1 not installed or not fit.`,

  async run(args) {
    const { action, prefix } = read(args);
    const options = prefix === undefined ? {} : { prefix };
    switch (action) {
      case "install":
        return install(options);
      case "where":
        return where(options);
      case "remove":
        console.log(
          removeKernelspec(options)
            ? `removed ${whereKernelspec(options)}`
            : `nothing to remove in ${whereKernelspec(options)}`,
        );
        return 0;
      default:
        throw new UsageError(
          action === undefined
            ? "say install, where or remove"
            : `"${action}" is none of install, where, remove`,
        );
    }
  },
};

async function install(options: KernelspecOptions): Promise<number> {
  const before = readRegistration(options);
  const file = join(installKernelspec(options), "kernel.json");
  console.log(`wrote ${file}`);
  tellTarget(readRegistration(options));
  if (before !== undefined && !before.isThisOne) console.log(`  it named ${before.kernel} before`);
  await prepare();
  console.log('Jupyter now offers the kernel "Journalbox (TypeScript)". After moving either, install again.');
  return 0;
}

/** Kernels start without it too: what keeps it from being written is told, and is no failure. */
async function prepare(): Promise<void> {
  if (isSwitchedOff()) return console.log("no quick start was prepared: JOURNALBOX_QUICK_START is off");
  try {
    console.log(`wrote ${await prepareQuickStart()}\n  from which kernels start in half the time`);
  } catch (error) {
    console.log(`no quick start was prepared: ${error instanceof Error ? error.message : String(error)}`);
  }
}

function where(options: KernelspecOptions): number {
  const registration = readRegistration(options);
  if (registration === undefined) {
    console.log(`${whereKernelspec(options)} (not installed)`);
    return 1;
  }
  console.log(registration.folder);
  tellTarget(registration);
  if (registration.faults.length > 0) {
    for (const fault of registration.faults) console.error(fault);
    console.error("Jupyter cannot start the kernel. Run journalbox kernel install where the project is now.");
    return 1;
  }
  if (!registration.isThisOne)
    console.log("  not the installation that was asked: journalbox kernel install makes it this one");
  return 0;
}

function tellTarget(registration: { readonly node: string; readonly kernel: string } | undefined): void {
  if (registration === undefined) return;
  console.log(`  Node.js  ${registration.node}`);
  console.log(`  kernel   ${registration.kernel}`);
}

function read(args: readonly string[]): { readonly action?: string; readonly prefix?: string } {
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { prefix: { type: "string" } },
    });
    if (positionals.length > 1) throw new Error(`one action at a time, got ${positionals.join(" ")}`);
    return { action: positionals[0], prefix: values.prefix };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
