import type { Chill, PourPlan } from "../../bearing/index.js";
import {
  formatFixed,
  formatLimit,
  type Length,
  type Mass,
  measured,
  type Temperature,
} from "../../quantity/index.js";
import type { Fact, Presentation, TableBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { alike } from "./alike.js";
import { inUnit, jointUnits, leastIn, rangeText } from "./joint-text.js";
import { grooveRule, narrowPourDrawing, pourDrawing, pourDrawingAlt } from "./pour-drawing.js";
import { warningBlocks } from "./warning-blocks.js";

const outcomes = {
  fills: "yes",
  "cannot tell yet": "cannot tell yet",
  "freezes before it fills": "no",
} as const;
const answers = {
  fills: "It fills before it freezes.",
  "cannot tell yet": "Whether it fills before it freezes cannot be told yet.",
  "freezes before it fills": "It freezes before it fills.",
} as const;

/** The card to take to the pour: will it fill, the box ready to pour, sizes, metal, heat and time. */
export function presentPourPlan(plan: PourPlan): Presentation {
  const units = jointUnits(plan.shellBore);
  const inchShop = units.system === "inch";
  const size = (length: Length): string =>
    inchShop ? `${formatFixed(length.in("inch"), 3)} in` : `${formatFixed(length.in("mm"), 2)} mm`;
  const fine = (length: Length): string =>
    inchShop ? `${formatFixed(length.in("inch"), 4)} in` : `${formatFixed(length.in("mm"), 3)} mm`;
  return Object.freeze<Presentation>({
    title: `Pour card: ${plan.name}`,
    ownPage: true,
    blocks: [
      {
        type: "verdict",
        outcome: outcomes[plan.verdict],
        text: answers[plan.verdict],
        because: `Filled in ${inUnit(plan.fillTime, "second", 2)}. ${plan.because}`,
      },
      {
        type: "drawing",
        drawing: pourDrawing(plan, size),
        narrow: narrowPourDrawing(plan, size),
        alt: pourDrawingAlt(plan, size),
        caption: "Bore and mandrel to scale with each other, iron and shims not.",
      },
      {
        type: "facts",
        facts: [...sizeFacts(plan, fine), ...metalFacts(plan, inchShop), ...heatFacts(plan, inchShop)],
      },
      onTheDay(plan, fine, inchShop),
      ...warningBlocks(plan.warnings),
    ],
  });
}

/** What is looked at and written down at the pour, with room for it. */
function onTheDay(plan: PourPlan, fine: (length: Length) => string, inchShop: boolean): TableBlock {
  const degrees = degreesIn(inchShop);
  const { chill, castBore, pouringWithin } = plan;
  const off = formatFixed(pouringWithin.in(inchShop ? "deltaF" : "deltaC"), 0);
  const latest = latestText(chill);
  const blank = "________";
  const rows: readonly (readonly [string, string])[] = [
    ["shield, leathers, respirator; air on; sand, way out and a second person", "all there"],
    ["shell, mandrel, dams, ladle, every tool: heated until no steam rises", "all dry"],
    ["dams tight, vents open, mandrel held down, shims in", "all so"],
    ["shell, mandrel", `${degrees(plan.shellPreheat)}, ${degrees(plan.mandrelPreheat)}`],
    ["metal, stirred and skimmed", degrees(plan.pouring).replace(/ (°[FC])$/, ` ± ${off} $1`)],
    ["time from the first drop to full", `at most ${latest}`],
    ["bore as cast, cold", `${fine(castBore.least)} to ${fine(castBore.largest)}`],
  ];
  return {
    type: "table",
    caption: "Before the ladle is lifted, and what came out",
    columns: [
      { title: "look at", align: "left" },
      { title: "to be", align: "left" },
      { title: "was", align: "left" },
    ],
    rows: rows.map(([what, wanted]) => ({ cells: [what, wanted, blank] })),
  };
}

/** The longest that filling may take, against good contact and against soot: both are limits, so both are cut down. */
function latestText({ quick, slow }: PourPlan["chill"]): string {
  const ends = [quick, slow].map(({ beginsToFreeze }) => formatLimit(beginsToFreeze.si, 2, "at most"));
  return `${alike(ends, 2).join(" to ")} s`;
}

function degreesIn(inchShop: boolean): (t: Temperature) => string {
  return (t) => (inchShop ? `${formatFixed(t.in("degF"), 0)} °F` : `${formatFixed(t.in("degC"), 0)} °C`);
}

function sizeFacts(plan: PourPlan, fine: (length: Length) => string): Fact[] {
  const units = jointUnits(plan.shellBore);
  const { journal, castBore, toTakeOff } = plan;
  return [
    {
      label: "turn the mandrel to",
      value: `${plusMinus(measured(plan.mandrel, journal.standardUncertainty), { unit: units.size })}`,
      note: "diameter, measured cold, as sure (95 %) as the journal is; so that even the largest bore the casting may come to leaves the allowance: turned larger, it leaves so much less to scrape",
    },
    {
      label: "finished bore",
      value: plusMinus(measured(plan.finishedBore, journal.standardUncertainty), { unit: units.size }),
      note: `journal ${plusMinus(journal)} (95 %) and ${inUnit(plan.clearance, units.small, 3)} of DIAMETRAL clearance`,
    },
    {
      label: "bore as cast",
      value: `${fine(castBore.least)} to ${fine(castBore.largest)}`,
      note: "free of the shell, and held by it",
    },
    {
      label: "to scrape or bore off",
      value: rangeText({ low: toTakeOff.least, high: toTakeOff.most }, units.small, 2),
      note: "on diameter; where it is much, bore first and scrape the last",
    },
    { label: "oil grooves", value: grooveRule(plan) },
  ];
}

function metalFacts(plan: PourPlan, inchShop: boolean): Fact[] {
  const { volumes, alloy } = plan;
  const unit = inchShop ? "inch3" : "litre";
  const weight = (mass: Mass): string => inUnit(mass, inchShop ? "pound" : "kilogram", 3);
  return [
    { label: "metal", value: alloy.name, note: `${alloy.base} base` },
    {
      label: "put into the pot",
      value:
        plan.toMeltUncertainty === undefined
          ? weight(plan.toMelt)
          : `${plusMinus(measured(plan.toMelt, plan.toMeltUncertainty), { unit: inchShop ? "pound" : "kilogram" })} (95 %)`,
      note: `what is left over harms nothing, what is wanting spoils it; ${weight(plan.mass)} in the casting, the rest for dross and ladle; lining ${inUnit(volumes.lining, unit, 3)}, anchors ${inUnit(volumes.anchors, unit, 2)}, riser ${inUnit(volumes.riser, unit, 2)}`,
    },
    {
      label: "lift on the mandrel",
      value: `at most ${leastIn(plan.lift, inchShop ? "lbf" : "newton", 2)}`,
      note: "hold it down, and the dams in",
    },
  ];
}

function heatFacts(plan: PourPlan, inchShop: boolean): Fact[] {
  const degrees = degreesIn(inchShop);
  const { alloy, chill } = plan;
  const solid = ({ solid: time }: Chill): string =>
    time === undefined ? "never" : inUnit(time, "second", 2);
  return [
    {
      label: "pour at",
      value: degrees(plan.pouring),
      note: `molten from ${degrees(alloy.liquidus)} on, solid below ${degrees(alloy.solidus)}`,
    },
    {
      label: "preheat",
      value: `shell ${degrees(plan.shellPreheat)}, mandrel ${degrees(plan.mandrelPreheat)}`,
      note: "held long enough to be dry to the bottom of every crack and anchor",
    },
    {
      label: "fill within",
      value: latestText(chill),
      note: `it stops running after ${rangeText({ low: chill.quick.stopsRunning, high: chill.slow.stopsRunning }, "second", 2)}; good contact first, soot or chalk last`,
    },
    {
      label: "leave alone until solid",
      value: `${solid(chill.quick)} to ${solid(chill.slow)}`,
      note: `metal, shell and mandrel would meet at ${degrees(plan.meets)}`,
    },
  ];
}
