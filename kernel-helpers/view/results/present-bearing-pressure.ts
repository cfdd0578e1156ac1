import type { BearingPressure } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { chanceText } from "./chance-text.js";
import { inUnit, jointUnits, mostIn, rangeText } from "./joint-text.js";
import { shownUnits, sizeText } from "./shown-units.js";
import { factorText, strengthOutcome } from "./strength-text.js";
import { warningBlocks } from "./warning-blocks.js";

/** The pressure in a poured bearing against its service and its metal. */
export function presentBearingPressure(found: BearingPressure): Presentation {
  const { system, force } = jointUnits(found.diameter.value);
  const unit = system === "inch" ? "psi" : "megapascal";
  const { againstService, againstMetal, pressure, usual, service, verdict } = found;
  const exact = pressure.standardUncertainty.si === 0;
  const text = {
    holds: "The bearing is large enough for its load.",
    "does not hold": "The bearing is too small for its load.",
    "cannot tell yet": "Whether the bearing is large enough for its load cannot be told yet.",
  };
  return Object.freeze<Presentation>({
    title: "Pressure in the bearing",
    blocks: [
      {
        type: "verdict",
        outcome: strengthOutcome[verdict],
        text: text[verdict],
        because: `${exact ? inUnit(pressure.value, unit, 3) : formatMeasured(pressure, { unit })} on ${sizeText(found.diameter.value, shownUnits(system))} × ${inUnit(found.length, system === "inch" ? "inch" : "mm", 4)}; ${service} is usually loaded to ${inUnit(usual.high, unit, 3)}. Chance to be above that: ${chanceText(againstService.chanceBelow)}.`,
      },
      {
        type: "facts",
        facts: [
          {
            label: "load",
            value:
              found.force.standardUncertainty.si === 0
                ? inUnit(found.force.value, force, 3)
                : plusMinus(found.force, { unit: force as "lbf" | "kilonewton" }),
          },
          {
            label: `usual for ${service}`,
            value: rangeText(usual, unit, 3),
            note: `high end over pressure: ${factorText(againstService)}; handbook, from memory`,
          },
          {
            label: `a third of the yield point of ${found.metal}, warm`,
            value: mostIn(found.allowed, unit, 3),
            note: `over pressure: ${factorText(againstMetal)}; a third: common practice, no source`,
          },
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}
