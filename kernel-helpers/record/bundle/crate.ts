import { canonicalJson } from "../canonical-json.js";
import { bytesOf, type Files, sortedPaths } from "./files.js";

/** What a crate says of a rebuild as a whole. */
export interface CrateFacts {
  readonly title: string;
  readonly description: string;
  /** year-month-day. */
  readonly date: string;
  /** Under which terms it may be used, in words. */
  readonly terms: string;
  /** What wrote the results: names and versions. */
  readonly versions: Readonly<Record<string, string>>;
}

/** The file that makes a folder a crate. */
export const crateFile = "ro-crate-metadata.json";

const profile = "https://w3id.org/ro/crate/1.1";

/**
 * The RO-Crate metadata file of a rebuild: what it is, and of each file what it is for, in JSON-LD.
 *
 * @param files  of the rebuild, by path; the metadata file itself is not among them
 * @source RO-Crate Metadata Specification 1.1 (2020), Root Data Entity, Data Entities, Provenance; appendix
 *   "Combining with other packaging schemes": in a bag the crate's root is data/
 */
export function crateMetadata(files: Files, facts: CrateFacts): Uint8Array {
  const paths = sortedPaths(files);
  const root = {
    "@id": "./",
    "@type": "Dataset",
    name: facts.title,
    description: facts.description,
    datePublished: facts.date,
    license: facts.terms,
    hasPart: paths.map((path) => ({ "@id": idOf(path) })),
    mentions: { "@id": "#run" },
  };
  const descriptor = {
    "@id": crateFile,
    "@type": "CreativeWork",
    conformsTo: { "@id": profile },
    about: { "@id": "./" },
  };
  const tools = Object.entries(facts.versions).map(([name, version]) => ({
    "@id": `#${encodeURIComponent(name)}`,
    "@type": "SoftwareApplication",
    name,
    version,
  }));
  const run = {
    "@id": "#run",
    "@type": "CreateAction",
    name: "Run of the worksheets",
    description:
      "The worksheets in sheets/ were run on rebuild.json and tables/; record/ and out/ came of it.",
    instrument: tools.map((tool) => ({ "@id": tool["@id"] })),
    object: paths.filter((path) => !isResult(path)).map((path) => ({ "@id": idOf(path) })),
    result: paths.filter(isResult).map((path) => ({ "@id": idOf(path) })),
  };
  const entities = paths.map((path) => fileEntity(path, files.get(path)!.length));
  const graph = [descriptor, root, ...entities, run, ...tools];
  return bytesOf(canonicalJson({ "@context": `${profile}/context`, "@graph": graph }));
}

function isResult(path: string): boolean {
  return /^(?:record|out)\//.test(path);
}

function fileEntity(path: string, size: number): Readonly<Record<string, unknown>> {
  const [type, encodingFormat, description] = kindOf(path);
  return {
    "@id": idOf(path),
    "@type": type,
    name: path,
    description,
    encodingFormat,
    contentSize: String(size),
  };
}

function kindOf(path: string): readonly [type: unknown, mediaType: string, description: string] {
  const code = ["File", "SoftwareSourceCode"];
  if (path === "rebuild.json") return ["File", "application/json", "the machine and its facts"];
  if (/^tables\/.*\.csv$/.test(path))
    return ["File", "text/csv", "readings, the unit of each column in its header"];
  if (/^sheets\/.*\.ipynb$/.test(path)) return [code, "application/x-ipynb+json", "worksheet, as it is run"];
  if (/^out\/.*\.ipynb$/.test(path))
    return ["File", "application/x-ipynb+json", "worksheet with its results, as it was run"];
  if (path === "out/report.html") return ["File", "text/html", "report for people"];
  if (/^record\/[^/]+\.json$/.test(path))
    return ["File", "application/json", "what a worksheet handed on and decided, and on what it stood"];
  if (path === "left-out.json") return ["File", "application/json", "what was left out of this bundle"];
  if (path.endsWith(".txt")) return ["File", "text/plain", "checksums"];
  return ["File", "application/octet-stream", "a file of the rebuild"];
}

/** The address of a file relative to the crate's root. */
function idOf(path: string): string {
  return path.split("/").map(encodeURIComponent).join("/");
}
