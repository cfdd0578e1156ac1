import {
  type Angle,
  degC,
  degF,
  degree,
  deltaC,
  inch,
  type Length,
  type Measured,
  measured,
  micrometre,
  mm,
  perC,
  thou,
  type UnitSystem,
} from "../../kernel-helpers/quantity/index.js";
import type {
  BandEdge,
  DiameterReading,
  GrossReading,
  Profile,
  ProfileStation,
  TaperFit,
  TaperReading,
  WearBand,
  WearBands,
} from "../../kernel-helpers/survey/profile-types.js";
import type { Column, Instrument, Table } from "../../kernel-helpers/survey/table.js";
import type { TaperIdentity, TaperSetting } from "../../kernel-helpers/survey/taper-setting-types.js";

/**
 * Results as the survey gives them, put together by hand for tests of how they look: 40 steps of a
 * 2 7/16 in shaft (62 mm in metric), worn in a box from 12 to 20, more at 90° than at 0°, falling away from
 * 34 on; one reading ten times too large, one a digit out. The scatter is drawn from a fixed seed.
 */
interface Scale {
  readonly nominal: Length;
  readonly limit: Length;
  readonly step: (steps: number) => Length;
  /** A thousandth of an inch, or 25 µm. */
  readonly bit: (bits: number) => Length;
  readonly unit: "inch" | "mm";
}

const scales: Readonly<Record<UnitSystem, Scale>> = {
  inch: { nominal: inch(2.4375), limit: inch(2.425), step: inch, bit: thou, unit: "inch" },
  metric: {
    nominal: mm(62),
    limit: mm(61.7),
    step: (steps) => mm(25 * steps),
    bit: (bits) => micrometre(25 * bits),
    unit: "mm",
  },
};

/** A remark that must come out as text wherever it is shown. */
export const hostileRemark = '<img src=x onerror="alert(1)"> | $\\x$ & <b>rust</b>';

const pits = "pits from lying wet";
const readingU = 0.1;
const commonU = 0.05;

export function sampleProfile(system: UnitSystem = "inch"): Profile {
  const { nominal, step, bit, unit } = scales[system];
  const scatter = normalScatter(7);
  const readings: DiameterReading[] = [];
  const stations: ProfileStation[] = [];
  for (let s = 0; s <= 40; s++) {
    const here = [0, 90].map((angle) => {
      const good = nominal.minus(bit(depthAt(s, angle) + readingU * scatter()));
      const asRead =
        s === 26 && angle === 90 ? good.times(10) : s === 6 && angle === 0 ? good.minus(bit(10)) : good;
      return reading(s, angle, asRead);
    });
    const indices = here.map((_, i) => readings.length + i);
    readings.push(...here);
    const sizes = here.map(({ diameter }) => diameter.si);
    const [smallest, largest] = [Math.min(...sizes), Math.max(...sizes)];
    stations.push({
      station: step(s),
      mean: here[0]!.diameter.plus(here[1]!.diameter).over(2),
      smallest: here.find(({ diameter }) => diameter.si === smallest)!.diameter,
      largest: here.find(({ diameter }) => diameter.si === largest)!.diameter,
      ovality: here[0]!.diameter.minus(here[1]!.diameter).absolute(),
      standardUncertainty: bit(readingU / Math.SQRT2),
      readings: indices,
    });
  }
  return Object.freeze<Profile>({
    kind: "profile",
    title: "shaft-survey",
    file: "tables/shaft-survey.csv",
    readings,
    stations,
    angles: [degree(0), degree(90)],
    stationUncertainty: step(0.02),
    commonUncertainty: bit(commonU),
    correction: "Diameters brought from 64 °F to 20 °C: +0.001 thou for each inch of diameter.",
    unitSystem: system,
    warnings: [],
  });

  function reading(s: number, angle: number, asRead: Length): DiameterReading {
    return {
      station: step(s),
      angle: degree(angle),
      diameter: asRead.as(unit),
      asRead: asRead.as(unit),
      standardUncertainty: bit(readingU),
      line: 8 + s,
      header: `diameter @ ${angle} deg [${unit === "inch" ? "in" : "mm"}]`,
      remark: s === 14 ? pits : s === 15 ? hostileRemark : "",
    };
  }
}

/** Depth below nominal, in thousandths (or 25 µm). */
function depthAt(s: number, angle: number): number {
  if (s < 12) return 0.3;
  if (s <= 20) return angle === 90 ? 5.6 : 4.0;
  if (s < 34) return 0.4;
  return 0.7 + 0.4 * (s - 34);
}

