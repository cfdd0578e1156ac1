import type {
  Lift,
  LiftVerdict,
  Masses,
  StoredEnergies,
  StoredEnergy,
  SupportLoads,
} from "../../intake/index.js";
import { formatNumber, inFraction, type Length, type UnitSystem, unitSystem } from "../../quantity/index.js";
import type { Block, Presentation, VerdictBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { energyText, type JointUnits, jointUnits } from "./joint-text.js";
import { liftDrawing, liftDrawingAlt } from "./lift-drawing.js";
import { systemOfLength } from "./shown-units.js";
import { threeAtLeast, threeAtMost, threeDigits } from "./three-digits.js";
import { warningBlocks } from "./warning-blocks.js";

/** What the parts weigh: each with its centre of mass and moment of inertia, and the pieces it was put together from. */
export function presentMasses({
  parts,
  mass,
  centre,
  inertia,
  unitSystem: written,
  warnings,
}: Masses): Presentation {
  const inch = (unitSystem() ?? written) === "inch";
  const [m, x, i] = inch
    ? (["pound", "inch", "poundSquareInch"] as const)
    : (["kilogram", "mm", "kilogramSquareMetre"] as const);
  const row = (name: string, of: Pick<Masses, "mass" | "centre" | "inertia">): { cells: string[] } => ({
    cells: [
      name,
      plusMinus(of.mass, { unit: m }),
      plusMinus(of.centre, { unit: x }),
      plusMinus(of.inertia, { unit: i }),
    ],
  });
  return Object.freeze<Presentation>({
    title: "Masses, reckoned from sizes",
    blocks: [
      {
        type: "table",
        stacked: true,
        caption: "Each ± U (95 %); the moment of inertia about the axis of the shaft",
        columns: [
          { title: "part", align: "left" },
          { title: "mass", align: "right" },
          { title: "centre of mass, along", align: "right" },
          { title: "moment of inertia", align: "right" },
        ],
        rows: [
          ...parts.map((part) => row(part.part, part)),
          ...(parts.length > 1 ? [row("all together", { mass, centre, inertia })] : []),
        ],
      },
      {
        type: "table",
        stacked: true,
        caption: "Put together from",
        columns: [
          { title: "piece", align: "left" },
          { title: "shape", align: "left" },
          { title: "count", align: "right" },
          { title: "metal", align: "left" },
          { title: "mass of all of them", align: "right" },
        ],
        rows: parts.flatMap(({ part, pieces }) =>
          pieces.map(({ piece, shape, count, material, mass: own }) => ({
            cells: [`${part}: ${piece}`, shape, String(count), material, plusMinus(own, { unit: m })],
          })),
        ),
      },
      ...warningBlocks(warnings),
    ],
  });
}

const outcomes: Readonly<Record<LiftVerdict, VerdictBlock["outcome"]>> = {
  holds: "yes",
  "does not hold": "no",
  "cannot tell yet": "cannot tell yet",
};

/** A load in its slings, against the tags of the gear. */
export function presentLift(lift: Lift): Presentation {
  const { what, mass, legs, slingTag, hitch, hookTag, most, mostAtHook, breaks } = lift;
  const verdicts = [lift.slingVerdict, lift.hookVerdict];
  const verdict: LiftVerdict = verdicts.includes("does not hold")
    ? "does not hold"
    : verdicts.includes("cannot tell yet")
      ? "cannot tell yet"
      : "holds";
  const text = {
    holds: "The gear holds it, lifted slowly.",
    "does not hold": "Do not lift it so.",
    "cannot tell yet": "Whether the gear holds cannot be told: weigh it, or take stronger gear.",
  }[verdict];
  const spares = `The most that a leg may pull is ${threeAtLeast(most)}, its tag allows ${threeAtMost(slingTag)}; the hook may carry ${threeAtLeast(mostAtHook)}, its tag allows ${threeAtMost(hookTag)}.`;
  return Object.freeze<Presentation>({
    title: `Lifting the ${what}`,
    blocks: [
      {
        type: "verdict",
        outcome: outcomes[verdict],
        text,
        because: [...breaks.map((one) => `${one.slice(0, 1).toUpperCase()}${one.slice(1)}.`), spares].join(
          " ",
        ),
      },
      {
        type: "drawing",
        drawing: liftDrawing([{ what, lift, verdict }]),
        alt: liftDrawingAlt([{ what, lift, verdict }]),
        caption:
          "The filled circle is the centre of mass: the hook stands over it. Angles are true, sizes are not.",
      },
      {
        type: "table",
        stacked: true,
        caption: `Load ${plusMinus(mass)}; pulls as masses hung straight, ± U (95 %); the most: 95 %, one-sided`,
        columns: [
          { title: "leg", align: "left" },
          { title: "from level", align: "right" },
          { title: "pulls", align: "right" },
          { title: `tag, ${hitch}`, align: "right" },
          { title: "verdict", align: "left" },
        ],
        rows: [
          ...legs.map(({ name, angle, pull, verdict: own }) => ({
            cells: [
              name,
              `${formatNumber(angle.in("degree"), 2)}°`,
              plusMinus(pull),
              threeAtMost(slingTag),
              own,
            ],
            ...(own === "does not hold" ? { mark: "bad" as const } : {}),
          })),
          {
            cells: ["hook", "90°", plusMinus(mass), threeAtMost(hookTag), lift.hookVerdict],
            ...(lift.hookVerdict === "does not hold" ? { mark: "bad" as const } : {}),
          },
        ],
      },
      ...warningBlocks([
        ...lift.warnings,
        ...(hitch === "choker"
          ? ["A choker closed to less than 120° allows less than its tag says: look at the maker's table."]
          : []),
      ]),
    ],
  });
}

/** What two supports carry, and whether the part rests on both. */
export function presentSupportLoads({ what, mass, centre, supports, state }: SupportLoads): Presentation {
  const text = {
    rests: "It rests on both supports.",
    tips: "It tips over a support: move the supports apart, or tie it down.",
    "cannot tell yet": "It may tip: one support is too lightly loaded to tell.",
  }[state];
  const outcome = state === "rests" ? "yes" : state === "tips" ? "no" : state;
  return Object.freeze<Presentation>({
    title: `The ${what} on two supports`,
    blocks: [
      {
        type: "verdict",
        outcome,
        text,
        because: `${plusMinus(mass)} with its centre at ${plusMinus(centre)}.`,
      },
      {
        type: "facts",
        facts: supports.map(({ at, load }) => ({
          label: `support at ${placeText(at)}`,
          value: `carries ${plusMinus(load)}`,
          note: "± U (95 %)",
        })),
      },
    ],
  });
}

/** One store of energy. */
export function presentStoredEnergy(store: StoredEnergy): Presentation {
  return presentStores(`Energy in the ${store.what}`, [store]);
}

/** All stores, the largest first, each with what is done before. */
export function presentStoredEnergies({ stores }: StoredEnergies): Presentation {
  return presentStores("Stored energy, the largest first", stores);
}

function presentStores(title: string, stores: readonly StoredEnergy[]): Presentation {
  const kinds = [...new Set(stores.map(({ store }) => store))];
  return Object.freeze<Presentation>({
    title,
    blocks: [
      {
        type: "table",
        stacked: true,
        caption: "Energy ± U (95 %)",
        columns: [
          { title: "what", align: "left" },
          { title: "kind", align: "left" },
          { title: "reckoned from", align: "left" },
          { title: "energy", align: "right" },
          { title: "as much as", align: "left" },
        ],
        rows: stores.map(({ what, store, from, energy }) => ({
          cells: [
            what,
            store,
            from,
            energy.standardUncertainty.si === 0 ? `about ${threeDigits(energy.value)}` : plusMinus(energy),
            energyText(energy.value, unitsOf(energy.value.writtenIn === "joule" ? "metric" : "inch")).replace(
              /^.*?: /,
              "",
            ),
          ],
        })),
      },
      ...kinds.map(
        (kind): Block => ({
          type: "caution",
          title: `${kind.slice(0, 1).toUpperCase()}${kind.slice(1)}: before a hand goes near`,
          points: stores.find(({ store }) => store === kind)!.before,
        }),
      ),
      {
        type: "text",
        text: "Local codes, the machine's own instructions and licensed practice come before anything written here.",
      },
    ],
  });
}

function unitsOf(written: UnitSystem): JointUnits {
  return jointUnits({ writtenIn: written === "inch" ? "inch" : "mm" } as Length);
}

function placeText(at: Length): string {
  if ((unitSystem() ?? systemOfLength(at)) !== "inch") return `${formatNumber(at.in("mm"), 5)} mm`;
  const fraction = inFraction(at);
  return /thou$/.test(fraction) ? `${formatNumber(at.in("inch"), 5)} in` : fraction;
}
