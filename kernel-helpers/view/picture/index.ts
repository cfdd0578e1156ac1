/** Static pictures of plotly figures, drawn in Node without a browser. */
export { drawPng } from "./draw-png.js";
export { drawSvg } from "./draw-svg.js";
export { NotRasterized, rasterize } from "./rasterize.js";
