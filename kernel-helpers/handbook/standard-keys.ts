import { inch, type Length, mm } from "../quantity/index.js";

/** A parallel key and its seats for a range of shaft diameters. */
export interface StandardKey {
  readonly kind: "standard key";
  readonly form: "square" | "rectangular";
  /** Shafts over this diameter … */
  readonly over: Length;
  /** … up to and with this one. */
  readonly toIncluding: Length;
  readonly width: Length;
  readonly height: Length;
  /** Depth of the shaft's seat at its side (ASME) or at the middle (ISO), see `depthAt`. */
  readonly seatDepth: Length;
  /** Depth of the hub's keyway. */
  readonly hubDepth: Length;
  /** Where the seat's depth is measured: at the side of the seat, or from the top of the round shaft. */
  readonly depthAt: "side" | "top";
  readonly standard: "ASME B17.1" | "ISO 773";
  readonly source: string;
}

/** Over, to and with, width, height of the square key, height of the rectangular one (none below 7/16) [in]. */
const inchRows: readonly (readonly [number, number, number, number, number | undefined])[] = [
  [5 / 16, 7 / 16, 3 / 32, 3 / 32, undefined],
  [7 / 16, 9 / 16, 1 / 8, 1 / 8, 3 / 32],
  [9 / 16, 7 / 8, 3 / 16, 3 / 16, 1 / 8],
  [7 / 8, 1.25, 1 / 4, 1 / 4, 3 / 16],
  [1.25, 1.375, 5 / 16, 5 / 16, 1 / 4],
  [1.375, 1.75, 3 / 8, 3 / 8, 1 / 4],
  [1.75, 2.25, 1 / 2, 1 / 2, 3 / 8],
  [2.25, 2.75, 5 / 8, 5 / 8, 7 / 16],
  [2.75, 3.25, 3 / 4, 3 / 4, 1 / 2],
  [3.25, 3.75, 7 / 8, 7 / 8, 5 / 8],
  [3.75, 4.5, 1, 1, 3 / 4],
  [4.5, 5.5, 1.25, 1.25, 7 / 8],
  [5.5, 6.5, 1.5, 1.5, 1],
  [6.5, 7.5, 1.75, 1.75, 1.5],
];

/** Over, to and with, width, height, depth in the shaft, depth in the hub [mm]. */
const metricRows: readonly (readonly [number, number, number, number, number, number])[] = [
  [6, 8, 2, 2, 1.2, 1],
  [8, 10, 3, 3, 1.8, 1.4],
  [10, 12, 4, 4, 2.5, 1.8],
  [12, 17, 5, 5, 3, 2.3],
  [17, 22, 6, 6, 3.5, 2.8],
  [22, 30, 8, 7, 4, 3.3],
  [30, 38, 10, 8, 5, 3.3],
  [38, 44, 12, 8, 5, 3.3],
  [44, 50, 14, 9, 5.5, 3.8],
  [50, 58, 16, 10, 6, 4.3],
  [58, 65, 18, 11, 7, 4.4],
  [65, 75, 20, 12, 7.5, 4.9],
  [75, 85, 22, 14, 9, 5.4],
  [85, 95, 25, 14, 9, 5.4],
  [95, 110, 28, 16, 10, 6.4],
  [110, 130, 32, 18, 11, 7.4],
  [130, 150, 36, 20, 12, 8.4],
  [150, 170, 40, 22, 13, 9.4],
  [170, 200, 45, 25, 15, 10.4],
];

/** Keys by ASME B17.1, square and rectangular, and by ISO 773. */
export const standardKeys: readonly StandardKey[] = Object.freeze([
  ...inchRows.flatMap(([over, to, width, square, rectangular]) => [
    inchKey("square", over, to, width, square),
    ...(rectangular === undefined ? [] : [inchKey("rectangular", over, to, width, rectangular)]),
  ]),
  ...metricRows.map(([over, to, width, height, seat, hub]) =>
    Object.freeze<StandardKey>({
      kind: "standard key",
      form: width === height ? "square" : "rectangular",
      over: mm(over),
      toIncluding: mm(to),
      width: mm(width),
      height: mm(height),
      seatDepth: mm(seat),
      hubDepth: mm(hub),
      depthAt: "top",
      standard: "ISO 773",
      source:
        "ISO/R 773 = DIN 6885 part 1 (rows up to 58 mm and from 38 to 200 mm read in two public tables)",
    }),
  ),
]);

/**
 * The key that a standard gives a shaft by its diameter, with the depth of its seats.
 *
 * Valid when: new work. What an old shaft has is measured, not looked up. The inch depths are half of the key at the
 * SIDE of the seat, the metric ones are from the top of the round shaft.
 *
 * @param diameter  of the shaft [m], over 5/16 to 7 1/2 in or over 6 to 200 mm
 * @param standard  "ASME B17.1" or "ISO 773"
 * @param form      "square" (default) or "rectangular": of ASME B17.1 alone
 * @returns the key, its seats, the range of shafts it is for
 * @throws RangeError  no key for that diameter or form
 * @example standardKey(inch(2.4375), "ASME B17.1").width // 0.625 in
 * @source ASME B17.1-1967, table 1; Shigley & Nisbett, Mechanical Engineering Design, 9th edition, table 7-6, p. 391
 * (read); ISO/R 773:1969 = DIN 6885-1
 */
export function standardKey(
  diameter: Length,
  standard: StandardKey["standard"],
  form: StandardKey["form"] = "square",
): StandardKey {
  const sizes = standardKeys.filter((key) => key.standard === standard);
  if (sizes.length === 0)
    throw new RangeError(
      `standardKey: standard must be "ASME B17.1" or "ISO 773", got ${JSON.stringify(standard)}`,
    );
  // A size of the inch read from its millimetres may lie a rounding above its step.
  const rounding = 1e-9;
  const fitting = sizes.filter(
    (key) => diameter.si > key.over.si + rounding && diameter.si <= key.toIncluding.si + rounding,
  );
  const found = standard === "ISO 773" ? fitting[0] : fitting.find((key) => key.form === form);
  if (found === undefined)
    throw new RangeError(
      `standardKey: ${standard} has no ${standard === "ISO 773" ? "" : `${form} `}key for a shaft of ${diameter}; it goes from over ${sizes[0]!.over} to ${sizes.at(-1)!.toIncluding}`,
    );
  return found;
}

function inchKey(
  form: StandardKey["form"],
  over: number,
  to: number,
  width: number,
  height: number,
): StandardKey {
  return Object.freeze<StandardKey>({
    kind: "standard key",
    form,
    over: inch(over),
    toIncluding: inch(to),
    width: inch(width),
    height: inch(height),
    seatDepth: inch(height / 2),
    hubDepth: inch(height / 2),
    depthAt: "side",
    standard: "ASME B17.1",
    source:
      "ASME B17.1-1967, table 1, as in Shigley & Nisbett, Mechanical Engineering Design, 9th edition, table 7-6, p. 391 (read)",
  });
}
