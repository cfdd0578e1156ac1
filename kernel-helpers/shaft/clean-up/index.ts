// What is left of a worn stretch, and the ways to save it.
export {
  type CleanUp,
  type CleanUpAbout,
  type CleanUpOptions,
  chanceToClean,
  cleanUp,
  type TurningAxis,
} from "./clean-up.js";
export { type SalvageOption, type SalvageOptionsInput, salvageOptions } from "./salvage-options.js";
