/** A cell of the editor. Line −1 is the header; the line behind the last is the new row. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** What the moves need to know of a table. */
export interface TableShape {
  /** Lines of the body, without the new row. */
  readonly lines: number;
  readonly columns: number;
  /** Whether a line is a remark, which has one cell across all columns. */
  readonly isRemark: (line: number) => boolean;
}

export type Move = "left" | "right" | "up" | "down" | "line start" | "line end" | "first" | "last";

/** The cell an arrow leads to; the same cell at the edge. */
export function movedPlace(place: Place, move: Move, shape: TableShape): Place {
  const { line, column } = place;
  const lastColumn = shape.columns - 1;
  const isRemark = line >= 0 && line < shape.lines && shape.isRemark(line);
  switch (move) {
    case "left":
      return { line, column: isRemark ? column : Math.max(0, column - 1) };
    case "right":
      return { line, column: isRemark ? column : Math.min(lastColumn, column + 1) };
    case "up":
      return { line: Math.max(-1, line - 1), column };
    case "down":
      return { line: Math.min(shape.lines, line + 1), column };
    case "line start":
      return { line, column: 0 };
    case "line end":
      return { line, column: lastColumn };
    case "first":
      return { line: shape.lines === 0 ? 0 : Math.min(0, line), column: 0 };
    case "last":
      return { line: Math.max(0, shape.lines - 1), column: lastColumn };
  }
}

/**
 * The next cell to write into, in reading order: along the rows, or down the columns. Remark lines are passed
 * over. Behind the last row comes the new row; behind the new row nothing (undefined).
 *
 * @param place      where one is
 * @param direction  "across" or "down"
 * @param step       1 onwards, −1 back
 * @param shape      of the table
 */
export function nextPlace(
  place: Place,
  direction: "across" | "down",
  step: 1 | -1,
  shape: TableShape,
): Place | undefined {
  const lines = [-1];
  for (let line = 0; line <= shape.lines; line++)
    if (line === shape.lines || !shape.isRemark(line)) lines.push(line);
  // From a remark line on, the order goes on with the row below it, or back to the one above.
  let row = lines.findIndex((line) => line >= place.line);
  if (lines[row] !== place.line)
    return step > 0 ? { line: lines[row]!, column: 0 } : { line: lines[row - 1]!, column: shape.columns - 1 };
  let { column } = place;
  if (direction === "across") {
    column += step;
    if (column < 0 || column >= shape.columns) {
      row += step;
      column = step > 0 ? 0 : shape.columns - 1;
    }
  } else {
    row += step;
    // The header is no part of a column that is being written down.
    if (row < 1 || row >= lines.length) {
      column += step;
      row = step > 0 ? Math.min(1, lines.length - 1) : lines.length - 1;
    }
  }
  if (row < 0 || row >= lines.length || column < 0 || column >= shape.columns) return undefined;
  return { line: lines[row]!, column };
}
