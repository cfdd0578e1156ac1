import type { PlotData } from "plotly.js";
import type { Length } from "../../quantity/index.js";
import type { DiameterReading, Profile } from "../../survey/profile-types.js";
import { seriesLook } from "../palette.js";
import { angleText } from "./angle-text.js";
import { coverFactor } from "./cover-factor.js";
import { onScale, type PlotTrace, tidy } from "./plot-parts.js";
import { readingHover } from "./reading-hover.js";
import type { ShownUnits } from "./shown-units.js";
import { thinned } from "./thinned.js";

/** Readings of one angle, with a marker of their own. */
export interface AngleSeries {
  readonly name: string;
  readonly readings: readonly DiameterReading[];
}

/** The readings of a profile by angle, without those at the given indices. */
export function angleSeries(profile: Profile, without: ReadonlySet<number>): AngleSeries[] {
  const byAngle = new Map<string, DiameterReading[]>();
  for (const angle of profile.angles) byAngle.set(angleText(angle), []);
  for (const [index, reading] of profile.readings.entries()) {
    const key = angleText(reading.angle);
    const series = byAngle.get(key) ?? [];
    byAngle.set(key, series);
    if (!without.has(index)) series.push(reading);
  }
  return [...byAngle].map(([key, readings]) => ({
    name: key === "" ? "reading" : `read at ${key}`,
    readings,
  }));
}

/**
 * The traces of readings of diameter by angle: each a marker with an error bar of ± U (95 %), whose hover text
 * says where it was read and where it stands in the file. Long series are thinned for the eye.
 *
 * @param apart how far the angles of one station are drawn apart, see {@link besideEachOther}
 */
export function readingTraces(
  series: readonly AngleSeries[],
  profile: Profile,
  units: ShownUnits,
  nominal: Length | undefined,
  apart: number,
): PlotTrace[] {
  return series.map(({ name, readings }, index) => {
    const { color, symbol } = seriesLook(index);
    const aside = (index - (series.length - 1) / 2) * apart;
    const x = readings.map(({ station }) => tidy(onScale(station, units.size) + aside));
    const y = readings.map(({ diameter }) => onScale(diameter, units.size));
    const kept = thinned(x, y);
    const crowded = kept.length > 300;
    return {
      type: "scatter",
      mode: "markers",
      name,
      x: kept.map((i) => x[i]!),
      y: kept.map((i) => y[i]!),
      error_y: {
        type: "data",
        array: kept.map((i) => onScale(readings[i]!.standardUncertainty.times(coverFactor), units.size)),
        color,
        thickness: 1,
        width: crowded ? 0 : 2,
      },
      marker: { color, symbol, size: crowded ? 3.5 : 6 },
      hoverinfo: "text",
      hovertext: kept.map((i) => readingHover(readings[i]!, profile.file, units, nominal)),
    } satisfies Partial<PlotData>;
  });
}

/** Whether a figure of these readings leaves some out; a caption must then say so. */
export function isThinned(series: readonly AngleSeries[]): boolean {
  return series.some(({ readings }) => {
    const x = readings.map(({ station }) => station.si);
    return (
      thinned(
        x,
        readings.map(({ diameter }) => diameter.si),
      ).length < readings.length
    );
  });
}

/**
 * How far apart the angles read at one station are drawn along the shaft, so that none hides another: four
 * pixels or less, and all of them within two fifths of the smallest step between stations.
 */
export function besideEachOther(profile: Profile, { size }: ShownUnits, pixelsPerUnit: number): number {
  const stations = profile.stations.map(({ station }) => station.in(size));
  const steps = stations.slice(1).map((station, i) => station - stations[i]!);
  const count = Math.max(1, profile.angles.length - 1);
  return steps.reduce((least, step) => Math.min(least, (0.4 * step) / count), 4 / pixelsPerUnit);
}
