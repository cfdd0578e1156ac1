import { describe, expect, it } from "vitest";
import {
  britishFineRows,
  constantPitchThreads,
  metricCoarseRows,
  metricThreads,
  type StandardThread,
  standardThreads,
  threadNamed,
  threadOfForm,
  unifiedRows,
  unifiedThreads,
  whitworthRows,
  whitworthThreads,
} from "../../kernel-helpers/handbook/index.js";
import { inch, mm } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const size = (printed: string): string => printed.replace("-", " ");

describe("unifiedRows and unifiedThreads", () => {
  // Source: test/reference/threads-unc-unf.csv, header there.
  const printed = readReference("threads-unc-unf");
  it("hold the printed table digit by digit", () => {
    expect(unifiedRows.map((row) => row.series)).toEqual(printed.rows.map(([series]) => series));
    expect(unifiedRows.map((row) => row.size)).toEqual(printed.rows.map((row) => size(row[1]!)));
    expect(unifiedRows.map((row) => row.majorDiameter)).toEqual(printed.numbers("D_in"));
    expect(unifiedRows.map((row) => row.threadsPerInch)).toEqual(printed.numbers("tpi"));
    expect(unifiedRows.map((row) => row.pitchDiameter)).toEqual(printed.numbers("pitch_dia_in"));
    expect(unifiedRows.map((row) => row.stressArea)).toEqual(printed.numbers("As_in2"));
  });
  it("compute the printed pitch diameter and stress area of every row", () => {
    printed.numbers("pitch_dia_in").forEach((diameter, i) => {
      expectClose(unifiedThreads[i]!.pitchDiameter.in("inch"), diameter, {
        abs: 1.01e-4,
        because: "4 printed decimals, some cut and not rounded; worst measured 0.0001",
      });
    });
    printed.rows.forEach((row, i) => {
      const digit = 10 ** -(row[5]!.split(".")[1] ?? "").length;
      expectClose(unifiedThreads[i]!.stressArea.in("inch2"), Number(row[5]), {
        abs: row[5] === "1.9" || row[5] === "2.5" || row[5] === "4.0" ? 5e-3 : 1.001 * digit,
        because: "the last printed digit; the data file dropped trailing zeros of 1.90, 2.50 and 4.00",
      });
    });
  });
});

describe("whitworthRows and whitworthThreads", () => {
  // Source: test/reference/threads-bsw.csv and threads-bsf-tpi.csv, headers there.
  const printed = readReference("threads-bsw");
  const fine = readReference("threads-bsf-tpi");
  it("hold the printed tables digit by digit", () => {
    expect(whitworthRows.map((row) => row.size)).toEqual(printed.rows.map((row) => size(row[0]!)));
    expect(whitworthRows.map((row) => row.majorDiameter)).toEqual(printed.numbers("D_in"));
    expect(whitworthRows.map((row) => row.threadsPerInch)).toEqual(printed.numbers("tpi"));
    expect(whitworthRows.map((row) => row.pitchDiameter)).toEqual(printed.numbers("pitch_dia_in"));
    expect(whitworthRows.map((row) => row.coreDiameter)).toEqual(printed.numbers("core_dia_in"));
    expect(britishFineRows.map((row) => row.size)).toEqual(fine.rows.map((row) => size(row[0]!)));
    expect(britishFineRows.map((row) => row.threadsPerInch)).toEqual(fine.numbers("tpi"));
  });
  it("compute the printed pitch and core diameters of every row", () => {
    printed.rows.forEach((row, i) => {
      const because =
        "twice the depth, which the table rounds to 4 decimals (3 for small sizes); worst measured 0.00015";
      const abs = (text: string): number => (text.split(".")[1]!.length < 4 ? 6e-4 : 1.6e-4);
      const thread = whitworthThreads[i]!;
      expectClose(thread.majorDiameter.in("inch"), Number(row[1]), {
        rel: 1e-12,
        because: "the same number",
      });
      expectClose(thread.pitchDiameter.in("inch"), Number(row[3]), { abs: abs(row[3]!), because });
      expectClose(thread.rootDiameter.in("inch"), Number(row[4]), { abs: abs(row[4]!), because });
    });
  });
  // Source: BS 84 tables of BSF (from memory): 1/2-16 0.4600/0.4200, 1-10 0.9360/0.8720.
  it("compute the printed diameters of two fine threads", () => {
    for (const [name, pitch, core] of [
      ["1/2 in BSF", 0.46, 0.42],
      ["1 in BSF", 0.936, 0.872],
    ] as const) {
      expectClose(threadNamed(name).pitchDiameter.in("inch"), pitch, { abs: 5e-5, because: "4 decimals" });
      expectClose(threadNamed(name).rootDiameter.in("inch"), core, { abs: 1e-4, because: "4 decimals" });
    }
  });
});

