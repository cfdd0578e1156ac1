import type { Angle, Length, Mass, UnitSystem } from "../../quantity/index.js";
import { column, quantitiesOf, type Table } from "../../survey/index.js";
import { type Complex, conjugate, polar, size } from "./complex.js";

/** Which way the phase of a reading is counted, against the angles of the rotor. */
export type PhaseSense = "as the angles" | "against the angles";

/** How the runs of a table are to be understood. */
export interface BalanceRunsOptions {
  /** Radius at which masses are fastened: one for all planes, or one a plane by name. */
  readonly radius: Length | Readonly<Record<string, Length>>;
  /**
   * Whether the phase grows the way the rotor's angles do. A remark "# phase: as the angles" (or "against the
   * angles") in the table says so too. With the wrong sense a correction goes to the wrong side of the trial mass.
   */
  readonly phase?: PhaseSense;
  /** Standard uncertainty of an amplitude, as a share of it [-]; default 0.05. */
  readonly amplitudeShare?: number;
  /** Standard uncertainty of a phase; default 3 deg. */
  readonly phaseUncertainty?: Angle;
}

/** One run of the machine. */
export interface BalanceRun {
  readonly line: number;
  /** What was fastened to each plane, mass times radius [kg·m]. */
  readonly attached: readonly Complex[];
  /** Each pickup's reading: amplitude and phase [SI of the amplitude's kind]. */
  readonly readings: readonly Complex[];
}

/** Runs with known masses, in the order of the table. */
export interface BalanceRuns {
  readonly kind: "balance runs";
  readonly title: string;
  readonly file: string;
  readonly unitSystem: UnitSystem;
  readonly planes: readonly { readonly name: string; readonly radius: Length }[];
  readonly pickups: readonly {
    readonly name: string;
    readonly dimension: string;
    readonly unit: string | undefined;
  }[];
  readonly runs: readonly BalanceRun[];
  /** Standard uncertainty of each reading's components, by run and pickup, as `readings`. */
  readonly uncertainties: readonly (readonly number[])[];
  readonly massUnit: string;
}

const defaultShare = 0.05;
const defaultPhase = (3 * Math.PI) / 180;

/**
 * Runs of a machine with trial masses, read from a table: one row a run. Columns `mass <plane>` and `angle <plane>`
 * say what was fastened where (0 for nothing), `amplitude <pickup>` and `phase <pickup>` what was read. With one
 * plane or one pickup the name may be left out. Two planes at most; as many pickups as there are, two at each box say.
 *
 * A component's standard uncertainty: u² = (u²(A) + (A·u(φ))²)/2, the same in both directions; u(A) is the stated
 * share of the amplitude, but no less than a quarter of that of the pickup's largest.
 *
 * @param table  one row a run
 * @param options.radius  where the masses sit, > 0 [m]
 * @param options.phase  which way the phase counts; needed unless a remark of the table says it
 * @param options.amplitudeShare  standard uncertainty of an amplitude over it, > 0 [-]
 * @param options.phaseUncertainty  standard uncertainty of a phase, > 0 [rad]
 * @returns the runs as vectors
 * @throws RangeError  a column without its partner, a gap, a mass or amplitude below 0, a phase whose sense is not
 * said, a plane without radius, or fewer runs than are needed
 * @example
 * const rows = ["0,0,4,60", "2,0,5,100"];
 * const bytes = new TextEncoder().encode(["mass [oz],angle [deg],amplitude [thou],phase [deg]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "runs", file: "runs.csv" });
 * balanceRuns(table, { radius: inch(13), phase: "as the angles" }).runs.length // 2
 * @source JCGM 100:2008 (GUM), 5.1.2 for the components; the form of the table: ours
 */
