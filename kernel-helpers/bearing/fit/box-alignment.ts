import {
  type Force,
  type Length,
  type Measured,
  measured,
  type Quantity,
  quantityFromSi,
} from "../../quantity/index.js";
import { fitLine } from "../../statistics/index.js";
import { lengthsOf, type Table, textOf } from "../../survey/index.js";

/** A wire stretched through the boxes. */
export interface StretchedWire {
  /** Its weight a length [N/m]. */
  readonly weight: Quantity<"stiffness or line load">;
  readonly tension: Force;
  /** Between its supports; stations count from the first. */
  readonly length: Length;
}

/** How one box lies to the line through all. */
export interface AlignedBox {
  readonly name: string;
  /** Heights over the line through all, sag taken out. */
  readonly readings: readonly { readonly station: Length; readonly height: Length }[];
  /** Its middle over the line; below 0 under it. */
  readonly offset: Measured<Length>;
  /** Rise of the box from its first to its last station, over that of the line. */
  readonly tilt: Measured<Length>;
  /** Chance-proof: more than its expanded uncertainty (k = 2) and the limit. */
  readonly verdict: "in line" | "out of line" | "cannot tell yet";
  /** Shim to put under the low end; undefined where it is in line. */
  readonly shim: { readonly under: Length; readonly thickness: Length } | undefined;
}

/** Boxes against a line. */
export interface BoxAlignment {
  readonly kind: "box alignment";
  readonly table: string;
  readonly limit: Length;
  /** Most sag taken out; undefined for a straightedge or an indicator. */
  readonly sag: Length | undefined;
  readonly boxes: readonly AlignedBox[];
}

/**
 * Tilt and height of boxes to the straight line that fits them best, from a wire, straightedge or indicator.
 *
 * Depths below the wire are turned into heights: −depth − w·x·(L − x)/(2T). A line by least squares through all readings;
 * each box's own line against it gives its tilt. Its middle stands off the line with u²·(1/n − 1/N − (x − x̄)²/Σ(x − x̄)²), n
 * readings of it and N of all.
 *
 * Valid when: the same surface is read everywhere (bottom of the bores, journals of one diameter); sag small to the length.
 * Two boxes with one reading each always lie in line: three readings a box at least.
 *
 * @param table  columns box, station, and either depth (below wire or straightedge; growing downwards) or height (read by
 * an indicator that runs along a straight bar; growing upwards)
 * @param options.limit  allowed tilt over a box, > 0 [m]
 * @param options.readingUncertainty  standard, of one depth, > 0 [m]
 * @param options.wire  weight [N/m], tension [N], length [m]; leave out for a straightedge
 * @returns a box each
 * @throws RangeError  a value not above 0, a station beyond the wire, depths and heights both, heights with a wire, fewer than 3 readings in a box, or a single box
 * @example
 * const rows = ["near,1,50", "near,4,50", "near,7,50", "far,51,50", "far,54,50", "far,57,50"];
 * const bytes = new TextEncoder().encode(["box [text],station [in],depth [thou]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "boxes", file: "boxes.csv" });
 * boxAlignment(table, { limit: thou(5), readingUncertainty: thou(0.5) }).boxes[0].verdict // "in line"
 * @source sag of a flat catenary: elementary; line: ISO/TS 28037:2010, clause 6
 */
