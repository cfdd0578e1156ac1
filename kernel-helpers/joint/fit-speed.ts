import {
  type Density,
  type Length,
  type Pressure,
  quantityFromSi,
  type RotationalSpeed,
} from "../quantity/index.js";
import { requireBetween, requireQuantity, requireSmaller } from "./fit-check.js";

/** One part of a spinning fit. */
export interface SpinningPart {
  readonly density: Density;
  readonly modulus: Pressure;
  readonly poisson: number;
}

/** A fit that turns. */
export interface SpinningFit {
  readonly diameter: Length;
  readonly hub: SpinningPart & { readonly outside: Length };
  readonly shaft: SpinningPart & { readonly bore?: Length };
  readonly speed: RotationalSpeed;
}

/**
 * How much of its DIAMETRAL interference a fit loses as it turns: the hub's bore opens more than the shaft grows.
 *
 * disc with a hole: growth of the bore's diameter = ρ ω² d/(16 E)·[(3 + ν) D² + (1 − ν) d²];
 * shaft: ρ ω² d/(16 E)·[(1 − ν) d² + (3 + ν) b²]; the loss is the first less the second
 *
 * Valid when: both are discs of one thickness (plane stress). The rim of a pulley pulls on its hub besides, by its
 * spokes: that is not in this figure.
 *
 * @param fit.diameter  of the seat [m]
 * @param fit.hub       outside diameter [m], density [kg/m³], modulus [Pa], Poisson's ratio [-]
 * @param fit.shaft     bore [m] (none: solid), density, modulus, Poisson's ratio
 * @param fit.speed     ω [rad/s], any sign
 * @returns interference lost, on diameter [m]
 * @throws RangeError  a size or a constant is impossible
 * @example
 * const steel = { density: kilogramPerCubicMetre(7850), modulus: gigapascal(207), poisson: 0.3 };
 * const fit = { diameter: mm(50), hub: { outside: mm(200), ...steel }, shaft: steel, speed: rpm(3000) };
 * interferenceLostBySpinning(fit).in("micrometre") // 1.54
 * @source S. Timoshenko & J. N. Goodier, Theory of Elasticity, rotating discs; W. C. Young & R. G. Budynas, Roark's
 * Formulas for Stress and Strain, 7th edition, section 16.4 (both from memory)
 */
export function interferenceLostBySpinning(fit: SpinningFit): Length {
  const { diameter, hub, shaft, speed } = fit;
  const where = "interferenceLostBySpinning";
  const bore = shaft.bore ?? quantityFromSi("length", 0);
  requireQuantity(where, "diameter", diameter, "length", "more than 0");
  requireQuantity(where, "hub.outside", hub.outside, "length", "more than 0");
  requireSmaller(where, ["diameter", diameter], ["hub.outside", hub.outside]);
  requireSmaller(where, ["shaft.bore", bore], ["diameter", diameter]);
  for (const [name, part] of [["hub", hub] as const, ["shaft", shaft] as const]) {
    requireQuantity(where, `${name}.density`, part.density, "density", "more than 0");
    requireQuantity(where, `${name}.modulus`, part.modulus, "pressure", "more than 0");
    requireBetween(where, `${name}.poisson`, part.poisson, 0, 0.5);
  }
  const [d, outside, inside, omega] = [diameter.si, hub.outside.si, bore.si, speed.si];
  const perSquare = ({ density, modulus }: SpinningPart): number =>
    (density.si * omega ** 2 * d) / (16 * modulus.si);
  const opens = perSquare(hub) * ((3 + hub.poisson) * outside ** 2 + (1 - hub.poisson) * d ** 2);
  const grows = perSquare(shaft) * ((1 - shaft.poisson) * d ** 2 + (3 + shaft.poisson) * inside ** 2);
  return quantityFromSi("length", opens - grows, diameter.writtenIn);
}
