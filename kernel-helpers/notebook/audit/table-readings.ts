/** A number written in a table. */
export interface Reading {
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** Its column, counted from 0, and the column's name without unit. */
  readonly index: number;
  readonly column: string;
  /** As written. */
  readonly text: string;
  /** The reading moved by so many steps of its last written place, in the same form. */
  moved(steps: number): string;
}

/** Every decimal number under a column with a unit; remarks, fractions and empty cells are left out. */
export function readingsIn(file: string, text: string): readonly Reading[] {
  const lines = text.split("\n");
  const head = lines.findIndex((line) => line.trim() !== "" && !line.startsWith("#"));
  const header = (lines[head] ?? "").split(",").map((cell) => cell.trim());
  return lines.flatMap((line, i) =>
    i <= head || line.startsWith("#")
      ? []
      : line.split(",").flatMap((cell, index) => {
          const [, name] = /^(.*?)\s*\[[^\]]+\]$/.exec(header[index] ?? "") ?? [];
          const number = /^[+-]?\d+(?:\.(\d+))?$/.exec(cell.trim());
          if (name === undefined || number === null) return [];
          const decimals = number[1]?.length ?? 0;
          return [
            {
              file,
              line: i + 1,
              index,
              column: name,
              text: cell.trim(),
              moved: (steps: number): string => (Number(cell) + steps / 10 ** decimals).toFixed(decimals),
            },
          ];
        }),
  );
}

/** The files with one reading moved by so many steps of its last written place. */
export function withReading(
  files: ReadonlyMap<string, string>,
  { file, line, index, text, moved }: Reading,
  steps: number,
): ReadonlyMap<string, string> {
  const lines = (files.get(file) ?? "").split("\n");
  const cells = lines[line - 1]!.split(",");
  cells[index] = cells[index]!.replace(text, moved(steps));
  lines[line - 1] = cells.join(",");
  return new Map(files).set(file, lines.join("\n"));
}