export function balanceRuns(table: Table, options: BalanceRunsOptions): BalanceRuns {
  const sense = options.phase ?? remarkedSense(table);
  const share = options.amplitudeShare ?? defaultShare;
  const uPhase = options.phaseUncertainty?.si ?? defaultPhase;
  if (!(share > 0 && uPhase > 0))
    throw new RangeError(
      `balanceRuns: amplitudeShare and phaseUncertainty must be above 0, got ${share} and ${options.phaseUncertainty ?? "3 deg"}`,
    );
  const planeNames = namesOf(table, "mass", "angle");
  const pickupNames = namesOf(table, "amplitude", "phase");
  if (planeNames.length > 2)
    throw new RangeError(
      `balanceRuns: ${table.file}: one or two planes can be reckoned, got ${planeNames.length}: ${planeNames.join(", ")}`,
    );
  const planes = planeNames.map((name) => Object.freeze({ name, radius: radiusOf(options.radius, name) }));
  const masses = planeNames.map((name) => quantitiesOf(table, joined("mass", name), "mass"));
  const angles = planeNames.map((name) => quantitiesOf(table, joined("angle", name), "angle"));
  const pickups = pickupNames.map((name) => {
    const { dimension, unit } = column(table, joined("amplitude", name));
    if (dimension === "text")
      throw new RangeError(
        `balanceRuns: ${table.file}: column "amplitude ${name}" must hold numbers, got words`,
      );
    return Object.freeze({ name, dimension, unit });
  });
  const amplitudes = pickupNames.map((name) => column(table, joined("amplitude", name)).values);
  const phases = pickupNames.map((name) => quantitiesOf(table, joined("phase", name), "angle"));

  const runs = table.lines.map((line, row): BalanceRun => {
    const at = `${table.file} line ${line}`;
    const attached = planes.map(({ name, radius }, p) =>
      attachedAt(at, name, masses[p]![row], angles[p]![row], radius),
    );
    const readings = pickups.map(({ name }, s) => {
      const [amplitude, phase] = [amplitudes[s]![row]!, phases[s]![row]];
      if (Number.isNaN(amplitude) || phase === undefined)
        throw new RangeError(
          `balanceRuns: ${at}: a run needs amplitude and phase of every pickup, got a gap at "${name}"`,
        );
      if (amplitude < 0)
        throw new RangeError(`balanceRuns: ${at}: amplitude must be 0 or more, got ${amplitude}`);
      const reading = polar(amplitude, phase.si);
      return sense === "as the angles" ? reading : conjugate(reading);
    });
    return Object.freeze({ line, attached: Object.freeze(attached), readings: Object.freeze(readings) });
  });
  if (runs.length < planes.length + 1)
    throw new RangeError(
      `balanceRuns: ${planes.length + 1} runs are needed for ${planes.length} ${planes.length === 1 ? "plane" : "planes"} (one as it is, one a plane with a trial mass), got ${runs.length} in ${table.file}`,
    );
  const massUnit = column(table, joined("mass", planeNames[0]!)).unit!;
  return Object.freeze({
    kind: "balance runs",
    title: table.name,
    file: table.file,
    unitSystem: massUnit === "gram" || massUnit === "kilogram" ? "metric" : "inch",
    planes: Object.freeze(planes),
    pickups: Object.freeze(pickups),
    runs: Object.freeze(runs),
    uncertainties: Object.freeze(
      runs.map(({ readings }) =>
        Object.freeze(
          readings.map(({ re, im }, s) => {
            const amplitude = Math.hypot(re, im);
            const largest = Math.max(...runs.map((run) => size(run.readings[s]!)));
            const uAmplitude = share * Math.max(amplitude, largest / 4);
            return Math.sqrt((uAmplitude ** 2 + (amplitude * uPhase) ** 2) / 2);
          }),
        ),
      ),
    ),
    massUnit,
  });
}

function joined(what: string, name: string): string {
  return name === "" ? what : `${what} ${name}`;
}

/** The names that stand behind two words in the headers; both must have the same. */
function namesOf(table: Table, first: string, second: string): readonly string[] {
  const after = (word: string): string[] =>
    table.columns
      .filter(({ name }) => name === word || name.startsWith(`${word} `))
      .map(({ name }) => name.slice(word.length).trim());
  const [names, partners] = [after(first), after(second)];
  if (names.length === 0)
    throw new RangeError(
      `balanceRuns: ${table.file} must have a column "${first}" or "${first} <name>", got ${table.columns.map(({ header }) => `"${header}"`).join(", ")}`,
    );
  const alone =
    names.find((name) => !partners.includes(name)) ?? partners.find((name) => !names.includes(name));
  if (alone !== undefined) {
    const [has, lacks] = names.includes(alone) ? [first, second] : [second, first];
    throw new RangeError(
      `balanceRuns: ${table.file}: column "${joined(has, alone)}" needs a column "${joined(lacks, alone)}" beside it, got none`,
    );
  }
  return names;
}

function radiusOf(radius: BalanceRunsOptions["radius"], plane: string): Length {
  const own = "si" in radius ? (radius as Length) : (radius as Readonly<Record<string, Length>>)[plane];
  if (own === undefined) throw new RangeError(`balanceRuns: no radius is given for plane "${plane}"`);
  if (!(own.si > 0))
    throw new RangeError(`balanceRuns: radius must be above 0, got ${own} for plane "${plane}"`);
  return own;
}

function attachedAt(
  at: string,
  plane: string,
  mass: Mass | undefined,
  angle: Angle | undefined,
  radius: Length,
): Complex {
  const of = plane === "" ? "" : ` of plane "${plane}"`;
  if (mass === undefined)
    throw new RangeError(`balanceRuns: ${at}: the mass${of} is missing; write 0 for none`);
  if (mass.si < 0) throw new RangeError(`balanceRuns: ${at}: the mass${of} must be 0 or more, got ${mass}`);
  if (mass.si === 0) return { re: 0, im: 0 };
  if (angle === undefined)
    throw new RangeError(`balanceRuns: ${at}: the angle${of} of a mass of ${mass} is missing`);
  return polar(mass.si * radius.si, angle.si);
}

function remarkedSense(table: Table): PhaseSense {
  const said = table.remarks.find(({ key }) => key.toLowerCase() === "phase");
  const value = said?.value.trim().toLowerCase();
  if (value === "as the angles" || value === "against the angles") return value;
  throw new RangeError(
    `balanceRuns: ${table.file} must say which way the phase is counted, "# phase: as the angles" or "# phase: against the angles", got ${said === undefined ? "no such remark" : `"${said.value}" on line ${said.line}`}`,
  );
}
