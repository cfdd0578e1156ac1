import type { FitFriction } from "../../handbook/fit-friction.js";
import type { FitAtSpeed, FitByFormula, InterferenceByPractice, SeatOnTaper } from "../../joint/index.js";
import { formatLimit } from "../../quantity/index.js";
import type { Presentation, VerdictBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { forceText, inUnit, jointUnits, leastIn, rangeText, stressText } from "./joint-text.js";
import { percentText } from "./percent-text.js";
import { threeDigits } from "./three-digits.js";

/** Where a hub sits: mean diameter, length in contact, taper. */
function presentSeat({ diameter, length, taper }: SeatOnTaper): Presentation {
  const units = jointUnits(length);
  return Object.freeze<Presentation>({
    title: "Seat of the hub",
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "diameter half-way", value: formatMeasured(diameter, { unit: units.size }) },
          { label: "length in contact", value: inUnit(length, units.size, 4), note: "along the axis" },
          { label: "taper", value: plusMinus(taper), note: "diameter per length, ± U (95 %)" },
        ],
      },
    ],
  });
}

/** The interference that the trade gives a hub of this size. */
function presentInterference(given: InterferenceByPractice): Presentation {
  const units = jointUnits(given.diameter);
  const [low, high] = given.shares.map((share) => share.toString());
  return Object.freeze<Presentation>({
    title: "Interference by practice",
    blocks: [
      {
        type: "facts",
        facts: [
          {
            label: "interference",
            value: rangeText(given, units.small, 2),
            note: `on diameter: ${low} to ${high} of ${inUnit(given.diameter, units.size, 4)}; ${given.source}`,
          },
        ],
      },
    ],
  });
}

/** Friction of a fit by the state of its surfaces. */
function presentFitFriction({ surface, means, low, high, source }: FitFriction): Presentation {
  return Object.freeze<Presentation>({
    title: `Friction, ${surface}`,
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "coefficient of friction", value: `${low} to ${high}`, note: `${means}; ${source}` },
        ],
      },
    ],
  });
}

/** The press-off force a second way. */
function presentFitByFormula(check: FitByFormula): Presentation {
  const { pressure, pressOff, cases, apart, within, agrees } = check;
  const units = jointUnits({ writtenIn: pressOff.writtenIn === "lbf" ? "inch" : "mm" } as never);
  return Object.freeze<Presentation>({
    title: "One case by the formulas, against the middle of many",
    blocks: [
      {
        type: "verdict",
        outcome: agrees ? "yes" : "no",
        text: agrees ? "they agree" : "they do not agree",
        because: `The forces are ${percentText(apart)} apart, where ${percentText(within)} may be: the middle of a product is not quite the product of the middles.`,
      },
      {
        type: "table",
        stacked: true,
        caption: "The middle of every range in the formulas; the middle of the cases drawn",
        columns: [
          { title: "", align: "left" },
          { title: "formulas", align: "right" },
          { title: "cases", align: "right" },
        ],
        rows: [
          { cells: ["pressure", stressText(pressure, units), stressText(cases.pressure, units)] },
          { cells: ["force off", forceText(pressOff, units), forceText(cases.pressOff, units)] },
        ],
      },
    ],
  });
}

/** Whether running loosens a hub. */
function presentFitAtSpeed(result: FitAtSpeed): Presentation {
  const { speed, lost, interference, share, loosensAt, verdict } = result;
  const units = jointUnits(lost);
  const looks: Readonly<Record<FitAtSpeed["verdict"], readonly [VerdictBlock["outcome"], string]>> = {
    stays: ["yes", "Running leaves it as tight as it is."],
    weakens: ["cannot tell yet", "Running takes a part of the fit that counts."],
    loosens: ["no", "Running may loosen it."],
  };
  const [outcome, text] = looks[verdict];
  return Object.freeze<Presentation>({
    title: `The fit at ${threeDigits(speed)}`,
    blocks: [
      {
        type: "verdict",
        outcome,
        text,
        because:
          share === undefined
            ? "There may be no interference at all."
            : `It takes ${share < 0.001 ? "less than 0.1 %" : `at most ${percentText(share)}`} of the least interference${loosensAt === undefined ? "" : `; all of it would be gone at ${formatLimit(loosensAt.in("rpm"), 2, "at most")} rpm`}.`,
      },
      {
        type: "facts",
        facts: [
          {
            label: "lost, at most",
            value: leastIn(lost, units.small, 2),
            note: "on diameter, heaviest and softest hub",
          },
          {
            label: "interference at rest",
            value: rangeText(interference, units.small, 2),
            note: "on diameter",
          },
        ],
      },
    ],
  });
}

/** What a hub's fit starts from, and what is made of it besides. */
export type FitInputResult = SeatOnTaper | InterferenceByPractice | FitFriction | FitByFormula | FitAtSpeed;

/** How each is shown. */
export const fitInputLooks: {
  readonly [K in FitInputResult["kind"]]: (result: Extract<FitInputResult, { kind: K }>) => Presentation;
} = {
  "seat on taper": presentSeat,
  "interference by practice": presentInterference,
  "fit friction": presentFitFriction,
  "fit by formula": presentFitByFormula,
  "fit at speed": presentFitAtSpeed,
};
