import { type Angle, quantityFromSi } from "../../quantity/index.js";

/** A level parting line of a box, as seen from the end drawn. */
export interface Joint {
  readonly side: "right" | "left";
  /** From the load, either way, 0 to 180° [rad]. */
  readonly fromLoad: Angle;
  /** Far enough from the load to be grooved and relieved. */
  readonly grooved: boolean;
}

/** Half the arc that must stay whole, to either side of the load [deg]; common practice, no source. */
export const wholeArc = 60;

/**
 * Which of the two joints of a box may have an oil groove: those at least 60° from the load.
 *
 * angle = |ψ − load| the shorter way round, ψ = 90° on the right and 270° on the left, from straight down.
 *
 * Valid when: box parted level. At least one joint is always far enough.
 *
 * @param load  from straight down, counter-clockwise as seen from the end drawn [rad]
 * @returns the right joint, then the left one
 * @example jointsToLoad(degree(299)).map(({ grooved }) => grooved).join() // "true,false"
 * @source elementary; the arc: common practice, no source
 */
export function jointsToLoad(load: Angle): readonly [Joint, Joint] {
  const joint = (side: Joint["side"], psi: number): Joint => {
    const between = Math.acos(Math.cos(psi - load.si));
    const degrees = (between * 180) / Math.PI;
    return Object.freeze({
      side,
      fromLoad: quantityFromSi("angle", between, "degree"),
      // A load square to the joints lies 90° from both: rounding must not decide.
      grooved: degrees > wholeArc - 1e-6,
    });
  };
  return Object.freeze([joint("right", Math.PI / 2), joint("left", -Math.PI / 2)]);
}
