import { isQuantity, type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";
import type { FinishedJournals } from "../../shaft/index.js";
import { fitLine, normalCdf } from "../../statistics/index.js";
import { lengthsOf, type Table, textOf } from "../../survey/index.js";
import type { AlignedBox, BoxAlignment } from "./box-alignment.js";
import { type TiltInGaps, tiltInGaps } from "./tilt-in-gaps.js";

/** What the box is to be. */
export interface BoxFitOptions {
  /** DIAMETRAL clearance: bore less journal; one for all boxes, or by the name of the box. */
  readonly wanted: Length | Readonly<Record<string, Length>>;
  /** It may differ from that by so much, either way. */
  readonly tolerance: Length;
  /** The clearance may differ from end to end by so much. */
  readonly taperLimit: Length;
  /** Standard uncertainty of one reading. */
  readonly readingUncertainty: Length;
  /** Thinnest shim at hand, and step of the stock. */
  readonly shimStep: Length;
  /** How the boxes lie to one line; left out, all taper is taken for the bore's own. */
  readonly line?: BoxAlignment | undefined;
  /** The journals in the boxes; left out, no bore is told. */
  readonly journals?: FinishedJournals | undefined;
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
  /** DIAMETRAL. */
  readonly wanted: Length;
  readonly readings: readonly GapReading[];
  /** DIAMETRAL, half-way along the readings. */
  readonly clearance: Measured<Length>;
  /** Clearance at the last station less that at the first. */
  readonly taper: Measured<Length>;
  /** What of the taper the box's own tilt makes; undefined where the line was not taken. */
  readonly tilt: TiltInGaps | undefined;
  /** Out of line: chance, shim, scrape and bore speak of the box once it is set. */
  readonly askew: boolean;
  /** DIAMETER of the bore half-way: journal and clearance; undefined where the journal was not given. */
  readonly bore: Measured<Length> | undefined;
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
  readonly tolerance: Length;
  readonly taperLimit: Length;
  /** Journals whose boxes have no gaps yet. */
  readonly unread: readonly string[];
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
 * clearance by their thickness: change = wanted − clearance, in whole steps. Where the box is out of line, its tilt is taken
 * out of both first (see `tiltInGaps`): it is set in line, not scraped.
 *
 * Valid when: two halves parted level, shaft down in the bottom, journal straight; readings independent.
 *
 * @param table  columns box, station, gap (plastic gauge, lead wire or feeler); empty gaps are left out
 * @param options.wanted  DIAMETRAL clearance, > 0, for all boxes or by name [m]
 * @param options.tolerance, options.taperLimit, options.readingUncertainty, options.shimStep  > 0 [m]
 * @param options.line  as `boxAlignment` returns it; its stations run the same way along the shaft as those of the gaps
 * @param options.journals  as `finishedJournals` returns them; box and journal bear the same name
 * @returns a box each, in the order of the table
 * @throws RangeError  an option not above 0, a gap below 0, a box with fewer than 3 gaps, or one that clearances, line or
 * journals do not name
 * @example
 * const rows = ["far box,1,3.9", "far box,3,4.0", "far box,5,4.1", "far box,7,4.2"];
 * const bytes = new TextEncoder().encode(["box [text],station [in],gap [thou]", ...rows].join("\n"));
 * const limits = { wanted: thou(4), tolerance: thou(1), taperLimit: thou(0.8), readingUncertainty: thou(0.2), shimStep: thou(1) };
 * boxFit(readTable(bytes, { name: "fit", file: "fit.csv" }), limits).boxes[0].verdict // "fits"
 * @source line: ISO/TS 28037:2010, clause 6; use of gauge, shims and scraper: common practice, no source
 */
export function boxFit(table: Table, options: BoxFitOptions): BoxFit {
  const { tolerance, taperLimit, readingUncertainty, shimStep, journals } = options;
  const wanted = clearances(options.wanted);
  for (const [name, value] of Object.entries({
    ...wanted,
    tolerance,
    taperLimit,
    readingUncertainty,
    shimStep,
  }))
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
    tolerance,
    taperLimit,
    unread: Object.freeze(
      (journals?.journals ?? []).map(({ name }) => name).filter((name) => !groups.has(name)),
    ),
    boxes: Object.freeze(
      [...groups].map(([name, rows]) => fitted(name, rows, givenOf(name, table, options))),
    ),
  });
}

/** By the name of the box, or "wanted" for all. */
function clearances(wanted: BoxFitOptions["wanted"]): Readonly<Record<string, Length>> {
  return isQuantity(wanted, "length") ? { wanted } : wanted;
}

/** What is given for one box. */
interface GivenForBox {
  readonly options: BoxFitOptions;
  readonly wanted: Length;
  readonly inLine: AlignedBox | undefined;
  readonly journal: Measured<Length> | undefined;
}

