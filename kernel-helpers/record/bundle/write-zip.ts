import { crc32 } from "./crc32.js";
import { bytesOf, type Files, sortedPaths } from "./files.js";
import { pathFault } from "./path-fault.js";

/** 4 GB: beyond that an archive needs the larger form of the format, which is not written here. */
const largest = 0xffffffff;
const mostFiles = 0xffff;

/**
 * A ZIP archive whose bytes depend on files and date alone: entries in the order of their paths, all of one date,
 * stored and not compressed. What a compressor writes depends on its release and even on the processor, so that the
 * same rebuild would give another archive on another machine.
 *
 * Valid when: fewer than 65 535 files and less than 4 GB.
 *
 * @param files  by path
 * @param date   year-month-day, from 1980 to 2107; the time of all entries is midnight
 * @throws RangeError  a path could lead outside, the date is none the format holds, or it is too much
 * @source APPNOTE.TXT 6.3.10, sections 4.3.7 (local header), 4.3.12 (central directory), 4.3.16 (end), 4.4.6 (date)
 */
export function writeZip(files: Files, date: string): Uint8Array {
  const day = dosDate(date);
  const paths = sortedPaths(files);
  if (paths.length >= mostFiles)
    throw new RangeError(`writeZip: fewer than ${mostFiles} files can be held, got ${paths.length}`);
  const parts: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let offset = 0;
  for (const path of paths) {
    const fault = pathFault(path);
    if (fault !== undefined)
      throw new RangeError(`writeZip: each path must stay inside, got ${path}: ${fault}`);
    const content = files.get(path)!;
    const name = bytesOf(path);
    const common = commonFields(content, name, day);
    directory.push(centralHeader(common, offset), name);
    const local = Buffer.concat([Buffer.from("PK\x03\x04", "latin1"), common]);
    parts.push(local, name, content);
    offset += local.length + name.length + content.length;
    if (offset > largest) throw new RangeError(`writeZip: less than 4 GB can be held, got more at ${path}`);
  }
  const size = directory.reduce((sum, part) => sum + part.length, 0);
  return Buffer.concat([...parts, ...directory, endRecord(paths.length, size, offset)]);
}

/** The fields that both headers of an entry hold: from the version that is needed to the length of the extra field. */
function commonFields(content: Uint8Array, name: Uint8Array, day: number): Buffer {
  const fields = Buffer.alloc(26);
  fields.writeUInt16LE(20, 0); // version 2.0 reads it
  fields.writeUInt16LE(0x0800, 2); // names are in UTF-8
  fields.writeUInt16LE(0, 4); // stored
  fields.writeUInt16LE(0, 6); // midnight
  fields.writeUInt16LE(day, 8);
  fields.writeUInt32LE(crc32(content), 10);
  fields.writeUInt32LE(content.length, 14);
  fields.writeUInt32LE(content.length, 18);
  fields.writeUInt16LE(name.length, 22);
  return fields; // no extra field
}

function centralHeader(common: Buffer, offset: number): Buffer {
  const after = Buffer.alloc(14);
  after.writeUInt32LE((0o100644 << 16) >>> 0, 6); // an ordinary file that all may read
  after.writeUInt32LE(offset, 10);
  return Buffer.concat([Buffer.from("PK\x01\x02\x14\x03", "latin1"), common, after]); // made by version 2.0, Unix
}

function endRecord(count: number, size: number, offset: number): Buffer {
  const end = Buffer.alloc(22);
  end.write("PK\x05\x06", 0, "latin1");
  end.writeUInt16LE(count, 8);
  end.writeUInt16LE(count, 10);
  end.writeUInt32LE(size, 12);
  end.writeUInt32LE(offset, 16);
  return end;
}

/** A date in two bytes: years since 1980, months and days. */
function dosDate(date: string): number {
  const [, year, month, day] = (/^(\d{4})-(\d\d)-(\d\d)$/.exec(date) ?? []).map(Number);
  if (
    year === undefined ||
    year < 1980 ||
    year > 2107 ||
    !(month! >= 1 && month! <= 12 && day! >= 1 && day! <= 31)
  )
    throw new RangeError(`writeZip: the date must be year-month-day from 1980 to 2107, got ${date}`);
  return ((year - 1980) << 9) | (month! << 5) | day!;
}
