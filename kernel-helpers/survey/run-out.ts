import { type Angle, type Length, measured, quantityFromSi } from "../quantity/index.js";
import { countDirections, fitHarmonics, foundAmong, type Harmonic } from "../statistics/index.js";
import type { WearBands } from "./profile-types.js";
import { offAxis, type ShaftAxis, type SurfaceCentre, shaftAxis, waveOf } from "./run-out-axis.js";
import { type IndicatorOptions, type IndicatorStation, indicatorReadings } from "./run-out-readings.js";
import { runOutSentence } from "./run-out-sentence.js";
import type { OffCentre, RunOut, RunOutStation } from "./run-out-types.js";
import { scattersTooMuch, scatterWarning } from "./scatter-test.js";
import type { Table } from "./table.js";

/** What else is known of the shaft. */
export interface RunOutOptions extends IndicatorOptions {
  /** Its wear bands: those not as made are left out when the axis is looked for. */
  readonly wear?: WearBands;
  /** Stations of the two centre holes: there the bow is taken as none. Default the first and last station read. */
  readonly centres?: readonly [Length, Length];
}

/** So rare must an offset or a bend be by noise to be called real; of low sides, of which many are looked at, so small
 * a share of those named may be false in the mean. */
const realBelow = 0.01;
/** Waves fitted with the eccentricity, so that an oval or three lobes do not leak into it at uneven angles. */
const highestOrder = 3;

/**
 * Run-out of a shaft turned between centres, from indicator readings round it at stations along it, split into the
 * offset of the centre holes, the bend of the shaft, and one-sided wear.
 *
 * 1. At each station the first harmonic of the readings is the surface's centre against the line of centres:
 *    eccentricity ON RADIUS; it alone would give a total indicator reading of TWICE its size. What is left is out of
 *    round. Waves of order 2 and 3 are fitted along where the angles allow it. Each station has its own zero.
 * 2. The axis through the centres of sound surfaces is a straight line with a bow, see `shaftAxis`: the straight line
 *    is the centre-hole offset, the bow the bend (height in the middle over the ends, on radius).
 * 3. Centre of the surface less axis: metal is missing on the side away from it, by about twice the distance against
 *    the side opposite (exactly twice where only odd waves of order 1 differ).
 * Real: chance by noise below 1 %; of the low sides, one at each station, 1 % of those named may be false in the mean
 * (see `foundAmong`), since one of a hundred sound stations has such a chance by itself. Scatter of sound stations beyond the stated (chi-square, 1 %) widens the uncertainties.
 *
 * Valid when: centres and holes are clean and the shaft turns without play; readings are square to the axis; the
 * angle of a reading is the mark of the shaft under the indicator; a reading grows as the surface comes nearer.
 * Without `wear`, or where fewer than 2 stations lie on bands as made (a warning says so), one-sided wear pulls the axis
 * towards itself; a warning says where the centres do not fit an axis.
 *
 * @param table  readings with station, angle, reading [m], [rad], [m]
 * @param options.wear  wear bands of the same shaft, stations counted alike
 * @param options.centres  stations of the two centre holes, at or beyond the stations read [m]
 * @param options.readingUncertainty  standard uncertainty of one reading [m]; needed where no instrument is named
 * @param options.readingColumn  name of the readings' column [-]
 * @returns each station, offset, bend and low sides with uncertainties, on radius [m], directions [rad]
 * @throws RangeError  no stations, fewer than 3 angles at one, readings of one place that contradict each other, or
 *   centre holes between the stations read
 * @example
 * const angles = [0, 90, 180, 270];
 * const rows = [0, 10, 20].flatMap((z) => angles.map((a) => `${z},${a},${Math.cos((a * Math.PI) / 180)}`));
 * const bytes = new TextEncoder().encode(["station [in],angle [deg],reading [thou]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "run-out", file: "run-out.csv" });
 * runOut(table, { readingUncertainty: thou(0.1) }).offset.first.distance.value.in("thou") // 1
 * @source first harmonic as least-squares circle: see `roundnessOf`; the split: derived here, common practice of the trade
 */
