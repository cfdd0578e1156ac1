import { sep } from "node:path";
import type { Place, Scripts } from "./scripts.js";

/** Finds where in the cells an error came from, innermost place first. */
export type PlacesOf = (error: Error) => readonly Place[];

/**
 * Makes the stack of every error speak of cells and their lines, and leaves the kernel's machinery out of it.
 * A stack is written when it is first read, so the cost falls on errors that somebody looks at.
 */
export function speakOfCells(scripts: Scripts): PlacesOf {
  const known = new WeakMap<Error, readonly Place[]>();
  Error.prepareStackTrace = (error, calls) => {
    const places: Place[] = [];
    const lines: string[] = [];
    for (const call of calls) {
      const file = call.getScriptNameOrSourceURL() ?? ""; // a cell goes by the name in its sourceURL comment
      if (isMachinery(file)) continue;
      const place = scripts.placeOf(file, call.getLineNumber() ?? 0, call.getColumnNumber() ?? 0);
      if (place === undefined) {
        if (!scripts.has(file)) lines.push(`    at ${call}`);
        continue;
      }
      places.push(place);
      const name = call.getFunctionName();
      lines.push(`    at ${name === null ? "" : `${name}, `}${describePlace(place)}`);
    }
    known.set(error, places);
    return [headline(error), ...lines].join("\n");
  };
  return (error) => {
    void error.stack; // has the stack written, where it was not yet
    return known.get(error) ?? [];
  };
}

/** E.g. "cell 3, line 2:5". */
export function describePlace({ script, at }: Place): string {
  return `${script.title}, line ${at.line}:${at.column}`;
}

function headline(error: Error): string {
  try {
    return Error.prototype.toString.call(error);
  } catch {
    return "Error"; // an error whose own name or message throws
  }
}

function isMachinery(file: string): boolean {
  return (
    file.startsWith("node:") ||
    file.startsWith("evalmachine.") ||
    file.includes(`${sep}tslab${sep}dist${sep}`) ||
    file.startsWith(__dirname)
  );
}
