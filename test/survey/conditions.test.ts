import { describe, expect, it } from "vitest";
import { instrumentFrom, partFrom } from "../../kernel-helpers/survey/instrument.js";
import type { Conditions } from "../../kernel-helpers/survey/table.js";
import { expectClose } from "../support/expect-close.js";
import { faultsOf, tableOf } from "../support/faults-of.js";

const entry = { title: "An instrument", resolution: "0.0001 in", repeatability: "0.0001 in" };
const instruments = { "mic-2-3": instrumentFrom("mic-2-3", entry), rule: instrumentFrom("rule", entry) };
const parts = { shaft: partFrom("shaft", { title: "Line shaft" }) };
const known = { instruments, parts };
const rows = "station [in],angle [deg],diameter [in],depth [in]\n1,0,2.43,0.1\n";
const conditions = (remarks: string): Conditions => tableOf(`${remarks}\n${rows}`, known).conditions;

describe("readTable(bytes, options): instruments and part", () => {
  it("takes `# instrument: …` for all lengths but the station", () => {
    expect(conditions("# instrument: mic-2-3").instruments).toEqual({
      diameter: instruments["mic-2-3"],
      depth: instruments["mic-2-3"],
    });
  });
  it("takes `# instrument <column>: …` for that column, before what is said of all, in any order", () => {
    for (const remarks of [
      ["# instrument: mic-2-3", "# instrument depth: rule", "# Instrument Station: rule"],
      ["# instrument depth: rule", "# Instrument Station: rule", "# instrument: mic-2-3"],
    ])
      expect(conditions(remarks.join("\n")).instruments).toEqual({
        station: instruments.rule,
        diameter: instruments["mic-2-3"],
        depth: instruments.rule,
      });
  });
  it("takes `# part: …`", () => {
    expect(conditions("# part: shaft").part).toBe(parts.shaft);
  });
  it("says nothing where the remarks say nothing", () => {
    expect(conditions("# by: A")).toEqual({
      instruments: {},
      temperature: undefined,
      temperatureUncertainty: undefined,
      part: undefined,
    });
  });
  it("reports an unknown instrument or part with those known, and the one nearly named", () => {
    const [instrument, part] = faultsOf(`# instrument: mic-2-4\n# part: pulley\n${rows}`, known);
    expect(instrument).toMatchObject({
      line: 1,
      found: 'instrument "mic-2-4"',
      expected: "the short name of a known instrument: one of mic-2-3, rule",
      mend: 'was "mic-2-3" meant?',
    });
    expect(part).toMatchObject({
      line: 2,
      found: 'part "pulley"',
      mend: "add it to rebuild.json, or correct the name",
    });
    expect(faultsOf(`# part: toString\n${rows}`, known)[0]!.expected).toMatch(/one of shaft$/);
  });
  it("reports an instrument for a column that holds no lengths", () => {
    for (const name of ["angle", "bore"]) {
      const [fault] = faultsOf(`# instrument ${name}: rule\n${rows}`, known);
      expect(fault).toMatchObject({ line: 1, found: `an instrument for "${name}"` });
      expect(fault!.mend).toMatch(/name one of station, diameter, depth/);
    }
  });
  it("reports what is said twice", () => {
    expect(faultsOf(`# part: shaft\n# part: shaft\n${rows}`, known)[0]).toMatchObject({
      line: 2,
      found: 'a second remark "part"',
      expected: "one (the first is on line 1)",
    });
  });
  it("only doubts an instrument where no list of instruments is given", () => {
    const table = tableOf(`# instrument: mic\n${rows}`);
    expect(table.conditions.instruments).toEqual({});
    expect(table.warnings).toEqual([
      'Line 1: the instrument "mic" is not known here, for no instruments were given.',
    ]);
  });
  it("doubts a remark that nearly has a known name", () => {
    expect(tableOf(`# temprature: 54 degF\n# tool: file\n${rows}`, known).warnings).toEqual([
      'Line 1: the remark "temprature" is kept, but not understood; was "temperature" meant?',
    ]);
  });
});

describe("readTable(bytes, options): temperature", () => {
  const because = "two roundings of a temperature near 300 K";

  it("reads a temperature with its scale", () => {
    expectClose(conditions("# temperature: 54 degF").temperature!.in("degC"), 110 / 9, {
      abs: 1e-12,
      because,
    });
    expectClose(conditions("# temperature: 12.5 °C").temperature!.in("degC"), 12.5, { abs: 1e-12, because });
    expect(conditions("# temperature: 54 degF").temperatureUncertainty).toBeUndefined();
  });
  // Source: JCGM 100:2008 (GUM), 4.3.7, example: limits ±0.40 give u = 0.23 (printed there in 1e-6 1/°C).
  it("reads limits behind ± as a rectangular distribution, u = a/√3", () => {
    const { temperatureUncertainty } = conditions("# temperature: 20 ± 0.40 degC");
    expectClose(temperatureUncertainty!.in("deltaC"), 0.23, { abs: 0.005, because: "2 printed digits" });
  });
  it("takes limits as a difference: 2 degF are 10/9 °C, not the temperature 2 °F", () => {
    for (const text of ["54 ± 2 degF", "54 degF ± 2 degF", "54 +/- 2 degF", "54 +- 2 °F", "(54 ± 2) degF"]) {
      const { temperature, temperatureUncertainty } = conditions(`# temperature: ${text}`);
      expectClose(temperature!.in("degF"), 54, { abs: 1e-12, because });
      expectClose(temperatureUncertainty!.in("deltaC"), 10 / 9 / Math.sqrt(3), { rel: 1e-14, because });
    }
  });
  it("takes `# temperature uncertainty` as a standard uncertainty, as it stands", () => {
    const { temperatureUncertainty } = conditions(
      "# temperature: 54 degF\n# temperature uncertainty: 1.8 degF",
    );
    expectClose(temperatureUncertainty!.in("deltaC"), 1, { rel: 1e-15, because });
  });
  it("reports what is no temperature, or none with a scale", () => {
    for (const text of [
      "54",
      "warm",
      "54 ± 2",
      "54 degF ± warm",
      "54 ± 2 ± 1 degF",
      "54 degF ± -2 degF",
      "-500 degC",
      "",
    ]) {
      expect(faultsOf(`# temperature: ${text}\n${rows}`, known)[0]).toMatchObject({
        line: 1,
        found: `"${text}"`,
        expected: "a temperature with its scale",
        mend: 'write e.g. "54 degF" or "54 ± 2 degF"',
      });
    }
  });
  it("reports an uncertainty said twice, alone, or without scale", () => {
    const found = (remarks: string): string => faultsOf(`${remarks}\n${rows}`, known)[0]!.found;
    expect(found("# temperature: 54 ± 2 degF\n# temperature uncertainty: 1 degF")).toMatch(
      /second uncertainty/,
    );
    expect(found("# temperature uncertainty: 1 degF")).toBe("an uncertainty of the temperature");
    expect(found("# temperature: 54 degF\n# temperature uncertainty: 1")).toBe('"1"');
  });
  it("doubts a temperature at which nobody measures, such as 68 °C", () => {
    expect(tableOf(`# temperature: 68 degC\n${rows}`).warnings[0]).toMatch(
      /68 degC is an unusual temperature .* right scale/,
    );
    expect(tableOf(`# temperature: 68 degF\n${rows}`).warnings).toEqual([]);
  });
});
