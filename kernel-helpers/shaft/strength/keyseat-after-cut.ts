import { isQuantity, type Length, quantityFromSi } from "../../quantity/index.js";

/** A keyseat on a shaft that is turned down. */
export interface KeyseatAfterCut {
  readonly kind: "keyseat after cut";
  /** DIAMETER before and after. */
  readonly before: Length;
  readonly after: Length;
  readonly width: Length;
  /** Depth at the SIDE of the seat, before and after: what the key bears on. */
  readonly sideBefore: Length;
  readonly sideAfter: Length;
  /** What is left of the side, as a share of what was [-]; 0 where the cut takes the whole seat away. */
  readonly share: number;
  /** By how much the floor must be cut deeper so that the key bears on as much as before. */
  readonly deepen: Length;
  /** From the floor of the seat to the far side of the shaft, as a micrometer reads it, after the cut: S. */
  readonly floorToFarSide: Length;
  /** The same after the floor is cut deeper. */
  readonly floorToFarSideDeepened: Length;
  /** How high the old key stands above the sides of the seat, if its height is given. */
  readonly keyProud: Length | undefined;
  readonly warnings: readonly string[];
}

/**
 * What a keyseat is worth after the shaft is turned down: how much of its side is left for the key to bear on, and how
 * much deeper its floor must be cut.
 *
 * floor from the axis: b = √(D²/4 − w²/4) − h; side after: √(d²/4 − w²/4) − b; S = b + d/2
 *
 * Valid when: the cut is about the old axis; about another one (re-centred) the seat loses more on one side.
 *
 * @param seat.before  DIAMETER the seat was cut on [m]
 * @param seat.after   DIAMETER after the cut [m], not above `before`
 * @param seat.width   of the seat [m]
 * @param seat.depth   of the seat before the cut [m], > 0
 * @param seat.depthAt where that depth is measured: "side" (default, ASME B17.1), or "top", from the top of the round (ISO 773)
 * @param seat.keyHeight  of the key that is to go in again [m]
 * @returns depths at the side [m], share left [-], what a micrometer reads across the seat [m]
 * @throws RangeError  the sizes are impossible: wider than the shaft, deeper than the axis, a cut that adds metal
 * @throws TypeError   a size is missing
 * @example keyseatAfterCut({ before: inch(2), after: inch(2), width: inch(0.5), depth: inch(0.25) }).floorToFarSide // 1.71825 in
 * @source geometry; S as in ASME B17.1-1967, table of depth control values
 */
export function keyseatAfterCut(seat: {
  readonly before: Length;
  readonly after: Length;
  readonly width: Length;
  readonly depth: Length;
  readonly depthAt?: "side" | "top";
  readonly keyHeight?: Length;
}): KeyseatAfterCut {
  const where = "keyseatAfterCut";
  const { before, after, width, depth, depthAt = "side", keyHeight } = seat;
  for (const [field, value] of Object.entries({
    before,
    after,
    width,
    depth,
    ...(keyHeight && { keyHeight }),
  }))
    if (!isQuantity(value, "length") || !(value.si > 0))
      throw new TypeError(`${where}: ${field} must be a length above 0, got ${String(value)}`);
  if (depthAt !== "side" && depthAt !== "top")
    throw new RangeError(`${where}: depthAt must be "side" or "top", got ${JSON.stringify(depthAt)}`);
  if (after.si > before.si)
    throw new RangeError(
      `${where}: a cut cannot add metal: after must not be above before (${before}), got ${after}`,
    );
  if (width.si >= after.si)
    throw new RangeError(
      `${where}: width must be smaller than the diameter after the cut (${after}), got ${width}`,
    );
  const chord = (d: number): number => Math.sqrt(d ** 2 - width.si ** 2) / 2;
  const top = depthAt === "side" ? chord(before.si) : before.si / 2;
  const floor = top - depth.si;
  if (floor <= 0)
    throw new RangeError(`${where}: depth must not reach the axis of a shaft of ${before}, got ${depth}`);
  const shown = (si: number): Length => quantityFromSi("length", si, before.writtenIn);
  const [sideBefore, side] = [chord(before.si) - floor, chord(after.si) - floor];
  if (sideBefore <= 0)
    throw new RangeError(
      `${where}: a depth of ${depth} from the top does not reach below the sides of a seat ${width} wide`,
    );
  const sideAfter = Math.max(0, side);
  const warnings =
    side <= 0
      ? ["The cut takes the whole seat away: a new one must be cut."]
      : sideAfter < 0.5 * sideBefore
        ? ["Less than half of the seat's side is left: cut the floor deeper, or fit a stepped key."]
        : [];
  return Object.freeze<KeyseatAfterCut>({
    kind: "keyseat after cut",
    before,
    after,
    width,
    sideBefore: shown(sideBefore),
    sideAfter: shown(sideAfter),
    share: sideAfter / sideBefore,
    deepen: shown(chord(before.si) - chord(after.si)),
    floorToFarSide: shown(floor + after.si / 2),
    floorToFarSideDeepened: shown(floor + after.si / 2 - (chord(before.si) - chord(after.si))),
    keyProud: keyHeight === undefined ? undefined : shown(keyHeight.si - sideAfter),
    warnings: Object.freeze(warnings),
  });
}
