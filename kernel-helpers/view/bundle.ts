import { inspect } from "node:util";
import { blocksMimeType, type FigureBlock, type Presentation } from "./blocks.js";
import type { Bundle } from "./bundle-type.js";
import { finishFigure } from "./finish-figure.js";
import { owedLoader, owedPicture, owesPictures, withPictures } from "./owed-pictures.js";
import { PainterHere } from "./picture/painter.js";
import { present } from "./present.js";
import { renderHtml } from "./render-html.js";
import { renderText } from "./render-text.js";

/** Draws in this thread, one figure after the other. */
const painter = new PainterHere();

/** The cell whose output brings plotly.js to the page; undefined until one has. */
let loaderCell: string | undefined;

/**
 * What the last value of a cell looks like: rich HTML, plain text, the blocks themselves, and a PNG where there
 * is exactly one figure and it can be turned into pixels. A value without a look of its own gives plain text.
 *
 * The first output with a figure brings plotly.js to the page for all; so does that same cell when it is run
 * again, for its new output takes the place of the old.
 *
 * @param value the value of a cell's last expression
 * @param cell the cell's id, where the caller knows it
 * @returns undefined where there is nothing to show
 * @throws TypeError, RangeError  a figure cannot be drawn
 */
export async function bundleOf(value: unknown, cell = ""): Promise<Bundle | undefined> {
  const bundle = owingBundleOf(value, cell);
  if (bundle === undefined || !owesPictures(bundle.data)) return bundle;
  return withPictures(bundle, figuresOf(bundle.data[blocksMimeType] as Presentation), painter);
}

/**
 * The same with its pictures still owed: whoever shows it draws them, see withPictures. That the figures can be
 * drawn is checked here, where the cell can still be told.
 *
 * @throws TypeError, RangeError  a figure cannot be drawn
 */
export function owingBundleOf(value: unknown, cell = ""): Bundle | undefined {
  if (value === undefined || value === null) return undefined;
  const presentation = present(value);
  if (presentation === undefined)
    return { data: { "text/plain": inspect(value, { depth: 4 }) }, metadata: {} };
  return bundleOfPresentation(presentation, cell);
}

/** Forgets that plotly.js was brought to the page: the next output with a figure brings it again. */
export function resetLoader(): void {
  loaderCell = undefined;
}

function bundleOfPresentation(presentation: Presentation, cell: string): Bundle {
  const { title, blocks, ownPage } = presentation;
  const figures = figuresOf(presentation);
  for (const { figure } of figures) finishFigure(figure);
  const picture = (block: FigureBlock): string => owedPicture(figures.indexOf(block));
  const html = renderHtml(presentation, { picture, withStyle: true });
  const loader = figures.length > 0 && takesLoader(cell) ? owedLoader : "";
  return {
    data: {
      "text/html": html + loader,
      "text/plain": renderText(presentation),
      [blocksMimeType]: JSON.parse(JSON.stringify({ title, blocks, ownPage })),
    },
    metadata: {},
  };
}

function figuresOf({ blocks }: Presentation): readonly FigureBlock[] {
  return blocks.filter((block) => block.type === "figure");
}

function takesLoader(cell: string): boolean {
  if (loaderCell !== undefined && (loaderCell !== cell || cell === "")) return false;
  loaderCell = cell;
  return true;
}
