/** A place on the screen [px]. */
type Box = Pick<DOMRect, "left" | "right" | "top" | "bottom">;

/** A mark wider than those of readings, such as the arrow at a reading off the scale [px]. */
const largeMark = 9;

/**
 * On a screen narrower than a figure was laid out for, its labels would stick out or lie on each other: the first are
 * moved in, over a large mark where they would cover it, and those that find no place after them are left out. Table
 * and hover say the same. The report's page does likewise.
 *
 * @param width the width that the figure was laid out for [px]
 */
export function fitLabels(plot: HTMLElement, width: number): void {
  const boxes = (what: string): Box[] =>
    [...plot.querySelectorAll(what)].map((part) => part.getBoundingClientRect());
  const edge = Math.max(...boxes(".nsewdrag").map(({ right }) => right));
  const marks = boxes(".point").filter(({ left, right }) => right - left > largeMark);
  const narrow = plot.clientWidth < 0.85 * width;
  const taken: Box[] = [];
  for (const label of plot.querySelectorAll<SVGGElement>(".annotation")) {
    label.style.transform = "";
    label.style.visibility = "";
    if (!narrow) continue;
    const move = (x: number, y: number): void => {
      label.style.transform = `translate(${x}px, ${y}px)`;
    };
    const shift = Math.min(0, edge - label.getBoundingClientRect().right);
    if (shift < 0) move(shift, 0);
    const covered = marks.find((mark) => shift < 0 && overlap(label.getBoundingClientRect(), mark));
    if (covered !== undefined) move(shift, covered.top - label.getBoundingClientRect().bottom);
    const box = label.getBoundingClientRect();
    if (taken.some((other) => overlap(box, other))) label.style.visibility = "hidden";
    else taken.push(box);
  }
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
