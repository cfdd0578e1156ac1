import { stripVTControlCharacters } from "node:util";
import type { SheetResult } from "./sheet-result.js";

/**
 * Why a sheet failed, for a terminal or a log: the cell by name and number, its source, and the error.
 * Empty for a sheet that went well.
 */
export function failureText(result: SheetResult): string {
  const { sheet, failedCell, error, notRun } = result;
  if (error === undefined) return "";
  const told = error.traceback.map((line) => stripVTControlCharacters(line));
  if (failedCell === undefined) return [`${sheet}: ${error.message}`, ""].join("\n");
  return [
    `${sheet}: cell ${failedCell.id} (number ${failedCell.index + 1}) failed`,
    ...failedCell.source.split("\n").map((line) => `  | ${line}`.trimEnd()),
    ...told.flatMap((lines) => lines.split("\n")).map((line) => `  ${line}`.trimEnd()),
    ...(notRun.length > 0 ? [`  not run after it: ${notRun.join(", ")}`] : []),
    "",
  ].join("\n");
}
