import { describe, expect, it } from "vitest";
import { inch, type Length, micrometre, thou } from "../../kernel-helpers/quantity/index.js";
import { instrumentFrom, partFrom, profileOf } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { shaftTable, tableFromText } from "../support/shaft-table.js";

const given = { readingUncertainty: thou(0.2), stationUncertainty: inch(0.02) };
const rounding = { rel: 1e-12, because: "rounding only" };
const known = {
  instruments: {
    mic: instrumentFrom("mic", {
      title: "micrometer",
      resolution: "0.0001 in",
      repeatability: "0.00015 in",
      calibration: "0.0001 in",
      expansion: "11.5e-6 1/°C",
    }),
    plain: instrumentFrom("plain", { title: "calliper", resolution: "0.001 in", repeatability: "0.0005 in" }),
    rule: instrumentFrom("rule", { title: "steel rule", resolution: "1/64 in", repeatability: "0.01 in" }),
  },
  parts: {
    shaft: partFrom("shaft", { title: "line shaft", material: "bronze", expansion: "18e-6 1/°C" }),
    bush: partFrom("bush", { title: "bush" }),
  },
};
const inches = (length: Length | undefined): number => Number(length!.in("inch").toPrecision(12));

describe("profileOf(table) in the long form", () => {
  const table = shaftTable([
    { station: 2, angle: 90, diameter: 2.4332, remark: "light rust" },
    { station: 1, angle: 0, diameter: 2.4374 },
    { station: 2, angle: 0, diameter: 2.4372 },
    { station: 1, angle: 90, diameter: 2.437 },
  ]);
  const profile = profileOf(table, given);

  it("sorts along the shaft and round it, and names line, header and remark of each reading", () => {
    expect(
      profile.readings.map((r) => [inches(r.station), Math.round(r.angle!.in("degree")), inches(r.diameter)]),
    ).toEqual([
      [1, 0, 2.4374],
      [1, 90, 2.437],
      [2, 0, 2.4372],
      [2, 90, 2.4332],
    ]);
    expect(profile.readings.map(({ line }) => line)).toEqual([3, 5, 4, 2]);
    expect(profile.readings[3]!.remark).toBe("light rust");
    expect(profile.readings[3]!.header).toBe("diameter [in]");
    expect(profile.angles.map((angle) => Math.round(angle.in("degree")))).toEqual([0, 90]);
  });

  it("gives each station its mean, extremes, ovality on diameter, and u/√m", () => {
    const [first, second] = profile.stations;
    expectClose(first!.mean.in("inch"), 2.4372, rounding);
    expectClose(second!.ovality!.in("thou"), 4, { rel: 1e-9, because: "difference of rounded numbers" });
    expect([inches(second!.smallest), inches(second!.largest)]).toEqual([2.4332, 2.4372]);
    expectClose(first!.standardUncertainty.in("thou"), 0.2 / Math.SQRT2, rounding);
    expect(first!.readings).toEqual([0, 1]);
  });

  it("returns frozen data in the units of the table", () => {
    for (const part of [
      profile,
      profile.readings,
      profile.readings[0],
      profile.stations,
      profile.stations[0],
    ])
      expect(Object.isFrozen(part)).toBe(true);
    expect(profile.unitSystem).toBe("inch");
    expect(profile.readings[0]!.diameter.writtenIn).toBe("inch");
    expect(profile.file).toBe("shaft.csv");
  });

  it("takes stations within a nanometre for one, and farther apart for two", () => {
    const stations = (apart: number): number =>
      profileOf(
        shaftTable([
          { station: 1, angle: 0, diameter: 2 },
          { station: 1 + apart / 0.0254, angle: 90, diameter: 2 },
          { station: 3, angle: 90, diameter: 2 },
        ]),
        given,
      ).stations.length;
    expect(stations(0.9e-9)).toBe(2);
    expect(stations(1.1e-6)).toBe(3);
  });
});

describe("profileOf(table) in the wide form", () => {
  it("takes the angle from the header and skips what was not read", () => {
    const profile = profileOf(
      tableFromText(
        "station [in],diameter @ 0 deg [in],diameter @ 90 deg [in],remark\n1,2.5,2.499,\n2,-,2.498,no room",
      ),
      given,
    );
    expect(
      profile.readings.map((r) => [inches(r.station), Math.round(r.angle!.in("degree")), r.line]),
    ).toEqual([
      [1, 0, 2],
      [1, 90, 2],
      [2, 90, 3],
    ]);
    expect(profile.readings[1]!.header).toBe("diameter @ 90 deg [in]");
    expect(profile.readings[2]!.remark).toBe("no room");
    expect(profile.stations[1]!.ovality).toBeUndefined();
  });
  it("takes another column where told", () => {
    const table = tableFromText("station [in],bore [in]\n1,2.5\n2,2.5");
    expect(profileOf(table, { ...given, diameterColumn: "bore" }).readings).toHaveLength(2);
    expect(() => profileOf(table, given)).toThrow(
      /must have a column "diameter" .* got the columns "station \[in\]", "bore \[in\]"/,
    );
  });
});

