import type { Length } from "../../quantity/index.js";
import type { AlignedBox, BoxAlignment } from "./box-alignment.js";
import type { BoxFit, FittedBox } from "./box-fit.js";
import type { ContactSpots, MarkedBox } from "./contact-spots.js";

/** One step of fitting a box. */
export interface FittingStep {
  readonly name: "line" | "clearance and taper" | "marking";
  /** "later": it would be undone by a step before it. */
  readonly state: "done" | "next" | "later";
  readonly work: string;
  /** How much: a shim's thickness, or depth on DIAMETER. */
  readonly amount?: Length;
  /** At which station. */
  readonly at?: Length;
}

/** What is left to do on one box, in order. */
export interface BoxToFit {
  readonly name: string;
  readonly steps: readonly FittingStep[];
  readonly verdict: "fitted" | "not yet";
  /** The first step that is not done; undefined where all are. */
  readonly next: string | undefined;
}

/** What is left to do on every box, in the order that undoes nothing. */
export interface OrderOfFitting {
  readonly kind: "order of fitting";
  readonly boxes: readonly BoxToFit[];
  readonly verdict: "fitted" | "not yet";
}

/**
 * What to do on each box, and in which order: line, then clearance and taper, then marking.
 *
 * A box that is set in line changes its gaps, and one whose shims or ends are changed marks anew: so only the first open
 * step is to be done, and the readings of those after it are taken again.
 *
 * Valid when: line, gaps and spots were read on the boxes as they stand now.
 *
 * @param line  as `boxAlignment` returns it
 * @param fit  as `boxFit` returns it
 * @param spots  as `contactSpots` returns it
 * @returns a box each, in the order of the line
 * @throws RangeError  a box that one of the three does not know
 * @example
 * const table = (...rows) => readTable(new TextEncoder().encode(rows.join("\n")), { name: "r", file: "r.csv" });
 * const heights = ["a,1,50", "a,4,50", "a,7,50", "b,51,50", "b,54,50", "b,57,50"];
 * const line = boxAlignment(table("box [text],station [in],depth [thou]", ...heights), { limit: thou(5), readingUncertainty: thou(0.5) });
 * const gaps = ["a,1,4", "a,4,4", "a,7,4", "b,1,4", "b,4,4", "b,7,4"];
 * const limits = { wanted: thou(4), tolerance: thou(1), taperLimit: thou(1), readingUncertainty: thou(0.2), shimStep: thou(1) };
 * const fit = boxFit(table("box [text],station [in],gap [thou]", ...gaps), limits);
 * const spots = contactSpots(table("box [text],spots [-]", ..."aaaabbbb".split("").map((box) => box + ",9")), 5);
 * orderOfFitting(line, fit, spots).verdict // "fitted"
 * @source common practice, no source
 */
export function orderOfFitting(line: BoxAlignment, fit: BoxFit, spots: ContactSpots): OrderOfFitting {
  const boxes = line.boxes.map((box) =>
    orderOf(box, named(fit.boxes, box.name, fit.table), named(spots.boxes, box.name, spots.table)),
  );
  return Object.freeze({
    kind: "order of fitting",
    boxes: Object.freeze(boxes),
    verdict: boxes.every(({ verdict }) => verdict === "fitted") ? "fitted" : "not yet",
  });
}

function named<T extends { readonly name: string }>(list: readonly T[], name: string, table: string): T {
  const found = list.find((one) => one.name === name);
  if (found === undefined)
    throw new RangeError(
      `orderOfFitting: ${table} must have readings of every box in the line, got none of "${name}", only of ${list.map((one) => `"${one.name}"`).join(", ")}`,
    );
  return found;
}

function orderOf(line: AlignedBox, fit: FittedBox, spots: MarkedBox): BoxToFit {
  const found = [
    { name: "line", done: line.verdict === "in line", todo: lineWork(line) },
    { name: "clearance and taper", done: fit.verdict === "fits", todo: fitWork(fit) },
    { name: "marking", done: spots.verdict === "bears", todo: { work: spots.because } },
  ] as const;
  const first = found.findIndex(({ done }) => !done);
  const steps = found.map(({ name, done, todo }, i): FittingStep => {
    if (first >= 0 && i > first)
      return Object.freeze({ name, state: "later", work: "read again after that" });
    return Object.freeze(done ? { name, state: "done", work: "nothing" } : { name, state: "next", ...todo });
  });
  return Object.freeze({
    name: line.name,
    steps: Object.freeze(steps),
    verdict: first < 0 ? "fitted" : "not yet",
    next: steps[first]?.work,
  });
}

type Work = Pick<FittingStep, "work" | "amount" | "at">;

function lineWork({ shim }: AlignedBox): Work {
  return shim === undefined
    ? { work: "take more heights along the box" }
    : {
        work: "shim under the low end",
        amount: shim.thickness,
        at: shim.under,
      };
}

function fitWork({ shim, scrape, next }: FittedBox): Work {
  if (next.startsWith("scrape the tight end") && scrape !== undefined)
    return { work: "scrape the tight end, on diameter", amount: scrape.depth, at: scrape.at };
  if (/^(add|take) the shims/.test(next)) return { work: next, amount: shim.si < 0 ? shim.times(-1) : shim };
  return { work: next };
}
