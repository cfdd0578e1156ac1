import {
  type Angle,
  foot,
  inMicrometres,
  inThou,
  isQuantity,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import { coverageFactor } from "../../statistics/index.js";
import { halfAngleOf } from "../../survey/index.js";
import { type GaugeBlockSet, type GaugeBlockStack, gaugeBlockStack } from "./gauge-block-stack.js";

/** What the lathe offers for a taper; what is left out is not there. */
export interface TaperWaysInput {
  /** Change of DIAMETER per length along the axis [-], without sign. */
  readonly taper: Measured<number>;
  /** Length of the taper to be cut. */
  readonly seat: Length;
  /** By how much it may be wrong from end to end, ON DIAMETER. */
  readonly allowed: Length;
  /** A division of the indicator that sets it, and the travel it is set over. */
  readonly indicatorDivision: Length;
  readonly indicatorTravel: Length;
  /** The longest taper the attachment cuts at one setting. */
  readonly attachmentReach?: Length | undefined;
  /** A division of its scale: in length per foot of taper ON DIAMETER, or in degrees of the HALF angle. */
  readonly attachmentDivision?: Length | Angle | undefined;
  /** Travel of the compound slide, and a division of its swivel. */
  readonly compoundTravel?: Length | undefined;
  readonly compoundDivision?: Angle;
  /** Tailstock: whole length of the work, how deep each centre sits in it, the most it can be set over. */
  readonly workLength?: Length | undefined;
  readonly centreDepth?: Length;
  readonly mostSetOver?: Length;
  /** Sine bar, roll to roll, and the set of gauge blocks: "inch 81" or "metric 88". */
  readonly sineBar?: Length | undefined;
  readonly gaugeBlocks?: string;
}

export type TaperWayName =
  | "taper attachment, by indicator"
  | "taper attachment, by its scale"
  | "compound slide, by its scale"
  | "compound slide, by indicator"
  | "compound slide, by sine bar"
  | "tailstock set over";

/** One way to set a taper, and how true it comes out. */
export interface TaperWay {
  readonly name: TaperWayName;
  /** What is set: a rise over the travel, taper per foot, an angle, a height of blocks, a set-over. */
  readonly setting: Measured<Length> | Measured<Angle>;
  /** What the figure is, in words. */
  readonly settingIs: string;
  readonly stack?: GaugeBlockStack;
  /** By how much the setting alone may leave the taper wrong from end to end: ON DIAMETER, 95 %. */
  readonly error: Length;
  readonly verdict: "good enough" | "too coarse" | "cannot reach";
  readonly reason: string;
}

/** Every way to set a taper on this lathe, the truest first. */
export interface TaperWays {
  readonly kind: "taper ways";
  readonly unitSystem: UnitSystem;
  readonly taper: Measured<number>;
  readonly seat: Length;
  readonly allowed: Length;
  /** What the uncertainty of the taper itself makes from end to end: ON DIAMETER, 95 %. */
  readonly ofTheTaper: Length;
  readonly ways: readonly TaperWay[];
  readonly warnings: readonly string[];
}

/** Set-over beyond this share of the length: centres no longer sit true. Common practice, no source. */
const largeSetOver = 1 / 50;

/**
 * The ways a lathe offers to set a taper, what to set in each, how wrong the taper may come out by the setting alone,
 * and whether that will do.
 *
 * C = change of DIAMETER per length, tan θ = C/2.
 * - by indicator over a travel t: rise t·C/2 ON RADIUS; u(C) = (2/t)·√2·u(indicator), two readings
 * - by a scale of angles, the compound's or the attachment's: θ; u(C) = 2 (1 + C²/4)·u(θ)
 * - by an attachment's scale of taper per foot: C·12 in ON DIAMETER; u(C) = u(scale)/12 in
 * - by sine bar of length b: blocks b·sin θ, the HALF angle; u(C) from the rest of the stack and two readings along b
 * - tailstock: (L − 2c)·sin θ between the points of the centres, c their depth in the work; u(C) = 2·u(set-over)/(L − 2c)
 *
 * A division d counts as a rectangular distribution: u = d/√12. Error from end to end = U(C)·seat, 95 %.
 *
 * Valid when: tool at centre height; indicator square to the way it measures (off by φ it shows 1/cos φ too much: 1.5 %
 * at 10°). The centres' own bedding in their holes is not in the tailstock's figure.
 *
 * @param input.taper  > 0 [-]
 * @param input.seat, input.allowed, input.indicatorDivision, input.indicatorTravel  > 0 [m]
 * @param input.attachmentReach, input.compoundTravel, input.workLength, input.sineBar, input.mostSetOver  > 0 [m]
 * @param input.compoundDivision  > 0 [rad]
 * @param input.attachmentDivision  > 0, per foot ON DIAMETER [m] or of the half angle [rad]
 * @param input.centreDepth  ≥ 0 [m]
 * @returns ways that fit the lathe, truest first; errors ON DIAMETER [m]
 * @throws RangeError  the taper is not above 0, a length is none, or the lathe offers no way at all
 * @example
 * const lathe = { indicatorDivision: thou(0.5), indicatorTravel: inch(5), attachmentReach: inch(12) };
 * const input = { taper: measured(1 / 16, 0), seat: inch(5), allowed: thou(1), ...lathe };
 * taperWays(input).ways[0].setting.value.in("inch") // 0.15625
 * @source geometry; F. D. Jones, Turning and Boring, Industrial Press, 1914 (set-over by the whole length, and that the
 * depth of the centres shortens it)
 */
export function taperWays(input: TaperWaysInput): TaperWays {
  check(input);
  const { taper, seat, allowed, indicatorDivision, indicatorTravel } = input;
  const system: UnitSystem = seat.writtenIn === "mm" || seat.writtenIn === "micrometre" ? "metric" : "inch";
  const size = (si: number): Length => quantityFromSi("length", si, system === "inch" ? "inch" : "mm");
  const small = (si: number): Length =>
    quantityFromSi("length", si, system === "inch" ? "thou" : "micrometre");
  const rounded = (si: number): string => (system === "inch" ? inThou(size(si)) : inMicrometres(size(si)));
  const k = coverageFactor(0.95, Number.POSITIVE_INFINITY);
  const half = halfAngleOf(taper);
  const theta = half.value.si;
  const uTwo = (Math.SQRT2 * indicatorDivision.si) / Math.sqrt(12);
  const ways: TaperWay[] = [];
  const add = (way: Omit<TaperWay, "error" | "verdict" | "reason">, u: number, cannot?: string): void => {
    const error = small(k * u * seat.si);
    const good = error.si <= allowed.si;
    ways.push(
      Object.freeze<TaperWay>({
        ...way,
        error,
        verdict: cannot !== undefined ? "cannot reach" : good ? "good enough" : "too coarse",
        reason: cannot ?? "",
      }),
    );
  };
  const rise = measured(size((indicatorTravel.si * taper.value) / 2), size(uTwo));
  const riseIs = `rise on radius over ${indicatorTravel}`;
  const uByRise = (2 * uTwo) / indicatorTravel.si;
  const byAngle = (name: TaperWayName, division: Angle, cannot?: string): void => {
    const u = division.si / Math.sqrt(12);
    const angle = measured(half.value, quantityFromSi("angle", u, "degree"));
    add(
      { name, setting: angle, settingIs: "half angle, off the axis" },
      2 * (1 + taper.value ** 2 / 4) * u,
      cannot,
    );
  };
  if (input.attachmentReach !== undefined) {
    const short = input.attachmentReach.si < seat.si ? `it reaches ${input.attachmentReach}` : undefined;
    add({ name: "taper attachment, by indicator", setting: rise, settingIs: riseIs }, uByRise, short);
    const division = input.attachmentDivision;
    if (division !== undefined) {
      const name = "taper attachment, by its scale";
      if (isQuantity(division, "angle")) byAngle(name, division, short);
      else {
        const u = division.si / Math.sqrt(12);
        const perFoot = measured(quantityFromSi("length", taper.value * foot(1).si, "inch"), size(u));
        add({ name, setting: perFoot, settingIs: "per foot, on diameter" }, u / foot(1).si, short);
      }
    }
  }
  if (input.compoundTravel !== undefined) {
    const short =
      input.compoundTravel.si < seat.si / Math.cos(theta)
        ? `its travel is ${input.compoundTravel}, along the flank`
        : undefined;
    add({ name: "compound slide, by indicator", setting: rise, settingIs: riseIs }, uByRise, short);
    if (input.compoundDivision !== undefined)
      byAngle("compound slide, by its scale", input.compoundDivision, short);
    if (input.sineBar !== undefined && input.gaugeBlocks !== undefined) {
      const bar = input.sineBar;
      const stack = gaugeBlockStack(size(bar.si * Math.sin(theta)), input.gaugeBlocks as GaugeBlockSet);
      const u = Math.hypot(uTwo, stack.rest.si);
      add(
        {
          name: "compound slide, by sine bar",
          setting: measured(stack.height, size(Math.abs(stack.rest.si))),
          settingIs: `blocks, ${bar} bar, half angle`,
          stack,
        },
        (2 * u) / (bar.si * Math.cos(theta) ** 3),
        short,
      );
    }
  }
  const warnings: string[] = [];
  if (input.workLength !== undefined) {
    const depth = input.centreDepth ?? size(0);
    const between = input.workLength.si - 2 * depth.si;
    const over = between * Math.sin(theta);
    const most = input.mostSetOver;
    add(
      {
        name: "tailstock set over",
        setting: measured(size(over), size(uTwo)),
        settingIs: `sideways, ${size(between)} point to point`,
      },
      (2 * uTwo) / (between * Math.cos(theta) ** 3),
      most !== undefined && most.si < over ? `it goes over by ${most} at most` : undefined,
    );
    if (over / between > largeSetOver)
      warnings.push(
        "The set-over is more than 1/50 of the length: plain centres no longer sit true in their holes and wear them oval. Use ball centres, or another way.",
      );
    if (depth.si > 0)
      warnings.push(
        `Reckoned on the whole length of ${input.workLength} the set-over would be ${rounded((input.workLength.si - between) * Math.sin(theta))} too much, and the taper wrong by ${rounded(seat.si * taper.value * ((2 * depth.si) / between))} on diameter from end to end: the centres reach ${depth} into the work.`,
      );
  }
  if (ways.length === 0)
    throw new RangeError(
      "taperWays: the lathe offers no way: give attachmentReach, compoundTravel or workLength",
    );
  const ofTheTaper = coverageFactor(0.95, taper.degreesOfFreedom) * taper.standardUncertainty * seat.si;
  if (ofTheTaper > allowed.si)
    warnings.push(
      `The taper itself is known to ${rounded(ofTheTaper)} on diameter from end to end (95 %), more than is allowed: no setting mends that. Measure it again, or fit to the hub by blue.`,
    );
  const rank = { "good enough": 0, "too coarse": 1, "cannot reach": 2 } as const;
  return Object.freeze<TaperWays>({
    kind: "taper ways",
    unitSystem: system,
    taper,
    seat,
    allowed,
    ofTheTaper: small(ofTheTaper),
    ways: Object.freeze(ways.sort((a, b) => rank[a.verdict] - rank[b.verdict] || a.error.si - b.error.si)),
    warnings: Object.freeze(warnings),
  });
}

function check(input: TaperWaysInput): void {
  const { taper, centreDepth, workLength } = input;
  if (!(taper?.value > 0 && Number.isFinite(taper.value)))
    throw new RangeError(
      `taperWays: taper must be above 0 (give it without sign: which end is large is for the eye), got ${taper?.value}`,
    );
  const needed = ["seat", "allowed", "indicatorDivision", "indicatorTravel"] as const;
  const given = ["attachmentReach", "compoundTravel", "workLength", "mostSetOver", "sineBar"] as const;
  for (const name of [...needed, ...given]) {
    const value = input[name];
    if (value === undefined && (given as readonly string[]).includes(name)) continue;
    if (!isQuantity(value, "length") || !(value.si > 0))
      throw new RangeError(`taperWays: ${name} must be a length above 0, got ${String(value)}`);
  }
  const { attachmentDivision: scale } = input;
  if (scale !== undefined && !((isQuantity(scale, "length") || isQuantity(scale, "angle")) && scale.si > 0))
    throw new RangeError(
      `taperWays: attachmentDivision must be above 0, a length per foot on diameter or an angle, got ${String(scale)}`,
    );
  if (input.compoundDivision !== undefined && !(input.compoundDivision.si > 0))
    throw new RangeError(`taperWays: compoundDivision must be above 0, got ${input.compoundDivision}`);
  if (centreDepth !== undefined && !(centreDepth.si >= 0 && 2 * centreDepth.si < (workLength?.si ?? 0)))
    throw new RangeError(
      `taperWays: centreDepth must be 0 or more and leave some of workLength, ${workLength ?? "which is not given"}; got ${centreDepth}`,
    );
}
