import type * as TypeScript from "@tslab/typescript-for-tslab";

/** What is known of a name, as a front end shows it beside the cell. */
export interface Tooltip {
  readonly "text/plain": string;
  readonly "text/markdown": string;
}

type Tag = TypeScript.JSDocTagInfo;

/** How a tag of a doc comment is headed; other tags keep their own name. */
const headings: Readonly<Record<string, string>> = {
  returns: "Returns",
  throws: "Throws",
  source: "Source",
  deprecated: "Deprecated",
};

/**
 * The signature, the doc comment and its tags: parameters with their units, result, errors, example and source.
 *
 * @param info what TypeScript knows of a name
 */
export function tooltip(info: TypeScript.QuickInfo): Tooltip {
  const signature = textOf(info.displayParts);
  const prose = textOf(info.documentation);
  const tags = info.tags ?? [];
  return Object.freeze({
    "text/plain": [signature, prose, ...tags.map(plainTag)].filter((part) => part !== "").join("\n\n"),
    "text/markdown": [
      fenced(signature),
      prose,
      tags.filter(isParameter).map(parameterItem).join("\n"),
      ...tags.filter((tag) => !isParameter(tag)).map(markdownTag),
    ]
      .filter((part) => part !== "")
      .join("\n\n"),
  });
}

function textOf(parts: readonly TypeScript.SymbolDisplayPart[] | undefined): string {
  return (parts ?? []).map(({ text }) => text).join("");
}

function plainTag(tag: Tag): string {
  return `@${tag.name} ${textOf(tag.text)}`.trimEnd();
}

function isParameter({ name }: Tag): boolean {
  return name === "param";
}

/** The comment says "name what it is [unit]". */
function parameterItem(tag: Tag): string {
  const [, name, rest] = /^(\S+)\s*([\s\S]*)$/.exec(textOf(tag.text)) ?? [];
  return name === undefined ? "" : `- \`${name}\` ${rest}`.trimEnd();
}

function markdownTag(tag: Tag): string {
  const text = textOf(tag.text);
  if (tag.name === "example") return `**Example**\n\n${fenced(text)}`;
  return `**${headings[tag.name] ?? tag.name}** ${text}`.trimEnd();
}

/** The fence is longer than any run of backquotes inside. */
function fenced(code: string): string {
  const longest = Math.max(2, ...(code.match(/`+/g) ?? []).map((run) => run.length));
  const fence = "`".repeat(longest + 1);
  return `${fence}typescript\n${code}\n${fence}`;
}
