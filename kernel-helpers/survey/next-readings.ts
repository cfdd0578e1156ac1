import type { Length } from "../quantity/index.js";
import { judgeLimit } from "./limit-judgement.js";
import { nextForDepth } from "./next-readings-depth.js";
import { nextForEdge } from "./next-readings-edge.js";
import { nextForLimit } from "./next-readings-limit.js";
import { nextForTaper } from "./next-readings-taper.js";
import type { NextReadings, NextReadingsQuestion, OutlinePoint } from "./next-readings-types.js";
import type { TaperFit, WearBands } from "./profile-types.js";
import { chanceText, plainSmall } from "./run-out-text.js";

/**
 * Where to read next, so that what is to be decided becomes clear with the fewest readings.
 *
 * Exact from the design of the readings, with no trial and no simulation: the uncertainty of a fit depends on where is
 * read and how well, not on what will be read.
 * - edge: the gap's middle halves its rectangular uncertainty, see `nextForEdge`;
 * - depth: u² of the band's fit at its middle and what is common;
 * - taper: u² of the slope; the ends have the longest lever;
 * - limit: the probability that the verdict of smallest diameter against limit becomes clear.
 * One more reading means one more station read at all angles of the survey (for an edge: at one angle). Its uncertainty is
 * taken as the median of those of the stretch. Where readings scatter more than stated, with the noise seen.
 *
 * Valid when: the bands found are the right ones and the noise stays as it is. For a limit the noise is taken as known.
 *
 * @param result  wear bands, or a fitted taper
 * @param question  what is to be decided; stations and limit [m]
 * @returns places to read, best first, with standard uncertainty before and after [m], for a taper [-]
 * @throws RangeError  the question does not fit the result, or names a band or an edge that is not there, or a limit or
 *   nominal is wanted and not known
 * @example
 * const rows = ["0,2.4375", "1,2.4374", "2,2.4375", "4,2.4331", "5,2.4332", "6,2.4332"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * nextReadings(wearBands(profile), { about: "edge" }).readings[0].station // 3 in
 * @source V. V. Fedorov, Theory of Optimal Experiments, 1972 (from memory); edge: JCGM 100:2008 (GUM), 4.3.7; limit:
 * H. Raiffa, R. Schlaifer, Applied Statistical Decision Theory, 1961, preposterior analysis (from memory)
 */
export function nextReadings(result: WearBands | TaperFit, question: NextReadingsQuestion): NextReadings {
  const where = "nextReadings";
  const known = ["edge", "depth", "taper", "limit"];
  if (!known.includes(question.about))
    throw new RangeError(`${where}: about must be one of ${known.join(", ")}, got ${String(question.about)}`);
  const wanted = question.about === "taper" ? "taper" : "wear bands";
  if (result.kind !== wanted)
    throw new RangeError(
      `${where}: a question about ${question.about} is asked of ${wanted}, got ${String((result as { kind?: unknown }).kind)}`,
    );
  const { title, unitSystem, warnings } = result.profile;
  const head = {
    kind: "next readings" as const,
    title,
    unitSystem,
    about: question.about,
    outline: Object.freeze(outlineOf(result)),
  };
  const finish = (rest: Omit<NextReadings, keyof typeof head>): NextReadings =>
    Object.freeze<NextReadings>({
      ...head,
      ...rest,
      readings: Object.freeze(rest.readings),
      warnings: Object.freeze([...warnings, ...rest.warnings]),
    });

  if (result.kind === "taper") {
    const { before, readings } = nextForTaper(result);
    return finish({
      question: "how steep the taper is",
      before,
      readings,
      text: `One more station at ${readings[0]!.station} takes ${share(readings[0]!.gain)} of the taper's uncertainty away.`,
      warnings: [],
    });
  }
  if (question.about === "edge") {
    const { number, before, readings, warnings: doubts } = nextForEdge(where, result, question.edge);
    const [best] = readings;
    return finish({
      question: `where band ${number} ends and band ${number + 1} begins`,
      before,
      readings,
      text: `One reading at ${best!.station} takes ${share(best!.gain)} of the edge's uncertainty away.`,
      warnings: doubts,
    });
  }
  if (question.about === "depth") {
    const { band, before, readings, warnings: doubts } = nextForDepth(where, result, question.band);
    const [best] = readings;
    return finish({
      question:
        band.state === "worn"
          ? `how deep band ${band.number} is worn, on diameter`
          : `what diameter band ${band.number} has`,
      before,
      readings,
      text: `One more station at ${best!.station} takes ${share(best!.gain)} of the ${band.state === "worn" ? "depth" : "diameter"}'s uncertainty away.`,
      warnings: doubts,
    });
  }
  const { about: _, limit, band } = question as Extract<NextReadingsQuestion, { about: "limit" }>;
  const answer = nextForLimit(where, result, limit, band);
  const side = answer.margin.si < 0 ? "below" : "above";
  const margin = plainSmall(answer.margin.absolute(), unitSystem);
  const [best] = answer.readings;
  const contradicted = contradiction(result, answer.limit);
  return finish({
    question: `whether band ${answer.band.number} keeps the limit of ${answer.limit}`,
    before: answer.before as Length,
    readings: answer.readings,
    text: contradicted
      ? contradicted
      : best === undefined
        ? `The verdict is clear: at its smallest band ${answer.band.number} is ${margin} ${side} the limit. No further reading is needed for it.`
        : `At its smallest band ${answer.band.number} is ${margin} ${side} the limit, which is not clear. One more station at ${best.station} makes it clear with a probability of ${chanceText(best.clearAfterOne!)}, three with ${chanceText(best.clearAfterThree!)}.`,
    warnings: answer.warnings,
  });
}

/** What to read before a verdict is trusted that one of the readings contradicts; undefined where none does. */
function contradiction(wear: WearBands, limit: Length): string | undefined {
  const found = judgeLimit({ ...wear, limit }).find(({ contradictedBy }) => contradictedBy !== undefined);
  if (found === undefined) return undefined;
  const { line, station } = wear.profile.readings[found.contradictedBy!]!;
  return `The reading on line ${line}, at station ${station}, lies below the limit, though the fit of band ${found.band.number} lies above it. Read there again, and once on each side of it, before the verdict is trusted.`;
}

function outlineOf(result: WearBands | TaperFit): OutlinePoint[] {
  if (result.kind === "taper")
    return [result.smallEnd, result.largeEnd]
      .map(({ station, diameter }) => Object.freeze({ station, diameter: diameter.value }))
      .sort((a, b) => a.station.si - b.station.si);
  return result.bands.flatMap((band) => [
    Object.freeze({ station: band.from, diameter: band.diameterAtFrom }),
    Object.freeze({ station: band.to, diameter: band.diameterAtTo }),
  ]);
}

function share(gain: number): string {
  return `${(100 * gain).toFixed(gain < 0.1 ? 1 : 0)} %`;
}
