import type { Measured, Torque } from "../quantity/index.js";

/** In what the energy sits, which decides what is done about it. */
export type EnergyStore =
  | "turning wheel"
  | "raised mass"
  | "spring"
  | "tight belt"
  | "press under load"
  | "oil under pressure"
  | "closed hollow";

/** Energy stored in one thing, and what to do before a hand goes near. */
export interface StoredEnergy {
  readonly kind: "stored energy";
  readonly what: string;
  readonly store: EnergyStore;
  readonly energy: Measured<Torque>;
  /** What it was reckoned from, in words. */
  readonly from: string;
  readonly before: readonly string[];
}

/** All that is stored in a machine, the largest first. */
export interface StoredEnergies {
  readonly kind: "stored energies";
  readonly stores: readonly StoredEnergy[];
}
