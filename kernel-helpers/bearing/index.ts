// Poured bearings.
export * from "./run-in/index.js";
