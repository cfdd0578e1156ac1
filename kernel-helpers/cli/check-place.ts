import { existsSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import {
  isBundle,
  leftOutSentences,
  payloadFolder,
  readBundle,
  readLeftOut,
  verifyBag,
} from "../record/bundle/index.js";
import { rebuildFileName } from "../record/find-rebuild.js";
import { verifyRebuild } from "../record/verify-rebuild.js";

/** Whether a bundle or a rebuild's folder is as it was left. */
export interface PlaceCheck {
  /** 0 whole, 1 altered, damaged or not to be read, 2 neither bundle nor rebuild. */
  readonly code: 0 | 1 | 2;
  /** In a sentence without its full stop. */
  readonly summary: string;
  /** One sentence a fault, and after them what was left out on purpose. */
  readonly details: readonly string[];
  /** How many of the details are faults. */
  readonly faults: number;
  /** The same for a program. */
  readonly data: Readonly<Record<string, unknown>>;
}

/**
 * Checks a bundle against its manifests, or a rebuild's folder against the hashes its last run left. Reads and hashes
 * only: nothing is run, and no link is followed in a bundle.
 */
export function checkPlace(place: string): PlaceCheck {
  try {
    if (isBundle(place)) return checkBundle(place);
    if (existsSync(join(place, rebuildFileName))) return checkFolder(place);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { code: 1, summary: `${place} cannot be read`, details: [why], faults: 1, data: { place, why } };
  }
  const why = existsSync(place)
    ? `neither a .zip, nor a folder with a bagit.txt or a ${rebuildFileName}`
    : "nothing is there";
  return {
    code: 2,
    summary: `${place} is no bundle and no rebuild: ${why}`,
    details: [],
    faults: 0,
    data: { place, why },
  };
}

function checkBundle(place: string): PlaceCheck {
  const { name, files } = readBundle(place);
  const check = verifyBag(files);
  const payload = new Map(
    [...files]
      .filter(([path]) => path.startsWith(`${payloadFolder}/`))
      .map(([path, content]) => [path.slice(payloadFolder.length + 1), content]),
  );
  const leftOut = readLeftOut(payload);
  const size = `${check.files} files, ${(check.bytes / 1e6).toFixed(1)} MB`;
  return {
    code: check.valid ? 0 : 1,
    summary: check.valid ? `${name} is whole: ${size}` : `${name} is not as it was made: ${size}`,
    details: [
      ...check.faults.map(({ file, what }) => `${file}: ${what}`),
      ...(leftOut === undefined ? [] : leftOutSentences(leftOut)),
    ],
    faults: check.faults.length,
    data: { name, ...check, ...(leftOut && { leftOut }) },
  };
}

function checkFolder(place: string): PlaceCheck {
  const name = basename(resolve(place));
  const verification = verifyRebuild(place);
  const { files, findings } = verification;
  const valid = findings.length === 0;
  return {
    code: valid ? 0 : 1,
    summary: valid
      ? `${name} is as its last run left it: ${files} files`
      : `${name} is not as its last run left it: ${files} files`,
    details: findings.map(({ text }) => text),
    faults: findings.length,
    data: { name, valid, ...verification },
  };
}
