// Pouring white metal: sizes, metal, heat and time.

export { type ChillOptions, type ChillTimes, chillTimes } from "./chill-time.js";
export { type ComparedPour, comparePours, type PourComparison } from "./compare-pours.js";
export { type Joint, jointsToLoad, wholeArc } from "./joints-to-load.js";
export { pourPlan } from "./pour-plan.js";
export type { Chill, PourOptions, PourPlan } from "./pour-types.js";
