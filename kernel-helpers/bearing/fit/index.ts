// Fitting a poured box: clearance, marking, alignment.

export {
  type AlignedBox,
  type BoxAlignment,
  boxAlignment,
  type StretchedWire,
  stretchedWire,
} from "./box-alignment.js";
export { type BoxFit, type BoxFitOptions, boxFit, type FittedBox, type GapReading } from "./box-fit.js";
export { type ContactSpots, contactSpots, type MarkedBox } from "./contact-spots.js";
export { type BoxToFit, type FittingStep, type OrderOfFitting, orderOfFitting } from "./order-of-fitting.js";
export { type TiltInGaps, tiltInGaps } from "./tilt-in-gaps.js";
