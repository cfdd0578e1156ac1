import type {
  BoxPrediction,
  ClearanceMap,
  FilmUncertainty,
  RunningFilm,
  RunningPrediction,
} from "../../bearing/index.js";
import {
  formatFixed,
  formatNumber,
  type KindName,
  type Length,
  measured,
  type Quantity,
  type Temperature,
  type TemperatureDifference,
  type UnitName,
  unitNamed,
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

/** A figure as it is told: with ± U (95 %) where its uncertainty is known. */
function told<K extends KindName>(
  value: Quantity<K>,
  u: Quantity<K> | undefined,
  unit: UnitName,
  digits: number,
): string {
  if (u !== undefined) return plusMinus(measured(value, u), { unit });
  return `${formatNumber(value.in(unit as never), digits)} ${unitNamed(unit).symbol}`;
}

/** A temperature with the U (95 %) of a standard uncertainty, in whole degrees. */
function warmth(t: Temperature, u: TemperatureDifference | undefined, room: Temperature): string {
  if (u === undefined) return degrees(t, room);
  const expanded = 1.96 * u.in(differenceUnit(room));
  return degrees(t, room).replace(/ (°[FC])$/, ` ± ${formatNumber(Math.max(1, Math.round(expanded)), 2)} $1`);
}

function filmFacts(film: RunningFilm, u?: FilmUncertainty, rise?: TemperatureDifference): Fact[] {
  const inch = inFahrenheit(film.room);
  const small = inch ? "thou" : "micrometre";
  const stress = inch ? "psi" : "megapascal";
  return [
    {
      label: "box",
      value: warmth(film.boxTemperature, rise, film.room),
      note: `room at ${degrees(film.room, film.room)}`,
    },
    {
      label: "film",
      value: warmth(film.filmTemperature, u?.filmTemperature, film.room),
      note: `${film.oil}, ${formatNumber(film.viscosity.in("millipascalSecond"), 3)} mPa·s there`,
    },
    {
      label: "least film",
      value: told(film.leastFilm, u?.leastFilm, small, 2),
      note: `of a radial clearance of ${told(film.radialClearance, undefined, small, 3)}; ${formatNumber(film.filmRatio, 2)} times the roughness`,
    },
    {
      label: "thinnest",
      value: `${formatFixed(film.attitude.in("degree"), 0)}${u === undefined ? "" : ` ± ${formatFixed(Math.max(1, 1.96 * u.attitude.in("degree")), 0)}`}° on from the load`,
      note: "in the direction of rotation",
    },
    {
      label: "mean pressure",
      value: told(film.meanPressure, u?.meanPressure, stress, 3),
      note: `highest ${told(film.highestPressure, u?.highestPressure, stress, 3)}`,
    },
    {
      label: "friction",
      value: told(film.frictionPower, u?.frictionPower, "watt", 2),
      note: `coefficient ${formatNumber(film.frictionCoefficient, 2)}`,
    },
    {
      label: "oil lost at the ends",
      value: `${told(film.sideFlow, u?.sideFlow, "cm3PerHour", 2).replace(/ cm³\/h$/, " cm³")} an hour`,
      note: "of a full film: what a ring, wick or drop feed must bring",
    },
    ...shortFacts(film, (length) => told(length, u?.shortLeastFilm, small, 2)),
  ];
}

/** A film by itself. */
export function presentRunningFilm(film: RunningFilm): Presentation {
  return Object.freeze<Presentation>({
    title: "Running film",
    blocks: [filmVerdict(film), { type: "facts", facts: filmFacts(film) }, ...starvedWarning([{ film }])],
  });
}

function anHour(cubicCentimetres: number): string {
  return `${formatNumber(cubicCentimetres, 2)} cm³ an hour`;
}

/** What film the oil that is brought keeps up. */
function shortFacts({ short, sideFlow, grooves }: RunningFilm, small: (length: Length) => string): Fact[] {
  if (short === undefined) return [];
  const { share, begins, leastFilm, filmRatio, friction } = short;
  const degrees = begins.in("degree");
  // Past the load the film is as long as before it, at most.
  const parted = grooves.some(({ si }) => Math.abs(si) < Math.abs(begins.si));
  return [
    {
      label: "oil brought",
      value: anHour(share * sideFlow.in("cm3PerHour")),
      note: `${formatNumber(100 * share, 2)} % of that`,
    },
    {
      label: "least film on it",
      value: small(leastFilm),
      note: `${formatNumber(filmRatio, 2)} times the roughness; the film begins only ${formatFixed(Math.abs(degrees), 0)}° ${degrees < 0 ? "before" : "behind"} the load${parted ? ", and a parting line, which is not reckoned with here, lies within it: thinner still" : ""}`,
    },
    {
      label: "friction on it",
      value: `${formatNumber(friction.least, 2)} to ${formatNumber(friction.most, 2)} times that of a full film`,
      note: "how much of the ring is wet is not known",
    },
  ];
}

const shortWords = {
  "full film": "short of oil; what film there is keeps the metals apart",
  mixed: "short of oil; it runs on part film, part metal",
  boundary: "short of oil; no film to speak of",
} as const;

/** What carries the journal; a film that is full only by oil which does not come is none yet. */
function filmVerdict(film: RunningFilm, before: string = ""): Block {
  const { short, state } = film;
  const unfed = short !== undefined && short.state === "full film" && state === "full film";
  return {
    type: "verdict",
    outcome: unfed ? "cannot tell yet" : outcomes[short?.state ?? state],
    text: `${before}${short === undefined ? words[state] : shortWords[short.state]}`,
    because: `${film.because[0]!.toUpperCase()}${film.because.slice(1)}.`,
  };
}

/** Drops of oil in a cubic centimetre; common practice, no source. */
const dropsInCc = 25;

/** What oil is wanting and what helps: once, however many films are short. */
function starvedWarning(films: readonly { readonly name?: string; readonly film: RunningFilm }[]): Block[] {
  const short = films.flatMap(({ name, film: { short: of, sideFlow } }) => {
    if (of === undefined) return [];
    const lost = sideFlow.in("cm3PerHour");
    const drops = formatNumber((lost * dropsInCc) / 60, 2);
    const text = `the oil brought${name === undefined ? "" : ` to ${name}`} is ${formatNumber(100 * of.share, 2)} % of what a full film loses at its ends (${anHour(lost)}, about ${drops} drops a minute)`;
    return [{ text, holds: of.state === "full film" }];
  });
  if (short.length === 0) return [];
  const told = short.map(({ text }) => text).join("; ");
  const means = short.every(({ holds }) => holds)
    ? "the film on the oil brought is thinner and forgives less: a bend, grit or a start from cold may break it"
    : "the oil brought does not keep it up everywhere: metal touches, it wears, and may seize";
  return [
    {
      type: "warning",
      text: `${told[0]!.toUpperCase()}${told.slice(1)}. Temperature and least film are those of a full film; ${means}. What helps: oil that stays (a ring, a bath, felt or wick packing), ends that return what they lose, a groove that spreads each drop along the box, and a thicker oil. Until then open the drops wide, and run the first hours with a thermometer in each box. Counted at ${dropsInCc} drops to a cubic centimetre (common practice, no source).`,
    },
  ];
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
      ...starvedWarning(boxes),
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
        ...filmFacts(film, box.uncertainty, box.rise.standardUncertainty),
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
  ];
}

