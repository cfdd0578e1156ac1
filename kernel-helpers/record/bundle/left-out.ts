import { canonicalJson } from "../canonical-json.js";
import { bytesOf, type Files, textOf } from "./files.js";

/** One thing left out of a file. */
export interface LeftOutPart {
  /** e.g. `the column "remark"`. */
  readonly what: string;
  /** Entries that stood there [-]. */
  readonly count: number;
}

/** A file that is shared without something, or not at all. */
export interface LeftOutFile {
  readonly file: string;
  /** SHA-256 of the whole file: who holds it can show that it is the one the record names. */
  readonly sha256: string;
  readonly parts: readonly LeftOutPart[];
  /** The file itself is not in the bundle. */
  readonly whole?: true;
}

/** Everything left out of a bundle. */
export interface LeftOut {
  readonly schema: 1;
  /** In the order of paths; empty where nothing was left out. */
  readonly files: readonly LeftOutFile[];
  /** Sheets that ask by name for something left out: they cannot be run again from the bundle. */
  readonly cannotRun: readonly { readonly sheet: string; readonly asksFor: string }[];
  /** Sheets that read a file that is not whole: run again, they may come to other results. */
  readonly mayDiffer: readonly string[];
}

/** The file, beside rebuild.json in a bundle, that says what was left out. */
export const leftOutFile = "left-out.json";

export function writeLeftOut(leftOut: LeftOut): Uint8Array {
  return bytesOf(canonicalJson(leftOut));
}

/**
 * What was left out of the files of a rebuild; undefined where nothing was.
 *
 * @throws RangeError  left-out.json is none this version can read
 */
export function readLeftOut(files: Files): LeftOut | undefined {
  const bytes = files.get(leftOutFile);
  if (bytes === undefined) return undefined;
  try {
    const json: LeftOut = JSON.parse(textOf(bytes));
    if (json.schema === 1 && [json.files, json.cannotRun, json.mayDiffer].every(Array.isArray)) return json;
  } catch {
    // told below
  }
  throw new RangeError(`readLeftOut: ${leftOutFile} must be JSON of schema 1, got something else`);
}

/** What was left out, a sentence each, what people wrote first; empty where nothing was. */
export function leftOutSentences({ files, cannotRun, mayDiffer }: LeftOut): readonly string[] {
  const shortened = files.filter(({ whole }) => whole !== true);
  const written = shortened.filter(({ file }) => isInput(file));
  const results = shortened.filter(({ file }) => !isInput(file));
  const copies = files.filter(({ whole }) => whole === true).map(({ file }) => file);
  return [
    ...[...written, ...results].map(leftOutText),
    ...(copies.length === 0 ? [] : [`Not in this copy: ${listed(copies)}, kept copies of these files.`]),
    ...cannotRun.map(
      ({ sheet, asksFor }) =>
        `${sheet} asks for ${asksFor}, which was left out: it cannot be run again from this copy.`,
    ),
    ...(mayDiffer.length === 0 ? [] : [differSentence(mayDiffer)]),
  ];
}

/** Whether people wrote a file, or it came of a run. */
function isInput(file: string): boolean {
  return /^(?:rebuild\.json$|tables\/)/.test(file);
}

/** What was left out of one file, in a sentence. */
export function leftOutText({ file, parts }: LeftOutFile): string {
  const things = parts.map(({ what, count }) => `${what} (${count} ${count === 1 ? "entry" : "entries"})`);
  return `Left out of ${file}: ${listed(things)}.`;
}

function differSentence(sheets: readonly string[]): string {
  const [files, they] = sheets.length === 1 ? ["a file that is", "it"] : ["files that are", "they"];
  return `${listed(sheets)} read ${files} not whole here: run again from this copy, ${they} may come to other results than the record.`;
}

function listed(parts: readonly string[]): string {
  return parts.length < 2 ? (parts[0] ?? "") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;
}
