import { type Angle, type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";
import { carriedInput, type MaybeMeasured } from "../carried/carried-input.js";
import { carry } from "../carried/carry.js";

/** Two pulleys and how the belt runs about them. */
export interface BeltWrapOptions {
  /** DIAMETER of the pulley on the shaft in question. */
  readonly pulley: MaybeMeasured<Length>;
  /** DIAMETER of the other pulley. */
  readonly other: MaybeMeasured<Length>;
  /** Between the two axes. */
  readonly centres: MaybeMeasured<Length>;
  readonly drive: "open" | "crossed";
}

/** How far a belt lies round its pulleys, and how long it is. */
export interface BeltWrap {
  readonly kind: "belt wrap";
  readonly drive: "open" | "crossed";
  /** Arc of contact on the pulley and on the other one. */
  readonly wrap: Measured<Angle>;
  readonly otherWrap: Measured<Angle>;
  /** By how much a straight part spreads from the line of centres on leaving the pulley; below 0 it draws in. */
  readonly spread: Measured<Angle>;
  /** Length of a straight part, from where it leaves one pulley to where it meets the other. */
  readonly straight: Measured<Length>;
  /** Length of the belt, at the thickness where the diameters are taken; nothing is added for the joint. */
  readonly length: Measured<Length>;
}

/**
 * Arc of contact of a flat belt on two pulleys, and the length of the belt.
 *
 * Spread of the straight parts, d the pulley, D the other, C the centres:
 * open: sin β = (D − d)/2C; crossed: sin β = −(D + d)/2C.
 * wrap = π − 2β; on the other: π + 2β open, π − 2β crossed; straight = C cos β; length = 2·straight + (d·wrap + D·other wrap)/2
 *
 * Valid when: the straight parts are straight. A slack side on top sags and adds to the wrap, one below takes from it.
 *
 * @param options.pulley  DIAMETER, > 0 [m]
 * @param options.other  DIAMETER, > 0 [m]
 * @param options.centres  more than half of both diameters together [m]
 * @param options.drive  "open" or "crossed"
 * @returns both wraps and the spread [rad], a straight part and the length [m], with standard uncertainties
 * @throws RangeError  a length not above 0, or pulleys that would touch
 * @example
 * const drive = beltWrap({ pulley: inch(6), other: inch(18), centres: foot(8), drive: "open" });
 * drive.wrap.value.in("radian").toFixed(4) // "3.0165"
 * @source R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 10th edition, equations 17-1 to 17-4
 */
export function beltWrap(options: BeltWrapOptions): BeltWrap {
  const { drive } = options;
  if (drive !== "open" && drive !== "crossed")
    throw new RangeError(`beltWrap: drive must be "open" or "crossed", got ${String(drive)}`);
  const inputs = (["pulley", "other", "centres"] as const).map((name) =>
    carriedInput("beltWrap", name, options[name], "length", "more than 0"),
  );
  const [d, D, c] = inputs.map(({ si }) => si);
  if (!(c! > (d! + D!) / 2))
    throw new RangeError(
      `beltWrap: centres must be more than half of both diameters together, or the pulleys touch; got ${plain(options.centres)} for ${plain(options.pulley)} and ${plain(options.other)}`,
    );
  const found = carry((numbers) => {
    const { wrap, otherWrap, spread, length } = wrapGeometry(numbers[0]!, numbers[1]!, numbers[2]!, drive);
    return [wrap, otherWrap, spread, length, numbers[2]! * Math.cos(spread)];
  }, inputs);
  const angle = (k: number): Measured<Angle> => {
    const of = (si: number): Angle => quantityFromSi("angle", si, "degree");
    return measured(of(found.values[k]!), of(found.u[k]!), found.degreesOfFreedom[k]!);
  };
  const length = (k: number): Measured<Length> => {
    const of = (si: number): Length => quantityFromSi("length", si, inputs[2]!.unit as never);
    return measured(of(found.values[k]!), of(found.u[k]!), found.degreesOfFreedom[k]!);
  };
  return Object.freeze({
    kind: "belt wrap",
    drive,
    wrap: angle(0),
    otherWrap: angle(1),
    spread: angle(2),
    straight: length(4),
    length: length(3),
  });
}

function plain(length: MaybeMeasured<Length>): Length {
  return "standardUncertainty" in length ? length.value : length;
}

/** Wraps and spread [rad] and length of two pulleys of DIAMETERS d and D, c apart, all in one unit. */
export function wrapGeometry(
  d: number,
  D: number,
  c: number,
  drive: "open" | "crossed",
): {
  readonly wrap: number;
  readonly otherWrap: number;
  readonly spread: number;
  readonly length: number;
} {
  const spread = Math.asin((drive === "open" ? D - d : -(D + d)) / (2 * c));
  const wrap = Math.PI - 2 * spread;
  const otherWrap = drive === "open" ? Math.PI + 2 * spread : wrap;
  return { wrap, otherWrap, spread, length: 2 * c * Math.cos(spread) + (d * wrap + D * otherWrap) / 2 };
}
