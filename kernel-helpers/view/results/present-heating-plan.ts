import type { HeatingCase, HeatingPlan } from "../../joint/heating-types.js";
import type { Presentation, TableBlock, VerdictBlock } from "../blocks.js";
import { heatingFigure } from "./heating-figure.js";
import {
  inUnit,
  type JointUnits,
  jointUnits,
  leastIn,
  leastWarmerText,
  mostWarmerText,
  stressText,
  timeText,
} from "./joint-text.js";
import { warningBlocks } from "./warning-blocks.js";

/** A hub heated on its shaft: whether it comes loose, when, for how long, and whether the flame would crack it. */
export function presentHeatingPlan(plan: HeatingPlan): Presentation {
  const units = jointUnits(plan.remaining);
  return Object.freeze<Presentation>({
    title: "Heating the hub on its shaft",
    blocks: [
      windowVerdict(plan, units),
      gentleVerdict(plan, units),
      heatingFigure(plan, units),
      casesTable(plan, units),
      {
        type: "facts",
        facts: [
          { label: "hub may get as hot as", value: String(plan.hottest), note: plan.hubMaterial },
          {
            label: "interference that may be left",
            value: inUnit(plan.remaining, units.small, 2),
            note: plan.remaining.si === 0 ? "heat alone" : "the press does the rest",
          },
          {
            label: "mass heated",
            value: inUnit(plan.hubMass, units.system === "inch" ? "pound" : "kilogram", 3),
            note: "the hub alone; spokes and rim take heat besides",
          },
        ],
      },
      ...warningBlocks(plan.warnings),
    ],
  });
}

function windowVerdict({ verdict, cases }: HeatingPlan, units: JointUnits): VerdictBlock {
  const [easy, middle, hard] = cases;
  const text = {
    yes: "It comes loose in every case: the window opens.",
    no: "It never comes loose this way: the shaft warms as fast as the hub.",
    "cannot tell yet": "Whether the window opens cannot be told yet.",
  };
  return {
    type: "verdict",
    outcome: verdict,
    text: text[verdict],
    because: [easy, middle, hard].map((one) => caseText(one, units)).join(" "),
  };
}

function caseText(
  { name, opens, open, mostDifference, neededDifference, leastPower }: HeatingCase,
  units: JointUnits,
): string {
  const label = `${name[0]!.toUpperCase()}${name.slice(1)} case:`;
  return opens === undefined
    ? `${label} never opens; the hub leads the shaft by ${mostWarmerText(mostDifference, units)} at most and must by ${leastWarmerText(neededDifference, units)}, which takes at least ${leastIn(leastPower, "kilowatt", 2)} into the hub.`
    : `${label} opens after ${timeText(opens)}, stays open ${timeText(open)}.`;
}

function gentleVerdict(
  { gentle, cases, strength, hubMaterial }: HeatingPlan,
  units: JointUnits,
): VerdictBlock {
  const most = cases.reduce((worst, one) => (one.tension > worst.tension ? one : worst));
  return {
    type: "verdict",
    outcome: gentle ? "yes" : "no",
    text: gentle ? "The flame is gentle enough for the hub." : "The flame is too fierce for the hub.",
    because: `Tension at the bore, of the fit and of uneven heat together, up to ${stressText(most.tension, units)} (${most.name} case); ${hubMaterial} bears ${stressText(strength, units)}, and two thirds of that is taken as the limit.`,
  };
}

function casesTable({ cases }: HeatingPlan, units: JointUnits): TableBlock {
  return {
    type: "table",
    stacked: true,
    caption:
      "Easy: least interference, most heat, poorest contact with the shaft. Hard: the reverse. Times from lighting the flame; the hub leads the shaft by so much at most, and must by so much",
    columns: [
      { title: "case", align: "left" },
      { title: "interference", align: "right" },
      { title: "heat in", align: "right" },
      { title: "opens", align: "right" },
      { title: "closes", align: "right" },
      { title: "open for", align: "right" },
      { title: "flame off", align: "right" },
      { title: "hub leads by", align: "right" },
      { title: "must by", align: "right" },
    ],
    rows: cases.map((one) => ({
      cells: [
        one.name,
        inUnit(one.interference, units.small, 2),
        inUnit(one.power, "kilowatt", 2),
        one.opens === undefined ? "never" : timeText(one.opens),
        one.closes === undefined ? "" : timeText(one.closes),
        one.opens === undefined ? "" : timeText(one.open),
        timeText(one.flameOff),
        mostWarmerText(one.mostDifference, units),
        leastWarmerText(one.neededDifference, units),
      ],
      ...(one.opens === undefined ? { mark: "warn" as const } : {}),
    })),
  };
}