export function boxAlignment(
  table: Table,
  options: {
    readonly limit: Length;
    readonly readingUncertainty: Length;
    readonly wire?: StretchedWire | undefined;
  },
): BoxAlignment {
  const { limit, readingUncertainty, wire } = options;
  for (const [name, value] of [
    ["limit", limit],
    ["readingUncertainty", readingUncertainty],
    ...(wire === undefined
      ? []
      : ([
          ["wire.weight", wire.weight],
          ["wire.tension", wire.tension],
          ["wire.length", wire.length],
        ] as const)),
  ] as const)
    if (!(value.si > 0)) throw new RangeError(`boxAlignment: ${name} must be above 0, got ${value}`);
  const [names, stations, depths] = [
    textOf(table, "box"),
    lengthsOf(table, "station"),
    depthsOf(table, wire),
  ];
  const rows = names.flatMap((cell, i) => {
    const [station, depth] = [stations[i], depths[i]];
    if (station === undefined || depth === undefined) return [];
    if (wire !== undefined && !(station.si >= 0 && station.si <= wire.length.si))
      throw new RangeError(`boxAlignment: stations must lie on the wire of ${wire.length}, got ${station}`);
    return [{ name: cell.trim(), station, depth, height: -depth.si - sagAt(station.si, wire) }];
  });
  const groups = [...new Set(rows.map(({ name }) => name))].map((name) =>
    rows.filter((row) => row.name === name),
  );
  if (groups.length < 2)
    throw new RangeError(`boxAlignment: at least two boxes are needed, got ${groups.length}`);
  const u = readingUncertainty.si;
  const lineOf = (of: typeof rows): ReturnType<typeof fitLine> =>
    fitLine(
      of.map(({ station }) => station.si),
      of.map(({ height }) => height),
      { u },
    );
  const all = lineOf(rows);
  const spread = rows.reduce((sum, { station }) => sum + (station.si - all.centre.x) ** 2, 0);
  /** How much of a reading there the line through all follows. */
  const leverage = (x: number): number => 1 / rows.length + (x - all.centre.x) ** 2 / spread;
  const small = (si: number): Length => quantityFromSi("length", si, rows[0]!.depth.writtenIn as "thou");
  const aligned = groups.map((group): AlignedBox => {
    const { name } = group[0]!;
    if (group.length < 3)
      throw new RangeError(`boxAlignment: ${name} must have at least 3 readings, got ${group.length}`);
    const own = lineOf(group);
    const x = group.map(({ station }) => station.si);
    const [from, to] = [Math.min(...x), Math.max(...x)];
    const wider = Math.max(1, own.noiseRatio ?? 1);
    const [tilt, uTilt] = [(own.slope - all.slope) * (to - from), wider * own.uSlope * (to - from)];
    const beyond = Math.abs(tilt) - limit.si;
    const verdict = beyond > 2 * uTilt ? "out of line" : beyond < -2 * uTilt ? "in line" : "cannot tell yet";
    const low = group.find(({ station }) => station.si === (tilt > 0 ? from : to))!.station;
    return Object.freeze({
      name,
      readings: Object.freeze(
        group.map(({ station, height }) =>
          Object.freeze({ station, height: small(height - all.intercept - all.slope * station.si) }),
        ),
      ),
      // The line goes through these readings too: what it follows of them does not stand off it.
      offset: measured(
        small(own.centre.y - all.intercept - all.slope * own.centre.x),
        small(wider * u * Math.sqrt(Math.max(0, 1 / group.length - leverage(own.centre.x)))),
      ),
      tilt: measured(small(tilt), small(uTilt)),
      verdict,
      shim:
        verdict === "out of line"
          ? Object.freeze({ under: low, thickness: small(Math.abs(tilt)) })
          : undefined,
    });
  });
  const middle = wire === undefined ? undefined : small(sagAt(wire.length.si / 2, wire));
  return Object.freeze({
    kind: "box alignment",
    table: table.name,
    limit,
    sag: middle,
    boxes: Object.freeze(aligned),
  });
}

/** Depths, growing downwards: as they stand below a wire or straightedge, or by the heights that an indicator reads. */
function depthsOf(table: Table, wire: StretchedWire | undefined): readonly (Length | undefined)[] {
  const has = (name: string): boolean => table.columns.some((column) => column.name === name);
  if (!has("height")) return lengthsOf(table, "depth");
  if (has("depth"))
    throw new RangeError(
      `boxAlignment: ${table.name} must have a column depth (below a wire or straightedge) or height (indicator), got both`,
    );
  if (wire !== undefined)
    throw new RangeError(
      `boxAlignment: ${table.name} must have a column depth where a wire is told of, got height: an indicator has no sag; leave the wire out`,
    );
  return lengthsOf(table, "height").map((height) => height?.times(-1));
}

function sagAt(x: number, wire: StretchedWire | undefined): number {
  return wire === undefined ? 0 : (wire.weight.si * x * (wire.length.si - x)) / (2 * wire.tension.si);
}

/**
 * A stretched wire by what is given of it: nothing for a straightedge or an indicator, or all three.
 *
 * @param given.weight  a length [N/m]; `given.tension` [N]; `given.length` between the supports [m]
 * @returns the wire; undefined where nothing is given
 * @throws RangeError  only a part is given: the sag could not be taken out, and the boxes would seem bent
 * @example stretchedWire({ weight: undefined, tension: undefined, length: undefined }) // undefined
 * @source none: a check
 */
export function stretchedWire(
  given: {
    readonly [K in keyof StretchedWire]: StretchedWire[K] | undefined;
  },
): StretchedWire | undefined {
  const { weight, tension, length } = given;
  if (weight === undefined && tension === undefined && length === undefined) return undefined;
  if (weight !== undefined && tension !== undefined && length !== undefined)
    return Object.freeze({ weight, tension, length });
  const missing = Object.entries({ weight, tension, length }).flatMap(([name, value]) =>
    value === undefined ? [name] : [],
  );
  throw new RangeError(
    `stretchedWire: ${missing.join(" and ")} must be given too: without it the sag of the wire cannot be taken out`,
  );
}