describe("metricCoarseRows and metricThreads", () => {
  // Source: test/reference/threads-iso-metric-coarse.csv, header there.
  const printed = readReference("threads-iso-metric-coarse");
  it("hold the pitches digit by digit and compute every diameter and stress area", () => {
    expect(metricCoarseRows.map((row) => row.majorDiameter)).toEqual(printed.numbers("d"));
    expect(metricCoarseRows.map((row) => row.pitch)).toEqual(printed.numbers("P"));
    const because = "3 decimals (1 for the area)";
    printed.numbers("d2").forEach((d2, i) => {
      expectClose(metricThreads[i]!.pitchDiameter.in("mm"), d2, { abs: 5.1e-4, because });
      expectClose(metricThreads[i]!.rootDiameter.in("mm"), printed.numbers("d3")[i]!, {
        abs: 5.1e-4,
        because,
      });
      expectClose(metricThreads[i]!.stressArea.in("mm2"), printed.numbers("As_mm2")[i]!, {
        abs: 0.051,
        because,
      });
    });
  });
  // Source: ISO 898-1 stress areas (from memory): M12 84.3, M20 245, M36 817.
  it("have the stress areas that the bolt standard prints", () => {
    for (const [name, area] of [
      ["M12x1.75", 84.3],
      ["M20x2.5", 245],
      ["M36x4", 817],
    ] as const)
      expectClose(threadNamed(name).stressArea.in("mm2"), area, { rel: 1.5e-3, because: "3 printed digits" });
  });
});

describe("standardThreads", () => {
  it("have each name once, each with a source and diameters in their order", () => {
    expect(new Set(standardThreads.map(({ name }) => name)).size).toBe(standardThreads.length);
    for (const thread of standardThreads) {
      expect(thread.source.length).toBeGreaterThan(10);
      expect(thread.majorDiameter > thread.pitchDiameter).toBe(true);
      expect(thread.pitchDiameter > thread.rootDiameter).toBe(true);
      const round = (diameter: StandardThread["rootDiameter"]): number => (Math.PI / 4) * diameter.si ** 2;
      expect(thread.stressArea.si).toBeGreaterThan(round(thread.rootDiameter));
      expect(thread.stressArea.si).toBeLessThan(round(thread.pitchDiameter));
    }
  });
  // The trap of the trade: the same threads per inch from 1/4 to 1 in but for 1/2 in (12 and 13), another angle.
  it("know that Whitworth and UNC differ from 1/4 to 1 in by the angle, and at 1/2 in by the pitch", () => {
    for (const { size: s, threadsPerInch, majorDiameter } of whitworthRows) {
      if (majorDiameter < 0.25 || majorDiameter > 1) continue;
      const unc = unifiedRows.find((row) => row.series === "UNC" && row.size === s)!;
      expect(unc.threadsPerInch).toBe(s === "1/2" ? 13 : threadsPerInch);
    }
    expect(threadNamed("1 in BSW").flankAngle).toBe(55);
    expect(threadNamed("1-8 UNC").flankAngle).toBe(60);
  });
  // Source: a public table of 8-UN: 1 1/8 in 0.790, 2 in 2.77 in² of stress area (ASME B1.1, from memory).
  it("have the stress areas of the 8-thread series", () => {
    for (const [name, area] of [
      ["1 1/8-8 UN", 0.79],
      ["2-8 UN", 2.77],
    ] as const) {
      const thread = constantPitchThreads.find((one) => one.name === name)!;
      expectClose(thread.stressArea.in("inch2"), area, { rel: 2e-3, because: "3 printed digits" });
    }
  });
});

describe("threadNamed(name)", () => {
  it("takes the ways a name is written", () => {
    expect(threadNamed("1-1/2-6 UNC").name).toBe("1 1/2-6 UNC");
    expect(threadNamed("1-1/2 BSW").name).toBe("1 1/2 in BSW");
    expect(threadNamed("m36x3").name).toBe("M36 × 3");
  });
  it("rejects a thread the handbook does not have, and shows how names are written", () => {
    expect(() => threadNamed("1 1/2-7 UNC")).toThrow(/threadNamed: .*"1 1\/2-7 UNC".*"M36 × 3"/);
  });
});

describe("threadOfForm(family, size)", () => {
  const base = { name: "x", series: "x", threadsPerInch: undefined, source: "a test" };
  it("rejects a pitch of nothing and a thread without a core", () => {
    expect(() => threadOfForm("unified", { ...base, majorDiameter: inch(1), pitch: inch(0) })).toThrow(
      /threadOfForm: pitch must be more than 0, got 0 in/,
    );
    expect(() => threadOfForm("ISO metric", { ...base, majorDiameter: mm(2), pitch: mm(2) })).toThrow(
      /threadOfForm: a thread needs a core/,
    );
  });
});