/** Clearance against temperature and film. */
export function presentClearanceMap(map: ClearanceMap): Presentation {
  const gaps = map.oils.filter(({ films }) => films.some(({ film }) => film === undefined));
  return Object.freeze<Presentation>({
    title: "Clearance and oil",
    blocks: [
      clearanceFigure(map),
      ...intendedTable(map),
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

/** What each oil does at the clearance intended, with ± U (95 %). */
function intendedTable({ oils, intended }: ClearanceMap): Block[] {
  const room = oils.find(({ atIntended }) => atIntended !== undefined)?.atIntended?.film.room;
  if (intended === undefined || room === undefined) return [];
  const small = inFahrenheit(room) ? "thou" : "micrometre";
  return [
    {
      type: "table",
      caption: `With ${formatNumber(intended.in(small), 3)} ${unitNamed(small).symbol} of diametral clearance, ± U (95 %)`,
      columns: [
        { title: "oil", align: "left" },
        { title: "box", align: "right" },
        { title: "least film", align: "right" },
        { title: "carried by", align: "left" },
      ],
      rows: oils.map(({ oil, atIntended: at }) => ({
        cells:
          at === undefined
            ? [oil, "no balance", "", ""]
            : [
                oil,
                warmth(at.film.boxTemperature, at.rise.standardUncertainty, room),
                told(at.film.leastFilm, at.uncertainty.leastFilm, small, 2),
                at.film.state,
              ],
      })),
    },
  ];
}
