import type { DiameterReading, Profile } from "../../survey/profile-types.js";
import type { FigureBlock } from "../blocks.js";
import { coverFactor } from "./cover-factor.js";
import { flaggedMarks } from "./flagged-marks.js";
import { farPoints } from "./flagged-points.js";
import { onScale } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import { alongRange, isWithin, type Range, rangeOf, usualRange, withRoom } from "./reach.js";
import { angleSeries, besideEachOther, isThinned, readingTraces } from "./reading-traces.js";
import { shownUnits } from "./shown-units.js";

const width = 720;
const height = 420;
const margin = { l: 74, r: 24, t: 70, b: 92 };

/** The diameter along the shaft: every reading by angle, with its uncertainty. */
export function profileFigure(profile: Profile): FigureBlock {
  const units = shownUnits(profile.unitSystem);
  const along = alongRange(profile.stations, units.size);
  const perUnit = (width - margin.l - margin.r) / (along[1] - along[0]);
  const sizes = sizeRange(profile, units.size);
  const isFar = ({ diameter }: DiameterReading): boolean => !isWithin(onScale(diameter, units.size), sizes);
  const far = new Set(profile.readings.flatMap((reading, i) => (isFar(reading) ? [i] : [])));
  const series = angleSeries(profile, far);
  const marks = flaggedMarks(
    farPoints(profile.readings.filter(isFar), profile.file, units),
    { xaxis: "x", yaxis: "y", along, range: sizes, domain: [0, 1] },
    "off the scale",
  );
  const thinning = isThinned(series) ? " Of close readings the lowest and the highest are drawn." : "";
  return {
    type: "figure",
    alt: `Diameter read at ${profile.stations.length} stations along the shaft, ${units.sizeSymbol}.`,
    caption: `Error bars: U of a single reading, 95 %. Angles read at one station are drawn side by side.${thinning}`,
    figure: {
      data: [
        ...readingTraces(series, profile, units, undefined, besideEachOther(profile, units, perUnit)),
        ...marks.traces,
      ],
      layout: {
        width,
        height,
        margin,
        title: { text: `Diameter along the shaft: ${plotText(profile.title, 60, 60)}` },
        legend: { orientation: "h", x: -0.02, xanchor: "left", y: -0.19, yanchor: "top", font: { size: 11 } },
        showlegend: true,
        xaxis: { range: [...along], title: { text: `station along the shaft (${units.sizeSymbol})` } },
        yaxis: {
          range: [...sizes],
          title: { text: `diameter at 20 °C (${units.sizeSymbol})` },
          tickformat: `.${units.decimals}f`,
          automargin: false,
        },
        annotations: marks.labels,
      },
    },
  };
}

/** The scale of diameters: all readings but those that lie so far out that the rest would shrink to a line. */
function sizeRange({ readings }: Profile, size: "inch" | "mm"): Range {
  const sizes = readings.map(({ diameter }) => onScale(diameter, size));
  const [, u] = rangeOf(readings.map((reading) => reading.standardUncertainty.in(size) * coverFactor));
  const [low, high] = usualRange(sizes);
  return withRoom([low - u, high + u], 0.08, 0.1);
}
