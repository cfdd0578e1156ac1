import { inspect } from "node:util";
import { blocksMimeType, type FigureBlock, type Presentation } from "./blocks.js";
import { figureHtml } from "./figure-html.js";
import { plotlyLoaderHtml } from "./plotly-loader.js";
import { present } from "./present.js";
import { renderHtml } from "./render-html.js";
import { renderText } from "./render-text.js";

/** A value in the forms a notebook can show, by MIME type. */
export interface Bundle {
  data: Record<string, unknown>;
  metadata: Record<string, unknown>;
}

/** Fine enough for print and for screens of double density. */
const pngScale = 2;

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

async function bundleOfPresentation(presentation: Presentation, cell: string): Promise<Bundle> {
  const figures = presentation.blocks.filter((block) => block.type === "figure");
  const drawings = await drawAll(figures);
  const picture = (block: FigureBlock): string =>
    figureHtml({ figure: block.figure, svg: drawings.get(block)!, alt: block.alt });
  const loader = figures.length > 0 && takesLoader(cell) ? plotlyLoaderHtml() : "";
  const bundle: Bundle = {
    data: {
      "text/html": renderHtml(presentation, { picture, withStyle: true }) + loader,
      "text/plain": renderText(presentation),
      [blocksMimeType]: JSON.parse(
        JSON.stringify({ title: presentation.title, blocks: presentation.blocks }),
      ),
    },
    metadata: {},
  };
  const [only, another] = figures;
  if (only !== undefined && another === undefined) await addPng(bundle, only, drawings.get(only)!);
  return bundle;
}

/** Static pictures; the drawing engine is loaded only when there is something to draw. */
async function drawAll(figures: readonly FigureBlock[]): Promise<ReadonlyMap<FigureBlock, string>> {
  const drawings = new Map<FigureBlock, string>();
  if (figures.length === 0) return drawings;
  const { drawSvg } = await import("./picture/draw-svg.js");
  for (const block of figures) drawings.set(block, await drawSvg(block.figure));
  return drawings;
}

/** Adds the PNG; of a drawing that cannot be turned into one there is none, for its HTML and text stand anyhow. */
async function addPng(bundle: Bundle, { figure }: FigureBlock, svg: string): Promise<void> {
  const { NotRasterized, rasterize } = await import("./picture/rasterize.js");
  try {
    bundle.data["image/png"] = Buffer.from(await rasterize(svg, pngScale)).toString("base64");
  } catch (error) {
    if (error instanceof NotRasterized) return;
    throw error;
  }
  bundle.metadata["image/png"] = { width: figure.layout.width, height: figure.layout.height };
}

function takesLoader(cell: string): boolean {
  if (loaderCell !== undefined && (loaderCell !== cell || cell === "")) return false;
  loaderCell = cell;
  return true;
}
