import { inflateRawSync } from "node:zlib";
import { crc32 } from "./crc32.js";
import { type Files, textOf } from "./files.js";
import { pathFault } from "./path-fault.js";

/** How much an archive may unpack to. */
export interface ZipLimits {
  /** All files together [bytes]. */
  readonly bytes: number;
  /** Number of files [-]. */
  readonly files: number;
}

const usual: ZipLimits = { bytes: 500e6, files: 20_000 };

interface Entry {
  readonly path: string;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly offset: number;
}

/**
 * The files of a ZIP archive that somebody else may have made: nothing in it is trusted. Folders are left out.
 *
 * Valid when: stored or deflated entries, not encrypted, in one part, less than 4 GB.
 *
 * @throws RangeError  it is no such archive, is damaged, holds a link or a path that could lead outside, holds two
 *   files of one name (upper and lower case told apart or not), or unpacks to more than the limits
 * @source APPNOTE.TXT 6.3.10, sections 4.3 and 4.4
 */
export function readZip(archive: Uint8Array, limits: ZipLimits = usual): Files {
  const zip = Buffer.from(archive.buffer, archive.byteOffset, archive.byteLength);
  const entries = readDirectory(zip, limits);
  const files = new Map<string, Uint8Array>();
  for (const entry of entries) files.set(entry.path, contentOf(zip, entry));
  return files;
}

function refuse(why: string): never {
  throw new RangeError(`readZip: ${why}`);
}

/** The central directory, found from the end. */
function readDirectory(zip: Buffer, limits: ZipLimits): readonly Entry[] {
  const end = zip.lastIndexOf("PK\x05\x06", undefined, "latin1");
  if (end < 0 || end + 22 > zip.length) refuse("this is no ZIP archive, or its end is missing");
  const count = zip.readUInt16LE(end + 10);
  let at = zip.readUInt32LE(end + 16);
  if (count === 0xffff || at === 0xffffffff) refuse("archives of the larger form (ZIP64) are not read");
  if (count > limits.files) refuse(`at most ${limits.files} files are taken, got ${count}`);
  const entries: Entry[] = [];
  const seen = new Set<string>();
  let total = 0;
  for (let i = 0; i < count; i++) {
    if (at + 46 > end || zip.toString("latin1", at, at + 4) !== "PK\x01\x02")
      refuse("its directory is damaged");
    const nameLength = zip.readUInt16LE(at + 28);
    const path = textOf(zip.subarray(at + 46, at + 46 + nameLength));
    const entry: Entry = {
      path,
      method: zip.readUInt16LE(at + 10),
      crc: zip.readUInt32LE(at + 16),
      packed: zip.readUInt32LE(at + 20),
      size: zip.readUInt32LE(at + 24),
      offset: zip.readUInt32LE(at + 42),
    };
    const mode = zip.readUInt32LE(at + 38) >>> 16;
    const flags = zip.readUInt16LE(at + 8);
    at += 46 + nameLength + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
    const isFolder = path.endsWith("/");
    const fault = pathFault(isFolder ? path.slice(0, -1) : path);
    if (fault !== undefined) refuse(`the path ${JSON.stringify(path)} is not taken: ${fault}`);
    if ((mode & 0o170000) === 0o120000) refuse(`${path} is a link; links are not taken`);
    if (isFolder) continue;
    if (flags & 1) refuse(`${path} is encrypted`);
    if (entry.method !== 0 && entry.method !== 8) refuse(`${path} is packed in a way that is not known here`);
    const folded = path.normalize("NFC").toLowerCase();
    if (seen.has(folded)) refuse(`there are two files ${path}`);
    seen.add(folded);
    total += entry.size;
    if (total > limits.bytes) refuse(`it unpacks to more than ${limits.bytes / 1e6} MB`);
    entries.push(entry);
  }
  return entries;
}

function contentOf(zip: Buffer, { path, method, crc, packed, size, offset }: Entry): Uint8Array {
  if (offset + 30 > zip.length || zip.toString("latin1", offset, offset + 4) !== "PK\x03\x04")
    refuse(`${path} is not where the directory says`);
  const from = offset + 30 + zip.readUInt16LE(offset + 26) + zip.readUInt16LE(offset + 28);
  if (from + packed > zip.length) refuse(`${path} is cut short`);
  const content = unpacked(zip.subarray(from, from + packed), method, size, path);
  if (content.length !== size || crc32(content) !== crc) refuse(`${path} is damaged`);
  return content;
}

/** Never more than the directory announced, so that a small archive cannot fill the memory. */
function unpacked(bytes: Buffer, method: number, size: number, path: string): Uint8Array {
  if (method === 0) return Uint8Array.from(bytes);
  try {
    return inflateRawSync(bytes, { maxOutputLength: Math.max(size, 1) });
  } catch {
    return refuse(`${path} is damaged`);
  }
}
