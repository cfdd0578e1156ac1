// Joints: threads and their nuts.

export { type NutDutyWords, predictHand } from "./hand-predict.js";
export { type HandSeen, threadHand } from "./hand-seen.js";
export type { Hand, HandPrediction, NutDuty, ThreadHand, Turning } from "./hand-types.js";
export { type IdentifyThreadOptions, identifyThread } from "./thread-identity.js";
export { threadOf } from "./thread-of.js";
export { type ThreadReadingsOptions, threadReadings } from "./thread-readings.js";
export type { ThreadIdentity, ThreadMatch, ThreadQuestion, ThreadReadings } from "./thread-types.js";
