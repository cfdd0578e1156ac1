import { createHash } from "node:crypto";
import { decodePath, payloadFolder } from "./bag.js";
import { type Files, textOf } from "./files.js";
import { pathFault } from "./path-fault.js";

/** One thing by which a bag is not what it was when it was made. */
export interface BagFault {
  readonly file: string;
  readonly what: string;
}

/** Whether a bag is whole. */
export interface BagCheck {
  readonly kind: "bag-check";
  readonly valid: boolean;
  /** Files under data/ [-]. */
  readonly files: number;
  /** Their size [bytes]. */
  readonly bytes: number;
  /** Algorithms of the manifests that were checked, e.g. "sha256". */
  readonly algorithms: readonly string[];
  /** In the order of files. */
  readonly faults: readonly BagFault[];
}

/** Algorithms of RFC 8493, strong ones first. */
const known: readonly string[] = ["sha512", "sha256", "sha1", "md5"];

/**
 * Checks a bag as RFC 8493 says: declaration, manifests, every file listed and as it was, none beside them, and the
 * total of bag-info.txt. Nothing of it is run.
 *
 * Valid when: the bag is complete in itself. One that leaves files to be fetched (fetch.txt) is at fault here.
 *
 * @param bag  all files of the bag, by path
 * @returns what was found; a folder that is no bag has that as its only fault
 * @source RFC 8493, section 3 (complete and valid bags)
 */
export function verifyBag(bag: Files): BagCheck {
  const faults: BagFault[] = [];
  const fault = (file: string, what: string): void => void faults.push(Object.freeze({ file, what }));
  const payload = [...bag].filter(([path]) => path.startsWith(`${payloadFolder}/`));
  const bytes = payload.reduce((sum, [, content]) => sum + content.length, 0);
  const algorithms = manifestAlgorithms(bag, "manifest");

  const declaration = bag.get("bagit.txt");
  if (declaration === undefined) fault("bagit.txt", "it is missing, so this is no bag");
  else if (!/^BagIt-Version: *(?:0\.9[3-7]|1\.0)\r?\n/i.test(textOf(declaration)))
    fault("bagit.txt", "it does not begin with a version of BagIt that is known here (0.93 to 0.97, 1.0)");
  else if (algorithms.length === 0)
    fault("manifest-sha256.txt", `there is no manifest of an algorithm known here: ${known.join(", ")}`);
  else {
    for (const algorithm of algorithms)
      checkManifest(bag, `manifest-${algorithm}.txt`, algorithm, payloadFolder, fault);
    for (const algorithm of manifestAlgorithms(bag, "tagmanifest"))
      checkManifest(bag, `tagmanifest-${algorithm}.txt`, algorithm, undefined, fault);
    checkOxum(bag, bytes, payload.length, fault);
    if (bag.has("fetch.txt")) fault("fetch.txt", "it names files to be fetched, which is not done here");
  }
  faults.sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0));
  return Object.freeze({
    kind: "bag-check",
    valid: faults.length === 0,
    files: payload.length,
    bytes,
    algorithms: Object.freeze(algorithms),
    faults: Object.freeze(faults),
  });
}

type ReportFault = (file: string, what: string) => void;

function manifestAlgorithms(bag: Files, what: "manifest" | "tagmanifest"): string[] {
  return known.filter((algorithm) => bag.has(`${what}-${algorithm}.txt`));
}

/** A manifest, line by line; `whole` is the folder of which it must list every file. */
function checkManifest(
  bag: Files,
  manifest: string,
  algorithm: string,
  whole: string | undefined,
  fault: ReportFault,
): void {
  const listed = new Set<string>();
  const lines = textOf(bag.get(manifest)!).split(/\r\n|\n|\r/);
  for (const [at, line] of lines.entries()) {
    if (line === "") continue;
    const entry = /^([0-9a-fA-F]+)[ \t]+\*?(.+)$/.exec(line);
    const path = entry === null ? "" : decodePath(entry[2]!).replace(/^\.\//, "");
    const wrong = entry === null ? "it is no checksum and path" : pathFault(path);
    if (wrong !== undefined) fault(manifest, `line ${at + 1}: ${wrong}`);
    else if (listed.has(path)) fault(manifest, `line ${at + 1}: ${path} is listed twice`);
    else if (whole !== undefined && !path.startsWith(`${whole}/`))
      fault(manifest, `line ${at + 1}: ${path} does not lie in ${whole}/`);
    else {
      const content = bag.get(path);
      if (content === undefined) fault(path, `it is missing; ${manifest} lists it`);
      else if (createHash(algorithm).update(content).digest("hex") !== entry![1]!.toLowerCase())
        fault(path, `it was altered: its ${algorithm} is not that of ${manifest}`);
    }
    listed.add(path);
  }
  if (whole === undefined) return;
  for (const path of bag.keys())
    if (path.startsWith(`${whole}/`) && !listed.has(path))
      fault(path, `it was added: ${manifest} does not list it`);
}

function checkOxum(bag: Files, bytes: number, count: number, fault: ReportFault): void {
  const said = /^Payload-Oxum: *(\S+)/im.exec(textOf(bag.get("bag-info.txt") ?? new Uint8Array()))?.[1];
  if (said !== undefined && said !== `${bytes}.${count}`)
    fault("bag-info.txt", `it says Payload-Oxum ${said}, but data/ holds ${bytes} bytes in ${count} files`);
}
