import { type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";
import { fitLine, normalCdf } from "../../statistics/index.js";
import { lengthsOf, type Table, textOf } from "../../survey/index.js";

/** What the box is to be. */
export interface BoxFitOptions {
  /** DIAMETRAL clearance: bore less journal. */
  readonly wanted: Length;
  /** It may differ from that by so much, either way. */
  readonly tolerance: Length;
  /** The clearance may differ from end to end by so much. */
  readonly taperLimit: Length;
  /** Standard uncertainty of one reading. */
  readonly readingUncertainty: Length;
  /** Thinnest shim at hand, and step of the stock. */
  readonly shimStep: Length;
}

/** One reading as the box's line sees it. */
export interface GapReading {
  readonly station: Length;
  readonly gap: Length;
  /** Reading less line, over its standard uncertainty [-]. */
  readonly score: number;
}

/** How one box stands. */
export interface FittedBox {
  readonly name: string;
  readonly readings: readonly GapReading[];
  /** DIAMETRAL, half-way along the readings. */
  readonly clearance: Measured<Length>;
  /** Clearance at the last station less that at the first. */
  readonly taper: Measured<Length>;
  /** Chance that the clearance lies within the tolerance [-]. */
  readonly chance: number;
  readonly verdict: "fits" | "does not fit" | "cannot tell yet";
  /** Change of the shims on BOTH sides, above 0 to add; a whole number of steps. */
  readonly shim: Length;
  /** Clearance that this would leave. */
  readonly afterShim: Length;
  /** To scrape off at the tight end, on DIAMETER; undefined where the box is straight enough. */
  readonly scrape: { readonly at: Length; readonly depth: Length } | undefined;
  /** What to do next, in words. */
  readonly next: string;
}

/** Clearance and straightness of boxes from gaps, with what to change. */
export interface BoxFit {
  readonly kind: "box fit";
  readonly table: string;
  readonly wanted: Length;
  readonly tolerance: Length;
  readonly taperLimit: Length;
  readonly boxes: readonly FittedBox[];
}

/** A verdict is given from this chance on [-]. */
const sure = 0.95;
/** A reading so many standard uncertainties off its line is taken again. */
const odd = 3;

/**
 * Clearance and taper of each box from the gaps along it, and what to change: shims, scraping, or the next reading.
 *
 * Gap at the crown, the journal lying in the bottom, is the DIAMETRAL clearance. A line by least squares through the gaps
 * of a box gives the clearance half-way and the taper from first to last station. Shims on both sides change the
 * clearance by their thickness: change = wanted − clearance, in whole steps.
 *
 * Valid when: two halves parted level, shaft down in the bottom, journal straight; readings independent.
 *
 * @param table  columns box, station, gap (plastic gauge, lead wire or feeler); empty gaps are left out
 * @param options.wanted  DIAMETRAL clearance, > 0 [m]
 * @param options.tolerance, options.taperLimit, options.readingUncertainty, options.shimStep  > 0 [m]
 * @returns a box each, in the order of the table
 * @throws RangeError  an option not above 0, a gap below 0, or a box with fewer than 3 gaps
 * @example
 * const rows = ["far box,1,3.9", "far box,3,4.0", "far box,5,4.1", "far box,7,4.2"];
 * const bytes = new TextEncoder().encode(["box [text],station [in],gap [thou]", ...rows].join("\n"));
 * const limits = { wanted: thou(4), tolerance: thou(1), taperLimit: thou(0.8), readingUncertainty: thou(0.2), shimStep: thou(1) };
 * boxFit(readTable(bytes, { name: "fit", file: "fit.csv" }), limits).boxes[0].verdict // "fits"
 * @source line: ISO/TS 28037:2010, clause 6; use of gauge, shims and scraper: common practice, no source
 */
export function boxFit(table: Table, options: BoxFitOptions): BoxFit {
  for (const [name, value] of Object.entries(options) as [string, Length][])
    if (!(value.si > 0)) throw new RangeError(`boxFit: ${name} must be above 0, got ${value}`);
  const [names, stations, gaps] = [
    textOf(table, "box"),
    lengthsOf(table, "station"),
    lengthsOf(table, "gap"),
  ];
  const groups = new Map<string, { station: Length; gap: Length }[]>();
  names.forEach((cell, row) => {
    const [name, station, gap] = [cell.trim(), stations[row], gaps[row]];
    if (name === "")
      throw new RangeError(`boxFit: ${table.name}: row ${row + 1} must name its box, got nothing`);
    if (station === undefined || gap === undefined) return;
    if (gap.si < 0)
      throw new RangeError(`boxFit: ${table.name}: a gap of ${name} must be 0 or more, got ${gap}`);
    groups.set(name, [...(groups.get(name) ?? []), { station, gap }]);
  });
  if (groups.size === 0) throw new RangeError(`boxFit: ${table.name} must hold gaps, got none`);
  return Object.freeze({
    kind: "box fit",
    table: table.name,
    wanted: options.wanted,
    tolerance: options.tolerance,
    taperLimit: options.taperLimit,
    boxes: Object.freeze([...groups].map(([name, rows]) => fitted(name, rows, options))),
  });
}

function fitted(
  name: string,
  rows: readonly { readonly station: Length; readonly gap: Length }[],
  options: BoxFitOptions,
): FittedBox {
  if (rows.length < 3)
    throw new RangeError(`boxFit: ${name} must have at least 3 gaps along it, got ${rows.length}`);
  const { wanted, tolerance, readingUncertainty, shimStep } = options;
  const u = readingUncertainty.si;
  const x = rows.map(({ station }) => station.si);
  const line = fitLine(
    x,
    rows.map(({ gap }) => gap.si),
    { u },
  );
  const [from, to] = [Math.min(...x), Math.max(...x)];
  const middle = (from + to) / 2;
  // More scatter than one reading's own widens what is told.
  const wider = Math.max(1, line.noiseRatio ?? 1);
  const clearance = line.intercept + line.slope * middle;
  const uClearance = wider * Math.hypot(line.uCentre, (middle - line.centre.x) * line.uSlope);
  const [taper, uTaper] = [line.slope * (to - from), wider * line.uSlope * (to - from)];
  const unit = rows[0]!.gap.writtenIn as "thou";
  const small = (si: number): Length => quantityFromSi("length", si, unit);
  const edge = (limit: number): number => normalCdf((limit - clearance) / uClearance);
  const chance = edge(wanted.si + tolerance.si) - edge(wanted.si - tolerance.si);
  const steps = Math.round((wanted.si - clearance) / shimStep.si);
  const tapered = Math.abs(taper) - 2 * uTaper > options.taperLimit.si;
  const verdict =
    chance <= 1 - sure || tapered ? "does not fit" : chance >= sure ? "fits" : "cannot tell yet";
  const readings = rows.map(({ station, gap }, i) =>
    Object.freeze({ station, gap, score: line.residuals[i]! / u }),
  );
  const tight = taper > 0 ? from : to;
  const scrape = tapered
    ? Object.freeze({
        at: quantityFromSi("length", tight, rows[0]!.station.writtenIn as "inch"),
        depth: small(Math.abs(taper)),
      })
    : undefined;
  const base = {
    name,
    readings: Object.freeze(readings),
    clearance: measured(small(clearance), small(uClearance)),
    taper: measured(small(taper), small(uTaper)),
    chance,
    verdict,
    shim: small(steps * shimStep.si),
    afterShim: small(clearance + steps * shimStep.si),
    scrape,
  } as const;
  return Object.freeze({ ...base, next: nextStep(base, options, uClearance) });
}

function nextStep(box: Omit<FittedBox, "next">, options: BoxFitOptions, u: number): string {
  const worst = box.readings.reduce((a, b) => (Math.abs(b.score) > Math.abs(a.score) ? b : a));
  if (Math.abs(worst.score) > odd)
    return `take the gap at ${worst.station} again: it lies ${Math.abs(worst.score).toFixed(1)} standard uncertainties off the line of the others`;
  if (box.scrape !== undefined)
    return `scrape the tight end, at ${box.scrape.at}, first; shims cannot mend a taper`;
  if (box.verdict === "fits") return "mark with blue and count the spots";
  if (box.verdict === "does not fit")
    return box.shim.si === 0
      ? "no shim of the stock brings it within the tolerance: finer shims are needed"
      : box.shim.si > 0
        ? "add the shims, on both sides alike, pull down and measure again"
        : "take the shims out, on both sides alike, pull down and measure again";
  const margin = Math.abs(Math.abs(box.clearance.value.si - options.wanted.si) - options.tolerance.si);
  const more =
    Math.ceil(box.readings.length * ((1.645 * u) / Math.max(margin, u / 5)) ** 2) - box.readings.length;
  return `${Math.max(1, more)} more gaps along the box would tell`;
}
