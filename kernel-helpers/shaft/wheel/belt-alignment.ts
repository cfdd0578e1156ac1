import { type Angle, type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";

/** Gaps between a straight string and the sides of two pulleys, each pulley read at two ends of a diameter. */
export interface StringGaps {
  /** At the end of the first pulley away from the second, and at the end towards it. */
  readonly first: readonly [Length, Length];
  /** At the end of the second pulley towards the first, and at the end away from it. */
  readonly second: readonly [Length, Length];
}

/** The pulleys and how they were read. */
export interface BeltAlignmentOptions {
  /** Distance between the two places read on each pulley: about its diameter. */
  readonly spans: readonly [Length, Length];
  /** Face widths of the two pulleys; the middles of the faces are what must agree. Equal where left out. */
  readonly faceWidths?: readonly [Length, Length];
  /** Distance between the shafts. */
  readonly centres: Length;
  /** Standard uncertainty of one gap. */
  readonly gapUncertainty: Length;
}

/** How two pulleys stand to each other, in the plane of the string. */
export interface BeltAlignment {
  readonly kind: "belt alignment";
  /** How far the middle of the second face lies aside of the first pulley's middle plane; grows with the gaps. */
  readonly offset: Measured<Length>;
  /** Angle between the two pulleys' planes: that of the shafts out of parallel in the plane of the string. */
  readonly angle: Measured<Angle>;
  /** What that angle moves the second shaft's end by, a foot (or 300 mm) along the shaft. */
  readonly perFoot: Measured<Length>;
}

/**
 * Alignment of two pulleys from a string stretched past their sides and the gaps to it.
 *
 * Angle of a pulley's plane against the string: α = (g₂ − g₁)/span. Angle between them: α₂ − α₁.
 * Offset: middle plane of the first, carried on to the second shaft, against the middle of the second face:
 * (h₂ − h₁) − α₁·centres, h = mean gap + half the face width.
 *
 * Valid when: the sides read run true (turn the pulley half round and take the mean, else) and the angles are small.
 * A second string across the other plane is needed for the twist there.
 *
 * @param gaps  from the string to the sides [m]
 * @param options.spans  between the two places read, > 0 [m]
 * @param options.faceWidths  > 0 [m]
 * @param options.centres  > 0 [m]
 * @param options.gapUncertainty  standard, > 0 [m]
 * @returns offset [m] and angle [rad] with their standard uncertainties
 * @throws RangeError  a length not above 0
 * @example
 * const gaps = { first: [mm(0), mm(0)], second: [mm(3), mm(3)] };
 * beltAlignment(gaps, { spans: [mm(600), mm(350)], centres: mm(2400), gapUncertainty: mm(0.3) }).offset.value.in("mm") // 3
 * @source plane geometry; the string method: common practice, no source
 */
export function beltAlignment({ first, second }: StringGaps, options: BeltAlignmentOptions): BeltAlignment {
  const { spans, faceWidths, centres, gapUncertainty } = options;
  for (const [name, value] of [
    ["first span", spans[0]],
    ["second span", spans[1]],
    ["centres", centres],
    ["gapUncertainty", gapUncertainty],
    ...(faceWidths === undefined ? [] : faceWidths.map((width) => ["face width", width] as const)),
  ] as const)
    if (!(value.si > 0)) throw new RangeError(`beltAlignment: ${name} must be above 0, got ${value}`);
  const [half1, half2] = faceWidths === undefined ? [0, 0] : faceWidths.map((width) => width.si / 2);
  const [s1, s2, c] = [spans[0].si, spans[1].si, centres.si];
  const alpha1 = (first[1].si - first[0].si) / s1;
  const alpha2 = (second[1].si - second[0].si) / s2;
  const middle = (pair: readonly [Length, Length]): number => (pair[0].si + pair[1].si) / 2;
  const offset = middle(second) + half2! - middle(first) - half1! - alpha1 * c;
  const u = gapUncertainty.si;
  // Each gap once: the first pulley's gaps count in its middle and, through its angle, over the centre distance.
  const uOffset = u * Math.hypot(0.5 - c / s1, 0.5 + c / s1, 0.5, 0.5);
  const uAngle = u * Math.SQRT2 * Math.hypot(1 / s1, 1 / s2);
  const lengthIn = (si: number): Length => quantityFromSi("length", si, first[0].writtenIn as never);
  const foot = first[0].writtenIn === "mm" ? 0.3 : 0.3048;
  return Object.freeze({
    kind: "belt alignment",
    offset: measured(lengthIn(offset), lengthIn(uOffset)),
    angle: measured(
      quantityFromSi("angle", alpha2 - alpha1, "degree"),
      quantityFromSi("angle", uAngle, "degree"),
    ),
    perFoot: measured(lengthIn((alpha2 - alpha1) * foot), lengthIn(uAngle * foot)),
  });
}
