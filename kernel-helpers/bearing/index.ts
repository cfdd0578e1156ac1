// Poured bearings.
export * from "./design/index.js";
export * from "./film/index.js";
export * from "./fit/index.js";
export * from "./pour/index.js";
export * from "./run-in/index.js";
