// The shaft and what turns with it.
export * from "./balance/index.js";
export * from "./beam/index.js";
export * from "./belt/index.js";
export type { MaybeMeasured } from "./carried/carried-input.js";
export * from "./clean-up/index.js";
export * from "./journals/index.js";
export * from "./salvage/index.js";
export * from "./strength/index.js";
export * from "./turning/index.js";
export * from "./wheel/index.js";
