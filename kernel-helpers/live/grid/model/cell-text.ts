import { scanCell } from "./scan-cell.js";

/**
 * What a cell says: without the quotes and spaces it is written with.
 *
 * @example cellValue(' "light rust, filed"', ",") // "light rust, filed"
 * @example cellValue(' 2.4375" ', ",")            // "2.4375\""
 */
export function cellValue(raw: string, delimiter: string): string {
  const cell = scanCell(raw, 0, delimiter);
  return cell.end === raw.length && !cell.open ? cell.value.trim() : raw.trim();
}

/**
 * How a value is written in place of what stood in the cell: with the spaces that stood round it, in quotes
 * where it needs them or had them.
 *
 * @param value      what the cell is to say
 * @param old        the cell as written so far
 * @param delimiter  of the file
 * @param first      whether it is the first cell of its row, where # would begin a remark
 * @example cellRaw("light rust, filed", " light rust", ",", false) // " \"light rust, filed\""
 */
export function cellRaw(value: string, old: string, delimiter: string, first: boolean): string {
  const [, before, middle, behind] = /^(\s*)(.*?)(\s*)$/s.exec(old)!;
  const written = value.trim();
  const wasQuoted = middle!.startsWith('"') && middle!.endsWith('"') && middle!.length > 1;
  const needsQuotes =
    written.includes(delimiter) ||
    /^"|[\r\n]/.test(written) ||
    (first && written.startsWith("#")) ||
    (wasQuoted && written !== "" && cellValue(old, delimiter) !== middle);
  const text = needsQuotes ? `"${written.replaceAll('"', '""')}"` : written;
  // Behind a closing quote a space would make the quotes part of the cell.
  return before + text + (needsQuotes ? "" : behind);
}

/** The spaces a cell begins with. */
export function leadOf(raw: string): string {
  return /^\s*/.exec(raw)![0];
}
