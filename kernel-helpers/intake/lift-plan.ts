import {
  formatNumber,
  type Length,
  type Mass,
  type Measured,
  measured,
  quantityFromSi,
  shownUnit,
  unitNamed,
} from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";
import type { Table } from "../survey/index.js";
import { handLiftLimit } from "./hand-lift.js";
import type { PartsLedger } from "./ledger-types.js";
import { liftOf } from "./lift.js";
import { type LiftRow, liftRows } from "./lift-plan-rows.js";
import { leanOf, type SlingPoints, slingPoints } from "./lift-plan-slings.js";
import type { LiftPlan, PlannedLift } from "./lift-plan-types.js";
import type { Lift, LiftVerdict } from "./lift-types.js";
import { massesTogether } from "./masses-together.js";
import type { Masses } from "./masses-types.js";

const people: Readonly<Record<string, number>> = { "one person": 1, "two persons": 2, "three persons": 3 };

/**
 * How every part is lifted, from a table: columns part ("shaft + second pulley" for what comes off in one piece), sling
 * (one leg, two along, two across, one person, two persons, three persons), hitch, weighed and within (`-` where the mass
 * is reckoned from its pieces), first and second (two along: stations of the points; two across: their distances from the
 * axis), held at (station of one leg, or of both points across), over centre (how high the points lie over the centre of mass),
 * hook above (the points), sling tag.
 *
 * Each is judged by the most it may weigh, the pulls of its legs (`liftOf`), and whether it hangs level: two legs along
 * must have the centre of mass between them; of others, tan φ = e/h (`hangOf`) with the centre as far off as it may lie
 * (mean + 1.645·u). Leaning more than 10° does not hold (common practice, no source). By hand: `handLiftLimit`.
 *
 * Valid when: lifted slowly, the hook over the centre of mass, the centre on the axis: the heavy side of a wheel hangs
 * down until it is there.
 *
 * @param masses  as `massesOf` returns them
 * @param table  of lifts
 * @param gear.hookTag  the least of the tags of hook, hoist and what they hang from, > 0 [kg]
 * @param gear.ledger  to tell which of its parts no row lifts
 * @returns every lift with mass, centre, pulls, lean and verdict
 * @throws RangeError  a row is not such a lift, or a mass is neither weighed nor reckoned; file, line and column are named
 * @example
 * const header = "part [text],sling [text],hitch [text],weighed [lb],within [lb],first [in],second [in],held at [in],over centre [in],hook above [in],sling tag [lb]";
 * const bytes = new TextEncoder().encode(`${header}\ncap,two persons,-,40,2,-,-,-,-,-,-`);
 * const pieces = new TextEncoder().encode("part [text],piece [text],shape [text],count [-],across [in],far [in],inside [in],length [in],thick [in],along [in],material [text]\nrod,rod,cylinder,1,1,-,-,9,-,0,steel");
 * const masses = massesOf(readTable(pieces, { name: "pieces", file: "pieces.csv" }));
 * liftPlan(masses, readTable(bytes, { name: "lifts", file: "lifts.csv" }), { hookTag: pound(1000) }).verdict // "holds"
 * @source statics; limits of a rectangular distribution: JCGM 100:2008 (GUM), 4.3.7
 */
export function liftPlan(
  masses: Masses,
  table: Table,
  gear: { readonly hookTag: Mass; readonly ledger?: PartsLedger | undefined },
): LiftPlan {
  const lifts = liftRows(table).map((row) => planned(row, masses, gear.hookTag));
  const named = new Set(lifts.flatMap(({ parts }) => parts.map((part) => part.toLowerCase())));
  return Object.freeze<LiftPlan>({
    kind: "lift plan",
    title: table.name,
    lifts: Object.freeze(lifts),
    hookTag: gear.hookTag,
    verdict: worst(lifts.map(({ verdict }) => verdict)),
    unsaid: Object.freeze(
      (gear.ledger?.parts ?? []).flatMap(({ part }) => (named.has(part.toLowerCase()) ? [] : [part])),
    ),
    unitSystem: masses.unitSystem,
  });
}

