import { existsSync, mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { createInterface } from "node:readline/promises";
import { parseArgs } from "node:util";
import {
  exampleInstruments,
  type NewRebuildOptions,
  newRebuild,
  templateSheets,
} from "../notebook/new/index.js";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

/** journalbox new: the folder of a rebuild that begins. */
export const newCommand: Command = {
  summary: "begins a rebuild: a folder with rebuild.json, empty tables and worksheets",
  usage: `journalbox new <folder> [--units inch|mm] [--title text] [--sheets names] [--instruments names]

Makes the folder, which must not be there or be empty, with a rebuild.json, the tables the worksheets read
(headers with units, no readings) and copies of the worksheets. What is not said is asked at a terminal;
elsewhere --units must be said.

  --units inch|mm          the units of tables and results
  --title "Line shaft"     what the machine is called; else the folder's name
  --sheets 04,05           the worksheets wanted, by number or name; else all
  --instruments mic-2-3    the instruments to begin with, by the short names of the examples; else those
                           the tables name

Values in rebuild.json are examples until you put in your own; "journalbox check" lists those that are left.

Exit code: 0 made, 2 the call was off, 1 anything else.`,

  async run(args) {
    const { folder, ...asked } = read(args);
    const target = resolve(folder);
    if (existsSync(target) && readdirSync(target).length > 0)
      throw new UsageError(`${folder} is there and is not empty; nothing is ever written over`);
    const options = await answered(asked, basename(target));
    const { files, sheets, tables, missing } = newRebuild(options);
    for (const [path, content] of files) {
      mkdirSync(dirname(join(target, path)), { recursive: true });
      writeFileSync(join(target, path), content, { flag: "wx" });
    }
    console.log(
      `Made ${folder}: ${counted(sheets.length, "worksheet")} and ${counted(tables.length, "table")}, in ${options.units} units.`,
    );
    for (const sentence of missing) console.log(`  ${sentence}`);
    console.log(`
Next:
  1. rebuild.json: put in the machine's own sizes, parts and instruments, and take each name you have dealt
     with off the list "examples".
  2. tables/: write the readings under the headers. Lines that begin with "# example:" show what else may be said:
     put in your own and take out "example:". The tables are ${tables.join(", ")}.
  3. npx journalbox check ${folder}    tells what is still missing or wrong.
  4. npx journalbox open ${folder}     or npx journalbox run ${folder}`);
    return 0;
  },
};

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

interface Asked {
  readonly folder: string;
  readonly units?: "inch" | "metric";
  readonly title?: string;
  readonly sheets?: readonly string[];
  readonly instruments?: readonly string[];
}

/** Asks at a terminal for what was not said. */
async function answered(asked: Omit<Asked, "folder">, name: string): Promise<NewRebuildOptions> {
  if (process.stdin.isTTY !== true) {
    if (asked.units === undefined) throw new UsageError("say --units inch or --units mm");
    return { title: name, ...asked, units: asked.units };
  }
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  try {
    const title =
      asked.title ?? ((await terminal.question(`What is the machine called? [${name}] `)).trim() || name);
    let { units } = asked;
    while (units === undefined)
      units = unitsFrom(await terminal.question("Inches or millimetres? [inch/mm] "));
    const all = templateSheets().map((sheet) => sheet.name);
    const sheets =
      asked.sheets ?? listOf(await terminal.question(`${all.join("\n")}\nWhich worksheets? [all] `));
    const known = [...exampleInstruments(units)].map(([id, each]) => `${id.padEnd(16)} ${each}`);
    const instruments =
      asked.instruments ??
      listOf(await terminal.question(`${known.join("\n")}\nWhich instruments? [those the tables name] `));
    return { title, units, sheets, instruments: instruments.length === 0 ? undefined : instruments };
  } finally {
    terminal.close();
  }
}

function unitsFrom(text: string): "inch" | "metric" | undefined {
  const word = text.trim().toLowerCase();
  if (/^(?:inch|inches|in)$/.test(word)) return "inch";
  return /^(?:mm|metric|millimetres?)$/.test(word) ? "metric" : undefined;
}

function listOf(text: string): readonly string[] {
  return text.split(/[\s,]+/).filter((word) => word !== "" && word !== "all");
}

function read(args: readonly string[]): Asked {
  const { positionals, values } = parsed(args);
  if (positionals.length !== 1) throw new UsageError("name one folder");
  const units = values.units === undefined ? undefined : unitsFrom(values.units);
  if (values.units !== undefined && units === undefined)
    throw new UsageError(`--units must be inch or mm, got ${values.units}`);
  return {
    folder: positionals[0]!,
    ...(units && { units }),
    ...(values.title !== undefined && { title: values.title }),
    ...(values.sheets !== undefined && { sheets: listOf(values.sheets) }),
    ...(values.instruments !== undefined && { instruments: listOf(values.instruments) }),
  };
}

function parsed(args: readonly string[]): {
  readonly positionals: readonly string[];
  readonly values: Readonly<Partial<Record<"units" | "title" | "sheets" | "instruments", string>>>;
} {
  const text = { type: "string" } as const;
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { units: text, title: text, sheets: text, instruments: text },
    });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
