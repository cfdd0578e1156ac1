import type { AnyQuantity, Temperature } from "../../quantity/index.js";
import { formatNumber, isQuantity, isTemperature, unitNamed } from "../../quantity/index.js";
import { figureText, isUncertainFigure, type ShownFigure } from "./figure-text.js";
import { shownUnits, systemOfLength } from "./shown-units.js";

/** Options and limits as one run computed them. */
export interface ShownGrounds {
  readonly options: readonly {
    readonly name: string;
    readonly figures: Readonly<Record<string, ShownFigure>>;
    readonly breaks: readonly string[];
  }[];
  readonly limits: Readonly<Record<string, ShownFigure>>;
}

/** One figure that is not what it was. */
export interface FigureMove {
  /** The option, or "limit". */
  readonly of: string;
  readonly figure: string;
  readonly before: string;
  readonly after: string;
  /** By how much, with unit and sign, and against its uncertainty at the time; "" where that cannot be said. */
  readonly by: string;
}

/** Every figure of the options and limits that moved, came or went; the order is that of the later options. */
export function figureMoves(then: ShownGrounds, now: ShownGrounds): readonly FigureMove[] {
  const moves: FigureMove[] = [];
  const compare = (
    of: string,
    before: Readonly<Record<string, ShownFigure>>,
    after: Readonly<Record<string, ShownFigure>>,
  ): void => {
    for (const figure of new Set([...Object.keys(after), ...Object.keys(before)])) {
      const [a, b] = [before[figure], after[figure]];
      if (a !== undefined && b !== undefined && sameFigure(a, b)) continue;
      const [textBefore, textAfter] = [a, b].map((value) =>
        value === undefined ? "not given" : figureText(value),
      );
      moves.push({ of, figure, before: textBefore!, after: textAfter!, by: movedBy(a, b) });
    }
  };
  for (const option of now.options) {
    const before = then.options.find(({ name }) => name === option.name);
    if (before !== undefined) compare(option.name, before.figures, option.figures);
  }
  compare("limit", then.limits, now.limits);
  return moves;
}

/** Beyond this share two figures are not the same; below, only the arithmetic of another platform differs. */
const roundOff = 1e-9;

function sameFigure(a: ShownFigure, b: ShownFigure): boolean {
  if (isUncertainFigure(a) && isUncertainFigure(b))
    return (
      sameNumber(sizeOf(a.value), sizeOf(b.value)) &&
      sameNumber(sizeOf(a.standardUncertainty), sizeOf(b.standardUncertainty))
    );
  if (typeof a === "string" || typeof b === "string") return a === b;
  return !isUncertainFigure(a) && !isUncertainFigure(b) && sameNumber(sizeOf(a), sizeOf(b));
}

function sameNumber(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= roundOff * Math.max(Math.abs(a), Math.abs(b));
}

/** A figure as a number, without its uncertainty; undefined for one in words. */
export function figureSize(figure: ShownFigure): number | undefined {
  const value = plain(figure);
  return typeof value === "string" ? undefined : sizeOf(value);
}

function sizeOf(figure: AnyQuantity | Temperature | number): number {
  return Number(figure.valueOf());
}

/** By how much a figure moved, with sign and unit, and against its uncertainty before; "" where that cannot be said. */
export function movedBy(a: ShownFigure | undefined, b: ShownFigure | undefined): string {
  if (a === undefined || b === undefined) return "";
  const difference = differenceText(a, b);
  if (difference === "" || !isUncertainFigure(a) || !isUncertainFigure(b)) return difference;
  const u = sizeOf(a.standardUncertainty);
  const move = Math.abs(sizeOf(b.value) - sizeOf(a.value));
  return u > 0 ? `${difference}, ${formatNumber(move / u, 2)} times its standard uncertainty` : difference;
}

function differenceText(a: ShownFigure, b: ShownFigure): string {
  const [from, to] = [plain(a), plain(b)];
  const text =
    typeof from === "number" && typeof to === "number"
      ? formatNumber(to - from, 3)
      : typeof from === "object" && typeof to === "object" && isTemperature(from) === isTemperature(to)
        ? amountText((to as { minus(other: unknown): AnyQuantity }).minus(from))
        : "";
  return text === "" || text.startsWith("−") ? text : `+${text}`;
}

/** A difference to three digits, a length in the small unit of its system. */
function amountText(difference: AnyQuantity): string {
  if (isQuantity(difference, "length")) {
    const { small, smallSymbol } = shownUnits(systemOfLength(difference));
    return `${formatNumber(difference.in(small), 3)} ${smallSymbol}`;
  }
  const unit = difference.shownIn === undefined ? undefined : unitNamed(difference.shownIn);
  if (unit === undefined) return difference.toString();
  // A move of a temperature is a difference without being called one.
  const symbol = unit.symbol.replace(" (difference)", "");
  return `${formatNumber(difference.si / unit.si, 3)} ${symbol}`;
}

function plain(figure: ShownFigure): AnyQuantity | Temperature | number | string {
  return isUncertainFigure(figure) ? figure.value : figure;
}
