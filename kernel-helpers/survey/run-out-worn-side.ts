import { type Angle, isQuantity, type Length, type Measured, quantityFromSi } from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";
import type { WearBands } from "./profile-types.js";
import { angleWords, smallText } from "./run-out-text.js";
import type { RunOut } from "./run-out-types.js";

/** One stretch of shaft and the side on which metal is missing. */
export interface WornPlace {
  readonly from: Length;
  readonly to: Length;
  /** The worn side; undefined where it is not known, or only which of two opposite sides. */
  readonly side: Measured<Angle> | undefined;
  /** Where only the direction across is known: the angle of the smallest diameter, this side or the opposite one. */
  readonly across: Angle | undefined;
  /** By how much it is lower than the side opposite, on radius; from indicator readings only. */
  readonly lower: Measured<Length> | undefined;
  /** Whether that agrees with the load's direction. */
  readonly agrees: "yes" | "no" | "cannot tell yet";
  readonly text: string;
}

export interface WornSide {
  readonly kind: "worn side";
  readonly title: string;
  readonly evidence: "diameters" | "indicator between centres";
  /** Where the load presses the shaft, as an angle of the shaft; undefined where not given. */
  readonly loadDirection: Angle | undefined;
  /** How far off the load's direction still agrees with it. */
  readonly within: Angle;
  readonly places: readonly WornPlace[];
  /** "no" where one place disagrees, "yes" where all agree, else "cannot tell yet". */
  readonly agrees: "yes" | "no" | "cannot tell yet";
  readonly text: string;
}

export interface WornSideOptions {
  /** Where the load presses the shaft against its box, as an angle of the shaft, counted as in the tables. */
  readonly loadDirection?: Angle | undefined;
  /** How far off it the worn side may lie and still agree; default 45°. */
  readonly within?: Angle;
}

/**
 * Which side of a shaft is worn, and whether that agrees with the load.
 *
 * Diameters at 0° and 90° tell across which direction metal is missing, but not on which of the two opposite sides;
 * indicator readings between centres tell the side. With Δ the angle from load to worn side, U its expanded
 * uncertainty (95 %): agrees where |Δ| + U ≤ within, disagrees where |Δ| − U > within. From diameters Δ is counted to
 * the nearer of the two sides, so they can disagree, and never more than not disagree.
 *
 * Valid when: the load's direction is given as an angle OF THE SHAFT. A load that stands still while the shaft turns
 * wears the shaft evenly and its box on one side; one-sided wear of the shaft itself speaks of a load that turns
 * with it (out of balance, a crank, a bend) or of a shaft that stood still. The text says so.
 *
 * @param evidence  wear bands (diameters) or run-out (indicator)
 * @param options.loadDirection  where the load presses the shaft [rad]; e.g. rebuild.angleIfGiven("load direction")
 * @param options.within  how far off still agrees, over 0 and below 90° [rad]
 * @returns the worn places with side, agreement and words
 * @throws RangeError  `within` is outside its bounds
 * @throws TypeError  the evidence is neither wear bands nor run-out
 * @example
 * const turn = [0, 90, 180, 270];
 * const rows = [0, 10, 20, 30, 40].flatMap((z) =>
 *   turn.map((a) => `${z},${a},${z === 20 ? -Math.cos((a * Math.PI) / 180) : 0}`));
 * const bytes = new TextEncoder().encode(["station [in],angle [deg],reading [thou]", ...rows].join("\n"));
 * const found = runOut(readTable(bytes, { name: "r", file: "r.csv" }), { readingUncertainty: thou(0.01) });
 * wornSide(found, { loadDirection: degree(0) }).evidence // "indicator between centres"
 * @source geometry; the remark on standing and turning loads: common knowledge of the trade, no source
 */
export function wornSide(evidence: WearBands | RunOut, options: WornSideOptions = {}): WornSide {
  const { loadDirection, within = quantityFromSi("angle", Math.PI / 4, "degree") } = options;
  if (!isQuantity(within, "angle") || !(within.si > 0 && within.si < Math.PI / 2))
    throw new RangeError(`wornSide: within must be an angle over 0 and below 90°, got ${within}`);
  const kind: unknown = evidence.kind;
  if (kind !== "wear bands" && kind !== "run-out")
    throw new TypeError(`wornSide: evidence must be wear bands or run-out, got ${String(kind)}`);
  const places =
    evidence.kind === "run-out"
      ? fromRunOut(evidence, loadDirection, within)
      : fromDiameters(evidence, loadDirection, within);
  const agrees: WornSide["agrees"] = places.some((place) => place.agrees === "no")
    ? "no"
    : places.length > 0 && places.every((place) => place.agrees === "yes")
      ? "yes"
      : "cannot tell yet";
  return Object.freeze<WornSide>({
    kind: "worn side",
    title: evidence.kind === "run-out" ? evidence.title : evidence.profile.title,
    evidence: evidence.kind === "run-out" ? "indicator between centres" : "diameters",
    loadDirection,
    within,
    places: Object.freeze(places),
    agrees,
    text: `${sentence(places, agrees, loadDirection)}${nextReading(places, loadDirection, within)}`,
  });
}

