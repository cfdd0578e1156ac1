import type { Diagnostic } from "tslab/dist/converter.js";
import type { ErrorContent } from "./error-content.js";
import { excerpt } from "./excerpt.js";
import { faint, red } from "./ink.js";
import { plainWords, withoutPaths } from "./plain-words.js";

/** Faults past this many are counted, not shown: the first ones are usually the cause of the rest. */
const most = 8;

/**
 * What TypeScript found wrong in a cell before it ran, told in plain words, each with its line and an excerpt.
 * TypeScript's own code and text follow in small.
 *
 * @param diagnostics at least one; as tslab gives them: a message and its details follow each other, all at one place
 * @param source      the whole text of the cell
 */
export function typeError(diagnostics: readonly Diagnostic[], source: string): ErrorContent {
  const lines = source.split("\n").length;
  const all = mostTelling(groupByPlace(diagnostics));
  // tslab puts a line of its own after the cell; what is wrong there is wrong in the cell, and told there.
  const faults = all.filter(
    ([head], i) => i === 0 || head!.fileName !== undefined || head!.start.line < lines,
  );
  const told = faults.slice(0, most).flatMap((fault) => tellFault(fault, source));
  const more = faults.length > most ? [`and ${faults.length - most} more`] : [];
  const first = faults[0]!;
  return Object.freeze({
    ename: enameOf(first[0]!.code),
    evalue: `${plainWords(first)} (${whereIs(first[0]!)})`,
    traceback: Object.freeze([...told, ...more, faint("The cell was checked, and not run.")]),
  });
}

/** One fault in a cell: where it is and what is wrong, in plain words. */
export interface TypeFault {
  /** Counted from 1 [-]. */
  readonly line: number;
  /** Counted from 1 [-]. */
  readonly column: number;
  /** The file beside the notebook it lies in; not given for the cell itself. */
  readonly fileName?: string;
  readonly text: string;
  /** The name that is not known, where that is the fault. */
  readonly unknownName?: string;
}

/** Everything TypeScript found wrong in a cell, in the order of the cell. */
export function typeFaults(diagnostics: readonly Diagnostic[]): readonly TypeFault[] {
  return mostTelling(groupByPlace(diagnostics)).map((fault) => {
    const { start, fileName, messageText } = fault[0]!;
    const unknownName = /^Cannot find name '(.+?)'/.exec(messageText)?.[1];
    return Object.freeze({
      line: start.line + 1,
      column: start.character + 1,
      text: plainWords(fault),
      ...(fileName !== undefined && { fileName }),
      ...(unknownName !== undefined && { unknownName }),
    });
  });
}

function tellFault(fault: readonly Diagnostic[], source: string): string[] {
  const first = fault[0]!;
  const { start, end, fileName } = first;
  const at = { line: start.line + 1, column: start.character + 1 };
  const length = end.line === start.line ? end.character - start.character : 1;
  return [
    red(`${enameOf(first.code)}: ${plainWords(fault)} (${whereIs(first)})`),
    ...(fileName === undefined ? excerpt(source, at, length) : []),
    ...fault.map((message, i) =>
      faint(`${i === 0 ? `TS${message.code}: ` : "  "}${withoutPaths(message.messageText)}`),
    ),
  ];
}

/** Where the grammar is wrong, what else is found is mostly a consequence. */
function mostTelling(faults: readonly Diagnostic[][]): readonly Diagnostic[][] {
  const grammar = faults.filter((fault) => isGrammar(fault[0]!.code));
  return grammar.length > 0 ? grammar : faults;
}

function enameOf(code: number): string {
  return isGrammar(code) ? "SyntaxError" : "TypeCheckError";
}

/** TypeScript numbers the faults of grammar from 1000 to 1999. */
function isGrammar(code: number): boolean {
  return code < 2000;
}

function whereIs({ fileName, start }: Diagnostic): string {
  return fileName === undefined ? `line ${start.line + 1}` : `${fileName}, line ${start.line + 1}`;
}

function groupByPlace(diagnostics: readonly Diagnostic[]): Diagnostic[][] {
  const groups: Diagnostic[][] = [];
  for (const diagnostic of diagnostics) {
    const last = groups.at(-1);
    const head = last?.[0];
    const detail =
      head?.start.offset === diagnostic.start.offset &&
      diagnostic.fileName === undefined &&
      isGrammar(head.code) === isGrammar(diagnostic.code); // else it is a consequence, and no detail
    if (last !== undefined && detail) last.push(diagnostic);
    else groups.push([diagnostic]);
  }
  return groups;
}
