import type { Block, Fact, Figure, Presentation, TableColumn, TableRow } from "../../view/blocks.js";
import { checkDrawing } from "./check-drawing.js";
import {
  count,
  type Fields,
  list,
  object,
  oneOf,
  optional,
  present,
  text,
  truth,
  WrongShape,
} from "./check-fields.js";

/**
 * The presentation in a piece of JSON of which nothing is known, or undefined where any part of it has not
 * exactly the shape of {@link Presentation}. What is returned is built anew from the known fields, so nothing
 * else gets through.
 */
export function checkPresentation(value: unknown): Presentation | undefined {
  try {
    const { title, blocks, ...given } = object(value);
    const ownPage = optional(given.ownPage, truth);
    return { title: text(title), blocks: list(blocks).map(block), ...present({ ownPage }) };
  } catch (error) {
    if (error instanceof WrongShape) return undefined;
    throw error;
  }
}

function block(value: unknown): Block {
  const given = object(value);
  switch (given.type) {
    case "text":
    case "warning":
      return { type: given.type, text: text(given.text) };
    case "facts":
      return { type: "facts", facts: list(given.facts).map(fact) };
    case "table":
      return table(given);
    case "figure": {
      const caption = optional(given.caption, text);
      return { type: "figure", figure: figure(given.figure), alt: text(given.alt), ...present({ caption }) };
    }
    case "drawing": {
      const caption = optional(given.caption, text);
      const narrow = optional(given.narrow, checkDrawing);
      return {
        type: "drawing",
        drawing: checkDrawing(given.drawing),
        alt: text(given.alt),
        ...present({ narrow, caption }),
      };
    }
    case "verdict": {
      const outcome = oneOf(given.outcome, ["yes", "no", "cannot tell yet"] as const);
      return { type: "verdict", outcome, text: text(given.text), because: text(given.because) };
    }
    case "caution":
      return { type: "caution", title: text(given.title), points: list(given.points).map(text) };
    default:
      throw new WrongShape();
  }
}

function fact(value: unknown): Fact {
  const { label, value: shown, note } = object(value);
  return { label: text(label), value: text(shown), ...present({ note: optional(note, text) }) };
}

function table(given: Fields): Block {
  const columns = list(given.columns).map(column);
  const rows = list(given.rows).map(row);
  if (rows.some(({ cells }) => cells.length !== columns.length)) throw new WrongShape();
  const caption = optional(given.caption, text);
  const showRows = optional(given.showRows, count);
  const stacked = optional(given.stacked, truth);
  return { type: "table", columns, rows, ...present({ caption, showRows, stacked }) };
}

function column(value: unknown): TableColumn {
  const { title, unit, align } = object(value);
  const side = oneOf(align, ["left", "right"] as const);
  return { title: text(title), align: side, ...present({ unit: optional(unit, text) }) };
}

function row(value: unknown): TableRow {
  const { cells, mark } = object(value);
  const marked = optional(mark, (given) => oneOf(given, ["warn", "bad"] as const));
  return { cells: list(cells).map(text), ...present({ mark: marked }) };
}

function figure(value: unknown): Figure {
  const { data, layout } = object(value);
  return { data: list(data).map(plainFields), layout: plainFields(layout) };
}

/** Deeper than any figure goes: what is nested further is meant to break something. */
const deepest = 32;

const polluting: readonly string[] = ["__proto__", "constructor", "prototype"];

function plainFields(value: unknown, depth = 0): Fields {
  const entries = Object.entries(object(value));
  if (depth > deepest || entries.some(([key]) => polluting.includes(key))) throw new WrongShape();
  return Object.fromEntries(entries.map(([key, item]) => [key, plain(item, depth)]));
}

function plain(value: unknown, depth: number): unknown {
  if (Array.isArray(value)) {
    if (depth > deepest) throw new WrongShape();
    return value.map((item) => plain(item, depth + 1));
  }
  return typeof value === "object" && value !== null ? plainFields(value, depth + 1) : value;
}
