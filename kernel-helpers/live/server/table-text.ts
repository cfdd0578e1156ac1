const byteOrderMark = Buffer.from([0xef, 0xbb, 0xbf]);

/**
 * The text of a table file, for an editor: UTF-8 or UTF-16 by its mark, which is left out; bytes that are no UTF-8
 * are read as Windows-1252. Nothing else is changed, line ends neither.
 */
export function textOfTable(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** The bytes of a text in UTF-8, with a mark where the file had one before: some programs need it to see UTF-8. */
export function bytesOfTable(text: string, before: Uint8Array | undefined): Uint8Array {
  const bytes = Buffer.from(text, "utf8");
  const marked = before !== undefined && byteOrderMark.equals(before.subarray(0, 3));
  return marked && !text.startsWith("\uFEFF") ? Buffer.concat([byteOrderMark, bytes]) : bytes;
}