export function runOut(table: Table, options: RunOutOptions = {}): RunOut {
  const survey = indicatorReadings("runOut", table, options);
  const { stations, u, unit } = survey;
  if (stations[0]!.station === undefined)
    throw new RangeError(`runOut: ${table.name} must have a column "station" in a unit of length, got none`);
  const fits = stations.map((at) => centreAt(at, u));
  // An axis needs two stations on bands as made; with fewer the worn ones must serve too, and a warning says so.
  const { wear } = options;
  const onSound = wear === undefined ? 0 : fits.filter(({ centre }) => isSound(wear, centre.position)).length;
  const wornLeftOut = onSound >= 2;
  const sound = (position: number): boolean => !wornLeftOut || isSound(wear!, position);
  // A worn surface has a shape of its own, which is no noise: only sound ones tell how the readings scatter.
  const judged = fits.filter(({ centre }) => sound(centre.position));
  const chiSquare = judged.reduce((sum, fit) => sum + fit.chiSquare, 0);
  const left = judged.reduce((sum, fit) => sum + fit.degreesOfFreedom, 0);
  const rough = scattersTooMuch(chiSquare, left) ? Math.sqrt(chiSquare / left) : 1;
  const centres = fits.map(({ centre }) => scaledCentre(centre, rough));
  const used = centres.filter(({ position }) => sound(position));
  const [from, to] = holes(options.centres, stations[0]!.station, stations[stations.length - 1]!.station!);
  const axis = used.length < 2 ? undefined : shaftAxis(used, from.si, to.si);

  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit);
  const angleOf = (si: number): Angle => quantityFromSi("angle", si, "degree");
  const offCentre = (wave: Harmonic, real: boolean = wave.chance < realBelow): OffCentre =>
    Object.freeze({
      distance: measured(lengthOf(wave.amplitude), lengthOf(wave.uAmplitude), wave.degreesOfFreedom),
      direction: measured(angleOf(wave.phase), angleOf(wave.uPhase), wave.degreesOfFreedom),
      chance: wave.chance,
      real,
    });
  const offs = centres.map((centre) => {
    const vector = axis && offAxis(centre, axis, sound(centre.position));
    return vector && waveOf(vector);
  });
  const looked = offs.filter((wave) => wave !== undefined);
  const among = foundAmong(
    looked.map(({ chance }) => chance),
    realBelow,
  );
  const described = stations.map((at, i): RunOutStation => {
    const centre = centres[i]!;
    const wave = offs[i];
    const off = wave && offCentre(wave, among[looked.indexOf(wave)]!);
    const readings = at.readings.map(({ reading }) => reading);
    return Object.freeze({
      station: at.station!,
      readingCount: readings.length,
      tir: lengthOf(Math.max(...readings) - Math.min(...readings)),
      centre: offCentre(centre.wave),
      outOfRound: lengthOf(fits[i]!.outOfRound),
      axis: axis && offCentre(waveOf(axis.at(centre.position))),
      offAxis: off,
      lowSide: off?.real
        ? measured(
            angleOf((off.direction.value.si + Math.PI) % (2 * Math.PI)),
            off.direction.standardUncertainty,
            off.direction.degreesOfFreedom,
          )
        : undefined,
      lower: off?.real
        ? measured(
            off.distance.value.times(2),
            off.distance.standardUncertainty.times(2),
            off.distance.degreesOfFreedom,
          )
        : undefined,
    });
  });
  const found = {
    stations: Object.freeze(described),
    offset:
      axis &&
      Object.freeze({
        from,
        to,
        first: offCentre(waveOf(axis.lineAt(from.si))),
        last: offCentre(waveOf(axis.lineAt(to.si))),
      }),
    bend: axis?.bow && offCentre(waveOf(axis.bow)),
    unitSystem: survey.unitSystem,
  };
  return Object.freeze<RunOut>({
    kind: "run-out",
    title: table.name,
    file: table.file,
    setUp: "between centres",
    ...found,
    axisFrom: Object.freeze(used.map(({ station }) => station)),
    wornLeftOut,
    noiseRatio: axis?.noiseRatio,
    text: runOutSentence(found),
    warnings: Object.freeze([
      ...survey.warnings,
      ...(wear === undefined || wornLeftOut
        ? []
        : [
            `Only ${onSound} of ${stations.length} stations lie on bands as made: worn ones had to serve for the axis too, and one-sided wear pulls it towards itself. Read the indicator at two stations at least where the shaft is not worn.`,
          ]),
      ...(rough === 1 ? [] : [roughWarning(rough, wornLeftOut)]),
      ...axisWarnings(axis, used.length, wornLeftOut),
    ]),
  });
}

