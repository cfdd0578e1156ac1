import type {
  Block,
  CautionBlock,
  DrawingBlock,
  Fact,
  FigureBlock,
  Presentation,
  VerdictBlock,
} from "./blocks.js";
import type { Drawing } from "./drawing/drawing.js";
import { drawingSize, drawingSvg } from "./drawing/drawing-svg.js";
import { leastWidth } from "./drawing/least-width.js";
import { narrowDrawing } from "./drawing/narrow-drawing.js";
import { escapeHtml } from "./escape.js";
import { htmlTable } from "./html-table.js";
import { keepTogether } from "./keep-together.js";
import { viewStyle } from "./style.js";
import { svgDataUri } from "./svg-data-uri.js";

export interface HtmlOptions {
  /** Gives the HTML of a figure's picture, see figureHtml. */
  readonly picture: (block: FigureBlock) => string;
  /** Put the style sheet in, for a fragment that stands alone; a report has it once in its head. */
  readonly withStyle: boolean;
  /** Level of the title's heading in the page, 1 to 6 [-]; default 4. */
  readonly headingLevel?: number;
}

/**
 * A presentation as an HTML fragment. All text is escaped; only `picture` is put in as it comes.
 *
 * @throws RangeError  the level of the heading is not a whole number from 1 to 6
 */
export function renderHtml(presentation: Presentation, options: HtmlOptions): string {
  const { headingLevel = 4 } = options;
  if (![1, 2, 3, 4, 5, 6].includes(headingLevel))
    throw new RangeError(`renderHtml: headingLevel must be a whole number from 1 to 6, got ${headingLevel}`);
  const title = escapeHtml(presentation.title);
  const heading = `<h${headingLevel} class="jb-title">${title}</h${headingLevel}>`;
  const blocks = presentation.blocks.map((block) => blockHtml(block, options.picture));
  const style = options.withStyle ? `<style>${viewStyle}</style>\n` : "";
  const look = presentation.ownPage === true ? "jb jb-page" : "jb";
  return `${style}<section class="${look}" aria-label="${title}">\n${heading}\n${blocks.join("\n")}\n</section>`;
}

function blockHtml(block: Block, picture: HtmlOptions["picture"]): string {
  switch (block.type) {
    case "text":
      return `<p>${escapeHtml(block.text)}</p>`;
    case "facts":
      return `<dl>\n${block.facts.map(factHtml).join("\n")}\n</dl>`;
    case "table":
      return htmlTable(block);
    case "figure":
      return figureBlockHtml(block, picture);
    case "drawing":
      return drawingHtml(block);
    case "verdict":
      return verdictHtml(block);
    case "caution":
      return cautionHtml(block);
    case "warning":
      return `<p class="jb-warning" role="note"><strong>Warning:</strong> ${escapeHtml(block.text)}</p>`;
  }
}

function factHtml({ label, value, note }: Fact): string {
  const remark = note === undefined ? "" : `<small>${escapeHtml(note)}</small>`;
  return `<div><dt>${escapeHtml(keepTogether(label))}</dt><dd>${escapeHtml(keepTogether(value))}${remark}</dd></div>`;
}

function figureBlockHtml(block: FigureBlock, picture: HtmlOptions["picture"]): string {
  return `<figure>${picture(block)}${captionHtml(block.caption)}</figure>`;
}

/** What a telephone is hardly narrower than [px]: a drawing that may shrink to this never scrolls. */
const narrowest = 300;
/** So wide may a drawing be [px] that shrinks to that with its small letters still 9 px high. */
const narrowSheet = 366;

/**
 * The drawing as an image, in which nothing can run. Where it cannot shrink to a telephone, one that can is shown there: the
 * block's own, or the same with its shapes closer together; and where there is neither it scrolls, without its caption.
 */
function drawingHtml({ drawing, narrow, alt, caption }: DrawingBlock): string {
  const { width, height } = drawingSize(drawing);
  const least = leastWidth(drawing);
  const wide = least > narrowest;
  const second = wide ? (narrow ?? narrowDrawing(drawing, narrowSheet)) : undefined;
  const scrolls = wide && second === undefined;
  const image = `<img src="${drawingUri(drawing)}" alt="${escapeHtml(alt)}" width="${width}" height="${height}"${scrolls ? ` style="--w:${least}px"` : ""}>`;
  const shown = second === undefined ? image : `<picture>${sourceHtml(second)}${image}</picture>`;
  return (
    `<figure class="jb-drawing">${scrolls ? `<div class="jb-fit" tabindex="0">${shown}</div>` : shown}` +
    `${captionHtml(caption)}</figure>`
  );
}

/** The same width as the rules for tables on a telephone have, in style.ts. A space would end the address in a srcset. */
function sourceHtml(drawing: Drawing): string {
  const { width, height } = drawingSize(drawing);
  const address = drawingUri(drawing).replaceAll(" ", "%20");
  return `<source media="screen and (max-width:700px)" srcset="${address}" width="${width}" height="${height}">`;
}

/** Attributes in single quotes, which need no encoding; in texts both are entities. */
function drawingUri(drawing: Drawing): string {
  return svgDataUri(drawingSvg(drawing).replaceAll('"', "'"));
}

function captionHtml(caption: string | undefined): string {
  return caption === undefined ? "" : `<figcaption>${escapeHtml(caption)}</figcaption>`;
}

const verdictLooks = {
  yes: { name: "jb-yes", sign: "✓ Yes" },
  no: { name: "jb-no", sign: "✗ No" },
  "cannot tell yet": { name: "jb-open", sign: "? Cannot tell yet" },
} as const;

function verdictHtml({ outcome, text, because }: VerdictBlock): string {
  const { name, sign } = verdictLooks[outcome];
  const answer = text === outcome ? sign : `${sign}: ${escapeHtml(text)}`;
  return (
    `<div class="jb-verdict ${name}" role="note" aria-label="Verdict">` +
    `<strong>${answer}</strong><p>${escapeHtml(because)}</p></div>`
  );
}

function cautionHtml({ title, points }: CautionBlock): string {
  const items = points.map((point) => `<li>${escapeHtml(point)}</li>`).join("");
  return (
    `<div class="jb-caution" role="note" aria-label="Caution">` +
    `<strong>CAUTION: ${escapeHtml(title)}</strong><ul>${items}</ul></div>`
  );
}
