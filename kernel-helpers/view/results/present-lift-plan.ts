import type { LiftPlan, LiftVerdict, PlannedLift } from "../../intake/index.js";
import { formatNumber, type Length, type Measured, unitSystem } from "../../quantity/index.js";
import type { Block, Presentation, TableRow, VerdictBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { type DrawnLift, liftDrawing, liftDrawingAlt } from "./lift-drawing.js";
import { threeAtLeast, threeAtMost } from "./three-digits.js";
import { warningBlocks } from "./warning-blocks.js";

const outcomes: Readonly<Record<LiftVerdict, VerdictBlock["outcome"]>> = {
  holds: "yes",
  "does not hold": "no",
  "cannot tell yet": "cannot tell yet",
};

/** How every part is lifted: one verdict for all, the slings drawn, and each part with mass, centre and slings. */
export function presentLiftPlan(plan: LiftPlan): Presentation {
  const { lifts, unsaid } = plan;
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
      ...slungTable(plan),
      ...handTable(plan),
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
        ? `The heaviest, ${heaviest.what}, weighs at most ${threeAtLeast(heaviest.most)}.`
        : because,
  };
}

function slungTable(plan: LiftPlan): Block[] {
  const slung = plan.lifts.filter(({ handLimit }) => handLimit === undefined);
  if (slung.length === 0) return [];
  return [
    {
      type: "table",
      stacked: true,
      caption: `In slings. Mass and centre of mass along the shaft ± U (95 %); the most a leg pulls: 95 %, one-sided. The hook's tag: ${threeAtMost(plan.hookTag)}`,
      columns: [
        { title: "part", align: "left" },
        { title: "mass", align: "right" },
        { title: "centre at", align: "right" },
        { title: "slings", align: "left" },
        { title: "a leg, at most", align: "right" },
        { title: "its tag", align: "right" },
        { title: "leans up to", align: "right" },
        { title: "verdict", align: "left" },
        { title: "remark", align: "left" },
      ],
      rows: slung.map((one) => slungRow(one, plan)),
    },
  ];
}

function slungRow(one: PlannedLift, plan: LiftPlan): TableRow {
  const { what, mass, centre, massIs, sling, lift, lean, verdict, remark } = one;
  const angles = lift?.legs.map(({ angle }) => `${formatNumber(angle.in("degree"), 2)}°`) ?? [];
  const legs = sling === "one leg" ? [] : [...new Set(angles)];
  return {
    cells: [
      what,
      `${plusMinus(mass, { unit: massUnit(plan) })}${massIs === "weighed" ? ", weighed" : ""}`,
      centre === undefined ? "not known" : placeText(centre, plan),
      [
        sling,
        ...(lift === undefined ? [] : [lift.hitch]),
        ...(legs.length > 0 ? [legs.join(" and ")] : []),
      ].join(", "),
      lift === undefined ? "–" : threeAtLeast(lift.most),
      lift === undefined ? "–" : threeAtMost(lift.slingTag),
      lean === undefined ? "–" : `${formatNumber(lean.in("degree"), 2)}°`,
      verdict,
      remark,
    ],
    ...(verdict === "does not hold" ? { mark: "bad" as const } : {}),
  };
}

function handTable(plan: LiftPlan): Block[] {
  const byHand = plan.lifts.filter(({ handLimit }) => handLimit !== undefined);
  if (byHand.length === 0) return [];
  return [
    {
      type: "table",
      stacked: true,
      caption: "By hand, at best: close to the body, upright, seldom, with a good grip",
      columns: [
        { title: "part", align: "left" },
        { title: "mass, ± U (95 %)", align: "right" },
        { title: "by", align: "left" },
        { title: "goes", align: "left" },
      ],
      rows: byHand.map(({ what, mass, sling, handLimit, verdict, remark }) => ({
        cells: [
          what,
          plusMinus(mass, { unit: massUnit(plan) }),
          remark === "" ? sling : `${sling}, ${remark}`,
          `${verdict === "holds" ? "yes" : verdict}, up to ${threeAtMost(handLimit!)}`,
        ],
        ...(verdict === "does not hold" ? { mark: "bad" as const } : {}),
      })),
    },
  ];
}

function massUnit(plan: LiftPlan): "pound" | "kilogram" {
  return (unitSystem() ?? plan.unitSystem) === "inch" ? "pound" : "kilogram";
}

function placeText(centre: Measured<Length>, plan: LiftPlan): string {
  return plusMinus(centre, { unit: (unitSystem() ?? plan.unitSystem) === "inch" ? "inch" : "mm" });
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
