import { nutFactorOf, type ThreadSurface, threadFriction } from "../handbook/index.js";
import { type Measured, measured, quantityFromSi, type Torque } from "../quantity/index.js";
import { screwTorque } from "./fastener-torque.js";
import type { NutRemoval } from "./fastener-types.js";

/** The torque that breaks a nut loose, by two sets of coefficients that know nothing of each other. */
export interface BreakLooseTwoWays {
  /** From friction in the thread and under the nut. */
  readonly byFriction: Measured<Torque>;
  /** From the nut factor, less what the lead gives back. */
  readonly byFactor: Measured<Torque>;
}

/** What the table of nut factors calls the states a nut is found in. */
const factorStates: Readonly<Record<string, string>> = {
  "anti-seize": "anti-seize",
  oiled: "lubricated",
  dry: "black, dry",
  rusted: "rusted",
  seized: "rusted",
};

/**
 * The torque that breaks a nut loose at the middle of its preload, reckoned a second way: from the nut factor of its
 * state, where `nutRemoval` reckons from friction in the thread and under the nut.
 *
 * byFriction: F [ ½ d₂ (f/cos α − tan λ)/(1 + f tan λ/cos α) + ½ f d_c ];  byFactor: F (K d − p/π)
 *
 * The nut factor is one of tightening. The lead works against the wrench then and with it in loosening, by F p/2π each
 * time; p/π lies between the two. Both coefficients are ranges: middle, and u = half the range/√3.
 *
 * Valid when: as for `nutRemoval`. A seized nut is reckoned as a rusted one: what its wedged flanks add has no second way.
 *
 * @param removal  as `nutRemoval` gives it
 * @returns both torques with their standard uncertainties, preload taken as exact in both [N·m]
 * @throws RangeError  the state has no nut factor
 * @example
 * const removal = nutRemoval({ thread: threadNamed("3/4-16 UNF"), yield: psi(36000), state: "oiled", preload: { low: lbf(1000), high: lbf(1000) } });
 * breakLooseTwoWays(removal).byFactor.value.in("lbfInch") // 115.106
 * @source K: Shigley & Nisbett, Mechanical Engineering Design, 9th ed., eq. 8-27 and table 8-15; the lead's share: work of
 * a screw in one turn, F p; limits as a range: JCGM 100:2008 (GUM), 4.3.7
 */
export function breakLooseTwoWays(removal: NutRemoval): BreakLooseTwoWays {
  const { thread, state, preload, breakLoose } = removal;
  const factorState = factorStates[state];
  if (factorState === undefined)
    throw new RangeError(
      `breakLooseTwoWays: state must be one of ${Object.keys(factorStates).join(", ")}, got "${state}"`,
    );
  const tension = quantityFromSi("force", (preload.low.si + preload.high.si) / 2, preload.low.writtenIn);
  const friction = threadFriction((state === "seized" ? "rusted" : state) as ThreadSurface);
  const factor = nutFactorOf(factorState);
  const byFriction = (f: number): number =>
    screwTorque({ thread, preload: tension, friction: f }, "loosen").whole.si;
  const byFactor = (k: number): number =>
    tension.si * (k * thread.majorDiameter.si - thread.pitch.si / Math.PI);
  const between = (low: number, high: number): Measured<Torque> => {
    const like = (si: number): Torque => quantityFromSi("torque or energy", si, breakLoose.low.writtenIn);
    return measured(like((low + high) / 2), like((high - low) / 2 / Math.sqrt(3)));
  };
  return Object.freeze({
    byFriction: between(byFriction(friction.low), byFriction(friction.high)),
    byFactor: between(byFactor(factor.low), byFactor(factor.high)),
  });
}
