import { crc32, deflateSync } from "node:zlib";

const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/**
 * A PNG file of 8-bit red, green, blue, opacity pixels, row by row from the top.
 *
 * @source PNG (Portable Network Graphics) Specification, W3C, clauses 5.3 (chunks), 11.2.2 (IHDR), 9.2 (filter 0)
 */
export function encodePng(width: number, height: number, pixels: Uint8Array): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 6], 8); // 8 bits a channel, true colour with opacity
  const rowLength = width * 4;
  const rows = Buffer.alloc(height * (rowLength + 1)); // each row begins with its filter: 0, none
  for (let row = 0; row < height; row++) {
    rows.set(pixels.subarray(row * rowLength, (row + 1) * rowLength), row * (rowLength + 1) + 1);
  }
  return Buffer.concat([
    signature,
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(rows)),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}
