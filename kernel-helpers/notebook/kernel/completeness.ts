import type * as TypeScript from "@tslab/typescript-for-tslab";

/** The content of an is_complete_reply. */
export type Completeness =
  | { readonly status: "complete" | "invalid" }
  | { readonly status: "incomplete"; readonly indent: string };

/** TypeScript's number for a text in quotes that the line ends: more lines do not mend it. */
const unterminatedText = 1002;

/**
 * Whether a console may run what was typed, or should wait for more lines. Two empty lines at the end ask for
 * the run, whatever is missing.
 *
 * @param ts   the TypeScript that reads the cells
 * @param code what was typed so far
 */
export function completeness(ts: typeof TypeScript, code: string): Completeness {
  const faults = ts.transpileModule(`export {};\n${code}`, {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext },
    reportDiagnostics: true,
  }).diagnostics!;
  const end = "export {};\n".length + code.trimEnd().length;
  if (faults.length === 0) return { status: "complete" };
  const wantsMore = faults.some(({ start = 0, code }) => start >= end && code !== unterminatedText);
  if (!wantsMore) return { status: "invalid" };
  return /\n[ \t]*\n[ \t]*$/.test(code)
    ? { status: "complete" }
    : { status: "incomplete", indent: indentAfter(code) };
}

/** That of the last line, and one step more after an opening bracket. */
function indentAfter(code: string): string {
  const line = code.trimEnd().split("\n").at(-1) ?? "";
  const indent = /^\s*/.exec(line)![0];
  return /[{([]$/.test(line) ? `${indent}  ` : indent;
}
