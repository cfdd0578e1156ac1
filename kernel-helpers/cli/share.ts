import { existsSync, rmSync } from "node:fs";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import { type SharedRebuild, shareRebuild } from "../notebook/share/index.js";
import { type Files, writeZip } from "../record/bundle/index.js";
import { findRebuild, writeFile } from "../record/index.js";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

/** journalbox share: one report for people, and one bundle for machines. */
export const shareCommand: Command = {
  summary: "hands a rebuild over: one report for people, one bundle that any tool can verify",
  usage: `journalbox share [folder] [--to folder] [--without names] [--on date] [--unpacked]

Writes, from a rebuild that has been run, two files to out/share (or to the folder given by --to):

  <title>.html  the report: one file that opens offline in any browser
  <title>.zip   the bundle: rebuild.json, tables, worksheets, records, executed worksheets and report in a
                BagIt bag (RFC 8493) with an RO-Crate 1.1 metadata file. It is verified by "journalbox verify",
                by any tool that knows bags, or with "sha256sum -c manifest-sha256.txt".

  --without "remark, who"  leaves these out: columns and remarks of tables, machine facts and words, by name.
                           What rebuild.json lists under "private" is always left out, and so is what begins
                           with the word "private" in a table. Report and bundle say what is missing.
  --on 2026-05-04          the date of the bundle; else that of the latest decision, else today
  --unpacked               the bundle as a folder

No worksheet is run. Text and code of the worksheets themselves are not altered: what they name stays named,
and you are told where.

Exit code: 0 written, 2 the call was off, 1 anything else.`,

  async run(args) {
    const { folder, to, without, on, unpacked } = read(args);
    const directory = findRebuild(folder ?? process.cwd());
    if (directory === undefined)
      throw new UsageError(`no rebuild.json in ${folder ?? process.cwd()} or above it`);
    const shared = await shareRebuild({ directory, without, date: on, today: today() });
    const target = to ?? join(directory, "out", "share");
    const report = join(target, `${shared.name}.html`);
    writeFile(report, shared.report);
    const bundle = unpacked ? writeFolder(target, shared) : writeArchive(target, shared);
    tell(shared, relative(process.cwd(), report), relative(process.cwd(), bundle));
    return 0;
  },
};

function writeArchive(target: string, { name, bag, date }: SharedRebuild): string {
  const path = join(target, `${name}.zip`);
  const inFolder: Files = new Map([...bag].map(([file, content]) => [`${name}/${file}`, content]));
  writeFile(path, writeZip(inFolder, date));
  return path;
}

function writeFolder(target: string, { name, bag }: SharedRebuild): string {
  const path = join(target, name);
  // What an earlier bundle left would not be in the manifest of this one; anything else is not ours to remove.
  if (existsSync(path) && !existsSync(join(path, "bagit.txt")))
    throw new Error(`${path} is there already and is no bundle; remove it, or name another folder with --to`);
  rmSync(path, { recursive: true, force: true });
  for (const [file, content] of bag) writeFile(join(path, file), content);
  return path;
}

function tell(shared: SharedRebuild, report: string, bundle: string): void {
  const { date, notices, stillNamed, tooShort } = shared;
  console.log(`  report  ${report}`);
  console.log(`  bundle  ${bundle}, dated ${date}`);
  if (notices.length > 0) console.log(`\nBoth say:\n${notices.map((notice) => `  ${notice}`).join("\n")}`);
  if (stillNamed.length > 0)
    console.log(
      `\nLook yourself, before you hand it over: something that was left out is still named in\n${stillNamed.map((place) => `  ${place}`).join("\n")}`,
    );
  if (tooShort > 0)
    console.log(
      `\n${tooShort === 1 ? "One entry that was left out is" : `${tooShort} entries that were left out are`} too short to be looked for in results (two signs at the most): look at the report yourself.`,
    );
}

function today(): string {
  return new Date().toISOString().slice(0, 10);
}

interface Asked {
  readonly folder?: string;
  readonly to?: string;
  readonly without: readonly string[];
  readonly on?: string;
  readonly unpacked: boolean;
}

function read(args: readonly string[]): Asked {
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        to: { type: "string" },
        without: { type: "string", multiple: true },
        on: { type: "string" },
        unpacked: { type: "boolean" },
      },
    });
    if (positionals.length > 1) throw new Error(`one folder at the most, got ${positionals.join(" ")}`);
    const { to, on, unpacked = false } = values;
    if (on !== undefined && !/^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/.test(on))
      throw new Error(`--on must be year-month-day, got ${on}`);
    const without = (values.without ?? []).flatMap((names) => names.split(",")).map((name) => name.trim());
    return { folder: positionals[0], to, without: without.filter((name) => name !== ""), on, unpacked };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
