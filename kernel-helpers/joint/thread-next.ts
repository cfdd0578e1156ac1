import { formatNumber, type Length, quantityFromSi } from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";
import type { ThreadMatch, ThreadQuestion, ThreadReadings } from "./thread-types.js";

/** Pitches closer than this, as a share, are one pitch under two names. */
const samePitch = 1e-6;
/** More threads than this no nut's thread has. */
const mostThreads = 60;

/**
 * Which readings would tell the agreeing threads apart: the flank angle where they differ in it, the pitch over a longer
 * length where it can, the diameter of an unworn crest where they differ in size alone.
 *
 * pitch: N threads tell p₁ from p₂ when N |p₁ − p₂| ≥ 2 k u(L), k = 1.96
 *
 * @param agreeing  the threads the readings allow
 * @param readings  what was read so far
 * @returns none where one thread or none agrees
 * @source common practice, no source
 */
export function nextThreadReadings(
  agreeing: readonly ThreadMatch[],
  readings: ThreadReadings,
): readonly ThreadQuestion[] {
  if (agreeing.length < 2) return Object.freeze([]);
  const questions = [
    flankQuestion(agreeing, readings),
    pitchQuestion(agreeing, readings),
    diameterQuestion(agreeing),
  ];
  return Object.freeze(questions.filter((one) => one !== undefined));
}

function flankQuestion(
  agreeing: readonly ThreadMatch[],
  readings: ThreadReadings,
): ThreadQuestion | undefined {
  const of = (angle: number): string[] =>
    agreeing.filter(({ thread }) => thread.flankAngle === angle).map(({ thread }) => thread.name);
  const [flat, steep] = [of(55), of(60)];
  if (flat.length === 0 || steep.length === 0) return undefined;
  const again = readings.flankAngle === undefined ? "has not been read" : "is not known well enough";
  return question(
    "flank angle",
    [...flat, ...steep],
    `The flank angle ${again}: hold a 55° and a 60° gauge in the thread against the light. 55° is ${flat.join(" or ")}, 60° is ${steep.join(" or ")}. They lie 5° apart, so ± 2.5° at 95 % is enough.`,
  );
}

function pitchQuestion(
  agreeing: readonly ThreadMatch[],
  readings: ThreadReadings,
): ThreadQuestion | undefined {
  const pitches = [...agreeing].sort((a, b) => a.thread.pitch.si - b.thread.pitch.si);
  const gaps = pitches
    .slice(1)
    .map((match, i) => match.thread.pitch.si - pitches[i]!.thread.pitch.si)
    .filter((gap, i) => gap > samePitch * pitches[i]!.thread.pitch.si);
  if (gaps.length === 0) return undefined;
  const k = coverageFactor(0.95, Number.POSITIVE_INFINITY);
  const threads = Math.ceil((2 * k * readings.lengthUncertainty.si) / Math.min(...gaps));
  const names = agreeing.map(({ thread }) => thread.name);
  const over = (count: number): Length =>
    quantityFromSi("length", count * readings.pitch.value.si, readings.unitSystem === "inch" ? "inch" : "mm");
  const how =
    threads > readings.overThreads && threads <= mostThreads
      ? `take the length over ${threads} threads, about ${rounded(over(threads))}`
      : threads > mostThreads
        ? "no length of this thread read with this instrument tells them apart; read the pitch with a better one"
        : "take the length over the same threads a few times more";
  return question("pitch over a longer length", names, `To tell the pitches apart, ${how}.`);
}

function diameterQuestion(agreeing: readonly ThreadMatch[]): ThreadQuestion | undefined {
  const rivals = agreeing.filter((one) =>
    agreeing.some(
      (other) =>
        other !== one &&
        other.thread.flankAngle === one.thread.flankAngle &&
        Math.abs(other.thread.pitch.si / one.thread.pitch.si - 1) <= samePitch,
    ),
  );
  if (rivals.length < 2) return undefined;
  const names = rivals.map(({ thread }) => thread.name);
  return question(
    "major diameter of an unworn crest",
    names,
    `${names.join(" and ")} differ only in size: read the outside diameter where the nut has covered the crests.`,
  );
}

function rounded(length: Length): string {
  return `${formatNumber(length.in(length.writtenIn ?? "mm"), 3)} ${length.writtenIn === "inch" ? "in" : "mm"}`;
}

function question(
  reading: ThreadQuestion["reading"],
  between: readonly string[],
  text: string,
): ThreadQuestion {
  return Object.freeze({ reading, between: Object.freeze([...between]), text });
}