/** Where the bow ends: at the centre holes, where these are given. */
function holes(
  given: readonly [Length, Length] | undefined,
  first: Length,
  last: Length,
): readonly [Length, Length] {
  if (given === undefined) return [first, last];
  const [from, to] = given;
  if (from <= first && to >= last && from < to) return given;
  throw new RangeError(
    `runOut: the centre holes must lie at or beyond the stations read, ${first} and ${last}, got ${from} and ${to}`,
  );
}

function roughWarning(rough: number, wornLeftOut: boolean): string {
  const also = wornLeftOut ? "" : " Wear and lobes of more than three count as scatter here.";
  return `${scatterWarning(rough)}${also}`;
}

interface Centre extends SurfaceCentre {
  readonly station: Length;
}

interface CentreFit {
  readonly centre: Centre;
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Peak to valley without mean and first harmonic [m]. */
  readonly outOfRound: number;
}

function centreAt({ station, readings }: IndicatorStation, u: number): CentreFit {
  const angles = readings.map(({ angle }) => angle);
  const most = Math.min(highestOrder, Math.floor((countDirections(angles) - 1) / 2));
  const fit = fitHarmonics(
    angles,
    readings.map(({ reading }) => reading),
    { orders: Array.from({ length: most }, (_, k) => k + 1), u },
  );
  const wave = fit.harmonics[0]!;
  const rest = readings.map(
    ({ angle, reading }) => reading - fit.mean - wave.cosine * Math.cos(angle) - wave.sine * Math.sin(angle),
  );
  return {
    centre: { station: station!, position: station!.si, wave, covariance: fit.covariances[0]! },
    chiSquare: fit.chiSquare!,
    degreesOfFreedom: fit.degreesOfFreedom,
    outOfRound: Math.max(...rest) - Math.min(...rest),
  };
}

/** The same centre with its noise a factor larger; what was found of that noise is taken as known. */
function scaledCentre(centre: Centre, factor: number): Centre {
  if (factor === 1) return centre;
  const { wave, covariance } = centre;
  const wider = {
    cosine: covariance.cosine * factor ** 2,
    sine: covariance.sine * factor ** 2,
    both: covariance.both * factor ** 2,
  };
  const waves = waveOf({ ...wave, covariance: wider });
  return { ...centre, wave: waves, covariance: wider };
}

function isSound({ bands }: WearBands, position: number): boolean {
  return bands.some(
    ({ state, from, to }) => state === "as made" && position >= from.si - 1e-9 && position <= to.si + 1e-9,
  );
}

function axisWarnings(axis: ShaftAxis | undefined, used: number, wornLeftOut: boolean): string[] {
  if (axis === undefined)
    return ["One station does not tell offset from bend; read at least 3, at both ends and in the middle."];
  if (axis.bow === undefined)
    return ["Two stations do not show a bend; read at least one more, about midway between the ends."];
  const many = [
    ...(used === 3
      ? ["Three stations fix offset and bend, and leave nothing to check them by; read at least one more."]
      : []),
  ];
  if (axis.widened === 1) return many;
  const why = wornLeftOut
    ? "a kink instead of a bow, a surface turned out of true, or wear that the diameters do not show"
    : "one-sided wear, which pulls the axis towards itself (give { wear } to leave worn bands out), or a kink instead of a bow";
  return [
    ...many,
    `The centres of the surface lie ${axis.noiseRatio!.toFixed(1)} times farther from a bowed axis than the indicator explains: ${why}. The uncertainties of offset and bend are widened by that.`,
  ];
}
