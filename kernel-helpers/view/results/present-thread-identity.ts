import type { ThreadIdentity, ThreadMatch, ThreadReadings } from "../../joint/thread-types.js";
import { formatFixed, formatNumber } from "../../quantity/index.js";
import type { Fact, Presentation, TableRow } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";
import { type ShownUnits, shownUnits, smallText } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** What was read on a thread: diameter, pitch, flank angle, each with its uncertainty. */
export function presentThreadReadings(readings: ThreadReadings): Presentation {
  return Object.freeze<Presentation>({
    title: `Readings of the thread in ${readings.title}`,
    blocks: [
      { type: "facts", facts: readingFacts(readings, shownUnits(readings.unitSystem)) },
      ...warningBlocks(readings.warnings),
    ],
  });
}

/** Which standard thread it may be, nearest first, and what to read where several may be. */
export function presentThreadIdentity(identity: ThreadIdentity): Presentation {
  const { readings, matches, next, text } = identity;
  const units = shownUnits(readings.unitSystem);
  const agreeing = matches.filter(({ agrees }) => agrees);
  return Object.freeze<Presentation>({
    title: "Which thread is it?",
    blocks: [
      agreeing.length === 1
        ? {
            type: "verdict",
            outcome: "yes",
            text: `${agreeing[0]!.thread.name}.`,
            because: text,
          }
        : {
            type: "verdict",
            outcome: agreeing.length === 0 ? "no" : "cannot tell yet",
            text: agreeing.length === 0 ? "No standard thread." : "Not settled yet.",
            because: text,
          },
      { type: "facts", facts: readingFacts(readings, units) },
      {
        type: "table",
        stacked: true,
        caption:
          "Nearest first. Below size: what wear, rust and the maker's tolerance would have taken off the crests. Off by: in standard uncertainties of the reading; 1.96 is the most that agrees. A crest within the wear allowed is not off.",
        columns: [
          { title: "thread", align: "left" },
          { title: "flanks", align: "right" },
          { title: "pitch", align: "right" },
          { title: "below size", unit: units.smallSymbol, align: "right" },
          { title: "diameter", unit: "off by", align: "right" },
          { title: "pitch", unit: "off by", align: "right" },
          { title: "flank angle", unit: "off by", align: "right" },
          { title: "agrees", align: "left" },
        ],
        rows: matches.map((match) => row(match, units)),
        showRows: agreeing.length + 2,
      },
      ...next.map((question) => ({ type: "text", text: question.text }) as const),
      ...(agreeing.length === 0 ? [] : [{ type: "facts", facts: agreeing.map(sizeFact) } as const]),
      ...warningBlocks(readings.warnings),
    ],
  });
}

function readingFacts(readings: ThreadReadings, units: ShownUnits): Fact[] {
  const { majorDiameter, pitch, flankAngle, overThreads } = readings;
  const perInch = 0.0254 / pitch.value.si;
  return [
    {
      label: "outside diameter",
      value: formatMeasured(majorDiameter, { unit: units.size }),
      note: "the largest of the readings",
    },
    {
      label: "pitch",
      value: formatMeasured(pitch, { unit: units.size }),
      note: `${formatNumber(perInch, 4)} threads per inch; over up to ${overThreads} threads`,
    },
    {
      label: "flank angle",
      value: flankAngle === undefined ? "not taken" : formatMeasured(flankAngle, { unit: "degree" }),
    },
  ];
}

function row(match: ThreadMatch, units: ShownUnits): TableRow {
  const { thread, below, diameterOff, pitchOff, angleOff, agrees } = match;
  return {
    cells: [
      thread.name,
      `${thread.flankAngle}°`,
      thread.threadsPerInch === undefined
        ? `${formatNumber(thread.pitch.in("mm"))} mm`
        : `${thread.threadsPerInch} per in`,
      formatFixed(below.in(units.small), units.small === "thou" ? 1 : 0),
      formatFixed(diameterOff, 1),
      formatFixed(pitchOff, 1),
      angleOff === undefined ? "not taken" : formatFixed(angleOff, 1),
      agrees ? "yes" : "no",
    ],
  };
}

/** The sizes that matter at the bench, and where they stand. */
function sizeFact({ thread, below }: ThreadMatch): Fact {
  const units = shownUnits(thread.threadsPerInch === undefined ? "metric" : "inch");
  const size = (length: typeof thread.rootDiameter): string =>
    `${formatFixed(length.in(units.size), units.decimals - 1)} ${units.sizeSymbol}`;
  return {
    label: thread.name,
    value: `root ${size(thread.rootDiameter)}, pitch diameter ${size(thread.pitchDiameter)}, worn by ${smallText(below, units)}`,
    note: thread.source,
  };
}
