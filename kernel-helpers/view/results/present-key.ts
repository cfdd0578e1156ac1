import type { StandardKey } from "../../handbook/index.js";
import { formatFixed, formatNumber, type Length } from "../../quantity/index.js";
import type { KeyStrength, KeyseatAfterCut } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { chanceText } from "./chance-text.js";
import { inUnit, type JointUnits, jointUnits, mostIn, stressText } from "./joint-text.js";
import { keyseatDrawing } from "./keyseat-drawing.js";
import { nominalText, shownUnits, sizeText, smallText, systemOfLength } from "./shown-units.js";
import { factorText, momentText, strengthOutcome, strengthUnits } from "./strength-text.js";
import { warningBlocks } from "./warning-blocks.js";

/** A key judged: shear and sides, the weakest named. */
export function presentKeyStrength(found: KeyStrength): Presentation {
  const units = strengthUnits(found.diameter.value);
  const sizes = shownUnits(units.system);
  const { key, checks, weakest, demanded, force, verdict } = found;
  const worst = checks.find(({ what }) => what === weakest)!;
  const factor = formatNumber(demanded, 3);
  const text = {
    holds: `The key bears its torque with the factor ${factor} that is demanded.`,
    "does not hold": `The key does not bear its torque with the factor ${factor} that is demanded.`,
    "cannot tell yet": `Whether the key bears its torque with the factor ${factor} cannot be told yet.`,
  };
  return Object.freeze<Presentation>({
    title: "Key",
    blocks: [
      {
        type: "verdict",
        outcome: strengthOutcome[verdict],
        text: text[verdict],
        because: `Weakest: ${weakest}, factor ${factorText(worst.factor)}; chance that it is below ${factor}: ${chanceText(worst.factor.chanceBelow)}.`,
      },
      {
        type: "table",
        caption: "Ways to give, 95 % intervals",
        columns: [
          { title: "what", align: "left" },
          { title: "stress", align: "right" },
          { title: "bears", align: "right" },
          { title: "factor", align: "right" },
          { title: `below ${factor}`, align: "right" },
          { title: "by", align: "left" },
        ],
        rows: checks.map((check) => ({
          cells: [
            check.what === weakest ? `${check.what} (weakest)` : check.what,
            stressText(check.stress, units),
            // Where the check is of shear, the strength in shear.
            mostIn(check.strength, units.stress, 3),
            factorText(check.factor),
            chanceText(check.factor.chanceBelow),
            check.basis,
          ],
          ...(check.factor.high < demanded
            ? { mark: "bad" as const }
            : check.factor.low < demanded
              ? { mark: "warn" as const }
              : {}),
        })),
      },
      {
        type: "facts",
        facts: [
          {
            label: "key",
            value: `${key.form}, ${size(key.width, units)} × ${size(key.height, units)} × ${size(key.length, units)}${key.count === 2 ? ", two" : ""}`,
            note: key.steel.name,
          },
          {
            label: "in the shaft, in the hub",
            value: `${size(found.seatDepth, units)}, ${size(found.hubDepth, units)}`,
            note: "depth of the key at the side of its seats",
          },
          {
            label: "shaft",
            value: sizeText(found.diameter.value, sizes),
            note: `torque ${momentText(found.torque, units)}`,
          },
          {
            label: "force on the side of the key",
            value:
              force.standardUncertainty.si > 0
                ? plusMinus(force, { unit: units.force as "lbf" | "kilonewton" })
                : inUnit(force.value, units.force, 3),
          },
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

/** What a cut leaves of a keyseat, drawn, with what a micrometer must read. */
export function presentKeyseatAfterCut(found: KeyseatAfterCut): Presentation {
  const units = jointUnits(found.before);
  const sizes = shownUnits(units.system);
  const shown = (value: Length): string => sizeText(value, sizes);
  const { share, deepen, keyProud } = found;
  return Object.freeze<Presentation>({
    title: "Keyseat after the cut",
    blocks: [
      {
        type: "text",
        text:
          share === 0
            ? "The cut takes the whole seat away."
            : `The key bears on ${shown(found.sideAfter)} of ${shown(found.sideBefore)} at the side of its seat: ${formatFixed(100 * share, 0)} % is left. The floor ${smallText(deepen, sizes)} deeper gives it all back.`,
      },
      {
        type: "drawing",
        drawing: keyseatDrawing(found, shown),
        alt: `Section of the shaft at its keyseat: round before and after the cut, the seat's floor, and what a micrometer reads from the floor to the far side, ${shown(found.floorToFarSide)}.`,
        caption: "Section, to scale. Dashed: the shaft before the cut, and the floor deepened.",
      },
      {
        type: "facts",
        facts: [
          {
            label: "floor to far side, seat as it is",
            value: shown(found.floorToFarSide),
            note: `on ${shown(found.after)}, seat ${shown(found.width)} wide`,
          },
          {
            label: "floor to far side, seat deepened",
            value: shown(found.floorToFarSideDeepened),
            note: `floor ${smallText(deepen, sizes)} deeper; less steel is left under it`,
          },
          ...(keyProud === undefined
            ? []
            : [
                {
                  label: "the key stands above the sides",
                  value: shown(keyProud),
                  note: "must go into the hub's keyway with a little clearance on top",
                },
              ]),
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

/** A key of a standard, with its seats. */
export function presentStandardKey(key: StandardKey): Presentation {
  const units = shownUnits(systemOfLength(key.width));
  const shown = (value: Length): string => nominalText(value, units);
  return Object.freeze<Presentation>({
    title: `Key ${shown(key.width)} × ${shown(key.height)}`,
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "form", value: key.form },
          { label: "shafts", value: `over ${shown(key.over)} to ${shown(key.toIncluding)}` },
          {
            label: "seat in the shaft",
            value: shown(key.seatDepth),
            note: key.depthAt === "side" ? "deep at the side of the seat" : "deep from the top of the round",
          },
          { label: "keyway in the hub", value: shown(key.hubDepth), note: key.source },
        ],
      },
    ],
  });
}

function size(value: Length, { size: unit }: JointUnits): string {
  return inUnit(value, unit, 4);
}
