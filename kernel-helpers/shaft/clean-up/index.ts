// What is left of a worn stretch, and the ways to save it.
export {
  type CleanUp,
  type CleanUpAbout,
  type CleanUpOptions,
  chanceToClean,
  cleanUp,
  type TurningAxis,
} from "./clean-up.js";
export {
  type CleanUpJournalsOptions,
  cleanUpJournals,
  type JournalCleanUp,
  type JournalCleanUps,
} from "./clean-up-journals.js";
export { type KeptSurface, type Recentring, recentring } from "./recentring.js";
export { type TaperCleanUp, type TaperCleanUpOptions, taperCleanUp } from "./taper-clean-up.js";
