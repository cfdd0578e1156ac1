export { type CheckFault, describeCheckFault } from "./check-fault.js";
export { checkRebuild, type RebuildCheck } from "./check-rebuild.js";
