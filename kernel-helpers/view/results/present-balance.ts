import { formatFixed, formatNumber, type Mass, measured, unitNamed } from "../../quantity/index.js";
import type {
  Balance,
  BalanceOnWays,
  BalanceRuns,
  BalanceWithoutPhase,
  CorrectionShare,
  DrilledHoles,
  PermissibleUnbalance,
  SplitCorrection,
  UnbalanceVerdict,
} from "../../shaft/index.js";
import type { Block, Presentation } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { balanceFace } from "./balance-face.js";
import { balancePolar } from "./balance-polar.js";
import { chanceText } from "./chance-text.js";
import { countText } from "./count-text.js";
import { threeAtMost, threeDigits } from "./three-digits.js";
import { warningBlocks } from "./warning-blocks.js";

/** Static balance on ways: what to hang where, the wheel's face, and each mass tried. */
export function presentBalanceOnWays(found: BalanceOnWays): Presentation {
  const { heavy, correction, friction, radius, readings, chance, warnings } = found;
  const real = chance < 0.01;
  const unit = correction.mass.value.writtenIn;
  const massNumber = (mass: Mass): string => formatNumber(mass.si / unitNamed(unit as never).si, 3);
  return Object.freeze<Presentation>({
    title: `Balance of ${found.title} on ways`,
    blocks: [
      {
        type: "text",
        text: real
          ? `Hang ${plusMinus(correction.mass)} at ${threeDigits(radius)} from the axis, at ${plusMinus(correction.angle)} (95 %).`
          : `No heavy side stands out of what the masses scatter (chance ${chanceText(chance)}): on ways it is balanced.`,
      },
      {
        type: "drawing",
        drawing: balanceFace({
          title: "Wheel on ways",
          heavy: real ? heavy.angle.value.in("degree") : undefined,
          masses: real
            ? [{ angle: correction.angle.value.in("degree"), text: threeDigits(correction.mass.value) }]
            : [],
          marks: readings.map(({ angle }) => angle.in("degree")),
        }),
        alt: real
          ? `The wheel's face, 0° at the top: heavy towards ${threeDigits(heavy.angle.value)}, the correcting mass at ${threeDigits(correction.angle.value)}.`
          : "The wheel's face, 0° at the top, without a heavy side.",
      },
      {
        type: "facts",
        facts: [
          {
            label: "unbalance",
            value: formatMeasured(heavy.amount),
            note: `mass times radius; chance that a balanced wheel shows so much: ${chanceText(chance)}`,
          },
          { label: "heavy side", value: formatMeasured(heavy.angle) },
          {
            label: "rolling friction",
            value: `${threeDigits(friction)} at the same radius`,
            note: "the mean of the masses: what each position needs, balanced or not",
          },
        ],
      },
      {
        type: "table",
        caption: "The mass that just starts the wheel rolling, mark by mark",
        columns: [
          { title: "line", align: "right" },
          { title: "mark level", unit: "°", align: "right" },
          { title: "mass", unit: unitNamed(unit as never).symbol, align: "right" },
          { title: "less the fit", unit: unitNamed(unit as never).symbol, align: "right" },
        ],
        rows: readings.map(({ line, angle, mass, left }) => ({
          cells: [
            String(line),
            formatNumber(angle.in("degree"), 4),
            massNumber(mass),
            formatFixed(left.si / unitNamed(unit as never).si, unit === "gram" ? 1 : 2),
          ],
        })),
        showRows: 12,
      },
      ...warningBlocks(warnings),
    ],
  });
}

/** The runs as they were read; what they say is had by balance(runs). */
export function presentBalanceRuns(runs: BalanceRuns): Presentation {
  const planes = runs.planes.map(({ name }) => name || "the plane").join(", ");
  const pickups = runs.pickups.map(({ name }) => name || "the pickup").join(", ");
  return Object.freeze<Presentation>({
    title: `Balancing runs of ${runs.title}`,
    blocks: [
      {
        type: "text",
        text: `${countText(runs.runs.length, "run")}; masses in ${planes}, read at ${pickups}.`,
      },
    ],
  });
}

