import { quantityFromSi } from "../quantity/index.js";
import { repeatsTest } from "../statistics/index.js";
import type { DiameterReading, Profile } from "./profile-types.js";
import { plainSmall } from "./run-out-text.js";

/** Two readings of one place that contradict each other, and what all repeats show. */
interface Contradiction {
  readonly first: DiameterReading;
  readonly second: DiameterReading;
  readonly apart: string;
  /** Uncertainty of one reading by the scatter of all repeats. */
  readonly shown: string;
}

/**
 * Rejects readings of one place (station and angle) that contradict each other, once the gross ones are put aside: a
 * mean of the two would be neither's, and its uncertainty nobody's. Readings without an angle may lie round the shaft.
 *
 * @param leftOut  indices of readings that the neighbours told to be gross
 * @throws RangeError  see `repeatsTest` for what contradicts; names file, lines and column
 */
export function requireAgreeingReadings(
  where: string,
  profile: Profile,
  leftOut: ReadonlySet<number> = new Set(),
): void {
  const found = contradictionIn(profile, ({ angle }, i) => angle !== undefined && !leftOut.has(i));
  if (found === undefined) return;
  const { first, second, apart, shown } = found;
  throw new RangeError(
    `${where}: readings of one place must agree within their uncertainty, got ${written(first)} and ${written(second)} of ${profile.file} at station ${first.station}, ${first.angle}, ${apart}, and nothing beside them tells which is wrong; read there once more and strike the wrong one, or state the uncertainty of a reading that the repeats show, ${shown}`,
  );
}

/** What to say of readings of one place that contradict each other, whatever becomes of them. */
export function repeatWarningsOf(profile: Omit<Profile, "warnings">): readonly string[] {
  const round = contradictionIn(profile, ({ angle }) => angle !== undefined);
  const unknown = contradictionIn(profile, ({ angle }) => angle === undefined);
  return [
    ...(round === undefined
      ? []
      : [
          `${lines(round)} read one place, station ${round.first.station} at ${round.first.angle}, and contradict each other: ${round.apart}. One is misread, or a reading is worth less than stated (the repeats show ${round.shown}). Read there once more and strike the wrong one.`,
        ]),
    ...(unknown === undefined
      ? []
      : [
          `${lines(unknown)} read station ${unknown.first.station} without an angle, and stand ${unknown.apart}. If they were read round the shaft, write the angle of each; else one is misread: read there once more.`,
        ]),
  ];
}

function contradictionIn(
  profile: Omit<Profile, "warnings">,
  counts: (reading: DiameterReading, index: number) => boolean,
): Contradiction | undefined {
  const places = new Map<string, number>();
  const rows = profile.stations.flatMap(({ readings }, station) =>
    readings
      .filter((i) => counts(profile.readings[i]!, i))
      .map((i) => {
        const key = `${station} ${profile.readings[i]!.angle?.si}`;
        const place = places.get(key) ?? places.size;
        places.set(key, place);
        return { place, reading: profile.readings[i]! };
      }),
  );
  if (rows.length === places.size) return undefined;
  const { contradictory, worst, noiseRatio } = repeatsTest(
    rows.map(({ place }) => place),
    rows.map(({ reading }) => reading.diameter.si),
    rows.map(({ reading }) => reading.standardUncertainty.si),
  );
  if (!contradictory) return undefined;
  const [first, second] = worst!.indices.map((i) => rows[i]!.reading).sort((a, b) => a.line - b.line) as [
    DiameterReading,
    DiameterReading,
  ];
  const small = (si: number): string => plainSmall(quantityFromSi("length", si), profile.unitSystem);
  return {
    first,
    second,
    apart: `${small(Math.abs(worst!.difference))} apart, ${Number(worst!.differenceInU.toPrecision(2))} standard uncertainties of a difference`,
    shown: small(noiseRatio! * first.standardUncertainty.si),
  };
}

function lines({ first, second }: Contradiction): string {
  return first.line === second.line
    ? `Two cells of line ${first.line}`
    : `Lines ${first.line} and ${second.line}`;
}

function written({ asRead, line, header }: DiameterReading): string {
  return `${asRead} on line ${line} ("${header}")`;
}
