import type { StandardThread } from "../../handbook/index.js";
import { isQuantity, type Length, quantityFromSi } from "../../quantity/index.js";
import { asMadeDiameter, stationOfDiameter, type TaperFit, type WearBands } from "../../survey/index.js";
import type { FinishedJournals } from "../journals/index.js";
import type { DrawnStretch } from "./shaft-drawing.js";

/** What a surveyed shaft is drawn from: thread, taper, the body as it was made, the journals as finished. */
export interface StretchesGiven {
  readonly wear: WearBands;
  /** The taper's own survey, its station zero at its small end, where the thread ends. */
  readonly taper: TaperFit;
  /** Stations as in `wear`, whose zero is the taper's large end. */
  readonly journals: FinishedJournals;
  /** From end to end, thread and all. */
  readonly wholeLength: Length;
  readonly thread: {
    readonly size: StandardThread;
    readonly hand: "right" | "left";
    readonly length: Length;
  };
  /** In the taper; `middle` from its small end. */
  readonly keyseat?: NonNullable<DrawnStretch["keyseat"]>;
  /** At the shoulders of every journal. */
  readonly fillet: Length;
  readonly tolerance: string;
  readonly roughness: Length;
}

/**
 * The stretches of a shaft to be drawn: thread, taper up to where it runs out into the body, and the body as made between
 * the journals as finished, to the end of the shaft.
 *
 * Taper: from its station zero, by its line, to the station where that reaches the diameter as made. Body: what is left.
 *
 * @param given.wholeLength, given.thread.length, given.fillet, given.roughness  > 0 [m]
 * @param given.tolerance  of the journals, a shaft's zone of ISO 286
 * @returns the stretches from the thread's end, for `shaftDrawing`
 * @throws RangeError  the taper does not grow from its station zero, journals that overlap or lie before the taper's large
 * end, a whole length too short for what is to go on it
 */
export function stretchesToTurn(given: StretchesGiven): readonly DrawnStretch[] {
  const { wear, taper, wholeLength, thread, keyseat, fillet, tolerance, roughness } = given;
  if (!isQuantity(wholeLength, "length") || !(wholeLength.si > 0))
    throw new RangeError(`stretchesToTurn: wholeLength must be a length above 0, got ${String(wholeLength)}`);
  const body = asMadeDiameter(wear);
  const { station, diameter } = taper.smallEnd;
  const runsOut = stationOfDiameter(taper, body).value;
  if (!(taper.taper.value > 0 && runsOut.si > 0))
    throw new RangeError(
      `stretchesToTurn: the taper must grow from its station zero to ${body.value}; it does so at station ${runsOut}, with ${taper.taper.value} on diameter per length`,
    );
  const atZero = diameter.value.plus(length(-taper.taper.value * station.si, diameter.value));
  const stretches: DrawnStretch[] = [
    {
      name: "thread",
      length: thread.length,
      diameter: thread.size.majorDiameter,
      thread: { name: `${thread.size.name}, ${thread.hand} hand`, rootDiameter: thread.size.rootDiameter },
    },
    {
      name: "taper",
      length: runsOut,
      diameter: atZero,
      endDiameter: body.value,
      ...(keyseat && { keyseat }),
      remark: "by the hub and blue",
    },
  ];
  const bodyUpTo = (from: Length | undefined, to: Length, before: string): void => {
    const left = from === undefined ? to : to.minus(from);
    // A journal that begins where the last one ends leaves no body between them.
    if (Math.abs(left.si) < 1e-9) return;
    if (left.si < 0)
      throw new RangeError(
        `stretchesToTurn: ${before} must not lie before station ${from ?? "0, the taper's large end"}; it is at ${to}`,
      );
    stretches.push({ name: "body", length: left, diameter: body.value });
  };
  let reached: Length | undefined;
  for (const journal of given.journals.journals) {
    bodyUpTo(reached, journal.from, `journal "${journal.name}"`);
    const { name, diameter: finished } = journal;
    const size = { length: journal.length, diameter: finished.value };
    stretches.push({ name, ...size, tolerance, roughness, fillet });
    reached = journal.to;
  }
  const end = wholeLength.minus(thread.length).minus(runsOut);
  bodyUpTo(reached, end, `the end of the shaft, ${wholeLength} from its thread's end,`);
  return Object.freeze(stretches);
}

function length(si: number, { writtenIn }: Length): Length {
  return quantityFromSi("length", si, writtenIn);
}