function fromRunOut({ stations, unitSystem }: RunOut, load: Angle | undefined, within: Angle): WornPlace[] {
  return stations.flatMap(({ station, lowSide, lower }) => {
    if (lowSide === undefined || lower === undefined) return [];
    const off = load && angleBetween(lowSide.value.si, load.si);
    const expanded = coverageFactor(0.95, lowSide.degreesOfFreedom) * lowSide.standardUncertainty.si;
    const agrees = off === undefined ? "cannot tell yet" : verdict(off, expanded, within.si);
    const towards =
      off === undefined
        ? ""
        : `, ${Math.round((off * 180) / Math.PI)}° off the load's direction: ${agreement(agrees)}`;
    return [
      Object.freeze({
        from: station,
        to: station,
        side: lowSide,
        across: undefined,
        lower,
        agrees,
        text: `At ${station} the shaft is lower at ${angleWords(lowSide)} by ${smallText(lower, unitSystem)} on radius than opposite (95 %)${towards}.`,
      }),
    ];
  });
}

function fromDiameters(wear: WearBands, load: Angle | undefined, within: Angle): WornPlace[] {
  return wear.bands.flatMap(({ state, from, to, smallestAngle }) => {
    if (state !== "worn") return [];
    const stretch = `From ${from} to ${to}`;
    if (smallestAngle === undefined)
      return [
        place(
          from,
          to,
          undefined,
          "cannot tell yet",
          `${stretch} the wear is alike at the angles read: no side stands out.`,
        ),
      ];
    const [here, opposite] = [smallestAngle, quantityFromSi("angle", smallestAngle.si + Math.PI, "degree")];
    const sides = `${stretch} the diameter is smallest at ${here}: metal is missing at ${here} or at ${opposite} or both; diameters cannot tell which, indicator readings between centres can`;
    if (load === undefined) return [place(from, to, here, "cannot tell yet", `${sides}.`)];
    const off = Math.min(angleBetween(here.si, load.si), angleBetween(opposite.si, load.si));
    return [
      off > within.si + 1e-9
        ? place(
            from,
            to,
            here,
            "no",
            `${sides}. The load lies ${Math.round((off * 180) / Math.PI)}° across from both: they do not agree.`,
          )
        : place(
            from,
            to,
            here,
            "cannot tell yet",
            `${sides}. The load's direction is one of the two, so nothing speaks against it.`,
          ),
    ];
  });
}

function place(
  from: Length,
  to: Length,
  across: Angle | undefined,
  agrees: WornPlace["agrees"],
  text: string,
): WornPlace {
  return Object.freeze({ from, to, side: undefined, across, lower: undefined, agrees, text });
}

/** The smaller angle between two directions, 0 to π [rad]. */
function angleBetween(a: number, b: number): number {
  return Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
}

function verdict(off: number, expanded: number, within: number): WornPlace["agrees"] {
  if (off + expanded <= within) return "yes";
  return off - expanded > within ? "no" : "cannot tell yet";
}

function agreement(agrees: WornPlace["agrees"]): string {
  return {
    yes: "they agree",
    no: "they do not agree",
    "cannot tell yet": "whether they agree cannot be told",
  }[agrees];
}

/** Beyond so many times the readings taken, more of them are no advice. */
const mostTimes = 25;

/**
 * Where the indicator leaves it open, the station to read again, and how often: U shrinks about as 1/√n with n rounds
 * (the axis's own part does not), and n is enough once |Δ| + U ≤ within, or |Δ| − U > within.
 */
function nextReading(places: readonly WornPlace[], load: Angle | undefined, within: Angle): string {
  if (load === undefined) return "";
  const open = places.flatMap(({ side, agrees, from }) => {
    if (side === undefined || agrees !== "cannot tell yet") return [];
    const off = angleBetween(side.value.si, load.si);
    const expanded = coverageFactor(0.95, side.degreesOfFreedom) * side.standardUncertainty.si;
    return [{ from, times: Math.ceil((expanded / Math.abs(within.si - off)) ** 2) }];
  });
  const nearest = open.sort((a, b) => a.times - b.times)[0];
  if (nearest === undefined) return "";
  const where = open.length === 1 ? "" : ` (and at the other ${open.length - 1} left open)`;
  return nearest.times > mostTimes
    ? ` Read the indicator round the shaft again at ${nearest.from}${where}: the side found lies so near the bound of ${within} off the load that only a better indicator or a bearing on the cause can decide.`
    : ` Next: read the indicator round the shaft at ${nearest.from} ${nearest.times === 1 ? "once more" : `about ${nearest.times} times over`}${where}; if the low side stays where it is, that decides it.`;
}

function sentence(places: readonly WornPlace[], agrees: WornSide["agrees"], load: Angle | undefined): string {
  if (places.length === 0) return "No side of the shaft is found worn more than the other.";
  if (load === undefined) return "No load direction is given, so the worn side is not compared with it.";
  const remark =
    "A load that stands still while the shaft turns wears the shaft evenly all round and its box on one side; wear on one side of the shaft speaks of a load that turns with it, or of a shaft that stood.";
  const answer = {
    yes: "The shaft is worn on the side to which the load presses it.",
    no: "The worn side does not agree with the load's direction.",
    "cannot tell yet": "Whether the worn side agrees with the load's direction cannot be told yet.",
  }[agrees];
  return `${answer} ${remark}`;
}
