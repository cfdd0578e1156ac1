import {
  cellsOfCodeText,
  changesText,
  codeText,
  fileText,
  type InputChange,
  keptText,
  type SheetRecord,
  versions,
  whatChanged,
} from "../../record/index.js";
import type { RebuildState } from "./rebuild-state.js";

/** One thing that is not what a decision stood on, and how to bring it about in the earlier state. */
export interface Cause {
  /** In words: file, place, what happened there. */
  readonly label: string;
  readonly apply: (state: RebuildState) => RebuildState;
}

/** What changed since a decision was made. */
export interface Causes {
  readonly causes: readonly Cause[];
  /** The state it was made on; undefined where a part of it was not kept. */
  readonly before: RebuildState | undefined;
  /** Versions that are others by now, in words; "" where none is. */
  readonly versions: string;
}

type Basis = SheetRecord["decisions"][string]["basis"];

/** More changes than this are taken file by file and not line by line. */
const mostByLine = 12;

/** Finds all that is not what a decision stood on: rows of tables, rebuild.json, code of sheets, versions. */
export function findCauses(directory: string, basis: Basis, now: RebuildState): Causes {
  const files = new Map<string, string>();
  const code = new Map(now.code);
  const causes: Cause[] = [];
  let complete = true;
  for (const [file, hash] of Object.entries(basis.inputs)) {
    const [before, after] = [keptText(directory, file, hash), fileText(directory, file)];
    if (before === undefined) complete = false;
    else files.set(file, before);
    if (before === after) continue;
    causes.push(
      ...(before === undefined || after === undefined
        ? [wholeFile(file, after, "")]
        : fileCauses(file, before, after)),
    );
  }
  for (const [sheet, hash] of Object.entries(basis.code ?? {})) {
    const before = keptText(directory, `${sheet}.ts`, hash);
    const cells = now.code.get(sheet);
    if (before === undefined) complete = false;
    else code.set(sheet, cellsOfCodeText(before));
    if (before === undefined || cells === undefined) continue;
    const after = codeText(cells.map((cell) => ({ cell_type: "code", ...cell })));
    if (before === after) continue;
    causes.push({
      label: `the code of ${sheet} (${changesText(whatChanged(`${sheet}.ts`, before, after))})`,
      apply: (state) => ({ ...state, code: new Map(state.code).set(sheet, cells) }),
    });
  }
  return { causes, before: complete ? { files, code } : undefined, versions: versionsText(basis.versions) };
}

function fileCauses(file: string, before: string, after: string): readonly Cause[] {
  const changes = whatChanged(file, before, after);
  const sameLines = before.split("\n").length === after.split("\n").length;
  if (!file.endsWith(".csv") || !sameLines || changes.length > mostByLine)
    return [wholeFile(file, after, changesText(changes))];
  const lines = new Map<number, InputChange[]>();
  for (const change of changes) lines.set(change.line!, [...(lines.get(change.line!) ?? []), change]);
  return [...lines].map(([line, inLine]) => ({
    label: `${file} ${changesText(inLine)}`,
    apply: (state) => {
      const rows = (state.files.get(file) ?? "").split("\n");
      rows[line - 1] = after.split("\n")[line - 1]!;
      return { ...state, files: new Map(state.files).set(file, rows.join("\n")) };
    },
  }));
}

function wholeFile(file: string, after: string | undefined, what: string): Cause {
  return {
    label: after === undefined ? `${file} has gone` : `${file}${what === "" ? " has changed" : ` ${what}`}`,
    apply: (state) => ({ ...state, files: new Map(state.files).set(file, after ?? "") }),
  };
}

function versionsText(then: Readonly<Record<string, string>>): string {
  return Object.entries(versions())
    .filter(([name, version]) => then[name] !== undefined && then[name] !== version)
    .map(([name, version]) => `${name} ${then[name]} became ${version}`)
    .join(", ");
}
