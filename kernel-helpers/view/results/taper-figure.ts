import type { Layout } from "plotly.js";
import { type Length, quantityFromSi } from "../../quantity/index.js";
import { coverageFactor } from "../../statistics/coverage-factor.js";
import type { TaperFit, TaperReading } from "../../survey/profile-types.js";
import type { FigureBlock } from "../blocks.js";
import { angleText } from "./angle-text.js";
import { coverage, coverFactor } from "./cover-factor.js";
import { type FlaggedPoint, flaggedMarks } from "./flagged-marks.js";
import { grossName, grossPoints } from "./flagged-points.js";
import { type Domain, onScale, tidy } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import { alongRange, type Range, rangeOf, reach, withRoom } from "./reach.js";
import { besideEachOther } from "./reading-traces.js";
import { type ShownUnits, shownUnits } from "./shown-units.js";
import { type TaperLine, taperLine } from "./taper-line.js";
import { bowTrace, lineBand, lineTraces, pointTraces } from "./taper-traces.js";

const width = 720;
const height = 560;
const margin = { l: 74, r: 24, t: 62, b: 92 };
const linePanel: Domain = [0.52, 1];
const residualPanel: Domain = [0, 0.43];

/**
 * A fitted taper as a figure: above, the diameters and the line; below, what is left of each reading once the
 * line is taken away, enlarged, with the 95 % band of the line and, where it is real, the bow.
 */
export function taperFigure(fit: TaperFit): FigureBlock {
  const units = shownUnits(fit.profile.unitSystem);
  const line = taperLine(fit);
  const k = coverageFactor(coverage, fit.degreesOfFreedom);
  const readings = byAngle(fit.readings);
  const along = alongRange(fit.readings, units.size, 0.04);
  const perUnit = (width - margin.l - margin.r) / (along[1] - along[0]);
  const apart = besideEachOther(fit.profile, units, perUnit);
  const grossSizes = grossPoints(fit.profile, fit.gross, units, "diameter");
  const grossResiduals = grossPoints(fit.profile, fit.gross, units, "residual");
  const sizes = sizeRange(fit, units, grossSizes);
  const residuals = residualRange(fit, units, line, k, grossResiduals);
  const above = flaggedMarks(
    grossSizes,
    { xaxis: "x2", yaxis: "y2", along, range: sizes, domain: linePanel },
    grossName,
  );
  const below = flaggedMarks(
    grossResiduals,
    { xaxis: "x", yaxis: "y", along, range: residuals, domain: residualPanel },
    grossName,
  );
  const { shape } = fit.residualShape;
  return {
    type: "figure",
    alt: `Diameter along a taper with the line fitted to ${fit.readings.length} readings, and below it their distance from the line; shape: ${shape}.`,
    caption:
      "Error bars: U of a single reading, 95 %. Angles read at one station are drawn side by side. Lower panel: reading minus line, on diameter.",
    figure: {
      data: [
        ...lineBand(line, units, k),
        ...bowTrace(fit, line, units),
        ...lineTraces(line, units),
        ...readings.flatMap(([name, group], i) =>
          pointTraces(name, group, i, fit, units, (i - (readings.length - 1) / 2) * apart),
        ),
        ...above.traces.map((trace) => ({ ...trace, showlegend: false })),
        ...below.traces,
      ],
      layout: {
        width,
        height,
        margin,
        title: { text: `Taper: ${plotText(fit.profile.title, 70, 70)}` },
        legend: { orientation: "h", x: -0.02, xanchor: "left", y: -0.14, yanchor: "top", font: { size: 11 } },
        xaxis: {
          range: [...along],
          title: { text: `station along the axis (${units.sizeSymbol})` },
          anchor: "y",
        },
        xaxis2: { range: [...along], matches: "x", anchor: "y2", showticklabels: false },
        yaxis: axis(residualPanel, residuals, `off the line (${units.smallSymbol})`),
        yaxis2: {
          ...axis(linePanel, sizes, `diameter at 20 °C (${units.sizeSymbol})`),
          tickformat: units.system === "inch" ? ".3f" : ".2f",
        },
        // The upper panel shows them too; named they are in the lower, where they stand clear of the line.
        annotations: below.labels,
      } satisfies Record<string, unknown> & Partial<Omit<Layout, "annotations">>,
    },
  };
}

function axis(domain: Domain, range: Range, title: string): Partial<Layout["yaxis"]> {
  return { domain: [...domain], range: [...range], title: { text: title }, automargin: false };
}

function byAngle(readings: readonly TaperReading[]): [string, TaperReading[]][] {
  const groups = new Map<string, TaperReading[]>();
  for (const reading of readings) {
    const key = reading.angle === undefined ? "reading" : `read at ${angleText(reading.angle)}`;
    groups.set(key, [...(groups.get(key) ?? []), reading]);
  }
  return [...groups];
}

function sizeRange(fit: TaperFit, { size }: ShownUnits, gross: readonly FlaggedPoint[]): Range {
  const range = rangeOf(fit.readings.map(({ diameter }) => onScale(diameter, size)));
  return withRoom(
    reach(
      range,
      gross.map(({ y }) => y),
      0.6,
    ),
    0.08,
  );
}

function residualRange(
  { readings }: TaperFit,
  { small }: ShownUnits,
  line: TaperLine,
  k: number,
  gross: readonly FlaggedPoint[],
): Range {
  const band = [0, 1].flatMap((t) => [1, -1].map((sign) => metres(sign * k * line.uncertainty(t)).in(small)));
  const ends = readings.flatMap(({ residual, standardUncertainty }) =>
    [1, -1].map((sign) => residual.in(small) + sign * coverFactor * standardUncertainty.in(small)),
  );
  const range = rangeOf([...band, ...ends].map(tidy));
  const all = reach(
    range,
    gross.map(({ y }) => y),
    0.6,
  );
  return withRoom(all, gross.some(({ y }) => y < all[0]) ? 0.16 : 0.08, 0.1);
}

function metres(si: number): Length {
  return quantityFromSi("length", si);
}
