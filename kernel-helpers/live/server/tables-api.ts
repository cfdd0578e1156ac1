import { join } from "node:path";
import { type RebuildFacts, readRebuildFile, rebuildFileName, writeFile } from "../../record/index.js";
import { readTable, TableFaults } from "../../survey/index.js";
import { bodyLimits } from "./body.js";
import { HttpError } from "./http-error.js";
import { listTables, readBytes, tablePath, tablesFolder } from "./rebuild-files.js";
import { type Route, route } from "./router.js";
import { bytesOfTable, textOfTable } from "./table-text.js";

/** Reading, checking and saving tables. A table with faults is saved too: nothing typed is lost. */
export function tableRoutes(directory: string, changed: () => void): readonly Route[] {
  return [
    route("GET", "/api/tables/:name", ({ params }) => {
      const name = params.name!;
      const file = readBytes(tablePath(directory, name));
      if (file === undefined) throw new HttpError(404, `there is no table ${JSON.stringify(name)}`);
      return { json: { name, file: fileOf(name), text: textOfTable(file.bytes), sha256: file.sha256 } };
    }),
    route("PUT", "/api/tables/:name", async ({ params, body }) => {
      const { text, base } = await body(bodyLimits.table);
      if (typeof text !== "string") throw new HttpError(400, "text must be the table's text");
      const path = tablePath(directory, params.name!);
      const before = readBytes(path);
      if ((before?.sha256 ?? null) !== (base ?? null))
        throw new HttpError(409, "the table on disk is not the one that was loaded", {
          text: before === undefined ? null : textOfTable(before.bytes),
          sha256: before?.sha256 ?? null,
        });
      if (before === undefined) refuseTwin(directory, params.name!);
      writeFile(path, bytesOfTable(text, before?.bytes));
      changed();
      return { json: { sha256: readBytes(path)!.sha256 } };
    }),
    route("POST", "/api/tables/:name/check", async ({ params, body }) => {
      const { text } = await body(bodyLimits.table);
      if (typeof text !== "string") throw new HttpError(400, "text must be the table's text");
      return { json: check(directory, params.name!, text) };
    }),
  ];
}

function fileOf(name: string): string {
  return `${tablesFolder}/${name}.csv`;
}

/** Some disks take two names for one that differ in capitals only. */
function refuseTwin(directory: string, name: string): void {
  const twin = listTables(directory).find((other) => other.toLowerCase() === name.toLowerCase());
  if (twin !== undefined) throw new HttpError(409, `there is a table ${twin} already`);
}

/** What the reader says of a text as it would stand in the file. */
function check(directory: string, name: string, text: string): { faults: unknown[]; warnings: string[] } {
  const { facts, problem } = knownThings(directory);
  const known = {
    name,
    file: fileOf(name),
    instruments: facts?.instruments ?? {},
    parts: facts?.parts ?? {},
  };
  const warnings = problem === undefined ? [] : [problem];
  try {
    const table = readTable(Buffer.from(text, "utf8"), known);
    return { faults: [], warnings: [...warnings, ...table.warnings] };
  } catch (error) {
    if (!(error instanceof TableFaults)) throw error;
    const faults = error.faults.map(({ line, columnNumber, column, found, expected, mend }) => {
      return { line, columnNumber, column, found, expected, mend };
    });
    return { faults, warnings };
  }
}

/** The instruments and parts of rebuild.json, or why they are not known. */
function knownThings(directory: string): { readonly facts?: RebuildFacts; readonly problem?: string } {
  try {
    return { facts: readRebuildFile(join(directory, rebuildFileName)) };
  } catch (error) {
    return { problem: error instanceof Error ? error.message : String(error) };
  }
}
