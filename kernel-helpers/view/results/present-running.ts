import type { BoxPrediction, ClearanceMap, RunningFilm, RunningPrediction } from "../../bearing/index.js";
import {
  formatFixed,
  formatNumber,
  type Temperature,
  type TemperatureDifference,
  unitSystem,
} from "../../quantity/index.js";
import type { Block, Fact, Presentation } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { clearanceFigure } from "./clearance-figure.js";

/** What the shop says: Fahrenheit in an inch rebuild. */
function inFahrenheit(room: Temperature): boolean {
  return (unitSystem() ?? (room.toJSON().scale === "degF" ? "inch" : "metric")) === "inch";
}

function degrees(t: Temperature, room: Temperature): string {
  return inFahrenheit(room) ? `${formatFixed(t.in("degF"), 0)} °F` : `${formatFixed(t.in("degC"), 0)} °C`;
}

function differenceUnit(room: Temperature): "deltaF" | "deltaC" {
  return inFahrenheit(room) ? "deltaF" : "deltaC";
}

const outcomes = { "full film": "yes", mixed: "cannot tell yet", boundary: "no" } as const;
const words = {
  "full film": "a full film carries it",
  mixed: "it runs on part film, part metal",
  boundary: "no film to speak of",
} as const;

function filmFacts(film: RunningFilm): Fact[] {
  const inch = inFahrenheit(film.room);
  const small = inch ? "thou" : "micrometre";
  const symbol = inch ? "thou" : "µm";
  return [
    {
      label: "box",
      value: degrees(film.boxTemperature, film.room),
      note: `room at ${degrees(film.room, film.room)}`,
    },
    {
      label: "film",
      value: degrees(film.filmTemperature, film.room),
      note: `${film.oil}, ${formatNumber(film.viscosity.in("millipascalSecond"), 3)} mPa·s there`,
    },
    {
      label: "least film",
      value: `${formatNumber(film.leastFilm.in(small), 2)} ${symbol}`,
      note: `of a radial clearance of ${formatNumber(film.radialClearance.in(small), 3)} ${symbol}; ${formatNumber(film.filmRatio, 2)} times the roughness`,
    },
    {
      label: "thinnest",
      value: `${formatFixed(film.attitude.in("degree"), 0)}° on from the load`,
      note: "in the direction of rotation",
    },
    {
      label: "mean pressure",
      value: inch
        ? `${formatNumber(film.meanPressure.in("psi"), 3)} psi`
        : `${formatNumber(film.meanPressure.in("megapascal"), 3)} MPa`,
      note: `highest ${inch ? `${formatNumber(film.highestPressure.in("psi"), 3)} psi` : `${formatNumber(film.highestPressure.in("megapascal"), 3)} MPa`}`,
    },
    {
      label: "friction",
      value: `${formatNumber(film.frictionPower.in("watt"), 2)} W`,
      note: `coefficient ${formatNumber(film.frictionCoefficient, 2)}`,
    },
    {
      label: "oil lost at the ends",
      value: `${formatNumber(film.sideFlow.in("litrePerMinute") * 60_000, 2)} cm³ an hour`,
      note: "of a full film: what a ring, wick or drop feed must bring",
    },
  ];
}

/** A film by itself. */
export function presentRunningFilm(film: RunningFilm): Presentation {
  return Object.freeze<Presentation>({
    title: "Running film",
    blocks: [filmVerdict(film), { type: "facts", facts: filmFacts(film) }, ...starvedWarning(film)],
  });
}

/** What carries the journal; a film that is full only by oil which does not come is none yet. */
function filmVerdict(film: RunningFilm, before: string = ""): Block {
  const unfed = film.starved && film.state === "full film";
  return {
    type: "verdict",
    outcome: unfed ? "cannot tell yet" : outcomes[film.state],
    text: `${before}${unfed ? "a full film would carry it, but its oil is not brought" : words[film.state]}`,
    because: `${film.because[0]!.toUpperCase()}${film.because.slice(1)}.`,
  };
}

function starvedWarning(film: RunningFilm): Block[] {
  return film.starved
    ? [
        {
          type: "warning",
          text: "Less oil is given than a full film loses at its ends: the film is thinner and the box hotter than reckoned here.",
        },
      ]
    : [];
}

/** What each box is foretold to do, and what its uncertainty comes from. */
export function presentRunningPrediction({ boxes, room }: RunningPrediction): Presentation {
  const unit = differenceUnit(room);
  return Object.freeze<Presentation>({
    title: "How the boxes will run",
    blocks: [
      {
        type: "text",
        text: `${boxes.map((box) => `${box.name}: ${formatMeasured(box.rise, { unit })} over the room, ${degrees(box.film.boxTemperature, room)} at ${degrees(room, room)}`).join("; ")}. Written down before the run, to be confirmed or refuted by it.`.replace(
          / \(difference\)/g,
          "",
        ),
      },
      ...boxes.flatMap((box) => boxBlocks(box, unit)),
    ],
  });
}

function boxBlocks(box: BoxPrediction, unit: "deltaF" | "deltaC"): Block[] {
  const { film, name, shares, diametralClearance, load } = box;
  const number = (of: TemperatureDifference): string => formatFixed(of.in(unit), 2);
  return [
    filmVerdict(film, `${name}: `),
    {
      type: "facts",
      facts: [
        {
          label: "diametral clearance",
          value: plusMinus(diametralClearance),
          note: "bore less journal; ± U (95 %)",
        },
        { label: "load", value: plusMinus(load), note: "± U (95 %)" },
        ...filmFacts(film),
      ],
    },
    {
      type: "table",
      caption: `Where the uncertainty of the rise comes from, ${name}`,
      columns: [
        { title: "from", align: "left" },
        { title: "alone makes", unit: unit === "deltaF" ? "°F" : "°C", align: "right" },
      ],
      rows: shares.map(({ from, standardUncertainty }) => ({ cells: [from, number(standardUncertainty)] })),
    },
    ...starvedWarning(film),
  ];
}

/** Clearance against temperature and film. */
export function presentClearanceMap(map: ClearanceMap): Presentation {
  const gaps = map.oils.filter(({ films }) => films.some(({ film }) => film === undefined));
  return Object.freeze<Presentation>({
    title: "Clearance and oil",
    blocks: [
      clearanceFigure(map),
      ...(gaps.length === 0
        ? []
        : [
            {
              type: "warning" as const,
              text: `Where the lines of ${gaps.map(({ oil }) => oil).join(", ")} stop, the box finds no balance below 150 °C (300 °F).`,
            },
          ]),
    ],
  });
}
