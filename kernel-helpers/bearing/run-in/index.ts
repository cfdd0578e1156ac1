// Boxes warming up, and machines running down.
export { type CoastDown, type CoastDownOptions, coastDown } from "./coast-down.js";
export { type BoxSigns, possibleCauses } from "./possible-causes.js";
export { type RunInOptions, runIn } from "./run-in.js";
export type {
  ForetoldRise,
  OwnTimeConstant,
  PossibleCause,
  RunIn,
  RunInBox,
  RunInEnd,
  RunInReading,
  RunInSharing,
  RunInState,
  RunInStretch,
} from "./run-in-types.js";
