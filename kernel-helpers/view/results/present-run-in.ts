import type { CoastDown, RunIn, RunInBox } from "../../bearing/index.js";
import { formatFixed, type Temperature } from "../../quantity/index.js";
import type { Block, Presentation, TableBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { coastDownFigure } from "./coast-down-figure.js";
import { countText } from "./count-text.js";
import { runInFigure } from "./run-in-figure.js";
import { warningBlocks } from "./warning-blocks.js";

const outcomes = { "go on": "yes", stop: "no", "cannot tell yet": "cannot tell yet" } as const;

/** Run-in: whether to go on in one line, the figure, each box, and what could make a difference. */
export function presentRunIn(run: RunIn): Presentation {
  const scale = run.unitSystem === "inch" ? "degF" : "degC";
  return Object.freeze<Presentation>({
    title: `Run-in of ${run.title}`,
    blocks: [
      {
        type: "verdict",
        outcome: outcomes[run.state],
        text: verdictText(run),
        because: `${run.boxes.map(({ name, because }) => `${name}: ${because}`).join(". ")}.`,
      },
      ...agreementBlocks(run.boxes),
      runInFigure(run),
      boxTable(run, scale),
      ...forecastBlocks(run.boxes, scale),
      ...stretchBlocks(run),
      ...sharingBlocks(run.boxes),
      ...causeBlocks(run.boxes),
      ...warningBlocks(run.warnings),
    ],
  });
}

function verdictText({ state, boxes, stretches, readNext }: RunIn): string {
  const next = `read again in ${formatFixed(readNext.in("minute"), 0)} min`;
  const speed = stretches.at(-1)?.speed;
  switch (state) {
    case "go on":
      return `go on running${speed === undefined ? "" : ` at ${speed}`}; ${next}`;
    case "stop":
      return `stop for ${boxes
        .filter((box) => box.state === "stop")
        .map(({ name }) => name)
        .join(" and ")}`;
    case "cannot tell yet":
      return `stay by the machine and ${next}`;
  }
}

/** Readings against the forecast, in one line. */
function agreementBlocks(boxes: readonly RunInBox[]): Block[] {
  const foretold = boxes.filter(
    ({ agreement }) => agreement !== "nothing foretold" && agreement !== "foretold for another speed",
  );
  if (foretold.length === 0)
    return boxes.some(({ agreement }) => agreement === "foretold for another speed")
      ? [
          {
            type: "text",
            text: "The forecast is for another speed than the one it runs at now: they are compared when it runs at that.",
          },
        ]
      : [];
  const apart = foretold.filter(({ agreement }) => agreement === "hotter" || agreement === "cooler");
  const open = foretold.filter(({ agreement }) => agreement === "cannot tell yet");
  const names = (of: readonly RunInBox[]): string => of.map(({ name }) => name).join(" and ");
  return [
    {
      type: "verdict",
      outcome: apart.length > 0 ? "no" : open.length > 0 ? "cannot tell yet" : "yes",
      text:
        apart.length > 0
          ? `not as foretold: ${apart.map(({ name, agreement }) => `${name} runs ${agreement}`).join(", ")}`
          : open.length > 0
            ? `whether ${names(open)} ${open.length === 1 ? "runs" : "run"} as foretold cannot be told yet`
            : `${names(foretold)} ${foretold.length === 1 ? "runs" : "run"} as foretold`,
      because: `${foretold
        .map(({ name, against }) =>
          against === undefined
            ? `${name}: no end to compare yet`
            : `${name}: ends ${plusMinus(against).replace(" (difference)", "")} (95 %) from what was foretold`,
        )
        .join("; ")}.`,
    },
  ];
}

function boxTable({ boxes }: RunIn, scale: "degF" | "degC"): TableBlock {
  const symbol = scale === "degF" ? "°F" : "°C";
  const difference = scale === "degF" ? "deltaF" : "deltaC";
  const degrees = (t: Temperature): string => formatFixed(t.in(scale), 1);
  return {
    type: "table",
    caption: "Each box; ends in the room as last read, ranges 95 %",
    columns: [
      { title: "box", align: "left" },
      { title: "now", unit: symbol, align: "right" },
      { title: "rising by", unit: `${symbol} an hour`, align: "right" },
      { title: "ends at", unit: symbol, align: "right" },
      { title: "between", unit: symbol, align: "right" },
      { title: "time constant", unit: "min", align: "right" },
      { title: "nearly there in", unit: "min", align: "right" },
      { title: "foretold", unit: symbol, align: "right" },
      { title: "which is", align: "left" },
    ],
    rows: boxes.map(({ name, now, rate, end, foretold, agreement, state }) => ({
      cells: [
        name,
        degrees(now),
        rate === undefined ? "" : formatFixed(rate.value.in(difference), 1),
        end === undefined ? "not to be told yet" : degrees(end.temperature),
        end?.from === undefined || end.to === undefined ? "" : `${degrees(end.from)} to ${degrees(end.to)}`,
        end === undefined ? "" : plusMinus(end.timeConstant, { unit: "minute" }).replace(/ min$/, ""),
        end === undefined ? "" : formatFixed(end.nearlyThere.in("minute"), 0),
        foretold === undefined
          ? ""
          : `${degrees(foretold.temperature)} ± ${formatFixed(1.96 * foretold.standardUncertainty.in(difference), 1)}`,
        agreement,
      ],
      ...(state === "stop" || agreement === "hotter"
        ? { mark: state === "stop" ? ("bad" as const) : ("warn" as const) }
        : {}),
    })),
  };
}

/** Where a box would end by the forecast and its first readings, while the readings alone do not tell. */
function forecastBlocks(boxes: readonly RunInBox[], scale: "degF" | "degC"): Block[] {
  const symbol = scale === "degF" ? "°F" : "°C";
  const told = boxes.flatMap(({ name, end, endWithForecast: both }) =>
    end !== undefined || both?.from === undefined || both.to === undefined
      ? []
      : [
          `${name} ends at ${formatFixed(both.temperature.in(scale), 1)} ${symbol}, between ${formatFixed(both.from.in(scale), 1)} and ${formatFixed(both.to.in(scale), 1)} (95 %), nearly there in ${formatFixed(both.nearlyThere.in("minute"), 0)} min`,
        ],
  );
  return told.length === 0
    ? []
    : [
        {
          type: "text",
          text: `By readings and forecast together, as far as the forecast holds: ${told.join("; ")}. The verdict stands on the readings alone.`,
        },
      ];
}

/** Every stretch of speed and oil with the time constant of its own readings, where there is more than one. */
function stretchBlocks({ stretches, boxes }: RunIn): Block[] {
  if (stretches.length < 2) return [];
  return [
    {
      type: "table",
      caption:
        "Stretches of one speed and one oil: the time constant by the readings of each alone; ± U (95 %)",
      columns: [
        { title: "from", unit: "min", align: "right" },
        { title: "to", unit: "min", align: "right" },
        { title: "speed", unit: "rpm", align: "right" },
        { title: "oil", align: "left" },
        ...boxes.map(({ name }) => ({ title: name, unit: "min", align: "right" as const })),
      ],
      rows: stretches.map(({ from, to, speed, oil }, i) => ({
        cells: [
          formatFixed(from.in("minute"), 0),
          formatFixed(to.in("minute"), 0),
          speed === undefined ? "" : formatFixed(speed.in("rpm"), 0),
          oil,
          ...boxes.map(({ ownTimeConstants }) => {
            const own = ownTimeConstants.find(({ stretch }) => stretch === i)?.timeConstant;
            return own === undefined
              ? "not to be told"
              : plusMinus(own, { unit: "minute" }).replace(/ min$/, "");
          }),
        ],
      })),
    },
  ];
}

/** Whether speed and oil changed the time constant, and what the ends were therefore told from. */
function sharingBlocks(boxes: readonly RunInBox[]): Block[] {
  const tested = boxes.flatMap(({ name, sharing }) => (sharing === undefined ? [] : [{ name, sharing }]));
  if (tested.length === 0) return [];
  return [
    {
      type: "text",
      text: tested
        .map(({ name, sharing: { stretches, shared, f, critical, level } }) => {
          const test = `F = ${formatFixed(f, 1)}, bound ${formatFixed(critical, 1)} at ${formatFixed(100 * level, 0)} %`;
          return shared
            ? `${name}: one time constant for all ${stretches} stretches of speed and oil (${test})`
            : `${name}: its time constant changed with speed or oil (${test}), so the last stretch stands alone`;
        })
        .join("; ")
        .concat("."),
    },
  ];
}

/** What could make a box depart, the likeliest first: to look at, never a finding. */
function causeBlocks(boxes: readonly RunInBox[]): Block[] {
  return boxes
    .filter(({ causes }) => causes.length > 0)
    .map(({ name, causes }) => ({
      type: "table",
      caption: `What could be behind it, ${name}: in the order to look, none of it certain`,
      columns: [
        { title: "it may be", align: "left" },
        { title: "because", align: "left" },
        { title: "to look at", align: "left" },
      ],
      rows: causes.map(({ cause, signs, look }) => ({ cells: [cause, signs.join(", "), look] })),
      showRows: 4,
    }));
}

/** Friction from a coast-down. */
export function presentCoastDown(found: CoastDown): Presentation {
  const { title, atFirst, atLast, drag, readings } = found;
  const at = (label: string, { speed, torque }: CoastDown["atFirst"]) => ({
    label,
    value: formatMeasured(torque),
    note: `at ${formatFixed(speed.in("rpm"), 0)} rpm`,
  });
  return Object.freeze<Presentation>({
    title: `Friction from ${title}`,
    blocks: [
      {
        type: "text",
        text:
          drag === "steady"
            ? `The drag is alike at all speeds within the readings' uncertainty (${countText(readings.length, "reading")}): dry friction, or a film that is not there.`
            : `The drag falls with the speed, as that of a film of oil does (${countText(readings.length, "reading")}).`,
      },
      coastDownFigure(found),
      { type: "facts", facts: [at("friction torque, fast", atFirst), at("friction torque, slow", atLast)] },
    ],
  });
}