/** A balance by trial masses: what to fasten to each plane. */
export function presentBalance(found: Balance): Presentation {
  const blocks: Block[] = [
    {
      type: "text",
      text: `${found.planes
        .map(
          ({ plane, mass, radius, angle }) =>
            `${plane === "" ? "Fasten" : `Plane ${plane}:`} ${plusMinus(mass)} at ${threeDigits(radius)} from the axis, at ${plusMinus(angle)}`,
        )
        .join("; ")} (95 %), every trial mass taken off.`,
    },
    ...found.planes.map(
      ({ plane, mass, angle }): Block => ({
        type: "drawing",
        drawing: balanceFace({
          title: plane === "" ? "Correction" : `Plane ${plane}`,
          heavy: (angle.value.in("degree") + 180) % 360,
          masses: [{ angle: angle.value.in("degree"), text: threeDigits(mass.value) }],
          marks: [],
        }),
        alt: `The wheel's face, 0° at the top: ${threeDigits(mass.value)} to fasten at ${threeDigits(angle.value)}, opposite the heavy side.`,
      }),
    ),
    ...found.pickups.map(
      (pickup): Block => ({
        type: "drawing",
        drawing: balancePolar(pickup),
        alt: `Polar figure${pickup.name === "" ? "" : ` of ${pickup.name}`}: each run's reading as a vector, 0° at the top, growing clockwise.`,
      }),
    ),
    {
      type: "table",
      caption: "By plane; ± U (95 %)",
      columns: [
        { title: "plane", align: "left" },
        { title: "unbalance", align: "right" },
        { title: "mass", align: "right" },
        { title: "at", align: "right" },
        { title: "expected to stay", align: "right" },
        { title: "left in the last run", align: "right" },
        { title: "if the last run's masses stay on, add", align: "right" },
      ],
      rows: found.planes.map(({ plane, unbalance, mass, angle, expectedLeft, left, fromLastRun }) => ({
        cells: [
          plane === "" ? "the one" : plane,
          plusMinus(unbalance.amount),
          plusMinus(mass),
          plusMinus(angle),
          threeDigits(expectedLeft),
          plusMinus(left.amount),
          `${threeDigits(fromLastRun.mass)} at ${threeDigits(fromLastRun.angle)}`,
        ],
      })),
    },
  ];
  if (found.linearChance !== undefined)
    blocks.push({
      type: "text",
      text: `The ${found.runCount} runs are more than are needed; so much misfit between them has a chance of ${chanceText(found.linearChance)}.`,
    });
  return Object.freeze<Presentation>({
    title: `Balance of ${found.title} by trial masses`,
    blocks: [...blocks, ...warningBlocks(found.warnings)],
  });
}

/** A balance from amplitudes alone. */
export function presentBalanceWithoutPhase(found: BalanceWithoutPhase): Presentation {
  const { mass, angle, radius, trialMass, amount, warnings } = found;
  return Object.freeze<Presentation>({
    title: `Balance of ${found.title}, amplitudes alone`,
    blocks: [
      {
        type: "text",
        text: `Fasten ${plusMinus(mass)} at ${threeDigits(radius)} from the axis, at ${plusMinus(angle)} (95 %), the trial mass taken off.`,
      },
      {
        type: "drawing",
        drawing: balanceFace({
          title: "Correction",
          heavy: (angle.value.in("degree") + 180) % 360,
          masses: [{ angle: angle.value.in("degree"), text: threeDigits(mass.value) }],
          marks: [],
        }),
        alt: `The wheel's face, 0° at the top: ${threeDigits(mass.value)} to fasten at ${threeDigits(angle.value)}, opposite the heavy side.`,
      },
      {
        type: "facts",
        facts: [
          { label: "unbalance", value: threeDigits(amount), note: "mass times radius" },
          { label: "trial mass", value: threeDigits(trialMass), note: "the same at every place" },
        ],
      },
      ...warningBlocks(warnings),
    ],
  });
}

