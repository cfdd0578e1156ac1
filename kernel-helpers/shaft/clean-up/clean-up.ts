import {
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import type { RunOut, RunOutStation, WearBands } from "../../survey/index.js";
import { chanceAllAbove } from "./chance-all-above.js";

/** The stretch to be made true, and what is known of it. */
export interface CleanUpOptions {
  /** First and last station of the stretch. */
  readonly from: Length;
  readonly to: Length;
  /** Indicator readings between centres; without them only bounds can be given. */
  readonly runOut?: RunOut;
}

/** The axis a cylinder is turned about. */
export type TurningAxis = "own centres" | "sound surfaces";

/** The largest true cylinder left about an axis. */
export interface CleanUpAbout {
  readonly axis: TurningAxis;
  /** Its diameter. */
  readonly diameter: Measured<Length>;
  /** The station that decides it. */
  readonly decidedAt: Length;
}

/** What a stretch cleans up to. */
export interface CleanUp {
  readonly kind: "clean-up";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  readonly from: Length;
  readonly to: Length;
  /** Worn evenly: the most that can be left. */
  readonly most: Measured<Length>;
  /** All worn on one side: the least; twice the diametral loss. */
  readonly least: Measured<Length>;
  /** By indicator; empty without run-out. */
  readonly about: readonly CleanUpAbout[];
  /** The one to plan on: about the shaft's own centres by indicator, else the least. */
  readonly plan: Measured<Length>;
  readonly stationCount: number;
  /** What each station leaves about the axis planned on, and how it is known; for `chanceToClean`. */
  readonly stations: readonly {
    readonly station: Length;
    readonly leaves: Length;
    /** Smallest diameter read there. */
    readonly smallest: Length;
    readonly standardUncertainty: Length;
  }[];
  readonly commonUncertainty: Length;
  /** The reading that would settle between the bounds; "" where nothing is open. */
  readonly next: string;
  readonly warnings: readonly string[];
}

/**
 * The largest true cylinder that is left in a worn stretch.
 *
 * Diameters alone: D_min if the wear is even about the axis; 2·D_min − D_made if all of it lies on one side, for the
 * cut must go as deep all round as it is worn on that side. With run-out: D_min(z) − 2·e(z), e the distance of the
 * surface's centre from the axis at that station, ON RADIUS: from the line of centres (own centres), or from the axis
 * of the sound surfaces (new centres). Stations without run-out take e of the nearest that has it.
 *
 * Valid when: D_made is the shaft's diameter beside the wear (bands as made); the stations are close enough that the
 * surface between them is no lower than the scatter of neighbours, which is added as an uncertainty.
 *
 * @param wear  wear bands with at least one band as made
 * @param options.from, options.to  the stretch [m]
 * @param options.runOut  indicator readings of the same shaft, stations counted alike
 * @returns bounds, cylinders by axis, and what each station leaves [m], on diameter
 * @throws RangeError  fewer than 2 stations in the stretch, a stretch the wrong way round, or no band as made to tell
 * what the shaft was made to
 * @example
 * const rows = ["0,2.4375", "1,2.4375", "2,2.4375", "3,2.4345", "4,2.4345", "5,2.4345"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
 * cleanUp(wear, { from: inch(3), to: inch(5) }).least.value.in("inch").toFixed(4) // "2.4315"
 * @source geometry; that one-sided wear costs twice the loss: common practice of the trade
 */
export function cleanUp(wear: WearBands, options: CleanUpOptions): CleanUp {
  const { from, to, runOut } = options;
  if (!(to.si > from.si))
    throw new RangeError(
      `cleanUp: the stretch must run from a lower to a higher station, got ${from} to ${to}`,
    );
  const { profile } = wear;
  const gross = new Set(wear.gross.map(({ reading }) => reading));
  const stations = profile.stations.filter(({ station }) => station.si >= from.si && station.si <= to.si);
  if (stations.length < 2)
    throw new RangeError(
      `cleanUp: at least 2 stations must lie from ${from} to ${to}, got ${stations.length}`,
    );
  const made = wear.bands.filter(({ state, shape }) => state === "as made" && shape === "flat");
  if (made.length === 0)
    throw new RangeError(
      "cleanUp: no band is as made, so nothing tells what the shaft was made to; give wornBeyond and nominal to wearBands",
    );
  const madeTo = Math.max(...made.map(({ diameter }) => diameter.value.si));
  const uMade = Math.max(...made.map(({ diameter }) => diameter.standardUncertainty.si));

  const unit = profile.unitSystem === "inch" ? "inch" : "mm";
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit);
  const smallest = stations.map(({ station, readings }) => {
    const kept = readings.filter((index) => !gross.has(index)).map((index) => profile.readings[index]!);
    if (kept.length === 0) return { station, diameter: Number.POSITIVE_INFINITY, u: 0 };
    const least = kept.reduce((a, b) => (a.diameter.si <= b.diameter.si ? a : b));
    return { station, diameter: least.diameter.si, u: least.standardUncertainty.si };
  });
  const between = neighbourScatter(smallest.map(({ diameter }) => diameter));
  const left = (of: (at: (typeof smallest)[number]) => { value: number; u: number }) =>
    smallest.map((at) => {
      const { value, u } = of(at);
      return { station: at.station, leaves: value, smallest: at.diameter, u: Math.hypot(u, between) };
    });
  const even = left(({ diameter, u }) => ({ value: diameter, u }));
  const oneSided = left(({ diameter, u }) => ({ value: 2 * diameter - madeTo, u: Math.hypot(2 * u, uMade) }));
  const common = profile.commonUncertainty.si;
  const worst = (list: typeof even): (typeof even)[number] =>
    list.reduce((a, b) => (a.leaves <= b.leaves ? a : b));
  const measuredAt = ({ leaves, u }: (typeof even)[number]): Measured<Length> =>
    measured(lengthOf(leaves), lengthOf(Math.hypot(u, common)));

  const axes: readonly (readonly [
    TurningAxis,
    (at: RunOutStation) => RunOutStation["centre"] | undefined,
  ])[] = [
    ["own centres", ({ centre }) => centre],
    ["sound surfaces", ({ offAxis }) => offAxis],
  ];
  const byAxis = axes.flatMap(([axis, offOf]) => {
    const known = (runOut?.stations ?? []).flatMap((at) => {
      const off = offOf(at);
      return off === undefined ? [] : [{ station: at.station.si, off }];
    });
    const covers = known.some(({ station }) => station >= from.si && station <= to.si);
    if (!covers) return [];
    const list = left(({ station, diameter, u }) => {
      const { off } = known.reduce((a, b) =>
        Math.abs(a.station - station.si) <= Math.abs(b.station - station.si) ? a : b,
      );
      return {
        value: diameter - 2 * off.distance.value.si,
        u: Math.hypot(u, 2 * off.distance.standardUncertainty.si),
      };
    });
    return [{ axis, list }];
  });
  const planned = byAxis[0]?.list ?? oneSided;
  return Object.freeze({
    kind: "clean-up",
    title: profile.title,
    unitSystem: profile.unitSystem,
    from,
    to,
    most: measuredAt(worst(even)),
    least: measuredAt(worst(oneSided)),
    about: Object.freeze(
      byAxis.map(({ axis, list }) =>
        Object.freeze({ axis, diameter: measuredAt(worst(list)), decidedAt: worst(list).station }),
      ),
    ),
    plan: measuredAt(worst(planned)),
    stationCount: stations.length,
    stations: Object.freeze(
      planned.map(({ station, leaves, smallest: read, u }) =>
        Object.freeze({
          station,
          leaves: lengthOf(leaves),
          smallest: lengthOf(read),
          standardUncertainty: lengthOf(u),
        }),
      ),
    ),
    commonUncertainty: profile.commonUncertainty,
    next:
      byAxis.length > 0
        ? ""
        : `Indicator readings between centres from ${from} to ${to}, at four angles or more: they tell which side is worn and settle between the two bounds.`,
    warnings: Object.freeze(
      runOut !== undefined && byAxis.length === 0
        ? [`The run-out was not read between ${from} and ${to}, so only bounds are given.`]
        : [],
    ),
  });
}

