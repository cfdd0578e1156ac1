import type { PressRig } from "../../joint/rig-types.js";
import { type Force, formatFixed, type Pressure } from "../../quantity/index.js";
import type { Presentation, TableBlock, VerdictBlock } from "../blocks.js";
import {
  energyText,
  forceRange,
  forceText,
  inUnit,
  type JointUnits,
  jointUnits,
  leastIn,
  mostForceText,
  mostIn,
  stressText,
} from "./joint-text.js";
import { percentText } from "./percent-text.js";
import { rigDrawing, rigDrawingAlt, rigHeadline } from "./rig-drawing.js";
import { warningBlocks } from "./warning-blocks.js";

/** A press rig judged: the verdict, the elevation with its forces, every part with its margin. */
export function presentPressRig(rig: PressRig): Presentation {
  const units = jointUnits(rig.rig.rods.span);
  const { spring, ram } = rig;
  return Object.freeze<Presentation>({
    title: "Press rig",
    blocks: [
      verdict(rig, units),
      {
        type: "drawing",
        drawing: rigDrawing(rig, units),
        narrow: rigDrawing(rig, units, "narrow"),
        alt: rigDrawingAlt(rig, units),
        caption: rigHeadline(rig, units),
      },
      checksTable(rig, units),
      {
        type: "facts",
        facts: [
          {
            label: "rating of the rig",
            value: mostForceText(rig.rating, units),
            note: `by its weakest part, the ${rig.weakest}`,
          },
          {
            label: "gives at its rating",
            value: `${inUnit(spring.beam.plus(spring.rods), units.size, 2)}`,
            note: `beam ${inUnit(spring.beam, units.small, 2)}, rods ${inUnit(spring.rods, units.small, 2)}`,
          },
          {
            label: "energy it holds then",
            value: energyText(spring.energy, units),
            note: "let go in an instant when the hub breaks loose",
          },
          {
            label: "ram",
            value: `${ram.verdict}: ${inUnit(ram.left, units.size, 3)} left, ${inUnit(ram.needed, units.size, 2)} needed`,
            note: "spring of the rig and the hub's own way",
          },
          {
            label: "bearing plate, least thickness",
            value: leastIn(rig.plateThickness, units.size, 3),
            note: `at ${forceText(rig.force, units)}; it is ${inUnit(rig.rig.plate.thickness, units.size, 3)}`,
          },
        ],
      },
      ...warningBlocks(rig.warnings),
    ],
  });
}

function verdict(rig: PressRig, units: JointUnits): VerdictBlock {
  const { needed, rating, weakest, chance } = rig;
  const outcome = { stands: "yes", "does not stand": "no", "cannot tell yet": "cannot tell yet" } as const;
  const range = forceRange(needed, units);
  const text = {
    stands: "The rig stands whatever the hub may need.",
    "does not stand": "The rig does not stand what the hub needs.",
    "cannot tell yet": "Whether the rig is enough cannot be told yet.",
  };
  const more =
    rig.verdict === "stands"
      ? ""
      : ` Stop at ${mostForceText(rating, units)}; make the ${weakest} stronger, or warm the hub.`;
  return {
    type: "verdict",
    outcome: outcome[rig.verdict],
    text: text[rig.verdict],
    because: `Needed ${range}; the weakest part, the ${weakest}, allows ${mostForceText(rating, units)}, enough in ${percentText(chance)} of the cases.${more}`,
  };
}

function checksTable({ checks, force, weakest }: PressRig, units: JointUnits): TableBlock {
  return {
    type: "table",
    stacked: true,
    caption: `Each part at ${forceText(force, units)}, the high end of what is needed`,
    columns: [
      { title: "part", align: "left" },
      { title: "what is loaded", align: "left" },
      { title: "load", align: "right" },
      { title: "may bear", align: "right" },
      { title: "bears / load", align: "right" },
      { title: "verdict", align: "left" },
      { title: "allows", unit: units.system === "inch" ? "lbf" : "kN", align: "right" },
      { title: "by", align: "left" },
    ],
    rows: checks.map((check) => ({
      cells: [
        check.part === weakest ? `${check.part} (weakest)` : check.part,
        check.what,
        loadText(check.load, units),
        capacityText(check.capacity, units),
        formatFixed(check.margin, 2),
        check.verdict,
        mostIn(check.pressForce, units.force, 2).replace(/ \S+$/, ""),
        check.basis,
      ],
      ...(check.verdict === "does not stand" ? { mark: "bad" as const } : {}),
    })),
  };
}

function capacityText(load: Force | Pressure, units: JointUnits): string {
  return load.dimension === "force" ? mostIn(load, units.force, 2) : mostIn(load, units.stress, 3);
}

function loadText(load: Force | Pressure, units: JointUnits): string {
  return load.dimension === "force" ? inUnit(load, units.force, 2) : stressText(load as Pressure, units);
}
