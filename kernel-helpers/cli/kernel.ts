import { existsSync } from "node:fs";
import { parseArgs } from "node:util";
import { installKernelspec, removeKernelspec, whereKernelspec } from "../notebook/index.js";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

/** journalbox kernel: makes the kernel known to Jupyter, tells where, takes it back. */
export const kernelCommand: Command = {
  summary: "makes the kernel known to Jupyter (install), tells where (where), takes it back (remove)",
  usage: `journalbox kernel install [--prefix folder]
journalbox kernel where   [--prefix folder]
journalbox kernel remove  [--prefix folder]

Writes the kernelspec into Jupyter's data folder of this user, or of the installation under the given
prefix. It names this very installation and this very Node.js: install again after moving either.`,

  async run(args) {
    const { action, prefix } = read(args);
    const options = prefix === undefined ? {} : { prefix };
    switch (action) {
      case "install":
        console.log(`Jupyter finds the kernel "Journalbox (TypeScript)" in ${installKernelspec(options)}`);
        return 0;
      case "where": {
        const folder = whereKernelspec(options);
        const there = existsSync(folder);
        console.log(`${folder}${there ? "" : " (not installed)"}`);
        return there ? 0 : 1;
      }
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
