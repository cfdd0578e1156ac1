import { deflateSync } from "node:zlib";
import { readPlotly } from "../../view/plotly-file.js";

/** plotly.js for the page. */
export interface PlotlyLibrary {
  /** What runs in the page, to the byte. */
  readonly source: string;
  /** The element that carries it, packed (about 0.7 MB): data that the browser does not run. */
  readonly element: string;
}

/** The id under which the page's script finds the library. */
export const plotlyElementId = "plotly-library";

let library: PlotlyLibrary | undefined;

/** Packed in zlib's own format: unlike gzip's it does not name the operating system it was made on. */
export function plotlyLibrary(): PlotlyLibrary {
  library ??= pack(readPlotly());
  return library;
}

function pack(source: string): PlotlyLibrary {
  const packed = deflateSync(source, { level: 9 }).toString("base64");
  return Object.freeze({
    source,
    element: `<script type="text/plain" id="${plotlyElementId}">${packed}</script>`,
  });
}
