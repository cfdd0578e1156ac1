// Flat belts: how far they lie round their pulleys, and what they pull.
export { type BeltPulls, type BeltPullsOptions, type BeltRange, beltPulls } from "./belt-pulls.js";
export {
  type BeltTension,
  type BeltTensions,
  type BeltTensionsOptions,
  beltTensions,
  type StrandTension,
} from "./belt-tensions.js";
export { type BeltWrap, type BeltWrapOptions, beltWrap } from "./belt-wrap.js";
