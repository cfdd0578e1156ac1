import type { Figure } from "../blocks.js";

/**
 * A figure as JSON with the fields of each object in the order of their names. An executed notebook stores figures in
 * that order: so a figure has the same text, and the same picture, before it is stored and after.
 */
export function figureText(figure: Figure): string {
  return JSON.stringify(figure, (_, value: unknown) =>
    typeof value === "object" && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
      : value,
  );
}
