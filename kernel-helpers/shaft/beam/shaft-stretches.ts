import { type Length, measured, quantityFromSi, type UnitName } from "../../quantity/index.js";
import type { Profile, WearBands } from "../../survey/index.js";
import type { ShaftStretch } from "./shaft-model.js";

/**
 * The stretches of a surveyed shaft, from its wear bands (each band one diameter, that of its middle, with its
 * uncertainty; gross readings have no weight), or from its profile (the mean of each station holds half-way to the
 * next). Whatever lies beyond the first and last station read is not in it: add it by hand.
 *
 * @param survey  wear bands, or a profile [m]
 * @param options.widest  a profile whose stations lie further apart has a gap there; default three diameters [m]
 * @returns stretches along the shaft, with gaps where nothing was read
 * @throws RangeError  a profile with fewer than two stations
 * @example
 * const rows = ["0, 50", "100, 50", "200, 48"];
 * const bytes = new TextEncoder().encode(["station [mm], diameter [mm]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "shaft", file: "shaft.csv" });
 * stretchesOf(profileOf(table, { readingUncertainty: mm(0.01) })).length // 3
 * @source a station's reading stands for what lies nearer to it than to any other: ours
 */
export function stretchesOf(
  survey: Profile | WearBands,
  { widest }: { readonly widest?: Length } = {},
): readonly ShaftStretch[] {
  if (survey.kind === "wear bands") {
    const { bands, edges } = survey;
    return Object.freeze(
      bands.map(
        (band, i): ShaftStretch =>
          Object.freeze({
            from: edges[i - 1]?.position.value ?? band.from,
            to: edges[i]?.position.value ?? band.to,
            diameter: band.diameter,
          }),
      ),
    );
  }
  const { stations } = survey;
  if (stations.length < 2)
    throw new RangeError(
      `stretchesOf: ${survey.file} must have two stations or more, got ${stations.length}`,
    );
  const unit: UnitName | undefined = stations[0]!.station.writtenIn;
  const between = (a: number, b: number): Length => quantityFromSi("length", (a + b) / 2, unit as "mm");
  const gap = (i: number): boolean =>
    stations[i + 1]!.station.si - stations[i]!.station.si > (widest?.si ?? 3 * stations[i]!.mean.si);
  return Object.freeze(
    stations.flatMap(({ station, mean, standardUncertainty }, i): ShaftStretch[] => {
      const [before, behind] = [stations[i - 1], stations[i + 1]];
      const from = before === undefined || gap(i - 1) ? station : between(before.station.si, station.si);
      const to = behind === undefined || gap(i) ? station : between(station.si, behind.station.si);
      return to.si > from.si
        ? [Object.freeze({ from, to, diameter: measured(mean, standardUncertainty) })]
        : [];
    }),
  );
}

/**
 * Closes the gaps between stretches by an assumption chosen by name.
 *
 * @param stretches  in any order [m]
 * @param assumption  "neighbouring smaller diameter": the gap is as thick as the thinner of its neighbours, which is on
 * the safe side for strength and deflection where nothing thinner hides there; "neighbouring larger diameter": for the
 * weight, or to see how much the gap matters
 * @returns stretches without gaps, along the shaft
 * @throws RangeError  the assumption is none of these; no stretch at all
 * @example
 * const stretches = [{ from: mm(0), to: mm(40), diameter: mm(60) }, { from: mm(50), to: mm(90), diameter: mm(55) }];
 * closeGaps(stretches, "neighbouring smaller diameter")[1].diameter.in("mm") // 55
 * @source common practice, no source
 */
export function closeGaps(
  stretches: readonly ShaftStretch[],
  assumption: "neighbouring smaller diameter" | "neighbouring larger diameter",
): readonly ShaftStretch[] {
  if (assumption !== "neighbouring smaller diameter" && assumption !== "neighbouring larger diameter")
    throw new RangeError(
      `closeGaps: the assumption must be "neighbouring smaller diameter" or "neighbouring larger diameter", got ${String(assumption)}`,
    );
  const sorted = [...stretches].sort((a, b) => a.from.si - b.from.si);
  if (sorted.length === 0) throw new RangeError("closeGaps: at least one stretch must be given, got none");
  // Stations may lie below 0: what counts as no gap is measured by the shaft, not by the station.
  const close = 1e-9 * (sorted.at(-1)!.to.si - sorted[0]!.from.si);
  return Object.freeze(
    sorted.flatMap((stretch, i) => {
      const before = sorted[i - 1];
      if (before === undefined || stretch.from.si - before.to.si <= close) return [stretch];
      const firstIsSmaller = diameterOf(before) <= diameterOf(stretch);
      const like = firstIsSmaller === (assumption === "neighbouring smaller diameter") ? before : stretch;
      return [Object.freeze({ ...like, from: before.to, to: stretch.from }), stretch];
    }),
  );
}