function planned(row: LiftRow, masses: Masses, hookTag: Mass): PlannedLift {
  const { what, parts, sling, remark, line } = row;
  const known = parts.every((name) =>
    masses.parts.some(({ part }) => part.toLowerCase() === name.toLowerCase()),
  );
  const together = known ? massesTogether(masses, parts) : undefined;
  const mass = row.weighed === undefined ? together?.mass : limits(row.weighed);
  if (mass === undefined)
    throw new RangeError(
      `${row.where}, column "weighed": found nothing, expected the mass of ${what}: it is not in ${masses.title} (${masses.parts.map(({ part }) => part).join(", ")}); weigh it, or add its pieces`,
    );
  const most = quantityFromSi(
    "mass",
    mass.value.si + coverageFactor(0.9, mass.degreesOfFreedom) * mass.standardUncertainty.si,
    mass.value.writtenIn,
  );
  const centre = together?.centre;
  const persons = people[sling];
  const judged =
    persons === undefined
      ? inSlings(row, mass, centre, hookTag)
      : byHand(mass, handLiftLimit(persons, masses.unitSystem === "inch" ? "pound" : "kilogram"), most);
  return Object.freeze<PlannedLift>({
    what,
    parts,
    mass,
    massIs: row.weighed === undefined ? "reckoned" : "weighed",
    centre,
    sling,
    most,
    ...judged,
    remark,
    line,
  });
}

type Judged = Pick<PlannedLift, "lift" | "handLimit" | "lean" | "verdict" | "against">;

function byHand(mass: Measured<Mass>, handLimit: Mass, most: Mass): Judged {
  const verdict: LiftVerdict =
    most.si <= handLimit.si
      ? "holds"
      : 2 * mass.value.si - most.si > handLimit.si
        ? "does not hold"
        : "cannot tell yet";
  const against =
    verdict === "holds"
      ? []
      : [`it may weigh ${spoken(most)}, and by hand goes at best ${spoken(handLimit)}: sling it`];
  return { lift: undefined, handLimit, lean: undefined, verdict, against: Object.freeze(against) };
}

function inSlings(
  row: LiftRow,
  mass: Measured<Mass>,
  centre: Measured<Length> | undefined,
  hookTag: Mass,
): Judged {
  const points: SlingPoints = slingPoints(row, centre);
  const lean = leanOf(row, centre);
  const lift = points.verdict === "holds" ? liftIn(row, mass, points.points, hookTag) : undefined;
  const against = [
    ...points.against,
    ...lean.against,
    ...(lift?.breaks ?? []),
    ...(lift !== undefined && lift.slingVerdict !== "holds" && lift.breaks.length === 0
      ? [`a leg may pull ${spoken(lift.most)}, and its tag allows ${spoken(lift.slingTag)}`]
      : []),
    ...(lift !== undefined && lift.hookVerdict !== "holds"
      ? [`the hook may carry ${spoken(lift.mostAtHook)}, and its tag allows ${spoken(lift.hookTag)}`]
      : []),
  ];
  return {
    lift,
    handLimit: undefined,
    lean: lean.lean,
    verdict: worst([
      points.verdict,
      lean.verdict,
      ...(lift === undefined ? [] : [lift.slingVerdict, lift.hookVerdict]),
    ]),
    against: Object.freeze(against),
  };
}

function liftIn(row: LiftRow, mass: Measured<Mass>, points: SlingPoints["points"], hookTag: Mass): Lift {
  try {
    return liftOf({
      what: row.what,
      mass,
      hitch: row.hitch as "vertical",
      slingTag: row.slingTag!,
      hookTag,
      ...(points === undefined ? {} : { points }),
    });
  } catch (error) {
    throw new RangeError(`${row.where}: ${(error as Error).message}`);
  }
}

/** A mass known within ± a, any value as likely as another. */
function limits({ mass, within }: { readonly mass: Mass; readonly within: Mass }): Measured<Mass> {
  return measured(mass, quantityFromSi("mass", within.si / Math.sqrt(3), mass.writtenIn));
}

function worst(verdicts: readonly LiftVerdict[]): LiftVerdict {
  if (verdicts.includes("does not hold")) return "does not hold";
  return verdicts.includes("cannot tell yet") ? "cannot tell yet" : "holds";
}

function spoken(mass: Mass): string {
  const { si, symbol } = unitNamed(shownUnit("mass", mass.writtenIn) ?? "kilogram");
  return `${formatNumber(mass.si / si, 3)} ${symbol}`;
}