/** What a grade permits. */
export function presentPermissibleUnbalance(found: PermissibleUnbalance): Presentation {
  const { grade, mass, speed, amount, eccentricity, atBearings } = found;
  return Object.freeze<Presentation>({
    title: `Permissible unbalance, grade G ${formatNumber(grade)}`,
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "permitted", value: threeAtMost(amount), note: "mass times radius, of the whole rotor" },
          {
            label: "as an offset of the centre of mass",
            value: threeAtMost(eccentricity),
            note: "on radius",
          },
          ...(atBearings === undefined
            ? []
            : [{ label: "at the two bearings", value: atBearings.map(threeAtMost).join(" and ") }]),
          { label: "rotor", value: `${threeDigits(mass)} at ${threeDigits(speed)}`, note: "ISO 21940-11" },
        ],
      },
    ],
  });
}

/** Whether an unbalance may stay. */
export function presentUnbalanceVerdict(found: UnbalanceVerdict): Presentation {
  const { state, amount, permissible, grade, chanceWithin, margin } = found;
  return Object.freeze<Presentation>({
    title: "Unbalance against the grade",
    blocks: [
      {
        type: "verdict",
        outcome: state === "within" ? "yes" : state === "beyond" ? "no" : "cannot tell yet",
        text:
          state === "within"
            ? `within grade G ${formatNumber(grade)}`
            : state === "beyond"
              ? `beyond grade G ${formatNumber(grade)}`
              : "cannot tell yet",
        because: `Found ${plusMinus(amount)} (95 %), permitted ${threeAtMost(permissible)}: margin ${threeDigits(margin)}, chance of lying within ${chanceText(chanceWithin)}.${state === "cannot tell yet" ? " One more run with the mass in another place would narrow it." : ""}`,
      },
    ],
  });
}

/** A correction at places that exist. */
export function presentSplitCorrection(found: SplitCorrection): Presentation {
  const amount = ({ mass, uMass }: CorrectionShare): string =>
    uMass === undefined ? threeDigits(mass) : plusMinus(measured(mass, uMass));
  const shares = found.shares.map(
    (share) =>
      `${amount(share)} at ${threeDigits(share.angle)}${share.radius === undefined ? "" : `, ${threeDigits(share.radius)} from the axis`}`,
  );
  const own = found.shares.some(({ radius }) => radius !== undefined);
  const stated = found.shares.some(({ uMass }) => uMass !== undefined);
  return Object.freeze<Presentation>({
    title: "Correction at places that exist",
    blocks: [
      {
        type: "text",
        text: `${shares.join(" and ")} ${shares.length === 1 ? "does" : "do"} the work of ${threeDigits(found.mass)} at ${threeDigits(found.angle)}${own ? "" : ", all at one radius"}${stated ? " (95 %)" : ""}.`,
      },
      {
        type: "drawing",
        drawing: balanceFace({
          title: "Correction at places that exist",
          heavy: undefined,
          masses: found.shares.map(({ mass, angle }) => ({
            angle: angle.in("degree"),
            text: threeDigits(mass),
          })),
          marks: [found.angle.in("degree")],
        }),
        alt: `The wheel's face, 0° at the top: ${shares.join(" and ")}; the angle wanted is marked on the rim.`,
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

/** Holes on the heavy side instead of a mass added. */
export function presentDrilledHoles(found: DrilledHoles): Presentation {
  const { angle, count, drill, depth, deepest, each, mass } = found;
  return Object.freeze<Presentation>({
    title: "Holes to drill instead",
    blocks: [
      {
        type: "text",
        text: `${countText(count, "hole")} of ${drill}, each ${threeDigits(depth)} deep without ${count === 1 ? "its" : "their"} point, at ${threeDigits(angle)}, the heavy side, in a row along the axis: ${threeDigits(each)} each, ${threeDigits(mass)} together. No hole goes deeper than ${deepest}.`,
      },
    ],
  });
}
