import type { ReportFault } from "./table-faults.js";

/**
 * The text of a file: UTF-8 with or without byte order mark, or UTF-16 with one; every line ends in \n,
 * whether the file says \r\n (Windows), \r (old Macintosh) or \n.
 *
 * Bytes that are no UTF-8 and control characters are reported with their lines. Reading goes on as if
 * they had been Windows-1252, or were not there, so that other faults are found as well.
 *
 * @returns the text, or undefined where the bytes cannot be read as text at all (reported)
 */
export function decodeText(bytes: Uint8Array, report: ReportFault): string | undefined {
  const encoding = encodingByMark(bytes);
  if (encoding === undefined && looksLikeUtf16(bytes)) {
    const [found, mend] = ["a zero byte after every letter", "save the file as UTF-8"];
    report(0, undefined, found, "text in UTF-8 (this looks like UTF-16 without its mark)", mend);
    return undefined;
  }
  const text = encoding === undefined ? decodeUtf8(bytes, report) : decodeUtf16(bytes, encoding, report);
  return text === undefined ? undefined : withoutControls(text.replace(/\r\n?/g, "\n"), report);
}

function encodingByMark(bytes: Uint8Array): "utf-16le" | "utf-16be" | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  return undefined;
}

/** Plain text has no zero bytes; in UTF-16 every other one is zero for Latin letters and digits. */
function looksLikeUtf16(bytes: Uint8Array): boolean {
  const start = bytes.subarray(0, 1000);
  return start.filter((byte) => byte === 0).length > start.length / 4;
}

function decodeUtf16(
  bytes: Uint8Array,
  encoding: "utf-16le" | "utf-16be",
  report: ReportFault,
): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    const mend = "the file may be cut short; save it again as UTF-8";
    report(
      0,
      undefined,
      "bytes that are no letters",
      `text in ${encoding.toUpperCase()}, as its mark says`,
      mend,
    );
    return undefined;
  }
}

function decodeUtf8(bytes: Uint8Array, report: ReportFault): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    reportBadLines(bytes, report);
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** No byte of a longer UTF-8 letter looks like a line end, so each line can be tried by itself. */
function reportBadLines(bytes: Uint8Array, report: ReportFault): void {
  let [start, line] = [0, 1];
  for (let end = 0; end <= bytes.length; end++) {
    const byte = bytes[end];
    if (byte !== undefined && byte !== 0x0a && byte !== 0x0d) continue;
    const part = bytes.subarray(start, end);
    const asWindows = firstForeignLetter(part);
    if (asWindows !== undefined)
      report(
        line,
        undefined,
        `a byte that is no UTF-8 (in Windows-1252 it would be "${asWindows}")`,
        "text in UTF-8",
        "save the file as UTF-8; it was probably saved as Windows-1252 (ANSI)",
      );
    if (byte === 0x0d && bytes[end + 1] === 0x0a) end++;
    [start, line] = [end + 1, line + 1];
  }
}

/** The first letter beyond ASCII of a line that is no UTF-8, read as Windows-1252; undefined if it is UTF-8. */
function firstForeignLetter(line: Uint8Array): string | undefined {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(line);
    return undefined;
  } catch {
    const first = line.find((byte) => byte >= 0x80);
    return new TextDecoder("windows-1252").decode(Uint8Array.of(first!));
  }
}

// \p{Cc} are the control characters; tabs and line ends are ordinary in a text file.
const controls = /[^\P{Cc}\t\n]/gu;

function withoutControls(text: string, report: ReportFault): string {
  const found = new Map<number, string>();
  let [line, from] = [1, 0];
  for (const match of text.matchAll(controls)) {
    for (; from < match.index; from++) if (text.charCodeAt(from) === 0x0a) line++;
    if (!found.has(line)) found.set(line, match[0]);
  }
  if (found.size === 0) return text;
  for (const [badLine, character] of found) {
    const code = character.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");
    report(
      badLine,
      undefined,
      `a control character (U+${code})`,
      "letters, digits and signs",
      "delete it: nothing can be seen there, so type the cell again",
    );
  }
  return text.replace(controls, "");
}