/**
 * A taper as short stretches, each as thick as the taper in its middle.
 *
 * @param taper  from, to, and the DIAMETERS at these ends [m]
 * @param steps  1 to 500; default 12, with which a taper of 1 in 12 bends as the smooth one to some parts in a
 * thousand [-]
 * @returns stretches along the shaft
 * @throws RangeError  the taper ends before it begins, a diameter not above 0, no whole number of steps
 * @example
 * const taper = { from: inch(-4), to: inch(0), atFrom: inch(2), atTo: inch(2.4) };
 * taperedStretches(taper, 4)[0].diameter.in("inch") // 2.05
 * @source plane geometry
 */
export function taperedStretches(
  taper: { readonly from: Length; readonly to: Length; readonly atFrom: Length; readonly atTo: Length },
  steps: number = 12,
): readonly ShaftStretch[] {
  const { from, to, atFrom, atTo } = taper;
  const where = "taperedStretches";
  if (!(to.si > from.si))
    throw new RangeError(`${where}: the taper must end behind its beginning, got ${from} to ${to}`);
  if (!(atFrom.si > 0 && atTo.si > 0))
    throw new RangeError(`${where}: the diameters must be more than 0, got ${atFrom} and ${atTo}`);
  if (!(Number.isInteger(steps) && steps >= 1 && steps <= 500))
    throw new RangeError(`${where}: steps must be a whole number from 1 to 500, got ${steps}`);
  const at = (share: number): Length => from.plus(to.minus(from).times(share));
  return Object.freeze(
    Array.from({ length: steps }, (_, i) =>
      Object.freeze({
        from: i === 0 ? from : at(i / steps),
        to: i === steps - 1 ? to : at((i + 1) / steps),
        diameter: atFrom.plus(atTo.minus(atFrom).times((i + 0.5) / steps)),
      }),
    ),
  );
}

/**
 * The stretches after a cut: what is thicker than the cut's diameter from one station to another is turned down to it;
 * what is thinner already stays. A groove in a band narrower than the cut splits nothing else.
 *
 * @param stretches  along the shaft [m]
 * @param cut  from, to, and the DIAMETER left [m]
 * @returns stretches along the shaft
 * @throws RangeError  the cut ends before it begins, takes nothing off anywhere, or goes through to a bore
 * @example
 * const shaft = [{ from: inch(0), to: inch(70), diameter: inch(2.4375) }];
 * turnedDown(shaft, { from: inch(6), to: inch(14), diameter: inch(2.425) }).length // 3
 * @source plane geometry
 */
export function turnedDown(
  stretches: readonly ShaftStretch[],
  cut: Pick<ShaftStretch, "from" | "to" | "diameter">,
): readonly ShaftStretch[] {
  const { from, to } = cut;
  if (!(to.si > from.si))
    throw new RangeError(`turnedDown: the cut must end behind its beginning, got ${from} to ${to}`);
  const d = diameterOf(cut);
  let taken = false;
  const after = stretches.flatMap((stretch): ShaftStretch[] => {
    const [a, b] = [from.si > stretch.from.si ? from : stretch.from, to.si < stretch.to.si ? to : stretch.to];
    if (!(b.si > a.si) || diameterOf(stretch) <= d) return [stretch];
    if (stretch.bore !== undefined && stretch.bore.si >= d)
      throw new RangeError(
        `turnedDown: the cut goes through to the bore of ${stretch.bore} between ${a} and ${b}`,
      );
    taken = true;
    return [
      ...(a.si > stretch.from.si ? [{ ...stretch, to: a }] : []),
      { ...stretch, from: a, to: b, diameter: cut.diameter },
      ...(b.si < stretch.to.si ? [{ ...stretch, from: b }] : []),
    ].map((part) => Object.freeze(part));
  });
  if (!taken)
    throw new RangeError(
      `turnedDown: the cut from ${from} to ${to} takes nothing off: the shaft is nowhere thicker there than what is left`,
    );
  return Object.freeze(after);
}

function diameterOf({ diameter }: Pick<ShaftStretch, "diameter">): number {
  return "standardUncertainty" in diameter ? diameter.value.si : diameter.si;
}