/**
 * The chance that a chosen finished diameter cleans up all along a stretch: that every station leaves at least it.
 *
 * @param found  as `cleanUp` returns it
 * @param finished  the diameter to turn to [m]
 * @param turning   standard uncertainty of the size as it is turned; default: it comes out exactly [m]
 * @returns chance, 0 to 1 [-]
 * @throws RangeError  the diameter is not above 0, or the uncertainty below 0
 * @source see `chanceAllAbove`
 */
export function chanceToClean(found: CleanUp, finished: Length, turning?: Length): number {
  if (!(finished.si > 0))
    throw new RangeError(`chanceToClean: the finished diameter must be above 0, got ${finished}`);
  if (turning !== undefined && !(turning.si >= 0))
    throw new RangeError(`chanceToClean: the uncertainty of turning must be 0 or more, got ${turning}`);
  return chanceAllAbove(
    found.stations.map(({ leaves, standardUncertainty }) => ({
      value: leaves.si,
      u: standardUncertainty.si,
    })),
    Math.hypot(found.commonUncertainty.si, turning?.si ?? 0),
    finished.si,
  );
}

/** Standard deviation of a station about its neighbours, from differences of successive ones. */
function neighbourScatter(values: readonly number[]): number {
  const finite = values.filter(Number.isFinite);
  const squares = finite.slice(1).map((value, i) => (value - finite[i]!) ** 2);
  return squares.length === 0 ? 0 : Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length / 2);
}
