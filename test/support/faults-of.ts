import { type ReadTableOptions, readTable } from "../../kernel-helpers/survey/read-table.js";
import type { Table } from "../../kernel-helpers/survey/table.js";
import { type TableFault, TableFaults } from "../../kernel-helpers/survey/table-faults.js";

/** A table of a test, from its text or bytes. */
export function tableOf(content: string | Uint8Array, options: Partial<ReadTableOptions> = {}): Table {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  return readTable(bytes, { name: "survey", file: "survey.csv", ...options });
}

/** What `readTable` throws for a table; fails when it throws nothing. */
export function errorOf(content: string | Uint8Array, options: Partial<ReadTableOptions> = {}): TableFaults {
  try {
    tableOf(content, options);
  } catch (error) {
    if (error instanceof TableFaults) return error;
    throw error;
  }
  throw new Error("readTable found no fault in this table");
}

/** The faults of a table, in the order of the file. */
export function faultsOf(
  content: string | Uint8Array,
  options: Partial<ReadTableOptions> = {},
): readonly TableFault[] {
  return errorOf(content, options).faults;
}
