import {
  type Angle,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import type { OffCentre, RunOut } from "../../survey/index.js";
import type { JournalCleanUps } from "./clean-up-journals.js";
import { axisAt, leastCutAxis, leftAbout, type SurfacePlace } from "./least-cut-axis.js";

/** A surface that is not turned, and so keeps the axis it has: a taper, the seat of a pulley. */
export interface KeptSurface {
  readonly name: string;
  readonly station: Length;
}

/** Turning about other centres: what the journals gain, what it costs all else. */
export interface Recentring {
  readonly kind: "re-centring";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  /** What each journal leaves about its own centres and about the moved ones, on DIAMETER. */
  readonly journals: readonly {
    readonly name: string;
    readonly own: Measured<Length>;
    readonly moved: Measured<Length>;
  }[];
  /** How far the centre holes move, ON RADIUS, and towards which mark of the shaft. */
  readonly holes: readonly { readonly station: Length; readonly by: Length; readonly towards: Angle }[];
  /** Total indicator reading of what is kept, about own centres and about the moved ones: TWICE the distance. */
  readonly kept: readonly {
    readonly name: string;
    readonly own: Measured<Length>;
    readonly moved: Measured<Length>;
    /** The station whose run-out was taken for it. */
    readonly readAt: Length;
  }[];
  /** What the journals gain, on diameter, in sum. */
  readonly gain: Length;
  /** Run-out that a kept surface gets more than it has, the most of them. */
  readonly cost: Length;
}

/**
 * Whether moving the centre holes pays: the straight axis about which all worn journals together lose least, what each
 * leaves about it, how far the holes move, and the run-out that it brings into surfaces that are not turned.
 *
 * left = min over stations (D − 2e), e from the moved axis; kept surface: TIR = 2 · distance of its centre from the axis
 *
 * Valid when: the run-out was read at the journals; stations without take the nearest that has it; a kept surface takes
 * the shaft's axis at the nearest station. The uncertainty is that of diameter and centre; that the axis was sought for
 * the readings as they are makes the gain look a little larger than it is.
 *
 * @param found   the journals cleaned up, at least one
 * @param runOut  indicator readings between the shaft's own centres
 * @param kept    surfaces that are not turned
 * @returns sizes on diameter [m], moves of the holes on radius [m], run-out as total indicator reading [m]
 * @throws RangeError  no axis is known from the run-out: fewer than 2 sound stations
 * @example
 * const rows = Array.from({ length: 15 }, (_, z) => `${z},2.4375,${z > 4 && z < 10 ? 2.4335 : 2.4375}`);
 * const tableOf = (name, lines) => readTable(new TextEncoder().encode(lines.join("\n")), { name, file: name });
 * const survey = tableOf("survey", ["station [in],diameter @ 0 deg [in],diameter @ 90 deg [in]", ...rows]);
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
 * const marks = [1, 3, 6, 8, 11, 13].flatMap((z) => [0, 90, 180, 270].map((a) => `${z},${a},${z > 4 && z < 10 ? -2 * Math.sin(a * Math.PI / 180) : 0}`));
 * const indicator = runOut(tableOf("run-out", ["station [in],angle [deg],reading [thou]", ...marks]), { readingUncertainty: thou(0.05), wear: wear });
 * const found = cleanUpJournals(wear, wornJournals(wear, ["box"]), { runOut: indicator });
 * recentring(found, indicator, []).gain.in("thou").toFixed(1) // "4.0"
 * @source geometry; common practice of the trade
 */
export function recentring(found: JournalCleanUps, runOut: RunOut, kept: readonly KeptSurface[]): Recentring {
  const { offset } = runOut;
  if (offset === undefined)
    throw new RangeError("recentring: the run-out shows no axis; read it at two sound stations or more");
  const unit = found.unitSystem === "inch" ? "inch" : "mm";
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit);
  const nearest = (station: number) =>
    runOut.stations.reduce((a, b) =>
      Math.abs(a.station.si - station) <= Math.abs(b.station.si - station) ? a : b,
    );
  const groups = found.journals.map(({ cleanUp }) =>
    cleanUp.stations.map(({ station, smallest, standardUncertainty }) => {
      const { centre } = nearest(station.si);
      return {
        ...across(centre),
        position: station.si,
        diameter: smallest.si,
        u: standardUncertainty.si,
      };
    }),
  );
  const [first, last] = [offset.from.si, offset.to.si];
  const axis = leastCutAxis(groups, first, last);
  const own = { first: { position: first, x: 0, y: 0 }, last: { position: last, x: 0, y: 0 } };
  const worstU = (about: typeof axis, places: readonly (SurfacePlace & { u: number })[]): number =>
    places.reduce((a, b) => (leftAbout(about, [a]) <= leftAbout(about, [b]) ? a : b)).u;
  const journals = found.journals.map(({ name, cleanUp }, i) => {
    const places = groups[i]!;
    const left = (about: typeof axis): Measured<Length> =>
      measured(
        lengthOf(leftAbout(about, places)),
        lengthOf(Math.hypot(worstU(about, places), cleanUp.commonUncertainty.si)),
      );
    return Object.freeze({ name, own: left(own), moved: left(axis) });
  });
  const keptSurfaces = kept.map(({ name, station }) => {
    const at = nearest(station.si);
    const centre = at.axis ?? at.centre;
    const { x, y } = across(centre);
    const moved = axisAt(axis, station.si);
    const u = centre.distance.standardUncertainty.times(2);
    return Object.freeze({
      name,
      own: measured(lengthOf(2 * Math.hypot(x, y)), u),
      moved: measured(lengthOf(2 * Math.hypot(x - moved.x, y - moved.y)), u),
      readAt: at.station,
    });
  });
  return Object.freeze<Recentring>({
    kind: "re-centring",
    title: found.title,
    unitSystem: found.unitSystem,
    journals: Object.freeze(journals),
    holes: Object.freeze(
      [axis.first, axis.last].map(({ position, x, y }) =>
        Object.freeze({
          station: lengthOf(position),
          by: lengthOf(Math.hypot(x, y)),
          towards: quantityFromSi("angle", (Math.atan2(y, x) + 2 * Math.PI) % (2 * Math.PI), "degree"),
        }),
      ),
    ),
    kept: Object.freeze(keptSurfaces),
    gain: lengthOf(journals.reduce((sum, one) => sum + one.moved.value.si - one.own.value.si, 0)),
    cost: lengthOf(Math.max(0, ...keptSurfaces.map((one) => one.moved.value.si - one.own.value.si))),
  });
}

function across({ distance, direction }: OffCentre): { readonly x: number; readonly y: number } {
  const [e, at] = [distance.value.si, direction.value.si];
  return { x: e * Math.cos(at), y: e * Math.sin(at) };
}
