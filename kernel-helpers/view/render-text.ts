import type { Block, CautionBlock, Fact, Presentation, VerdictBlock } from "./blocks.js";
import { pad, plainLine, widest, widthInCharacters } from "./characters.js";
import { textTable } from "./text-table.js";
import { lineLength, wrapText } from "./wrap-text.js";

/**
 * A presentation as plain text, for terminals, git diffs and viewers that show nothing richer. One without blocks
 * is its title.
 */
export function renderText(presentation: Presentation): string {
  const title = plainLine(presentation.title);
  if (presentation.blocks.length === 0) return title;
  const heading = `${title}\n${"═".repeat(widthInCharacters(title))}`;
  return [heading, ...presentation.blocks.map(blockText)].join("\n\n");
}

function blockText(block: Block): string {
  switch (block.type) {
    case "text":
      return wrapText(block.text, lineLength).join("\n");
    case "facts":
      return factsText(block.facts);
    case "table":
      return textTable(block);
    case "figure":
      return hanging(
        "[figure] ",
        block.caption === undefined ? block.alt : `${block.caption} (${block.alt})`,
      );
    case "drawing":
      return hanging(
        "[drawing] ",
        block.caption === undefined ? block.alt : `${block.caption} (${block.alt})`,
      );
    case "verdict":
      return verdictText(block);
    case "caution":
      return cautionText(block);
    case "warning":
      return hanging("WARNING: ", block.text);
  }
}

function factsText(facts: readonly Fact[]): string {
  const width = widest(facts.map((fact) => plainLine(fact.label)));
  return facts
    .flatMap(({ label, value, note }) => {
      const line = `${pad(plainLine(label), width, "left")}  ${plainLine(value)}`;
      const indent = " ".repeat(width + 2);
      const noteLines = note === undefined ? [] : wrapText(`(${note})`, lineLength - indent.length);
      return [line, ...noteLines.map((noteLine) => indent + noteLine)];
    })
    .join("\n");
}

function verdictText({ outcome, text, because }: VerdictBlock): string {
  const answer = plainLine(text) === outcome ? outcome.toUpperCase() : `${outcome.toUpperCase()}: ${text}`;
  return [`VERDICT  ${plainLine(answer)}`, ...indented(because)].join("\n");
}

/** A box of heavy lines, so that it is not overlooked. */
function cautionText({ title, points }: CautionBlock): string {
  const inside = lineLength - 4;
  const head = ` CAUTION: ${plainLine(title)} `;
  const lines = points.flatMap((point) => hanging("• ", point, inside).split("\n"));
  const width = Math.max(widthInCharacters(head) + 1, widest(lines) + 2);
  const body = lines.map((line) => `┃ ${pad(line, width - 2, "left")} ┃`);
  const top = `┏━${head}${"━".repeat(Math.max(0, width - 1 - widthInCharacters(head)))}┓`;
  return [top, ...body, `┗${"━".repeat(width)}┛`].join("\n");
}

function indented(text: string): readonly string[] {
  return wrapText(text, lineLength - 2).map((line) => `  ${line}`);
}

/** A paragraph whose further lines stand under the first one's text. */
function hanging(lead: string, text: string, length = lineLength): string {
  return wrapText(text, length - lead.length)
    .map((line, index) => (index === 0 ? lead : " ".repeat(lead.length)) + line)
    .join("\n");
}
