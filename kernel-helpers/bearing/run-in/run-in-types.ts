import type {
  Measured,
  RotationalSpeed,
  Temperature,
  TemperatureDifference,
  Time,
  UnitSystem,
} from "../../quantity/index.js";

/** One reading of one box while it runs. */
export interface RunInReading {
  readonly time: Time;
  readonly temperature: Temperature;
  readonly room: Temperature;
  /** Which stretch of one speed and one oil it belongs to, from 0. */
  readonly stretch: number;
  readonly line: number;
}

/** A stretch in which speed and oil stayed as they were. */
export interface RunInStretch {
  readonly from: Time;
  readonly to: Time;
  readonly speed: RotationalSpeed | undefined;
  /** As written in the column "oil"; "" where nothing is. */
  readonly oil: string;
}

/** Where a box's temperature is heading, from the readings of the stretch it is in. */
export interface RunInEnd {
  /** The end temperature in the room of the last reading. */
  readonly temperature: Temperature;
  readonly standardUncertainty: TemperatureDifference;
  /** Ends that the readings do not contradict (95 %); undefined where they set no bound. */
  readonly from: Temperature | undefined;
  readonly to: Temperature | undefined;
  readonly timeConstant: Measured<Time>;
  /** From the last reading until it is within a tenth of the whole rise of its end. */
  readonly nearlyThere: Time;
}

/** Whether the stretches of a box share one time constant. */
export interface RunInSharing {
  /** How many stretches, the last among them. */
  readonly stretches: number;
  /** One time constant for all of them; else the last stretch stands alone. */
  readonly shared: boolean;
  /** F of the test, its bound, and the chance of refusing a shared one [-]. */
  readonly f: number;
  readonly critical: number;
  readonly level: number;
}

/** A forecast made before the run. */
export interface ForetoldRise {
  /** The box, by the name of its column. */
  readonly box: string;
  /** End temperature over the room's. */
  readonly rise: Measured<TemperatureDifference>;
  /** Speed it was foretold for; undefined where it holds for any. */
  readonly speed?: RotationalSpeed;
}

/** One thing that could make a box behave so. Ranked, never certain. */
export interface PossibleCause {
  readonly cause: string;
  /** What speaks for it, each a clause. */
  readonly signs: readonly string[];
  /** What to look at or read next to tell. */
  readonly look: string;
  /** Sum of its signs' weights; only their order means something [-]. */
  readonly weight: number;
}

export type RunInState = "go on" | "stop" | "cannot tell yet";

/** The time constant of a stretch by its own readings alone. */
export interface OwnTimeConstant {
  /** From 0, as in `stretches`. */
  readonly stretch: number;
  readonly timeConstant: Measured<Time>;
}

export interface RunInBox {
  readonly name: string;
  readonly readings: readonly RunInReading[];
  readonly now: Temperature;
  /** Change an hour, from the last readings; undefined with fewer than three in the stretch. */
  readonly rate: Measured<TemperatureDifference> | undefined;
  /** Undefined where the readings do not bend towards an end yet. */
  readonly end: RunInEnd | undefined;
  /** By readings and forecast together, from the second reading on: as good as the forecast; for this speed alone. */
  readonly endWithForecast: RunInEnd | undefined;
  /** Of stretches whose own readings tell it; the others are left out. */
  readonly ownTimeConstants: readonly OwnTimeConstant[];
  /** Undefined where there is one stretch only, or too little to test with. */
  readonly sharing: RunInSharing | undefined;
  /** Why there is none. */
  readonly noEnd: string;
  /** The curve of the stretch and its band (95 %), beyond the last reading, for the figure. */
  readonly curve: readonly {
    readonly time: Time;
    readonly temperature: Temperature;
    readonly band: TemperatureDifference;
  }[];
  readonly foretold:
    | { readonly temperature: Temperature; readonly standardUncertainty: TemperatureDifference }
    | undefined;
  /** End less foretold, where there are both. */
  readonly against: Measured<TemperatureDifference> | undefined;
  readonly agreement:
    | "as foretold"
    | "hotter"
    | "cooler"
    | "cannot tell yet"
    | "foretold for another speed"
    | "nothing foretold";
  readonly causes: readonly PossibleCause[];
  readonly state: RunInState;
  readonly because: string;
}

/** Boxes warming up while the machine runs, judged. */
export interface RunIn {
  readonly kind: "run-in";
  readonly title: string;
  readonly file: string;
  readonly unitSystem: UnitSystem;
  readonly stopAt: Temperature;
  readonly boxes: readonly RunInBox[];
  readonly stretches: readonly RunInStretch[];
  readonly state: RunInState;
  /** In one line, whether to go on running. */
  readonly text: string;
  /** When to read next. */
  readonly readNext: Time;
  readonly warnings: readonly string[];
}
