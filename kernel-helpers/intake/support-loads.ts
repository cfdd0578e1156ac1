import {
  isQuantity,
  type Length,
  type Mass,
  type Measured,
  measured,
  quantityFromSi,
} from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";

/** A part resting on two supports. */
export interface SupportLoads {
  readonly kind: "support loads";
  readonly what: string;
  readonly mass: Measured<Mass>;
  readonly centre: Measured<Length>;
  readonly supports: readonly { readonly at: Length; readonly load: Measured<Mass> }[];
  /** Rests on both; tips over one; or too close to tell at 95 %. */
  readonly state: "rests" | "tips" | "cannot tell yet";
}

/**
 * What two supports carry under a shaft with its wheels: vee blocks, stands, slings.
 *
 * R₁ = m·(x₂ − x)/(x₂ − x₁), R₂ = m − R₁; u² = (∂R/∂m·u(m))² + (∂R/∂x·u(x))²; a load below 0 lifts off: the shaft tips
 *
 * Valid when: both supports carry straight up. The part is stiff or not: with two supports that makes no difference.
 *
 * @param body.mass  with its centre along the shaft, as `massesOf` gives them: > 0 [kg], [m]
 * @param at  stations of both supports, in any order, apart [m]
 * @returns loads of the supports, in the order of their stations, as masses [kg], and whether it rests
 * @throws RangeError  the supports stand at one place, or the mass is not above 0
 * @example
 * const body = { mass: measured(pound(90), pound(1)), centre: measured(inch(30), inch(0)) };
 * supportLoads("shaft", body, [inch(0), inch(40)]).supports[0].load.value.in("pound") // 22.5
 * @source statics of the lever
 */
export function supportLoads(
  what: string,
  body: { readonly mass: Measured<Mass>; readonly centre: Measured<Length> },
  at: readonly [Length, Length],
): SupportLoads {
  const { mass, centre } = body;
  if (!(mass.value.si > 0)) throw new RangeError(`supportLoads: mass must be above 0, got ${mass.value}`);
  if (!at.every((one) => isQuantity(one, "length")) || at.length !== 2 || at[0].si === at[1].si)
    throw new RangeError(
      `supportLoads: two supports at different stations must be given, got ${at.join(", ")}`,
    );
  const [first, second] = at[0].si < at[1].si ? at : [at[1], at[0]];
  const span = second.si - first.si;
  const share = (second.si - centre.value.si) / span;
  const load = (part: number): Measured<Mass> =>
    measured(
      quantityFromSi("mass", mass.value.si * part, mass.value.writtenIn),
      quantityFromSi(
        "mass",
        Math.hypot(
          part * mass.standardUncertainty.si,
          (mass.value.si / span) * centre.standardUncertainty.si,
        ),
        mass.value.writtenIn,
      ),
      Math.min(mass.degreesOfFreedom, centre.degreesOfFreedom),
    );
  const supports = [
    Object.freeze({ at: first, load: load(share) }),
    Object.freeze({ at: second, load: load(1 - share) }),
  ];
  const states = supports.map(({ load: { value, standardUncertainty, degreesOfFreedom } }) => {
    const wide = coverageFactor(0.9, degreesOfFreedom) * standardUncertainty.si;
    return value.si - wide > 0 ? "rests" : value.si + wide <= 0 ? "tips" : "cannot tell yet";
  });
  return Object.freeze({
    kind: "support loads",
    what,
    mass,
    centre,
    supports: Object.freeze(supports),
    state: states.includes("tips")
      ? "tips"
      : states.includes("cannot tell yet")
        ? "cannot tell yet"
        : "rests",
  });
}
