import * as ts from "typescript";

/** One example of a doc comment: what to do first, what to evaluate, and what it is said to give. */
export interface DocExample {
  readonly line: number;
  readonly setup: string;
  readonly expression: string;
  /** As written behind `//`; empty when nothing is. */
  readonly shown: string;
}

/**
 * The examples of all doc comments in a source text. In an example, each line ends in `// value`, or the
 * value stands on a line of its own below; lines without a value prepare the next one.
 */
export function docExamples(source: string): DocExample[] {
  return [...source.matchAll(/\/\*\*([\s\S]*?)\*\//g)].flatMap((comment) =>
    [...comment[1]!.matchAll(/(?<=^|\s)@example\b([\s\S]*?)(?=\n[\s*]*@\w|$)/g)].flatMap((example) => {
      const start = comment.index + "/**".length + example.index;
      return examplesOfBlock(example[1]!, source.slice(0, start).split("\n").length);
    }),
  );
}

function examplesOfBlock(block: string, firstLine: number): DocExample[] {
  const found: DocExample[] = [];
  let code = "";
  let declared = "";
  const close = (line: number, shown: string): void => {
    const { setup, last } = splitLast(code);
    found.push({ line, setup: declared + setup, expression: last, shown });
    declared += `${setup}\n`;
    code = "";
  };
  const lines = block.split("\n").map((line) => line.replace(/^\s*\* ?/, ""));
  for (const [i, line] of lines.entries()) {
    if (/^\s*```/.test(line)) continue;
    const { before, comment } = splitComment(line);
    code += `${before}\n`;
    if (comment !== undefined && code.trim() !== "") close(firstLine + i, comment);
  }
  if (code.trim() !== "") close(firstLine, "");
  return found;
}

/** A line and its `//` comment; two slashes inside a text are none. */
function splitComment(line: string): { readonly before: string; readonly comment?: string } {
  const scanner = ts.createScanner(ts.ScriptTarget.ESNext, false, ts.LanguageVariant.Standard, line);
  for (let kind = scanner.scan(); kind !== ts.SyntaxKind.EndOfFileToken; kind = scanner.scan())
    if (kind === ts.SyntaxKind.SingleLineCommentTrivia) {
      const at = scanner.getTokenStart();
      return { before: line.slice(0, at), comment: line.slice(at + 2).trim() };
    }
  return { before: line };
}

/** All statements but the last, and the last without its semicolon. */
function splitLast(code: string): { readonly setup: string; readonly last: string } {
  const { statements } = ts.createSourceFile("example.ts", code, ts.ScriptTarget.ESNext);
  const last = statements.at(-1);
  if (last === undefined) return { setup: "", last: code.trim() };
  return { setup: code.slice(0, last.pos).trim(), last: code.slice(last.pos).trim().replace(/;$/, "") };
}

/** Runs an example with these names in scope; a fault in words, or undefined when it gives what is shown. */
export async function faultOfExample(
  example: DocExample,
  scope: Readonly<Record<string, unknown>>,
): Promise<string | undefined> {
  if (example.shown === "") return `${example.expression}: no value is shown behind it`;
  const throws = /^throws (.+)$/.exec(example.shown)?.[1];
  let actual: unknown;
  try {
    actual = await evaluate(example, scope);
  } catch (error) {
    const text = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    return throws !== undefined && text.includes(throws)
      ? undefined
      : `${example.expression}: it throws ${text}`;
  }
  if (throws !== undefined) return `${example.expression}: it is said to throw, but gives ${show(actual)}`;
  return agrees(actual, example.shown)
    ? undefined
    : `${example.expression}: it gives ${show(actual)}, but ${example.shown} is shown`;
}

async function evaluate(example: DocExample, scope: Readonly<Record<string, unknown>>): Promise<unknown> {
  const names = Object.keys(scope).filter((name) => /^[A-Za-z_$][\w$]*$/.test(name) && name !== "default");
  const program = `async function example() {\n${example.setup}\nreturn (${example.expression});\n}`;
  const { outputText } = ts.transpileModule(program, {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.CommonJS },
  });
  const make = new Function(...names, `"use strict";\n${outputText}\nreturn example;`);
  return make(...names.map((name) => scope[name]))();
}

/**
 * Whether a value is what an example shows. A number agrees to the digits shown; a quantity as it prints,
 * its number to the digits shown; a text, list or object as it is written in code, where an object may show
 * some of its fields. A remark may follow the value after `,`, `;`, `:`, ` (` or ` =`.
 */
export function agrees(actual: unknown, shown: string): boolean {
  if (isShownAsText(actual)) return agreesAsPrinted(String(actual), shown);
  const value = withoutRemark(shown);
  const file = ts.createSourceFile("value.ts", `(${value})`, ts.ScriptTarget.ESNext, true);
  const [statement, ...others] = file.statements;
  if (others.length > 0 || statement === undefined || !ts.isExpressionStatement(statement)) return false;
  return agreesWith(actual, statement.expression);
}

/** The value without the remark behind it: up to the first mark outside quotes and brackets. */
function withoutRemark(shown: string): string {
  let depth = 0;
  for (const token of shown.matchAll(/"(?:\\.|[^"\\])*"|[[{(]|[\]})]|[,;:]| [(=]/g)) {
    if (depth === 0 && /^(?:[,;:]| [(=])$/.test(token[0])) return shown.slice(0, token.index);
    if (/^[[{(]$/.test(token[0])) depth++;
    if (/^[\]})]$/.test(token[0])) depth--;
  }
  return shown;
}

function agreesWith(actual: unknown, node: ts.Node): boolean {
  if (ts.isParenthesizedExpression(node)) return agreesWith(actual, node.expression);
  if (ts.isNumericLiteral(node)) return typeof actual === "number" && agreesToDigits(actual, node.getText());
  if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken) {
    if (node.operand.getText() === "Infinity") return actual === Number.NEGATIVE_INFINITY;
    return typeof actual === "number" && agreesWith(-actual, node.operand);
  }
  if (ts.isStringLiteralLike(node))
    return isShownAsText(actual) ? String(actual) === node.text : actual === node.text;
  if (ts.isArrayLiteralExpression(node))
    return (
      isListLike(actual) &&
      actual.length === node.elements.length &&
      node.elements.every((element, i) => agreesWith(actual[i], element))
    );
  if (ts.isObjectLiteralExpression(node))
    return (
      typeof actual === "object" &&
      actual !== null &&
      node.properties.every(
        (property) =>
          ts.isPropertyAssignment(property) &&
          (ts.isIdentifier(property.name) || ts.isStringLiteralLike(property.name)) &&
          agreesWith((actual as Record<string, unknown>)[property.name.text], property.initializer),
      )
    );
  const words: Readonly<Record<string, unknown>> = {
    true: true,
    false: false,
    null: null,
    undefined: undefined,
    NaN: Number.NaN,
    Infinity: Number.POSITIVE_INFINITY,
  };
  const word = node.getText();
  return Object.hasOwn(words, word) && Object.is(actual, words[word]);
}

/** Within half of the last digit shown: "2.44" is right for 2.4375. A whole number is meant exactly. */
function agreesToDigits(actual: number, shown: string): boolean {
  const [digits, power = "0"] = shown.toLowerCase().split("e");
  const decimals = digits!.split(".")[1]?.length ?? 0;
  const place = 10 ** (Number(power) - decimals);
  const rounding = 1e-15 * Math.abs(actual);
  const half = decimals === 0 && power === "0" ? 0 : place / 2;
  return Math.abs(actual - Number(shown)) <= half * (1 + 1e-9) + rounding;
}

/** A printed quantity or measured value: the text itself, or one number of as many digits and the same unit. */
function agreesAsPrinted(printed: string, shown: string): boolean {
  if (shown.startsWith('"')) return agrees(printed, shown);
  const isRemark = (rest: string): boolean => /^$|^[,;:]|^ [(=]/.test(rest);
  if (shown.startsWith(printed) && isRemark(shown.slice(printed.length))) return true;
  const [got, wanted] = [printed, shown].map((text) => /^([−-]?[\d.]+)(.*)$/.exec(text));
  if (!got || !wanted) return false;
  const [number, digits] = [got[1]!, wanted[1]!].map((text) => text.replace("−", "-"));
  return (
    wanted[2]!.startsWith(got[2]!) &&
    isRemark(wanted[2]!.slice(got[2]!.length)) &&
    agreesToDigits(Number(number), digits!)
  );
}

/** Whether a value has a way of its own to print itself, as quantities and temperatures do. */
function isShownAsText(value: unknown): boolean {
  return (
    typeof value === "object" &&
    value !== null &&
    !Array.isArray(value) &&
    typeof (value as { toJSON?: unknown }).toJSON === "function"
  );
}

function isListLike(value: unknown): value is ArrayLike<unknown> {
  return Array.isArray(value) || (ArrayBuffer.isView(value) && "length" in value);
}

function show(value: unknown): string {
  if (isShownAsText(value)) return String(value);
  return typeof value === "function" ? "a function" : (JSON.stringify(value) ?? String(value));
}