/** Box, clearance, line and journal go together by name: one that is called otherwise somewhere is refused. */
function givenOf(name: string, table: Table, options: BoxFitOptions): GivenForBox {
  const named = <T>(what: string, known: Readonly<Record<string, T>>): T => {
    if (Object.hasOwn(known, name)) return known[name]!;
    throw new RangeError(
      `boxFit: ${table.name}: a box must be one of those with a ${what}, ${Object.keys(known)
        .map((one) => `"${one}"`)
        .join(", ")}, got "${name}"`,
    );
  };
  const by = <T>(list: readonly (readonly [string, T])[]): Readonly<Record<string, T>> =>
    Object.fromEntries(list);
  const { wanted, line, journals } = options;
  return {
    options,
    wanted: isQuantity(wanted, "length") ? wanted : named("clearance wanted", wanted),
    inLine: line && named("place in the line", by(line.boxes.map((box) => [box.name, box]))),
    journal: journals && named("journal", by(journals.journals.map((one) => [one.name, one.diameter]))),
  };
}

function fitted(
  name: string,
  rows: readonly { readonly station: Length; readonly gap: Length }[],
  given: GivenForBox,
): FittedBox {
  if (rows.length < 3)
    throw new RangeError(`boxFit: ${name} must have at least 3 gaps along it, got ${rows.length}`);
  const { options, wanted, journal } = given;
  const { tolerance, readingUncertainty, shimStep } = options;
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
  const unit = rows[0]!.gap.writtenIn as "thou";
  const small = (si: number): Length => quantityFromSi("length", si, unit);
  const clearance = measured(
    small(line.intercept + line.slope * middle),
    small(wider * Math.hypot(line.uCentre, (middle - line.centre.x) * line.uSlope)),
  );
  const taper = measured(small(line.slope * (to - from)), small(wider * line.uSlope * (to - from)));
  const tilt = given.inLine && tiltInGaps(given.inLine, { clearance, taper, over: small(to - from) });
  // Out of line, what counts is what will be left once the box is set.
  const askew = given.inLine?.verdict === "out of line";
  const [c, own] = askew && tilt !== undefined ? [tilt.onceInLine, tilt.own] : [clearance, taper];
  const edge = (limit: number): number => normalCdf((limit - c.value.si) / c.standardUncertainty.si);
  const chance = edge(wanted.si + tolerance.si) - edge(wanted.si - tolerance.si);
  const steps = Math.round((wanted.si - c.value.si) / shimStep.si);
  const tapered = Math.abs(own.value.si) - 2 * own.standardUncertainty.si > options.taperLimit.si;
  const sureOfLine = given.inLine === undefined || given.inLine.verdict === "in line";
  const verdict =
    chance <= 1 - sure || tapered || askew
      ? "does not fit"
      : chance >= sure && sureOfLine
        ? "fits"
        : "cannot tell yet";
  const tight = own.value.si > 0 ? from : to;
  const base = {
    name,
    wanted,
    readings: Object.freeze(
      rows.map(({ station, gap }, i) => Object.freeze({ station, gap, score: line.residuals[i]! / u })),
    ),
    clearance,
    taper,
    tilt,
    askew,
    bore: journal && boreOf(journal, c),
    chance,
    verdict,
    shim: small(steps * shimStep.si),
    afterShim: small(c.value.si + steps * shimStep.si),
    scrape: tapered
      ? Object.freeze({
          at: quantityFromSi("length", tight, rows[0]!.station.writtenIn as "inch"),
          depth: small(Math.abs(own.value.si)),
        })
      : undefined,
  } as const;
  return Object.freeze({ ...base, next: nextStep(base, given) });
}

function boreOf(journal: Measured<Length>, clearance: Measured<Length>): Measured<Length> {
  const bore = quantityFromSi(
    "length",
    journal.value.si + clearance.value.si,
    journal.value.writtenIn as "inch",
  );
  const u = Math.hypot(journal.standardUncertainty.si, clearance.standardUncertainty.si);
  return measured(bore, quantityFromSi("length", u, clearance.value.writtenIn as "thou"));
}

function nextStep(box: Omit<FittedBox, "next">, { options, wanted }: GivenForBox): string {
  const worst = box.readings.reduce((a, b) => (Math.abs(b.score) > Math.abs(a.score) ? b : a));
  if (Math.abs(worst.score) > odd)
    return `take the gap at ${worst.station} again: it lies ${Math.abs(worst.score).toFixed(1)} standard uncertainties off the line of the others`;
  if (box.askew)
    return `set the box in line, then take the gaps again${box.scrape === undefined ? "; nothing is scraped for taper before" : `; its own taper is then scraped off at ${box.scrape.at}`}`;
  if (box.scrape !== undefined)
    return `scrape the tight end, at ${box.scrape.at}, first; shims cannot mend a taper`;
  if (box.verdict === "fits") return "mark with blue and count the spots";
  if (box.verdict === "does not fit")
    return box.shim.si === 0
      ? "no shim of the stock brings it within the tolerance: finer shims are needed"
      : box.shim.si > 0
        ? "add the shims, on both sides alike, pull down and measure again"
        : "take the shims out, on both sides alike, pull down and measure again";
  if (box.chance >= sure)
    return "take more heights along the box: whether it lies in line cannot be told yet";
  const u = box.clearance.standardUncertainty.si;
  const margin = Math.abs(Math.abs(box.clearance.value.si - wanted.si) - options.tolerance.si);
  const more =
    Math.ceil(box.readings.length * ((1.645 * u) / Math.max(margin, u / 5)) ** 2) - box.readings.length;
  return `${Math.max(1, more)} more gaps along the box would tell`;
}
