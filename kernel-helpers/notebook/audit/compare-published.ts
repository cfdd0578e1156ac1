import { type AnyQuantity, isQuantity } from "../../quantity/index.js";
import { restoreValue, type SheetRecord } from "../../record/index.js";
import type { AuditedResult, MovedPlace } from "../../view/results/audit-types.js";
import { figureSize, movedBy } from "../../view/results/decision-moves.js";
import { figureText, isUncertainFigure, type ShownFigure } from "../../view/results/figure-text.js";
import { isLeftOutText } from "./match-left-out.js";

/**
 * Results of a record that a run does not give as they stand there, each with the place that moved most against its
 * uncertainty; where no place has one, the first whose value differs.
 *
 * @param shared  true for a shared copy, in which what says that it was left out is not compared
 */
export function comparePublished(
  recorded: SheetRecord,
  rerun: SheetRecord | undefined,
  shared = false,
): readonly Omit<AuditedResult, "because">[] {
  if (rerun === undefined) return [];
  const { sheet } = recorded;
  return Object.entries(recorded.published).flatMap(([name, value]) => {
    if (!Object.hasOwn(rerun.published, name))
      return [{ sheet, name, text: "the sheet does not publish it any more" }];
    const places = differences(value, rerun.published[name], []).filter(
      ({ isLeftOut }) => !shared || !isLeftOut,
    );
    if (places.length === 0) return [];
    const most = places.reduce((a, b) => (b.weight > a.weight ? b : a));
    const moved: MovedPlace = {
      where: inWords(most.path),
      before: most.before,
      after: most.after,
      by: most.by,
      others: places.length - 1,
    };
    return [{ sheet, name, text: movedText(moved), moved }];
  });
}

function movedText({ where, before, after, by, others }: MovedPlace): string {
  const move = by === "" ? "" : ` (${by})`;
  const rest = others === 0 ? "" : `, and ${others} more ${others === 1 ? "place" : "places"}`;
  return `${where}: ${before} on record, ${after} now${move}${rest}`;
}

/** "bands 2, depth" for the depth of the second band; numbers count from 1. */
function inWords(path: readonly string[]): string {
  if (path.length === 0) return "the result";
  return path.reduce((words, name) => {
    if (/^\d+$/.test(name)) return `${words} ${Number(name) + 1}`;
    const spaced = name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
    return words === "" ? spaced : `${words}, ${spaced}`;
  }, "");
}

interface Difference {
  readonly path: readonly string[];
  readonly before: string;
  readonly after: string;
  readonly by: string;
  /** How much it says: a move as a multiple of its standard uncertainty; below that, a value before all others. */
  readonly weight: number;
  /** The recorded value says that it was left out. */
  readonly isLeftOut?: true;
}

/** Below this share two numbers differ only by the arithmetic of another platform. */
const roundOff = 1e-9;

function differences(a: unknown, b: unknown, path: readonly string[]): readonly Difference[] {
  const [p, q] = [storedQuantity(a), storedQuantity(b)];
  if (p !== undefined && q !== undefined) {
    // One length may be written in inches and the other in SI, where no number of inches gives it to the last bit.
    if (p.dimension === q.dimension && sameNumber(p.si, q.si)) return [];
    const by = p.dimension === q.dimension ? movedBy(p, q) : "";
    // A value says more than the probabilities and residuals that move with it.
    return [
      { path, before: p.toString(), after: q.toString(), by, weight: path.at(-1) === "value" ? 0 : -1 },
    ];
  }
  if (typeof a === "number" && typeof b === "number") {
    if (sameNumber(a, b)) return [];
  } else if (typeof a === "object" && typeof b === "object" && a !== null && b !== null) {
    const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
    const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
    const inside = names.flatMap((name) => differences(left[name], right[name], [...path, name]));
    const [before, after] = inside.length === 0 ? [] : [storedMeasured(a), storedMeasured(b)];
    return before === undefined || after === undefined ? inside : [measuredMove(before, after, path)];
  } else if (a === b) return [];
  const isValue = path.at(-1) === "value";
  const difference = { path, before: shortly(a), after: shortly(b), by: "", weight: isValue ? 0 : -2 };
  return [isLeftOutText(a) ? { ...difference, isLeftOut: true } : difference];
}

function measuredMove(a: Uncertain, b: Uncertain, path: readonly string[]): Difference {
  const u = Number(a.standardUncertainty.valueOf());
  const moves = Math.abs((figureSize(b) ?? 0) - (figureSize(a) ?? 0)) / u;
  const weight = Number.isFinite(moves) ? moves : 0;
  return { path, before: figureText(a), after: figureText(b), by: movedBy(a, b), weight };
}

type Uncertain = Extract<ShownFigure, { readonly standardUncertainty: unknown }>;

/** A measured value as a record writes it, of a quantity that a figure may have; undefined for anything else. */
function storedMeasured(value: object): Uncertain | undefined {
  if ((value as { kind?: unknown }).kind !== "measured") return undefined;
  const restored = restoreValue(value) as ShownFigure;
  return isUncertainFigure(restored) ? restored : undefined;
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
