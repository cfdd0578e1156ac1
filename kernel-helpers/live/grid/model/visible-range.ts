/** Up to so many lines a table is drawn whole; a longer one only where it is looked at. */
const drawnWhole = 300;
/** So many lines more than fit are drawn, above and below. */
const spare = 30;

/**
 * Which lines of a long table to draw.
 *
 * @param count      all lines
 * @param top        how far the view is pushed down [px]
 * @param height     of the view [px]
 * @param rowHeight  of a line [px]; 0 where it is not known yet
 * @returns start, and end (which is not drawn itself)
 */
export function visibleRange(
  count: number,
  top: number,
  height: number,
  rowHeight: number,
): { readonly start: number; readonly end: number } {
  if (count <= drawnWhole) return { start: 0, end: count };
  if (rowHeight <= 0) return { start: 0, end: drawnWhole };
  const first = Math.floor(top / rowHeight) - spare;
  const last = Math.ceil((top + height) / rowHeight) + spare;
  const end = Math.min(count, Math.max(last, spare));
  return { start: Math.min(Math.max(0, first), end), end };
}
