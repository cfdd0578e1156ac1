/** What a result looks like: blocks, and their rendering as HTML, plain text and pictures. */
export {
  type Block,
  blocksMimeType,
  type CautionBlock,
  type DrawingBlock,
  type Fact,
  type FactsBlock,
  type Figure,
  type FigureBlock,
  type Presentation,
  type TableBlock,
  type TableColumn,
  type TableRow,
  type TextBlock,
  type VerdictBlock,
  type WarningBlock,
} from "./blocks.js";
export { bundleOf, owingBundleOf, resetLoader } from "./bundle.js";
export type { Bundle } from "./bundle-type.js";
export type { Drawing, Fill, Pen, Point, Shape } from "./drawing/drawing.js";
export { drawingSize, drawingSvg } from "./drawing/drawing-svg.js";
export { type FigureWithPicture, figureHtml } from "./figure-html.js";
export { finishFigure, traceTypes, widestFigure } from "./finish-figure.js";
export { owesPictures, withPictures } from "./owed-pictures.js";
export { plotlyLoaderHtml, withoutPlotlyLoader } from "./plotly-loader.js";
export { present } from "./present.js";
export { type HtmlOptions, renderHtml } from "./render-html.js";
export { renderText } from "./render-text.js";
export { viewStyle } from "./style.js";
