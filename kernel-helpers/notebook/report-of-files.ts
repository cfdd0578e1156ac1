import { createHash } from "node:crypto";
import { basename } from "node:path";
import { type RebuildFacts, rebuildFileName, type Versions } from "../record/index.js";
import type { Labelled, ReportInput, ReportSheet } from "./report/index.js";

/** What a report of a rebuild is made of. */
export interface ReportParts {
  readonly facts: Pick<RebuildFacts, "title" | "machine" | "invented" | "examples" | "sha256">;
  readonly sheets: readonly ReportSheet[];
  /** Files of the rebuild by path within it: tables, records, and worksheets as run. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly versions: Versions;
  /** What has to be known of this copy, a sentence each. */
  readonly notices?: readonly string[];
}

/** The input of `buildReport` for a rebuild: what its files hold, and the hash of each in the provenance. */
export function reportOfFiles({ facts, sheets, files, versions, notices = [] }: ReportParts): ReportInput {
  const tables = filesIn(files, /^tables\/[^/]+\.csv$/);
  const records = filesIn(files, /^record\/[^/]+\.json$/);
  return {
    title: facts.title,
    facts: facts.machine,
    invented: facts.invented,
    notices: [...examplesNotice(facts.examples), ...notices],
    sheets,
    tables: tables.map(({ path, text, sha256 }) => ({
      name: basename(path, ".csv"),
      file: basename(path),
      text,
      sha256,
    })),
    records: records.map(({ path, text }) => ({ name: basename(path), text })),
    provenance: [
      { label: "Journalbox", value: versions.journalbox },
      { label: "Node.js", value: versions.node },
      { label: "tslab", value: versions.tslab },
      { label: rebuildFileName, value: facts.sha256 },
      ...tables.map(hashOf),
      ...filesIn(files, /^sheets\/[^/]+\.ipynb$/).map(
        ({ path, sha256 }): Labelled => ({ label: `${basename(path)}, as run`, value: sha256 }),
      ),
    ],
  };
}

/** Results that stand on example values must not be taken for those of the machine. */
function examplesNotice(examples: readonly string[]): readonly string[] {
  return examples.length === 0
    ? []
    : [
        `Still the example values that a new rebuild begins with, not those of this machine: ${examples.join(", ")}.`,
      ];
}

interface NamedFile {
  readonly path: string;
  readonly text: string;
  readonly sha256: string;
}

function filesIn(files: ReadonlyMap<string, Uint8Array>, wanted: RegExp): readonly NamedFile[] {
  return [...files.keys()]
    .filter((path) => wanted.test(path))
    .sort()
    .map((path) => {
      const bytes = files.get(path)!;
      const sha256 = createHash("sha256").update(bytes).digest("hex");
      return { path, text: Buffer.from(bytes).toString("utf8"), sha256 };
    });
}

function hashOf({ path, sha256 }: NamedFile): Labelled {
  return { label: path, value: sha256 };
}
