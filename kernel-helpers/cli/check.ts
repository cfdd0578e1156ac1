import { parseArgs } from "node:util";
import { checkRebuild, describeCheckFault, type RebuildCheck } from "../notebook/check/index.js";
import { findRebuild } from "../record/index.js";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

/** journalbox check: whether a rebuild can be run, told without running it. */
export const checkCommand: Command = {
  summary: "checks rebuild.json, tables and worksheets without running anything",
  usage: `journalbox check [folder] [--json]

Checks the rebuild in the folder (the one you stand in without it): rebuild.json, every table, and of every
worksheet its form, its code and imports, the tables it reads, and whether what it takes over from others is
handed on. No cell is run. Everything is told at once, with file, cell, line and column.

  --json   the same for programs

Exit code: 0 nothing keeps a run from going well, 1 there are faults, 2 the call was off.`,

  async run(args) {
    const { folder, json } = read(args);
    const directory = findRebuild(folder ?? process.cwd());
    if (directory === undefined)
      throw new UsageError(`no rebuild.json in ${folder ?? process.cwd()} or above it`);
    const check = checkRebuild(directory);
    if (json) console.log(JSON.stringify(check, null, 2));
    else tell(check);
    return check.passes ? 0 : 1;
  },
};

function tell({ faults, tables, sheets }: RebuildCheck): void {
  const of = (severity: "fault" | "open"): readonly string[] =>
    faults.filter((fault) => fault.severity === severity).map((fault) => `  ${describeCheckFault(fault)}`);
  const [wrong, open] = [of("fault"), of("open")];
  const checked = `rebuild.json, ${counted(tables, "table")}, ${counted(sheets, "worksheet")}`;
  if (wrong.length > 0) console.log(`To be put right (${wrong.length}):\n${wrong.join("\n")}\n`);
  if (open.length > 0) console.log(`To be looked at (${open.length}):\n${open.join("\n")}\n`);
  console.log(
    wrong.length === 0 ? `Nothing is wrong with ${checked}.` : `Checked ${checked}; nothing was run.`,
  );
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

function read(args: readonly string[]): { readonly folder?: string; readonly json: boolean } {
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: "boolean" } },
    });
    if (positionals.length > 1) throw new Error(`one folder at the most, got ${positionals.join(" ")}`);
    return { folder: positionals[0], json: values.json === true };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
