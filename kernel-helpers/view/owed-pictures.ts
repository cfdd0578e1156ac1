import { blocksMimeType, type FigureBlock } from "./blocks.js";
import type { Bundle } from "./bundle-type.js";
import { figureHtml } from "./figure-html.js";
import type { Painter } from "./picture/painter.js";
import { plotlyLoaderHtml } from "./plotly-loader.js";

/** Fine enough for print and for screens of double density. */
const pngScale = 2;

/** Stands in the HTML where a picture will come. No text can look like it: in text "<" is escaped. */
export function owedPicture(index: number): string {
  return `<!--journalbox: picture ${index} comes here-->`;
}

/** Stands in the HTML where the library of the live plots will come. */
export const owedLoader = "<!--journalbox: plotly.js comes here-->";

const pictureMarks = /<!--journalbox: picture (\d+) comes here-->/g;

/** Whether a bundle's pictures have still to be drawn. */
export function owesPictures(data: Readonly<Record<string, unknown>>): boolean {
  return Object.hasOwn(data, blocksMimeType) && String(data["text/html"]).search(pictureMarks) >= 0;
}

/**
 * The bundle with its pictures drawn and put in: static pictures in the HTML, and a PNG where there is exactly one
 * figure and it can be turned into pixels.
 *
 * @param figures all figures of the bundle, in their order
 * @throws Error  a figure cannot be drawn
 */
export async function withPictures(
  { data, metadata }: Bundle,
  figures: readonly FigureBlock[],
  painter: Painter,
): Promise<Bundle> {
  const pictures = await Promise.all(
    figures.map(async ({ figure, alt }) => figureHtml({ figure, svg: await painter.svg(figure), alt })),
  );
  const html = String(data["text/html"])
    .replace(pictureMarks, (mark, index) => pictures[Number(index)] ?? mark)
    .replace(owedLoader, () => plotlyLoaderHtml());
  const bundle: Bundle = { data: { ...data, "text/html": html }, metadata: { ...metadata } };
  const [only, another] = figures;
  if (only !== undefined && another === undefined) await addPng(bundle, only, painter);
  return bundle;
}

/** Adds the PNG; of a drawing that cannot be turned into one there is none, for its HTML and text stand anyhow. */
async function addPng(bundle: Bundle, { figure }: FigureBlock, painter: Painter): Promise<void> {
  const png = await painter.png(figure, pngScale);
  if (png === undefined) return;
  bundle.data["image/png"] = Buffer.from(png).toString("base64");
  bundle.metadata["image/png"] = { width: figure.layout.width, height: figure.layout.height };
}
