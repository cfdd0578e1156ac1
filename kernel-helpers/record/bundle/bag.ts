import { createHash } from "node:crypto";
import { bytesOf, type Files, sortedPaths } from "./files.js";
import { pathFault } from "./path-fault.js";

/** A line of bag-info.txt. */
export interface BagTag {
  readonly label: string;
  readonly value: string;
}

/** The folder of a bag that holds what is bagged. */
export const payloadFolder = "data";

/**
 * A BagIt bag: the files given, under data/, with manifests by which any tool that knows bags (or `sha256sum -c`)
 * tells whether one was lost or altered. A bag guards against accidents; somebody who means harm can write manifests
 * too.
 *
 * Valid when: paths stay inside the bag on every machine.
 *
 * @param payload  the files, by path within data/
 * @param info     lines of bag-info.txt, in order; Payload-Oxum is added
 * @returns all files of the bag, by path
 * @throws RangeError  a path could lead outside the bag, or a label is none
 * @example
 * const bag = makeBag(new Map([["a.txt", new TextEncoder().encode("a")]]), []);
 * [...bag.keys()].join(" ") // "bagit.txt bag-info.txt manifest-sha256.txt tagmanifest-sha256.txt data/a.txt"
 * @source J. Kunze et al., The BagIt File Packaging Format (V1.0), RFC 8493, 2018, sections 2.1 and 2.2
 */
export function makeBag(payload: Files, info: readonly BagTag[]): Files {
  const paths = sortedPaths(payload);
  for (const path of paths) {
    const fault = pathFault(path);
    if (fault !== undefined)
      throw new RangeError(`makeBag: each path must stay inside the bag, got ${path}: ${fault}`);
  }
  const bytes = paths.reduce((sum, path) => sum + payload.get(path)!.length, 0);
  const oxum = { label: "Payload-Oxum", value: `${bytes}.${paths.length}` };
  const inData = new Map(paths.map((path) => [`${payloadFolder}/${path}`, payload.get(path)!]));
  const tags = new Map([
    ["bagit.txt", bytesOf("BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n")],
    ["bag-info.txt", bytesOf([...info, oxum].map(tagLine).join(""))],
    ["manifest-sha256.txt", bytesOf(manifestOf(inData))],
  ]);
  return new Map([...tags, ["tagmanifest-sha256.txt", bytesOf(manifestOf(tags))], ...inData]);
}

/** SHA-256 of bytes, in hexadecimal digits. */
export function sha256(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

function tagLine({ label, value }: BagTag): string {
  if (!/^[A-Za-z][A-Za-z0-9-]*$/.test(label))
    throw new RangeError(`makeBag: a label must be letters, digits and hyphens, got ${label}`);
  return `${label}: ${value.replace(/\s+/g, " ").trim()}\n`;
}

function manifestOf(files: Files): string {
  return sortedPaths(files)
    .map((path) => `${sha256(files.get(path)!)}  ${encodePath(path)}\n`)
    .join("");
}

/** A path in a manifest: line ends would end its line, and the per cent sign marks them (RFC 8493, 2.1.3). */
function encodePath(path: string): string {
  return path.replaceAll("%", "%25").replaceAll("\n", "%0A").replaceAll("\r", "%0D");
}

/** The path that stands in a manifest. */
export function decodePath(path: string): string {
  return path.replace(/%(0A|0D|25)/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}
