import { isoZone } from "../../handbook/index.js";
import { isQuantity, type Length, type UnitSystem } from "../../quantity/index.js";

/** One stretch of a shaft to be made, from left to right. */
export interface DrawnStretch {
  readonly name: string;
  readonly length: Length;
  /** At its left end; all along where `endDiameter` is left out. */
  readonly diameter: Length;
  /** At its right end: the stretch is a taper. */
  readonly endDiameter?: Length;
  /** A shaft's zone of ISO 286, e.g. "h8"; for a cylinder only. */
  readonly tolerance?: string;
  /** Roughness Ra at most. */
  readonly roughness?: Length;
  /** Threaded from end to end: what the thread is called, and its root. `diameter` is the outside of the thread. */
  readonly thread?: { readonly name: string; readonly rootDiameter: Length };
  /** A keyseat, its middle `middle` from the stretch's left end; depth from the top of the shaft there, as cut. */
  readonly keyseat?: {
    readonly width: Length;
    readonly depth: Length;
    readonly length: Length;
    readonly middle: Length;
    /** On a taper only, and there it must be said. */
    readonly floor?: "along the flank" | "along the axis";
  };
  /** Radius at its shoulders. */
  readonly fillet?: Length;
  /** What stands on the drawing beside it. */
  readonly remark?: string;
}

/** A shaft as it is drawn to be made. */
export interface ShaftDrawing {
  readonly kind: "shaft drawing";
  readonly title: string;
  readonly material: string;
  readonly unitSystem: UnitSystem;
  readonly stretches: readonly (DrawnStretch & {
    /** Limits of a toleranced diameter. */
    readonly limits?: { readonly smallest: Length; readonly largest: Length };
    /** Change of DIAMETER per length, without sign [-], of a taper. */
    readonly taper?: number;
    /** Diameter at a keyseat's middle, and from its floor to the far side of the shaft there: what a micrometer reads. */
    readonly keyedDiameter?: Length;
    readonly floorToFarSide?: Length;
  })[];
  readonly length: Length;
  readonly notes: readonly string[];
}

/**
 * A shaft to be made, stretch by stretch, with the limits of every toleranced diameter, for its drawing.
 *
 * taper of a stretch = |end − start|/length, on diameter; whole length = sum of the stretches;
 * keyseat's floor to the far side = diameter − depth, at the keyseat's middle
 *
 * @param given.title  of the rebuild
 * @param given.material  as it stands in the title block
 * @param given.stretches  from left to right; lengths and diameters > 0 [m]
 * @param given.notes  beside the drawing
 * @returns the drawing's data
 * @throws RangeError  no stretch, a length or diameter that is not above 0, a tolerance on a taper, a keyseat that does not
 * lie in its stretch or, on a taper, does not say how its floor runs, a thread whose root is not below its outside; the
 * stretch is named
 * @example
 * const body = { name: "body", length: inch(10), diameter: inch(2), tolerance: "h8" };
 * shaftDrawing({ title: "shaft", material: "steel", stretches: [body] }).length.in("inch") // 10
 */
export function shaftDrawing(given: {
  readonly title: string;
  readonly material: string;
  readonly stretches: readonly DrawnStretch[];
  readonly notes?: readonly string[];
}): ShaftDrawing {
  const { title, material, stretches, notes = [] } = given;
  const [first] = stretches;
  if (first === undefined) throw new RangeError("shaftDrawing: at least one stretch must be given, got none");
  const drawn = stretches.map((stretch) => {
    const { name, length, diameter, endDiameter, tolerance, thread, keyseat, fillet } = stretch;
    const lengths = { length, diameter, endDiameter, fillet, "thread's root": thread?.rootDiameter };
    for (const [what, value] of Object.entries(lengths))
      if (value !== undefined && !(isQuantity(value, "length") && value.si > 0))
        throw new RangeError(
          `shaftDrawing: "${name}": ${what} must be a length above 0, got ${String(value)}`,
        );
    if (endDiameter !== undefined && tolerance !== undefined)
      throw new RangeError(
        `shaftDrawing: "${name}": a tolerance is for a cylinder; a taper is held by its gauge, got ${tolerance}`,
      );
    if (thread !== undefined && (endDiameter !== undefined || !(thread.rootDiameter.si < diameter.si)))
      throw new RangeError(
        `shaftDrawing: "${name}": a thread must be on a cylinder and its root below ${diameter}, got root ${thread.rootDiameter}${endDiameter === undefined ? "" : " on a taper"}`,
      );
    const keyedDiameter = keyseat && diameterAt(stretch, keyseat.middle);
    if (keyseat !== undefined) checkKeyseat(stretch, keyseat, keyedDiameter!);
    const zone = tolerance === undefined ? undefined : isoZone(diameter, tolerance);
    if (zone?.of === "hole")
      throw new RangeError(
        `shaftDrawing: "${name}": tolerance must be a shaft's, a small letter, got "${tolerance}"`,
      );
    return Object.freeze({
      ...stretch,
      ...(zone === undefined
        ? {}
        : { limits: Object.freeze({ smallest: zone.smallest, largest: zone.largest }) }),
      ...(keyseat && { keyedDiameter: keyedDiameter!, floorToFarSide: keyedDiameter!.minus(keyseat.depth) }),
      ...(endDiameter === undefined ? {} : { taper: Math.abs(endDiameter.si - diameter.si) / length.si }),
    });
  });
  const metric = first.length.writtenIn === "mm";
  return Object.freeze<ShaftDrawing>({
    kind: "shaft drawing",
    title,
    material,
    unitSystem: metric ? "metric" : "inch",
    stretches: Object.freeze(drawn),
    length: stretches.slice(1).reduce((sum, { length }) => sum.plus(length), first.length),
    notes: Object.freeze([...notes]),
  });
}

function diameterAt({ length, diameter, endDiameter = diameter }: DrawnStretch, along: Length): Length {
  return diameter.plus(endDiameter.minus(diameter).times(along.si / length.si));
}

function checkKeyseat(
  { name, length, endDiameter }: DrawnStretch,
  keyseat: NonNullable<DrawnStretch["keyseat"]>,
  diameter: Length,
): void {
  const { floor, ...sizes } = keyseat;
  for (const [what, value] of Object.entries(sizes))
    if (!(isQuantity(value, "length") && value.si > 0))
      throw new RangeError(
        `shaftDrawing: "${name}": keyseat's ${what} must be a length above 0, got ${String(value)}`,
      );
  if (endDiameter !== undefined && floor !== "along the flank" && floor !== "along the axis")
    throw new RangeError(
      `shaftDrawing: "${name}": the floor of a keyseat on a taper must be said: "along the flank" or "along the axis", got ${String(floor)}`,
    );
  const half = keyseat.length.si / 2;
  // A keyseat open at the shaft's end lies exactly at the edge; a rounding must not throw it out.
  const slack = 1e-9;
  if (keyseat.middle.si - half < -slack || keyseat.middle.si + half > length.si + slack)
    throw new RangeError(
      `shaftDrawing: "${name}": the keyseat, ${keyseat.length} about ${keyseat.middle}, must lie within its ${length}`,
    );
  if (!(keyseat.width.si < diameter.si && keyseat.depth.si < diameter.si / 2))
    throw new RangeError(
      `shaftDrawing: "${name}": the keyseat must be narrower than ${diameter} and less deep than half of it, got ${keyseat.width} wide, ${keyseat.depth} deep`,
    );
}
