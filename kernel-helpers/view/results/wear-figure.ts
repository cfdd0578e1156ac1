import type { Layout } from "plotly.js";
import type { WearBands } from "../../survey/profile-types.js";
import type { FigureBlock } from "../blocks.js";
import { pencil } from "../palette.js";
import { bandStrips, edgeKey, fitTraces } from "./band-traces.js";
import { coverFactor } from "./cover-factor.js";
import { type FlaggedPoint, flaggedMarks } from "./flagged-marks.js";
import { grossName, grossPoints } from "./flagged-points.js";
import { type Domain, label, onScale, type PlotMark, tidy } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import { alongRange, type Range, rangeOf, reach, withRoom } from "./reach.js";
import { angleSeries, besideEachOther, isThinned, readingTraces } from "./reading-traces.js";
import { type ShownUnits, shownUnits } from "./shown-units.js";
import { type Silhouette, silhouette } from "./silhouette.js";
import { limitLine, lineLabels, nominalLine } from "./size-lines.js";

const width = 720;
const height = 580;
const margin = { l: 74, r: 70, t: 62, b: 92 };
const readingsPanel: Domain = [0, 0.62];
const shaftPanel: Domain = [0.7, 1];

/**
 * The wear bands of a shaft as a figure: above, the shaft from the side with its wear exaggerated; below, the
 * readings by angle with their uncertainty, the fit of each band, where each band may end, nominal and limit.
 */
export function wearFigure(wear: WearBands): FigureBlock {
  const units = shownUnits(wear.profile.unitSystem);
  const along = alongRange(wear.profile.stations, units.size);
  const pixelsPerUnit = (width - margin.l - margin.r) / (along[1] - along[0]);
  const shaft = silhouette(wear, units, pixelsPerUnit);
  const series = angleSeries(wear.profile, new Set(wear.gross.map(({ reading }) => reading)));
  const gross = grossPoints(wear.profile, wear.gross, units, "diameter");
  const sizes = sizeRange(wear, units, gross);
  const marks = flaggedMarks(
    gross,
    { xaxis: "x", yaxis: "y", along, range: sizes, domain: readingsPanel },
    grossName,
  );
  const even = "Diameters cannot tell on which side metal is missing: the shaft is drawn even on both sides.";
  const thinning = isThinned(series) ? " Of close readings the lowest and the highest are drawn." : "";
  return {
    type: "figure",
    alt: `The shaft from the side with ${wear.bands.length} bands, its wear drawn ${shaft.exaggeration} times larger; below it the diameter read at each station.`,
    caption: `Error bars: U of a single reading, 95 %. Angles read at one station are drawn side by side. ${even}${thinning}`,
    figure: {
      data: [
        ...shaft.traces,
        ...edgeKey(wear),
        ...fitTraces(wear, units),
        ...readingTraces(
          series,
          wear.profile,
          units,
          wear.nominal,
          besideEachOther(wear.profile, units, pixelsPerUnit),
        ),
        ...marks.traces,
        ...nominalLine(wear, units, along, sizes),
      ],
      layout: layout(wear, units, along, sizes, shaft, [
        ...shaft.labels,
        ...marks.labels,
        ...lineLabels(wear, units, {
          along,
          sizes,
          domain: readingsPanel,
          width: width - margin.l - margin.r,
          height: (height - margin.t - margin.b) * (readingsPanel[1] - readingsPanel[0]),
        }),
      ]),
    },
  };
}

/** The scale of diameters: all good readings; nominal, limit and gross readings where they are near. */
function sizeRange(
  { profile, nominal, limit, gross, bands }: WearBands,
  units: ShownUnits,
  points: readonly FlaggedPoint[],
): Range {
  const dropped = new Set(gross.map(({ reading }) => reading));
  const good = profile.readings.filter((_, i) => !dropped.has(i));
  const ends = good.flatMap(({ diameter, standardUncertainty }) => {
    const u = onScale(standardUncertainty.times(coverFactor), units.size);
    const size = onScale(diameter, units.size);
    return [size - u, size + u];
  });
  const lines = [nominal, limit].flatMap((line) => (line === undefined ? [] : [onScale(line, units.size)]));
  const fits = bands.flatMap((b) => [b.diameterAtFrom, b.diameterAtTo].map((d) => onScale(d, units.size)));
  const withLines = reach(rangeOf([...ends, ...fits]), lines, 1.5);
  const withGross = reach(
    withLines,
    points.map(({ y }) => y),
    0.6,
  );
  // A label at the foot needs more room than an arrow at the top, whose label stands over the panel.
  const below = points.some(({ y }) => y < withGross[0]);
  return withRoom(withGross, below ? 0.16 : 0.08, 0.1);
}

function layout(
  wear: WearBands,
  units: ShownUnits,
  along: Range,
  sizes: Range,
  { exaggeration, halfHeight }: Silhouette,
  annotations: readonly PlotMark[],
): Readonly<Record<string, unknown>> {
  const tall = tidy(halfHeight * 1.12);
  const drawn = `wear drawn ${exaggeration} times larger than the shaft`;
  const side = label(drawn, {
    xref: "paper",
    yref: "paper",
    x: 1,
    xanchor: "right",
    y: 1,
    yanchor: "bottom",
    yshift: 2,
    font: { size: 11, color: pencil },
  });
  return {
    width,
    height,
    margin,
    title: { text: `Wear bands: ${plotText(wear.profile.title, 70, 70)}` },
    legend: { orientation: "h", x: -0.02, xanchor: "left", y: -0.13, yanchor: "top", font: { size: 11 } },
    xaxis: {
      range: [...along],
      title: { text: `station along the shaft (${units.sizeSymbol})` },
      anchor: "y",
    },
    xaxis2: { range: [...along], matches: "x", anchor: "y2", visible: false },
    yaxis: {
      domain: [...readingsPanel],
      range: [...sizes],
      title: { text: `diameter at 20 °C (${units.sizeSymbol})` },
      tickformat: `.${units.decimals}f`,
      automargin: false,
    },
    yaxis2: { domain: [...shaftPanel], range: [-tall, tall], visible: false, fixedrange: true },
    ...depthAxis(wear, units, sizes),
    annotations: [side, ...annotations],
    shapes: [...bandStrips(wear, units, readingsPanel), ...limitLine(wear, units, sizes)],
  } satisfies Record<string, unknown> & Partial<Omit<Layout, "annotations" | "shapes">>;
}

/** The scale on the right: how far below nominal, on diameter. */
function depthAxis(
  { nominal }: WearBands,
  units: ShownUnits,
  sizes: Range,
): { yaxis3?: Partial<Layout["yaxis"]> } {
  if (nominal === undefined) return {};
  // A thousandth of an inch and a micrometre are both the thousandth part of the unit of size.
  const below = (size: number): number => tidy((onScale(nominal, units.size) - size) * 1000);
  return {
    yaxis3: {
      overlaying: "y",
      side: "right",
      range: sizes.map(below),
      title: { text: `below nominal, on diameter (${units.smallSymbol})` },
      // Round numbers of its own, rather than those that meet the ticks on the left.
      tickmode: "auto",
      nticks: 9,
      showgrid: false,
      automargin: false,
    },
  };
}
