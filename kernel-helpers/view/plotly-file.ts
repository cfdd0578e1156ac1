import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

/**
 * The plotly.js bundle that draws both the static pictures here and the live plots in a page, so that the two
 * agree: the cartesian one, minified (scatter, bar, box, heat map, contour, histogram and their kin).
 */
export function plotlyFile(): string {
  return createRequire(__filename).resolve("plotly.js-cartesian-dist-min");
}

export function readPlotly(): string {
  return readFileSync(plotlyFile(), "utf8");
}
