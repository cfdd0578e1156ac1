import { type Angle, degree, type Length, type Measured, quantityFromSi } from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";
import { hangOf } from "./hang.js";
import type { LiftOptions } from "./lift.js";
import type { LiftRow } from "./lift-plan-rows.js";
import type { LiftVerdict } from "./lift-types.js";

/** Beyond it a sling creeps along, and a part comes down on its edge (common practice, no source). */
const mostLean = degree(10);

/** Where the two points lie to either side of the centre of mass. */
export interface SlingPoints {
  readonly points: LiftOptions["points"];
  readonly verdict: LiftVerdict;
  readonly against: readonly string[];
}

/** The points of a row as `liftOf` takes them; not where the centre of mass may lie outside of them. */
export function slingPoints(row: LiftRow, centre: Measured<Length> | undefined): SlingPoints {
  const { sling, first, second, hookAbove, where, what } = row;
  if (sling === "one leg") return { points: undefined, verdict: "holds", against: [] };
  if (sling === "two across")
    return { points: { left: first!, right: second!, hookAbove: hookAbove! }, verdict: "holds", against: [] };
  if (centre === undefined)
    throw new RangeError(
      `${where}, column "sling": found two along, expected one leg: where the centre of mass of ${what} lies is not known; add its pieces to the table of pieces`,
    );
  const [near, far] = first!.si < second!.si ? [first!, second!] : [second!, first!];
  const wide = wideOf(centre);
  const [left, right] = [centre.value.minus(near), far.minus(centre.value)];
  const least = Math.min(left.si, right.si);
  if (least > wide) return { points: { left, right, hookAbove: hookAbove! }, verdict: "holds", against: [] };
  return least < -wide
    ? {
        points: undefined,
        verdict: "does not hold",
        against: ["its centre of mass lies outside the two slings: it tips out of them"],
      }
    : {
        points: undefined,
        verdict: "cannot tell yet",
        against: ["its centre of mass may lie outside the two slings: set them further apart"],
      };
}

/** How far a part leans at most that hangs from one place along its axis. */
export function leanOf(
  row: LiftRow,
  centre: Measured<Length> | undefined,
): { readonly lean: Angle | undefined; readonly verdict: LiftVerdict; readonly against: readonly string[] } {
  const { sling, heldAt, overCentre, where } = row;
  if (sling === "two along" || centre === undefined || (heldAt === undefined && overCentre === undefined))
    return { lean: undefined, verdict: "holds", against: [] };
  if (heldAt === undefined || overCentre === undefined)
    throw new RangeError(
      `${where}, column "${heldAt === undefined ? "held at" : "over centre"}": found nothing, expected a value: both tell how it hangs; or - in both`,
    );
  const off = Math.abs(heldAt.si - centre.value.si) + wideOf(centre);
  const { lean, turnsOver } = hangOf(quantityFromSi("length", off, heldAt.writtenIn), overCentre);
  if (turnsOver || overCentre.si === 0)
    return {
      lean,
      verdict: "does not hold",
      against: [
        `its points lie ${turnsOver ? "below" : "level with"} the centre of mass: it turns over in the slings`,
      ],
    };
  return lean > mostLean
    ? {
        lean,
        verdict: "does not hold",
        against: [
          `it may lean ${lean.in("degree").toFixed(0)}°, more than ${mostLean.in("degree")}°: sling it over its centre of mass`,
        ],
      }
    : { lean, verdict: "holds", against: [] };
}

function wideOf({ standardUncertainty, degreesOfFreedom }: Measured<Length>): number {
  return coverageFactor(0.9, degreesOfFreedom) * standardUncertainty.si;
}
