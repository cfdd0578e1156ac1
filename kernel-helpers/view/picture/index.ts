/** Static pictures of plotly figures, drawn in Node without a browser. */
export { drawPng, rasterize } from "./draw-png.js";
export { drawSvg } from "./draw-svg.js";
