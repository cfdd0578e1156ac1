import { type StandardThread, standardThreads } from "../handbook/index.js";
import { type Length, quantityFromSi } from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";
import { nextThreadReadings } from "./thread-next.js";
import type { ThreadIdentity, ThreadMatch, ThreadReadings } from "./thread-types.js";
import { threadWords } from "./thread-words.js";

/** The maker's tolerance on the outside diameter is about a tenth of the pitch; wear and rust take as much again. */
const pitchShareWorn = 0.2;
/** So many that do not agree are kept for comparison. */
const keptForComparison = 5;

/** How threads are compared with the readings. */
export interface IdentifyThreadOptions {
  /** The most that tolerance, wear and rust may have taken off the outside diameter; 0.2 pitch without it. */
  readonly wearAllowed?: Length;
  /** The threads to compare with; all of the handbook without it. */
  readonly candidates?: readonly StandardThread[];
}

/**
 * Which standard threads a worn thread may be.
 *
 * diameter: 0 where D₀ − w ≤ D ≤ D₀, else the distance from that stretch over u(D); w the allowance for wear
 * pitch: (p − p₀)/u(p);  flank angle: (β − β₀)/u(β)
 * misfit = √(sum of squares); agrees when none is beyond k = 1.96 (95 %, two-sided)
 *
 * A worn thread is smaller than its standard and never larger than the reading's own uncertainty allows: burrs are to
 * be stoned off first. Among threads of one misfit the one stands first that needs the least wear. None is chosen:
 * where several agree, `next` says which reading would tell them apart.
 *
 * Valid when: the thread was made to a standard of the handbook. Makers a century ago cut threads of their own too.
 *
 * @param readings  as `threadReadings` gives them
 * @param options.wearAllowed  on diameter [m]
 * @param options.candidates  the threads to compare with
 * @returns the agreeing threads and the next five, nearest first, with what each is off [-]
 * @throws RangeError  there is no candidate, or the allowance is negative
 * @example
 * const bytes = new TextEncoder().encode("# instrument: calliper\nmajor diameter [in],length over threads [in],threads [-],flank angle [deg]\n0.99,1.25,10,56");
 * const instruments = { calliper: instrumentFrom("calliper", { title: "calliper", resolution: "1 thou", repeatability: "2 thou" }) };
 * const readings = threadReadings(readTable(bytes, { name: "nut-thread", file: "nut-thread.csv", instruments }));
 * identifyThread(readings).matches[0]!.thread.name // "1 in BSW"
 * @source common practice, no source (the allowance); coverage factor: JCGM 100:2008 (GUM), G.3
 */
export function identifyThread(
  readings: ThreadReadings,
  options: IdentifyThreadOptions = {},
): ThreadIdentity {
  const { wearAllowed, candidates = standardThreads } = options;
  if (candidates.length === 0) throw new RangeError("identifyThread: at least 1 candidate is needed, got 0");
  if (wearAllowed !== undefined && !(wearAllowed.si >= 0))
    throw new RangeError(`identifyThread: the allowance for wear must be 0 or more, got ${wearAllowed}`);
  const limit = coverageFactor(0.95, Number.POSITIVE_INFINITY);
  const all = candidates.map((thread) => matchOf(thread, readings, wearAllowed, limit)).sort(nearestFirst);
  const agreeing = all.filter(({ agrees }) => agrees);
  const matches = all.slice(0, agreeing.length + keptForComparison);
  const next = nextThreadReadings(agreeing, readings);
  return Object.freeze({
    kind: "thread identity",
    readings,
    matches: Object.freeze(matches),
    compared: candidates.length,
    next,
    text: threadWords(agreeing, all, next),
  });
}

function matchOf(
  thread: StandardThread,
  { majorDiameter, pitch, flankAngle, unitSystem }: ThreadReadings,
  allowed: Length | undefined,
  limit: number,
): ThreadMatch {
  const wearAllowed = allowed ?? thread.pitch.times(pitchShareWorn);
  const below = thread.majorDiameter.si - majorDiameter.value.si;
  // Positive: larger than the standard; negative: smaller than wear explains.
  const beyond = below < 0 ? -below : Math.min(0, wearAllowed.si - below);
  const diameterOff = off(beyond, majorDiameter.standardUncertainty.si);
  const pitchOff = off(pitch.value.si - thread.pitch.si, pitch.standardUncertainty.si);
  const angleOff =
    flankAngle === undefined
      ? undefined
      : off(flankAngle.value.si - (thread.flankAngle * Math.PI) / 180, flankAngle.standardUncertainty.si);
  const offs = [diameterOff, pitchOff, angleOff ?? 0];
  return Object.freeze({
    thread,
    below: quantityFromSi("length", below, unitSystem === "inch" ? "thou" : "micrometre"),
    wearAllowed,
    diameterOff,
    pitchOff,
    angleOff,
    misfit: Math.hypot(...offs),
    agrees: offs.every((one) => Math.abs(one) <= limit),
  });
}

/** In standard uncertainties; endless where a reading without uncertainty differs. */
function off(difference: number, u: number): number {
  return difference === 0 ? 0 : difference / u;
}

/** Those that agree first; then by misfit and the share of the allowance that wear would have used up. */
function nearestFirst(a: ThreadMatch, b: ThreadMatch): number {
  if (a.agrees !== b.agrees) return a.agrees ? -1 : 1;
  return rank(a) - rank(b);
}

function rank({ misfit, below, wearAllowed }: ThreadMatch): number {
  const share = wearAllowed.si === 0 ? 0 : Math.min(1, Math.max(0, below.si / wearAllowed.si));
  return misfit ** 2 + share ** 2;
}
