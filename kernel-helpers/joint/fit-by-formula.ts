import type { AnyQuantity, Force, Pressure } from "../quantity/index.js";
import { type FitInput, shapeOf } from "./fit-input.js";
import { fitPressure } from "./fit-pressure.js";
import type { HubFit, HubOnShaft } from "./hub-fit-types.js";
import { quantityLike } from "./quantity-like.js";
import { taperFitForces } from "./taper-fit-forces.js";

/** How far one case may lie from the middle of many [-]. */
const within = 0.1;

/** A hub's fit a second way: one case by the plain formulas, against the middle of the cases that were drawn. */
export interface FitByFormula {
  readonly kind: "fit by formula";
  readonly pressure: Pressure;
  readonly pressOff: Force;
  /** The middle of the cases. */
  readonly cases: { readonly pressure: Pressure; readonly pressOff: Force };
  /** Of the forces, over the middle of the cases [-]. */
  readonly apart: number;
  readonly within: number;
  readonly agrees: boolean;
}

/**
 * The middle of every range put into the plain formulas of a fit: pressure, then force off, with no drawing of lots.
 *
 * p by `fitPressure`, F by `taperFitForces`, both at (low + high)/2 of interference, friction, modulus, Poisson's ratio and
 * taper; they agree where the force is within a tenth of the middle case, for the middle of a product of ranges is not
 * quite the product of their middles.
 *
 * Valid when: as for `hubFit`; ranges wider than those of friction by practice (0.2 to 0.5) may lie further apart.
 *
 * @param hub  as it was given to `hubFit`
 * @param fit  as `hubFit` returned it
 * @returns pressure [Pa] and force [N] both ways, and how far they are apart [-]
 * @throws RangeError  as `fitPressure` and `taperFitForces`
 * @example
 * const hub = { material: material("grey iron class 20"), outside: inch(5.5) };
 * const place = { diameter: inch(2.25), length: inch(4.5), interference: thou(1.5), hub, shaft: { material: material("steel") }, friction: 0.15 };
 * fitByFormula(place, hubFit(place)).agrees // true
 * @source see `fitPressure` and `taperFitForces`; the tenth: own rule
 */
export function fitByFormula(hub: HubOnShaft, fit: HubFit): FitByFormula {
  const middle = (field: string, input: FitInput<AnyQuantity | number>): number =>
    shapeOf("fitByFormula", field, input).middle;
  const { material: metal, outside } = hub.hub;
  const { material: core, bore } = hub.shaft;
  const { diameter, length } = hub;
  const halfway = (field: string, { low, high }: { low: AnyQuantity; high: AnyQuantity }): Pressure =>
    quantityLike(metal.modulus.value, middle(field, { low, high })) as Pressure;
  const { pressure } = fitPressure({
    diameter,
    interference: quantityLike(diameter, middle("interference", hub.interference)),
    hub: {
      outside,
      modulus: halfway("hub modulus", metal.modulus),
      poisson: (Number(metal.poisson.low) + Number(metal.poisson.high)) / 2,
    },
    shaft: {
      ...(bore === undefined ? {} : { bore }),
      modulus: halfway("shaft modulus", core.modulus),
      poisson: core.poisson.value,
    },
  });
  const { off: pressOff } = taperFitForces({
    pressure,
    diameter,
    length,
    taper: middle("taper", hub.taper ?? 0),
    friction: middle("friction", hub.friction as FitInput<number>),
  });
  const apart = Math.abs(pressOff.si / fit.pressOff.middle.si - 1);
  return Object.freeze<FitByFormula>({
    kind: "fit by formula",
    pressure,
    pressOff,
    cases: Object.freeze({ pressure: fit.pressure.middle, pressOff: fit.pressOff.middle }),
    apart,
    within,
    agrees: apart <= within,
  });
}
