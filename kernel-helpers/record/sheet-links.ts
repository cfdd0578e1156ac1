/** What a sheet hands on and takes over, as its source says. */
export interface SheetLinks {
  /** Names under which it publishes results. */
  readonly publishes: readonly string[];
  /** Names under which it decides. */
  readonly decides: readonly string[];
  /** Names of results it recalls. */
  readonly recalls: readonly string[];
  /** Names of decisions it takes over. */
  readonly takesDecisions: readonly string[];
  /** True where it collects what all others noted and decided. */
  readonly takesAll: boolean;
}

/**
 * Finds in the sources of a sheet's code cells which results it publishes and recalls, and which decisions it makes
 * and takes over. Names are found where they are written out: `rebuild.recall("wear", …)`, `publish({ wear: wear })`,
 * and in an object that a cell made before, whole or spread: `const made = { wear }; publish({ ...made })`. A name
 * that is only computed when the sheet runs is not seen.
 *
 * @param sources  of the cells looked at, in their order
 * @param before  of the cells before them, in which objects are looked up by name
 */
export function sheetLinks(sources: readonly string[], before: readonly string[] = []): SheetLinks {
  const cells = sources.map(withoutComments);
  const cellsBefore = before.map(withoutComments);
  const named = (call: string): readonly string[] =>
    cells.flatMap((cell) =>
      [...cell.matchAll(new RegExp(`\\.\\s*${call}\\s*\\(\\s*(["'\`])((?:(?!\\1).)+)\\1`, "g"))].map(
        (found) => found[2]!,
      ),
    );
  const objects = (call: string): readonly Member[] =>
    cells.flatMap((cell, at) =>
      [...cell.matchAll(new RegExp(`\\.\\s*${call}\\s*\\(\\s*(?:\\{|(${word})\\s*\\))`, "gu"))].flatMap(
        (found) => {
          const earlier = [...cellsBefore, ...cells.slice(0, at), cell.slice(0, found.index)];
          return found[1] === undefined
            ? membersOf(cell.slice(found.index + found[0].length), earlier)
            : membersOfNamed(found[1], earlier);
        },
      ),
    );
  return {
    publishes: unique(objects("publish").map(({ key }) => key)),
    decides: unique(
      objects("decide").flatMap(({ key, value }) => {
        const text = key === "name" ? /^\s*(["'`])((?:(?!\1).)+)\1/.exec(value)?.[2] : undefined;
        return text === undefined ? [] : [text];
      }),
    ),
    recalls: unique(named("recall")),
    takesDecisions: unique(named("decision")),
    takesAll: cells.some((cell) => /\.\s*handover\s*\(/.test(cell)),
  };
}

/** A name in code, for the inside of a pattern. */
const word = "[\\p{L}_$][\\p{L}\\p{N}_$]*";

interface Member {
  readonly key: string;
  /** The source that follows its colon; "" where there is none. */
  readonly value: string;
}

/** The members of the object that was last made by a name in the code before; none where it is not written out. */
function membersOfNamed(name: string, before: readonly string[]): readonly Member[] {
  const escaped = name.replaceAll("$", "\\$");
  const made = new RegExp(
    `(?:^|[;{}\\s])(?:const|let|var)\\s+${escaped}\\s*(?::[^=;]*)?=(?![=>])\\s*(\\{)?`,
    "gu",
  );
  for (const [back, cell] of before.toReversed().entries()) {
    const last = [...cell.matchAll(made)].at(-1);
    if (last === undefined) continue;
    if (last[1] === undefined) return [];
    const earlier = [...before.slice(0, before.length - 1 - back), cell.slice(0, last.index)];
    return membersOf(cell.slice(last.index + last[0].length), earlier);
  }
  return [];
}

/**
 * The members at the first level of an object literal, those of objects spread in it included.
 *
 * @param inside  the text after its opening brace
 * @param before  the code that comes before it
 */
function membersOf(inside: string, before: readonly string[]): readonly Member[] {
  const keys: Member[] = [];
  let depth = 0;
  let atKey = true;
  for (let i = 0; i < inside.length; ) {
    if (atKey && depth === 0) {
      const spread = spreadName.exec(inside.slice(i));
      if (spread !== null) {
        i += spread[0].length;
        keys.push(...membersOfNamed(spread[1]!, before));
        atKey = false;
        continue;
      }
      const key = /^\s*(?:([\p{L}_$][\p{L}\p{N}_$]*)|(["'])((?:(?!\2).)+)\2)\s*(?=[:,}])/u.exec(
        inside.slice(i),
      );
      if (key !== null) {
        i += key[0].length;
        const value = inside[i] === ":" ? inside.slice(i + 1) : "";
        keys.push({ key: key[1] ?? key[3]!, value });
        atKey = false;
        continue;
      }
    }
    const character = inside[i]!;
    if (character === "}" && depth === 0) break;
    if ("([{".includes(character)) depth += 1;
    if (")]}".includes(character)) depth -= 1;
    if (character === "," && depth === 0) atKey = true;
    else if (!/\s/.test(character)) atKey = false;
    i = "\"'`".includes(character) ? afterText(inside, i) : i + 1;
  }
  return keys;
}

const spreadName = new RegExp(`^\\s*\\.\\.\\.\\s*(${word})\\s*(?=[,}])`, "u");

/** Where the text that opens at a place ends. */
function afterText(code: string, start: number): number {
  for (let i = start + 1; i < code.length; i += 1) {
    if (code[i] === "\\") i += 1;
    else if (code[i] === code[start]) return i + 1;
  }
  return code.length;
}

/** The code with its comments blanked out; texts stay, also those that look like comments. */
function withoutComments(code: string): string {
  let kept = "";
  for (let i = 0; i < code.length; ) {
    const two = code.slice(i, i + 2);
    const end = two === "//" ? code.indexOf("\n", i) : two === "/*" ? code.indexOf("*/", i + 2) + 2 : -1;
    if (two === "//" || two === "/*") {
      kept += " ";
      i = end <= 1 ? code.length : end;
    } else {
      const next = "\"'`".includes(code[i]!) ? afterText(code, i) : i + 1;
      kept += code.slice(i, next);
      i = next;
    }
  }
  return kept;
}

function unique(names: readonly string[]): readonly string[] {
  return Object.freeze([...new Set(names)]);
}
