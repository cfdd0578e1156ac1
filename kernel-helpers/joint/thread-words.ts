import { formatFixed, formatNumber } from "../quantity/index.js";
import type { ThreadMatch, ThreadQuestion } from "./thread-types.js";

/** The identity of a thread in a sentence or two. */
export function threadWords(
  agreeing: readonly ThreadMatch[],
  all: readonly ThreadMatch[],
  next: readonly ThreadQuestion[],
): string {
  const nearest = all[0]!;
  if (agreeing.length === 0)
    return `The readings allow none of the ${all.length} standard threads compared; the nearest is ${nearest.thread.name}, ${whatIsOff(nearest)}. A thread of the maker's own is likely: keep the nut, and copy it.`;
  const names = agreeing.map(({ thread }) => thread.name);
  if (agreeing.length === 1)
    return `It is ${names[0]}, of the ${all.length} standard threads compared the only one the readings allow: ${wornText(nearest)}.`;
  const list = `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
  const ask = next[0] === undefined ? "" : ` Read next: ${next[0].reading}.`;
  return `The readings allow ${list} and cannot tell them apart.${ask}`;
}

/** "the crests lie 8.0 thou below its size, of 33.3 thou allowed for wear and tolerance" */
function wornText({ below, wearAllowed }: ThreadMatch): string {
  if (below.si <= 0) return "the crests stand at its full size";
  const inch = below.writtenIn === "thou";
  const [unit, symbol] = inch ? (["thou", "thou"] as const) : (["micrometre", "µm"] as const);
  const text = (value: number): string => formatFixed(value, inch ? 1 : 0);
  return `the crests lie ${text(below.in(unit))} ${symbol} below its size, of ${text(wearAllowed.in(unit))} ${symbol} allowed for wear and tolerance`;
}

function whatIsOff({ diameterOff, pitchOff, angleOff }: ThreadMatch): string {
  const parts = [
    ["diameter", diameterOff],
    ["pitch", pitchOff],
    ["flank angle", angleOff ?? 0],
  ] as const;
  const [name, off] = [...parts].sort((a, b) => Math.abs(b[1]) - Math.abs(a[1]))[0]!;
  return `off in ${name} by ${formatNumber(Math.abs(off), 2)} standard uncertainties`;
}