export function sampleWear(system: UnitSystem = "inch", { withLimit = false } = {}): WearBands {
  const profile = sampleProfile(system);
  const { nominal, limit, step, bit } = scales[system];
  const bands = [
    band(1, 0, 11, "flat", "as made"),
    band(2, 12, 20, "flat", "worn"),
    band(3, 21, 33, "flat", "as made"),
    band(4, 34, 40, "sloping", "worn"),
  ];
  const edges: BandEdge[] = bands.slice(1).map((next, i) => ({
    after: bands[i]!.to,
    before: next.from,
    position: measured(
      bands[i]!.to.plus(next.from).over(2),
      next.from.minus(bands[i]!.to).over(2 * Math.sqrt(3)),
    ),
  }));
  return Object.freeze<WearBands>({
    kind: "wear bands",
    profile,
    nominal,
    limit: withLimit ? limit : undefined,
    bands,
    edges,
    gross: [gross(6, 0, "a digit out"), gross(26, 90, "ten times too large")],
    noiseRatio: 1.04,
    degreesOfFreedom: 75,
    warnings: [],
  });

  function band(
    number: number,
    from: number,
    to: number,
    shape: WearBand["shape"],
    state: WearBand["state"],
  ): WearBand {
    const middle = (from + to) / 2;
    const fitAt = (s: number): Length => nominal.minus(bit((depthAt(s, 0) + depthAt(s, 90)) / 2));
    const diameter = measured(
      fitAt(middle),
      bit(Math.hypot(commonU, readingU / Math.sqrt(2 * (to - from + 1)))),
      75,
    );
    const rise = (fitAt(to).si - fitAt(from).si) / step(to - from).si;
    const oval = number === 2;
    return {
      number,
      shape,
      from: step(from),
      to: step(to),
      stationCount: to - from + 1,
      readingCount: 2 * (to - from + 1),
      diameter,
      slope: shape === "flat" ? measured(0, 0) : measured(rise, Math.abs(rise) / 20, 75),
      diameterAtFrom: fitAt(from),
      diameterAtTo: fitAt(to),
      depth: measured(nominal.minus(diameter.value), diameter.standardUncertainty, 75),
      state,
      smallest: {
        diameter: fitAt(to).minus(bit(oval ? 1 : 0.2)),
        station: step(to),
        angle: degree(oval ? 90 : 0),
      },
      ovality: bit(oval ? 1.6 : 0.1),
      smallestAngle: oval ? degree(90) : undefined,
    };
  }

  function gross(s: number, angle: number, likely: string): GrossReading {
    const index = profile.readings.findIndex((r) => r.line === 8 + s && r.angle!.in("degree") === angle);
    const residual = profile.readings[index]!.diameter.minus(nominal.minus(bit(depthAt(s, angle))));
    return { reading: index, residual, residualInU: residual.si / bit(readingU).si, likely };
  }
}

const micrometer: Instrument = Object.freeze<Instrument>({
  kind: "instrument",
  id: "mic-2-3",
  title: "2 to 3 in micrometer",
  resolution: inch(0.0001),
  repeatability: inch(0.00008),
  calibration: inch(0.00005),
  expansion: perC(11.5e-6),
});

export function sampleTable(): Table {
  const profile = sampleProfile("inch");
  const at = (angle: number): DiameterReading[] =>
    profile.readings.filter((r) => r.angle!.in("degree") === angle);
  const diameters = (angle: number): Column => ({
    name: "diameter",
    header: `diameter @ ${angle} deg [in]`,
    dimension: "length",
    unit: "inch",
    angle: degree(angle).si,
    values: at(angle).map((r) => r.asRead.si),
    text: at(angle).map((r) => r.asRead.in("inch").toFixed(4)),
  });
  return Object.freeze<Table>({
    kind: "table",
    name: "shaft-survey",
    file: "tables/shaft-survey.csv",
    remarks: [
      { key: "instrument", value: "mic-2-3", line: 1 },
      { key: "temperature", value: "64 degF", line: 2 },
      { key: "who", value: "the bench", line: 3 },
    ],
    columns: [
      {
        name: "station",
        header: "station [in]",
        dimension: "length",
        unit: "inch",
        angle: undefined,
        values: at(0).map((r) => r.station.si),
        text: at(0).map((r) => r.station.in("inch").toFixed(1)),
      },
      diameters(0),
      diameters(90),
      {
        name: "remark",
        header: "remark",
        dimension: "text",
        unit: undefined,
        angle: undefined,
        values: [],
        text: at(0).map((r) => r.remark),
      },
    ],
    rowCount: at(0).length,
    lines: at(0).map((r) => r.line),
    unitSystem: "inch",
    conditions: {
      instruments: { diameter: micrometer },
      temperature: degF(64),
      temperatureUncertainty: deltaC(0.5),
      part: { id: "shaft", title: "line shaft", material: "mild steel", expansion: perC(11.5e-6) },
    },
    sha256: "0".repeat(64),
    warnings: ["line 34: diameter @ 90 deg is ten times its neighbours"],
  });
}

