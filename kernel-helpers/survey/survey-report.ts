import type { Length } from "../quantity/index.js";
import { asMadeIfLeft, smallestBand } from "./band-questions.js";
import { nextReadings } from "./next-readings.js";
import type { NextReading, NextReadings } from "./next-readings-types.js";
import type { BandEdge, Profile, TaperFit, WearBand, WearBands } from "./profile-types.js";
import { depthBudget, taperBudget } from "./survey-budget.js";
import type { SurveyReport, SurveyReportRow } from "./survey-report-types.js";

/** A reading that takes less than this of the uncertainty away is not worth the walk. */
const worthTaking = 0.03;
const setAnew = "set the instrument on a standard of known size, at one temperature with the shaft";
const enough = "nothing: one reading more would hardly narrow it";

/**
 * A survey as a measurement report: each result with its interval, what its uncertainty mostly comes of, and the reading to
 * take next.
 *
 * Of wear bands: the depth of every worn band (of the smallest band, its diameter, where none is worn), every edge of a worn
 * band, and the diameter the shaft was made to. Of a taper: the taper. Nothing is worked out anew: values are those of the
 * result, budgets of `depthBudget` and `taperBudget`, next readings of `nextReadings`.
 *
 * Where what all readings share (setting, temperature) makes more than half of the variance, or the best reading takes less
 * than 3 % of the uncertainty away, no reading is asked for, and it is said what to do instead.
 *
 * Valid when: as for these.
 *
 * @param result  wear bands, or a fitted taper
 * @returns one row a result [m; a taper -]
 * @throws TypeError  it is neither
 * @example
 * const rows = ["0,2.4375", "1,2.4374", "2,2.4375", "4,2.4331", "5,2.4332", "6,2.4332"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * surveyReport(wearBands(profile, { nominal: inch(2.4375) })).rows.map(({ about }) => about) // ["depth", "edge", "diameter"]
 * @source what a statement of a result holds: JCGM 100:2008 (GUM), 7.2.1
 */
export function surveyReport(result: WearBands | TaperFit): SurveyReport {
  const kind = (result as { kind?: unknown } | undefined)?.kind;
  if (kind !== "wear bands" && kind !== "taper")
    throw new TypeError(`surveyReport: wear bands or a taper are wanted, got ${String(kind)}`);
  const { profile } = result;
  return Object.freeze<SurveyReport>({
    kind: "survey report",
    title: profile.title,
    file: profile.file,
    unitSystem: profile.unitSystem,
    how: Object.freeze(howRead(profile)),
    rows: Object.freeze(result.kind === "taper" ? [taperRow(result)] : bandRows(result)),
    warnings: result.warnings,
  });
}

function bandRows(wear: WearBands): SurveyReportRow[] {
  const worn = wear.bands.filter(({ state }) => state === "worn");
  const asked = worn.length > 0 ? worn : [smallestBand(wear)];
  const edges = wear.edges.flatMap((edge, i) =>
    [wear.bands[i]!, wear.bands[i + 1]!].some((band) => worn.includes(band))
      ? [edgeRow(wear, edge, i + 1)]
      : [],
  );
  return [...asked.map((band) => depthRow(wear, band)), ...edges, ...madeRow(wear)];
}

function depthRow(wear: WearBands, band: WearBand): SurveyReportRow {
  const [largest] = depthBudget(wear, band.number).rows;
  const from = `${counted(band.readingCount, "reading")} at ${counted(band.stationCount, "station")}`;
  const deep = band.depth !== undefined && band.state === "worn";
  return row({
    what: `band ${band.number}, ${along(band.from)} to ${along(band.to)}: ${deep ? "depth below nominal" : "diameter"}, in its middle`,
    about: deep ? "depth" : "diameter",
    value: deep ? band.depth! : band.diameter,
    from,
    mostly: largest!.source,
    share: largest!.share,
    ...nextOf(bestOf(wear, band), commonShare(wear.profile, band.diameter.standardUncertainty)),
  });
}

/** The best reading for a band; where it is not worn and no nominal is known the depth is asked all the same. */
function bestOf(wear: WearBands, { number }: WearBand): NextReadings {
  return nextReadings(wear, { about: "depth", band: number });
}

function edgeRow(wear: WearBands, edge: BandEdge, number: number): SurveyReportRow {
  const { after, before, position, reach } = edge;
  const half = before.minus(after).over(2).times(0.95);
  return row({
    what: `where band ${number} ends and band ${number + 1} begins`,
    about: "edge",
    value: position,
    between: reach ?? { low: position.value.minus(half), high: position.value.plus(half) },
    from: `the readings on both sides, at ${along(after)} and ${along(before)}`,
    mostly: "the gap between the two stations",
    share: 1,
    ...nextOf(nextReadings(wear, { about: "edge", edge: number }), 0),
  });
}

function madeRow(wear: WearBands): SurveyReportRow[] {
  const made = asMadeIfLeft(wear);
  if (made === undefined) return [];
  const bands = wear.bands.filter(({ state, shape }) => state === "as made" && shape === "flat");
  const share = commonShare(wear.profile, made.standardUncertainty);
  const [common] = [...(wear.profile.commonSources ?? [])].sort(
    (a, b) => b.standardUncertainty.si - a.standardUncertainty.si,
  );
  const ofCommon =
    common === undefined ? 0 : (common.standardUncertainty.si / made.standardUncertainty.si) ** 2;
  const readings = bands.reduce((sum, band) => sum + band.readingCount, 0);
  return [
    row({
      what: `diameter the shaft was made to, by the ${counted(bands.length, "band")} not worn`,
      about: "diameter",
      value: made,
      from: counted(readings, "reading"),
      mostly: ofCommon > 1 - share ? common!.name : counted(readings, "reading"),
      share: Math.max(ofCommon, 1 - share),
      next: undefined,
      instead: share > 0.5 ? setAnew : enough,
    }),
  ];
}

function taperRow(taper: TaperFit): SurveyReportRow {
  const [largest] = taperBudget(taper).rows;
  return row({
    what: "taper, on diameter",
    about: "taper",
    value: taper.taper,
    from: `${counted(taper.readings.length - taper.gross.length, "reading")} over ${along(taper.length)}`,
    mostly: largest!.source,
    share: largest!.share,
    ...nextOf(nextReadings(taper, { about: "taper" }), 0),
  });
}

function nextOf(found: NextReadings, common: number): Pick<SurveyReportRow, "next" | "instead"> {
  const best: NextReading | undefined = found.readings[0];
  if (best !== undefined && best.gain >= worthTaking) return { next: best, instead: "" };
  return { next: undefined, instead: common > 0.5 ? setAnew : enough };
}

/** Share of the variance that all readings have in common [-]. */
function commonShare({ commonUncertainty }: Profile, u: Length): number {
  return u.si > 0 ? Math.min(1, (commonUncertainty.si / u.si) ** 2) : 0;
}

function row(
  found: Omit<SurveyReportRow, "between"> & Partial<Pick<SurveyReportRow, "between">>,
): SurveyReportRow {
  return Object.freeze({ between: undefined, ...found });
}

function howRead({ readings, stations, angles, correction }: Profile): string[] {
  const at = angles.length > 1 ? ` at ${angles.length} angles` : "";
  return [
    `${counted(readings.length, "reading")} at ${counted(stations.length, "station")}${at}.`,
    ...(correction === "" ? [] : [correction]),
  ];
}

function along(length: Length): string {
  return `${length}`;
}

function counted(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? "" : "s"}`;
}