describe("profileOf(table) corrected to 20 °C", () => {
  const rows = "station [in],diameter [in]\n1,2.5\n2,4";
  const text = (...remarks: string[]): string => [...remarks.map((r) => `# ${r}`), rows].join("\n");
  const full = text(
    "part: shaft",
    "instrument diameter: mic",
    "instrument station: rule",
    "temperature: 30 ± 2 degC",
  );

  it("brings a bronze part read with a steel instrument at 30 °C to its true size", () => {
    // Published hand case: 100 mm bronze (18e-6) with a steel scale (11.5e-6), both at 30 °C, reads 6.5 µm long.
    const { readings } = profileOf(tableFromText(full, known));
    const perHundred = readings[0]!.asRead.minus(readings[0]!.diameter).over(readings[0]!.asRead) * 0.1;
    expectClose(perHundred, micrometre(6.5).si, { rel: 1e-2, because: "printed with 2 digits" });
    // Exactly: L (1 + α_i ΔT)/(1 + α_p ΔT).
    expectClose(readings[0]!.diameter.in("inch"), (2.5 * (1 + 115e-6)) / (1 + 180e-6), rounding);
    expect(inches(readings[0]!.asRead)).toBe(2.5);
  });

  it("knows u of a reading, of a station, and what is common to all", () => {
    const profile = profileOf(tableFromText(full, known));
    // GUM 4.3.7 and F.2.2.1: √(0.15² + 0.1²/12) thou.
    expectClose(
      profile.readings[0]!.standardUncertainty.in("thou"),
      Math.sqrt(0.15 ** 2 + 0.1 ** 2 / 12),
      rounding,
    );
    expectClose(profile.stationUncertainty.in("inch"), Math.sqrt(0.01 ** 2 + 1 / 64 ** 2 / 12), rounding);
    // Calibration 0.1 thou; temperature ±2 °C rectangular on 6.5e-6 1/°C at the largest diameter, 4 in.
    const temperature = (4 * 6.5e-6 * (2 / Math.sqrt(3))) / (1 + 180e-6) ** 2;
    expectClose(profile.commonUncertainty.in("inch"), Math.hypot(0.0001, temperature), {
      rel: 1e-9,
      because: "rounding",
    });
    expect(profile.correction).toBe(
      "Diameters brought from 30 °C to 20 °C: −0.065 thou for each inch of diameter.",
    );
    expect(profile.warnings).toEqual([]);
  });

  it("says why it does nothing where no temperature is given", () => {
    const profile = profileOf(tableFromText(text("part: shaft", "instrument: mic"), known), {
      stationUncertainty: inch(0.02),
    });
    expect(profile.correction).toMatch(/not brought to 20 °C: the table gives no temperature/);
    expect(profile.readings[0]!.diameter.si).toBe(profile.readings[0]!.asRead.si);
    expect(profile.warnings).toEqual([]);
  });

  it.each([
    [["part: bush", "instrument: mic", "temperature: 30 ± 2 degC"], /expansion of bush is not known/],
    [["part: shaft", "instrument: plain", "temperature: 30 ± 2 degC"], /expansion of calliper is not known/],
    [["instrument: plain", "temperature: 30 ± 2 degC"], /expansion of the part and of calliper is not known/],
  ])("warns where it would be due but an expansion is missing: %j", (remarks, why) => {
    const profile = profileOf(tableFromText(text(...remarks), known), { stationUncertainty: inch(0.02) });
    expect(profile.correction).toMatch(why);
    expect(profile.warnings.join()).toMatch(/taken at 30 °C, but the expansion of .* not brought to 20 °C/);
    expect(profile.readings[0]!.diameter.si).toBe(profile.readings[0]!.asRead.si);
  });

  it("does not warn at 20 °C, where nothing is due", () => {
    const table = tableFromText(text("instrument: plain", "temperature: 68 ± 2 degF"), known);
    expect(profileOf(table, { stationUncertainty: inch(0.02) }).warnings).toEqual([]);
  });

  it("warns where nothing is known of the stations or of how well the temperature is known", () => {
    const table = tableFromText(
      text("part: shaft", "instrument diameter: mic", "temperature: 30 degC"),
      known,
    );
    const { warnings, stationUncertainty } = profileOf(table);
    expect(stationUncertainty.si).toBe(0);
    expect(warnings.join()).toMatch(/temperature of 30 °C is known is not said/);
    expect(warnings.join()).toMatch(/No instrument is named for the stations/);
  });

  it("carries the table's own doubts along", () => {
    const table = tableFromText(text("instrument: mic", "temprature: 30 degC"), known);
    expect(table.warnings.length).toBeGreaterThan(0);
    expect(profileOf(table).warnings).toEqual(expect.arrayContaining([...table.warnings]));
  });
});

describe("profileOf(table) refuses", () => {
  it("readings of unknown worth, and says what to add", () => {
    const table = shaftTable([{ station: 1, diameter: 2.5 }]);
    expect(() => profileOf(table)).toThrow(
      /no instrument for "diameter" .*add a line "# instrument diameter: …"/,
    );
    expect(() => profileOf(table, { readingUncertainty: thou(0) })).toThrow(
      /must be a length greater than 0/,
    );
  });
  it("a column that is no length", () => {
    expect(() => profileOf(tableFromText("station [in],diameter [-]\n1,2.5"), given)).toThrow(
      /"diameter \[-\]", which is no length/,
    );
  });
  it("a reading without a station, naming its line", () => {
    const table = tableFromText("place [in],diameter [in]\n1,2.5\n-,2.5");
    expect(() => profileOf(table, { ...given, stationColumn: "place" })).toThrow(
      /every reading must have a station, got none on line 3 of shaft\.csv/,
    );
  });
  it("a table without a reading", () => {
    expect(() => profileOf(tableFromText("station [in],diameter [in]\n1,-"), given)).toThrow(
      /at least 1 diameter read, got none/,
    );
  });
});
