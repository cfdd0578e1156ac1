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
  /** e.g. a thread, a keyseat: what stands on the drawing beside it. */
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
  })[];
  readonly length: Length;
  readonly notes: readonly string[];
}

/**
 * A shaft to be made, stretch by stretch, with the limits of every toleranced diameter, for its drawing.
 *
 * taper of a stretch = |end − start|/length, on diameter; whole length = sum of the stretches
 *
 * @param given.title  of the rebuild
 * @param given.material  as it stands in the title block
 * @param given.stretches  from left to right; lengths and diameters > 0 [m]
 * @param given.notes  beside the drawing
 * @returns the drawing's data
 * @throws RangeError  no stretch, a length or diameter that is not above 0, or a tolerance on a taper; the stretch is named
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
    const { name, length, diameter, endDiameter, tolerance } = stretch;
    for (const [what, value] of Object.entries({ length, diameter, endDiameter }))
      if (value !== undefined && !(isQuantity(value, "length") && value.si > 0))
        throw new RangeError(
          `shaftDrawing: "${name}": ${what} must be a length above 0, got ${String(value)}`,
        );
    if (endDiameter !== undefined && tolerance !== undefined)
      throw new RangeError(
        `shaftDrawing: "${name}": a tolerance is for a cylinder; a taper is held by its gauge, got ${tolerance}`,
      );
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
