/**
 * Reads advance widths straight from a TrueType file, to check our table against its source.
 * Tables head, hhea, hmtx and cmap (format 4), as laid down in the OpenType specification.
 */
export interface FontMetrics {
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  advanceOf(character: number): number | undefined;
}

export function readAdvances(font: Buffer): FontMetrics {
  const table = tableOffsets(font);
  const glyphOf = glyphs(font, table.get("cmap")!);
  const [head, hhea, hmtx] = [table.get("head")!, table.get("hhea")!, table.get("hmtx")!];
  const lastMetric = font.readUInt16BE(hhea + 34) - 1;
  return {
    unitsPerEm: font.readUInt16BE(head + 18),
    ascent: font.readInt16BE(hhea + 4),
    descent: -font.readInt16BE(hhea + 6),
    advanceOf(character) {
      const glyph = glyphOf.get(character);
      return glyph === undefined ? undefined : font.readUInt16BE(hmtx + 4 * Math.min(glyph, lastMetric));
    },
  };
}

function tableOffsets(font: Buffer): ReadonlyMap<string, number> {
  const offsets = new Map<string, number>();
  for (let entry = 0; entry < font.readUInt16BE(4); entry++) {
    const at = 12 + 16 * entry;
    offsets.set(font.toString("latin1", at, at + 4), font.readUInt32BE(at + 8));
  }
  return offsets;
}

function glyphs(font: Buffer, cmap: number): ReadonlyMap<number, number> {
  const start = format4(font, cmap);
  const segments = font.readUInt16BE(start + 6) / 2;
  const [ends, starts] = [start + 14, start + 16 + 2 * segments];
  const [deltas, offsets] = [starts + 2 * segments, starts + 4 * segments];
  const found = new Map<number, number>();
  for (let segment = 0; segment < segments; segment++) {
    const [first, last] = [font.readUInt16BE(starts + 2 * segment), font.readUInt16BE(ends + 2 * segment)];
    const delta = font.readUInt16BE(deltas + 2 * segment);
    const offsetAt = offsets + 2 * segment;
    const offset = font.readUInt16BE(offsetAt);
    for (let code = first; code <= last && code < 0xffff; code++) {
      const raw = offset === 0 ? code : font.readUInt16BE(offsetAt + offset + 2 * (code - first));
      if (raw !== 0) found.set(code, (raw + delta) & 0xffff);
    }
  }
  return found;
}

function format4(font: Buffer, cmap: number): number {
  for (let entry = 0; entry < font.readUInt16BE(cmap + 2); entry++) {
    const start = cmap + font.readUInt32BE(cmap + 8 + 8 * entry);
    if (font.readUInt16BE(start) === 4) return start;
  }
  throw new Error("readAdvances: the font has no cmap of format 4");
}
