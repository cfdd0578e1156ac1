import type { PlotData } from "plotly.js";
import type { Length } from "../../quantity/index.js";
import type { WearBands } from "../../survey/profile-types.js";
import { edgeColor, hairline, ink, stateLooks } from "../palette.js";
import { bandWords } from "./band-words.js";
import { type Domain, onScale, type PlotMark, type PlotTrace, strip } from "./plot-parts.js";
import type { ShownUnits } from "./shown-units.js";

/** The fit of each band, a heavy line from its first to its last station. */
export function fitTraces(wear: WearBands, units: ShownUnits): PlotTrace[] {
  return wear.bands.map(
    (band, i) =>
      ({
        type: "scatter",
        mode: "lines",
        name: "fit of band",
        legendgroup: "fit",
        showlegend: i === 0,
        x: [band.from, band.to].map((s) => onScale(s, units.size)),
        y: [band.diameterAtFrom, band.diameterAtTo].map((d) => onScale(d, units.size)),
        line: { color: ink, width: 2.5 },
        hoverinfo: "text",
        hovertext: bandWords(band, wear, units),
      }) satisfies Partial<PlotData>,
  );
}

/** An entry of the legend for the strips in which a band may end. */
export function edgeKey({ edges }: WearBands): PlotTrace[] {
  if (edges.length === 0) return [];
  return [
    {
      type: "scatter",
      mode: "markers",
      name: "a band ends here",
      x: [null],
      y: [null],
      marker: { symbol: "square", size: 11, color: edgeColor, line: { color: hairline, width: 1 } },
      hoverinfo: "skip",
    } satisfies Partial<PlotData>,
  ];
}

/** Each band as a light strip over a panel, and each stretch in which one may end as a grey one. */
export function bandStrips({ bands, edges }: WearBands, { size }: ShownUnits, panel: Domain): PlotMark[] {
  const at = (length: Length): number => onScale(length, size);
  return [
    ...bands.map((b) => strip(at(b.from), at(b.to), panel, stateLooks[b.state].wash)),
    ...edges.map((e) => strip(at(e.after), at(e.before), panel, edgeColor)),
  ];
}
