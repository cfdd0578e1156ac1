import { type AnyQuantity, isQuantity } from "../../quantity/index.js";
import { restoreValue, type SheetRecord } from "../../record/index.js";
import type { AuditedResult } from "../../view/results/audit-types.js";
import { isLeftOutText } from "./match-left-out.js";

/**
 * Results of a record that a run does not give as they stand there, each with the first place where they differ.
 *
 * @param shared  true for a shared copy, in which what says that it was left out is not compared
 */
export function comparePublished(
  recorded: SheetRecord,
  rerun: SheetRecord | undefined,
  shared = false,
): readonly AuditedResult[] {
  if (rerun === undefined) return [];
  const { sheet } = recorded;
  return Object.entries(recorded.published).flatMap(([name, value]) => {
    if (!Object.hasOwn(rerun.published, name))
      return [{ sheet, name, text: "the sheet does not publish it any more" }];
    const places = differences(value, rerun.published[name], "").filter(
      ({ isLeftOut }) => !shared || !isLeftOut,
    );
    // A value says more than the probabilities and residuals that move with it.
    const first = places.find(({ place }) => /\bvalue$/.test(place)) ?? places[0];
    if (first === undefined) return [];
    const others = places.length - 1;
    const rest = others === 0 ? "" : `, and ${others} more ${others === 1 ? "place" : "places"}`;
    return [{ sheet, name, text: `${first.place}: ${first.recorded} on record, ${first.now} now${rest}` }];
  });
}

interface Difference {
  readonly place: string;
  readonly recorded: string;
  readonly now: string;
  /** The recorded value says that it was left out. */
  readonly isLeftOut?: true;
}

/** Below this share two numbers differ only by the arithmetic of another platform. */
const roundOff = 1e-9;

function differences(a: unknown, b: unknown, place: string): readonly Difference[] {
  const [p, q] = [storedQuantity(a), storedQuantity(b)];
  if (p !== undefined && q !== undefined) {
    // One length may be written in inches and the other in SI, where no number of inches gives it to the last bit.
    if (p.dimension === q.dimension && sameNumber(p.si, q.si)) return [];
    return [{ place: place || "the result", recorded: p.toString(), now: q.toString() }];
  }
  if (typeof a === "number" && typeof b === "number") {
    if (sameNumber(a, b)) return [];
  } else if (typeof a === "object" && typeof b === "object" && a !== null && b !== null) {
    const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
    const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
    return names.flatMap((name) =>
      differences(left[name], right[name], place === "" ? name : `${place}.${name}`),
    );
  } else if (a === b) return [];
  const difference = { place: place || "the result", recorded: shortly(a), now: shortly(b) };
  return [isLeftOutText(a) ? { ...difference, isLeftOut: true } : difference];
}

function sameNumber(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= roundOff * Math.max(Math.abs(a), Math.abs(b));
}

/** A quantity as a record writes it; undefined for anything else. */
function storedQuantity(value: unknown): AnyQuantity | undefined {
  if (typeof value !== "object" || value === null || Object.keys(value).length !== 1) return undefined;
  const restored = restoreValue(value);
  return isQuantity(restored) ? restored : undefined;
}

function shortly(value: unknown): string {
  const text = JSON.stringify(value) ?? "nothing";
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
