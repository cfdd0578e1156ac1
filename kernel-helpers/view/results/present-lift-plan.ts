import type { LiftPlan, LiftVerdict, PlannedLift } from "../../intake/index.js";
import { formatNumber, type Length, type Measured, unitSystem } from "../../quantity/index.js";
import type { Block, Presentation, TableRow, VerdictBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { type DrawnLift, liftDrawing, liftDrawingAlt } from "./lift-drawing.js";
import { threeDigits } from "./three-digits.js";
import { warningBlocks } from "./warning-blocks.js";

const outcomes: Readonly<Record<LiftVerdict, VerdictBlock["outcome"]>> = {
  holds: "yes",
  "does not hold": "no",
  "cannot tell yet": "cannot tell yet",
};

/** How every part is lifted: one verdict for all, the slings drawn, and each part with mass, centre and slings. */
export function presentLiftPlan(plan: LiftPlan): Presentation {
  const { lifts, hookTag, unsaid } = plan;
  const drawn = lifts.flatMap((one): DrawnLift[] =>
    one.lift === undefined ? [] : [{ what: one.what, lift: one.lift, verdict: one.verdict }],
  );
  const chokers = lifts.some(({ lift }) => lift?.hitch === "choker");
  return Object.freeze<Presentation>({
    title: "How every part is lifted",
    blocks: [
      verdictOf(plan),
      ...(drawn.length === 0
        ? []
        : [
            {
              type: "drawing" as const,
              drawing: liftDrawing(drawn),
              alt: liftDrawingAlt(drawn),
              caption:
                "The filled circle is the centre of mass: the hook stands over it. Angles are true, sizes are not.",
            },
          ]),
      {
        type: "table",
        caption: `Mass ± U (95 %); the most a leg pulls: 95 %, one-sided. The hook's tag: ${threeDigits(hookTag)}`,
        columns: [
          { title: "part", align: "left" },
          { title: "mass", align: "right" },
          { title: "how", align: "left" },
          { title: "at most", align: "right" },
          { title: "allowed", align: "right" },
          { title: "leans up to", align: "right" },
          { title: "verdict", align: "left" },
        ],
        rows: lifts.map((one) => rowOf(one, plan)),
      },
      {
        type: "table",
        caption: "Centre of mass along the shaft, ± U (95 %): the hook goes over it",
        columns: [
          { title: "part", align: "left" },
          { title: "centre at", align: "right" },
          { title: "mass is", align: "left" },
          { title: "remark", align: "left" },
        ],
        rows: lifts.map(({ what, centre, massIs, remark }) => ({
          cells: [what, centre === undefined ? "–" : placeText(centre, plan), massIs, remark],
        })),
      },
      ...warningBlocks([
        ...(unsaid.length === 0
          ? []
          : [`Nobody has said how these are lifted: ${unsaid.join(", ")}. Add a row for each.`]),
        ...(chokers
          ? ["A choker closed to less than 120° allows less than its tag says: look at the maker's table."]
          : []),
      ]),
    ] satisfies readonly Block[],
  });
}

function verdictOf({ lifts, verdict }: LiftPlan): VerdictBlock {
  const wrong = lifts.filter((one) => one.verdict === verdict);
  const names = wrong.map(({ what }) => what).join(", ");
  const text = {
    holds: "Every part is held, lifted slowly.",
    "does not hold": `Do not lift so: ${names}.`,
    "cannot tell yet": `It cannot be told yet for: ${names}.`,
  }[verdict];
  const because = lifts
    .filter((one) => one.verdict !== "holds")
    .map(({ what, against }) => `${capital(what)}: ${against.join("; ")}.`)
    .join(" ");
  const heaviest = lifts.reduce((most, one) => (one.most.si > most.most.si ? one : most));
  return {
    type: "verdict",
    outcome: outcomes[verdict],
    text,
    because:
      because === ""
        ? `The heaviest, ${heaviest.what}, weighs at most ${threeDigits(heaviest.most)}.`
        : because,
  };
}

function rowOf(one: PlannedLift, plan: LiftPlan): TableRow {
  const { what, mass, sling, lift, handLimit, lean, most, verdict } = one;
  const inch = (unitSystem() ?? plan.unitSystem) === "inch";
  const angles = lift?.legs.map(({ angle }) => `${formatNumber(angle.in("degree"), 2)}°`) ?? [];
  const how =
    handLimit !== undefined
      ? `by hand, ${sling}`
      : sling === "one leg"
        ? `one leg, ${lift?.hitch ?? ""}`
        : `${sling}${lift === undefined ? "" : `, ${lift.hitch}, ${[...new Set(angles)].join(" and ")}`}`;
  return {
    cells: [
      what,
      plusMinus(mass, { unit: inch ? "pound" : "kilogram" }),
      how,
      threeDigits(lift === undefined ? most : lift.most),
      lift !== undefined
        ? threeDigits(lift.slingTag)
        : handLimit !== undefined
          ? threeDigits(handLimit)
          : "–",
      lean === undefined ? "–" : `${formatNumber(lean.in("degree"), 2)}°`,
      verdict,
    ],
    ...(verdict === "does not hold" ? { mark: "bad" as const } : {}),
  };
}

function placeText(centre: Measured<Length>, plan: LiftPlan): string {
  return plusMinus(centre, { unit: (unitSystem() ?? plan.unitSystem) === "inch" ? "inch" : "mm" });
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
