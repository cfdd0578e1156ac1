import type {
  Length,
  Mass,
  Power,
  Pressure,
  Quantity,
  Temperature,
  TemperatureDifference,
  Time,
} from "../quantity/index.js";
import type { FitInput } from "./fit-input.js";
import type { HubFit } from "./hub-fit-types.js";

/** How a hub is to be heated on its shaft. */
export interface HeatingInput {
  readonly fit: HubFit;
  /** Heat that goes INTO the hub: a good part of a flame's goes past it. */
  readonly power: FitInput<Power>;
  /** Of hub and shaft before it begins. */
  readonly room: Temperature;
  /** Of the hub alone, without rim and spokes; default by its outside, bore and length. */
  readonly hubMass?: Mass | undefined;
  /** How hot the hub may get; default what the handbook says of its metal. */
  readonly hottest?: Temperature | undefined;
  /** Interference that may be left, on diameter, because the press does the rest; default none. */
  readonly remaining?: Length | undefined;
  /** Heat conducted across the joint, W/(m²·K) in SI; default `jointConductance`. */
  readonly conductance?: FitInput<Quantity<"heat transfer coefficient">> | undefined;
}

/** One moment of the heating. */
export interface HeatingMoment {
  readonly time: Time;
  readonly hub: Temperature;
  readonly shaft: Temperature;
  /** Left, on diameter; below 0 the hub is loose. */
  readonly interference: Length;
}

/** What happens in one case: easy, middle or hard. */
export interface HeatingCase {
  readonly name: "easy" | "middle" | "hard";
  readonly power: Power;
  readonly interference: Length;
  /** From the flame's start; undefined where the window never opens. */
  readonly opens: Time | undefined;
  readonly closes: Time | undefined;
  /** How long it stays open; 0 where it never opens. */
  readonly open: Time;
  /** When the hub is as hot as it may be and the flame is taken off. */
  readonly flameOff: Time;
  /** Mean of the hub less mean of the shaft: the most that is reached, and what is needed. */
  readonly mostDifference: TemperatureDifference;
  readonly neededDifference: TemperatureDifference;
  /** The least power that could ever open it. */
  readonly leastPower: Power;
  /** Largest tension at the hub's bore, of the fit and of uneven heat together. */
  readonly tension: Pressure;
  readonly curve: readonly HeatingMoment[];
}

/** A plan to heat a hub on its shaft: when it comes loose, how long it stays so, and whether it would crack. */
export interface HeatingPlan {
  readonly kind: "heating plan";
  readonly hubMaterial: string;
  readonly hubMass: Mass;
  readonly room: Temperature;
  readonly hottest: Temperature;
  readonly remaining: Length;
  /** Easy: least interference, most heat, poorest contact. Hard: the reverse. */
  readonly cases: readonly [easy: HeatingCase, middle: HeatingCase, hard: HeatingCase];
  /** Whether the window opens. */
  readonly verdict: "yes" | "no" | "cannot tell yet";
  /** What the hub may bear at its bore, and whether every case keeps within two thirds of it. */
  readonly strength: Pressure;
  readonly gentle: boolean;
  readonly warnings: readonly string[];
}