/** A taper of 0.602 in per foot over 5 in, read every half inch at two angles, with a bow of `bow` thousandths. */
export function sampleTaper({ bow = 0, grossAt = -1 } = {}): TaperFit {
  const scatter = normalScatter(11);
  const taper = 0.602 / 12;
  const line = (station: number): number => 1.9 + taper * station;
  const readings: TaperReading[] = [];
  const all: DiameterReading[] = [];
  const gross: GrossReading[] = [];
  for (let i = 0; i <= 10; i++) {
    for (const angle of [0, 90]) {
      const t = i / 10;
      let residual = 0.12e-3 * scatter() + bow * 1e-3 * (4 * t * (1 - t) - 2 / 3);
      if (i === grossAt && angle === 0) residual += 0.025;
      const diameter = inch(line(i / 2) + residual);
      const at = { station: inch(i / 2), diameter, standardUncertainty: thou(0.12), line: 5 + i };
      all.push({
        ...at,
        angle: degree(angle),
        asRead: diameter,
        header: `diameter @ ${angle} deg [in]`,
        remark: "",
      });
      if (i === grossAt && angle === 0)
        gross.push({
          reading: all.length - 1,
          residual: inch(residual),
          residualInU: residual / 0.00012,
          likely: "a turn of the thimble (25 thou) out",
        });
      else readings.push({ ...at, angle: degree(angle), residual: inch(residual) });
    }
  }
  const half = Math.atan(taper / 2);
  const u = 0.00002;
  const bowed = bow === 0 ? "straight" : bow > 0 ? "barrel" : "hollow";
  return Object.freeze<TaperFit>({
    kind: "taper",
    profile: {
      ...sampleProfile("inch"),
      title: "taper-survey",
      file: "tables/taper-survey.csv",
      readings: all,
    },
    method: "errors in both",
    taper: measured(taper, u, 19),
    halfAngle: measuredAngle(half, u / 2),
    includedAngle: measuredAngle(2 * half, u),
    smallEnd: { station: inch(0), diameter: measured(inch(line(0)), thou(0.08), 19) },
    largeEnd: { station: inch(5), diameter: measured(inch(line(5)), thou(0.08), 19) },
    length: inch(5),
    readings,
    gross,
    residualShape: {
      shape: bowed,
      bow: measured(thou(bow), thou(0.06), 19),
      text:
        bow === 0
          ? "The flanks are straight."
          : `The flanks are ${bowed} by ${Math.abs(bow)} thou on diameter.`,
    },
    noiseRatio: 0.97,
    degreesOfFreedom: 19,
    warnings: [],
  });
}

function measuredAngle(radians: number, u: number): Measured<Angle> {
  return measured(degree((radians * 180) / Math.PI), degree((u * 180) / Math.PI), 19);
}

export function sampleIdentity(): TaperIdentity {
  return Object.freeze<TaperIdentity>({
    kind: "taper identity",
    matches: [
      {
        name: "Morse 3",
        taper: 0.60235 / 12,
        difference: -0.00035 / 12,
        differenceInU: -1.46,
        misfit: inch(-0.00015),
        agrees: true,
        source: "table of Morse tapers",
      },
      {
        name: "Jarno",
        taper: 0.05,
        difference: 0.002 / 12,
        differenceInU: 8.3,
        misfit: inch(0.00083),
        agrees: false,
        source: "table of Jarno tapers",
      },
    ],
    text: "The readings allow Morse 3 and no other taper of the handbook.",
  });
}

export function sampleSetting(): TaperSetting {
  const taper = 0.602 / 12;
  const half = Math.atan(taper / 2);
  return Object.freeze<TaperSetting>({
    kind: "taper setting",
    taper: measured(taper, 0.00002, 19),
    compoundAngle: measuredAngle(half, 0.00001),
    attachmentPerFoot: measured(inch(0.602), inch(0.00024), 19),
    tailstockSetOver: measured(inch(0.7525), inch(0.0003), 19),
    betweenCentres: inch(30),
    indicator: [1, 5].map((travel) => ({
      travel: inch(travel),
      rise: measured(inch((travel * taper) / 2), inch(travel * 0.00001), 19),
    })),
    sineBar: { barLength: inch(5), stack: measured(inch(5 * Math.sin(2 * half)), inch(0.0001), 19) },
    drawUp: { onDiameter: thou(1), axial: measured(inch(0.001 / taper), inch(0.00001), 19) },
    warnings: [],
  });
}

/** Numbers of a standard normal distribution (sum of twelve), the same each time for a seed. */
function normalScatter(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    // Multiplier and increment of Numerical Recipes, 3rd edition, 2007, section 7.1.
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  return () => Array.from({ length: 12 }, uniform).reduce((sum, u) => sum + u, -6);
}

export const sampleTemperature = degC(18);
