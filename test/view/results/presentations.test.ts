import { afterEach, describe, expect, it } from "vitest";
import { degF, inch, measured, mm, setUnitSystem, thou } from "../../../kernel-helpers/quantity/index.js";
import type { Presentation, TableBlock } from "../../../kernel-helpers/view/blocks.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderHtml } from "../../../kernel-helpers/view/render-html.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import {
  hostileRemark,
  sampleIdentity,
  sampleProfile,
  sampleSetting,
  sampleTable,
  sampleTaper,
  sampleWear,
} from "../../support/sample-results.js";

afterEach(() => setUnitSystem(undefined));

const shown = (value: unknown): Presentation => {
  const presentation = present(value);
  if (presentation === undefined) throw new Error("nothing was presented");
  return presentation;
};
const text = (value: unknown): string => renderText(shown(value)).replace(/\s+/g, " ");
const tables = (value: unknown): TableBlock[] =>
  shown(value).blocks.filter((block) => block.type === "table");
const cells = (value: unknown): string[] =>
  tables(value).flatMap(({ rows }) => rows.flatMap((row) => row.cells));

describe("present(table)", () => {
  it("shows every cell as it was written, with its line and the unit of its column", () => {
    const [table] = tables(sampleTable());
    expect(table!.columns.map(({ title, unit }) => [title, unit])).toEqual([
      ["line", undefined],
      ["station", "in"],
      ["diameter at 0°", "in"],
      ["diameter at 90°", "in"],
      ["remark", undefined],
    ]);
    expect(table!.rows.length).toBe(41);
    expect(table!.rows[0]!.cells.slice(0, 2)).toEqual(["8", "0.0"]);
    expect(table!.showRows).toBe(24);
  });

  it("shows instrument, temperature, part and remarks, and the reader's doubts", () => {
    expect(text(sampleTable())).toMatch(
      /2 to 3 in micrometer .*reads to 0\.1 thou; one standard deviation: repeats to 0\.08 thou, set to 0\.05 thou.*64 °F \(standard uncertainty 0\.9 °F\).*line shaft.*the bench.*WARNING: line 34/,
    );
  });

  it("says so where a long table is cut", () => {
    const table = sampleTable();
    const many = Array.from({ length: 600 }, (_, i) => i);
    const long = { ...table, rowCount: 600, lines: many, columns: table.columns.slice(0, 1) };
    expect(tables(long)[0]!.rows.length).toBe(500);
    expect(text(long)).toContain("the first 500 of 600 rows");
  });
});

describe("present(profile)", () => {
  it("shows each station with its readings, mean, ovality, lines and remark", () => {
    const row = tables(sampleProfile())[0]!.rows[14]!;
    expect(row.cells[0]).toBe("14");
    expect(row.cells[1]).toMatch(/^2\.433\d$/);
    expect(row.cells[2]).toMatch(/^2\.43[12]\d$/);
    expect(row.cells.slice(5)).toEqual(["22", "pits from lying wet"]);
  });

  it("says that its means are of all readings, gross ones included", () => {
    expect(text(sampleProfile())).toContain("Mean and ovality are of all readings, as read");
  });

  it("shows micrometres and millimetres for a metric table", () => {
    expect(text(sampleProfile("metric"))).toMatch(/a single reading ± 4\.9 µm \(95 %\).*\[mm\].*\[µm\]/);
  });
});

describe("present(wear)", () => {
  it("names the deepest band in words, with depth and uncertainty below nominal", () => {
    expect(text(sampleWear())).toMatch(
      /deepest wear is band 2, 12 to 20 in: 4\.80 ± 0\.11 thou \(95 %\) below the nominal 2 7\/16 in, on diameter/,
    );
    expect(text(sampleWear("metric"))).toMatch(/300 to 500 mm: 120\.0 ± 2\.8 µm .* the nominal 62 mm/);
  });

  it("says which band is out of round, and which readings carry no weight", () => {
    expect(text(sampleWear())).toContain("Band 2 is worn out of round by 1.6 thou, smallest at 90°");
    expect(text(sampleWear())).toContain("given no weight: line 14 and line 34");
  });

  it("gives each band a row: stations, edges, state, diameter, depth; worn ones marked", () => {
    const { rows } = tables(sampleWear())[0]!;
    expect(rows.map(({ mark }) => mark)).toEqual([undefined, "warn", undefined, "warn"]);
    expect(rows[1]!.cells).toEqual(["2", "12 – 20", "20 – 21", "worn", "2.43270 ± 0.00011", "4.80 ± 0.11"]);
    expect(rows[3]!.cells[2]).toBe("end of survey");
  });

  it("gives each band a row of its shape: slope, ovality and where, smallest reading and where", () => {
    const { columns, rows } = tables(sampleWear())[1]!;
    expect(columns.map(({ unit }) => unit)).toEqual([
      undefined,
      "thou per in",
      "thou",
      undefined,
      "in",
      "in",
      undefined,
    ]);
    expect(rows[1]!.cells).toEqual(["2", "flat", "1.6", "90°", "2.4317", "20", "90°"]);
    expect(rows[3]!.cells[1]).toBe("−0.400 ± 0.040");
    expect(tables(sampleWear("metric"))[1]!.columns[1]!.unit).toBe("µm per 100 mm");
  });

  it("puts a dash for angles that are not known, and leaves out what one angle cannot tell", () => {
    const wear = sampleWear();
    const atOneAngle = wear.bands.map((band) => ({
      ...band,
      ovality: undefined,
      smallestAngle: undefined,
      smallest: { ...band.smallest, angle: undefined },
    }));
    const some = [atOneAngle[0]!, ...wear.bands.slice(1)];
    const [row] = tables({ ...wear, bands: some })[1]!.rows;
    expect([row!.cells[2], row!.cells[3], row!.cells[6]]).toEqual(["one angle", "–", "–"]);
    const { columns, caption } = tables({ ...wear, bands: atOneAngle })[1]!;
    expect(columns.map(({ title }) => title)).toEqual(["band", "slope", "smallest reading", "at station"]);
    expect(caption).toMatch(/Read at one angle: nothing is known of roundness/);
  });

  it("lists gross readings with line, read, expected, off by and the likely slip", () => {
    const { rows } = tables(sampleWear())[2]!;
    expect(rows[1]!.mark).toBe("bad");
    expect(rows[1]!.cells.join(" | ")).toMatch(
      /34 \| 26 \| 90° \| 24\.37\d\d \| 2\.4371 \| 21\.93\d\d in too large .* ten times too large/,
    );
  });

  it("has a column for remarks on gross readings only where there are any", () => {
    const wear = sampleWear();
    const titles = (remark: string): string[] => {
      const readings = wear.profile.readings.map((reading) => ({ ...reading, remark }));
      return tables({ ...wear, profile: { ...wear.profile, readings } })[2]!.columns.map(
        ({ title }) => title,
      );
    };
    expect(titles("wet")).toContain("remark");
    expect(titles("")).not.toContain("remark");
  });

  it("gives a verdict only where a limit is given", () => {
    const verdicts = (wear: unknown): number =>
      shown(wear).blocks.filter(({ type }) => type === "verdict").length;
    expect(verdicts(sampleWear())).toBe(0);
    expect(verdicts(sampleWear("inch", { withLimit: true }))).toBe(1);
  });

  it("says that nothing is judged without a nominal", () => {
    const wear = sampleWear();
    const bands = wear.bands.map((band) => ({ ...band, depth: undefined, state: "not judged" as const }));
    expect(text({ ...wear, bands, nominal: undefined })).toContain(
      "Without a nominal size, wear is not judged",
    );
  });

  it("follows the unit system of an open rebuild", () => {
    setUnitSystem("metric");
    expect(text(sampleWear("inch"))).toMatch(/304\.8 to 508 mm: 121\.9 ± 2\.8 µm/);
  });
});

describe("present(taper)", () => {
  it("names the taper in every way, each with its uncertainty", () => {
    const said = text(sampleTaper());
    expect(said).toContain("0.60200 ± 0.00050 in per foot (95 %, k = 2.1)");
    expect(said).toContain("5.0167 ± 0.0042 % (95 %, k = 2.1)");
    expect(said).toContain("1 : 19.934 ± 0.017 (95 %)");
    expect(said).toMatch(/half angle 1\.4369 ± 0\.0012° \(95 %\) = 1° 26′ 13″/);
    expect(said).toMatch(/included angle 2\.8737 ± 0\.0024° \(95 %\)/);
  });

  it("gives no ratio to a shaft that is straight within its uncertainty, and an interval to a doubtful one", () => {
    expect(text({ ...sampleTaper(), taper: measured(0.00001, 0.0001) })).toContain("the shaft is straight");
    // 1/(0.05 ± 0.0098)
    expect(text({ ...sampleTaper(), taper: measured(0.05, 0.005) })).toContain(
      "between 1 : 16.7 and 1 : 24.9",
    );
  });
});

describe("present(taper identity)", () => {
  it("says in words which tapers agree, nearest first", () => {
    const [table] = tables(sampleIdentity());
    expect(table!.rows.map(({ cells: row }) => [row[0], row[6]])).toEqual([
      ["Morse 3", "yes, within the uncertainty"],
      ["Jarno", "no"],
    ]);
  });
});

describe("present(taper setting)", () => {
  it("says of each setting what it is measured on", () => {
    const said = text(sampleSetting());
    expect(said).toMatch(/compound slide.*1\.4369 ± 0\.0012°.*half angle, not the included angle/);
    expect(said).toMatch(
      /tailstock set-over 0\.75250 ± 0\.00063 in.*work 30 in long between centres: the whole length/,
    );
    expect(said).toMatch(/5 in sine bar 0\.25068 ± 0\.00021 in.*included angle/);
    expect(said).toMatch(/rise on radius, half the change of diameter/);
    expect(cells(sampleSetting())).toContain("25.083 ± 0.021 thou");
  });

  it("asks for the length between centres where it is not given", () => {
    const setting = { ...sampleSetting(), tailstockSetOver: undefined, betweenCentres: undefined };
    expect(text(setting)).toContain("it needs the whole length between centres");
  });
});

describe("present(value with a unit)", () => {
  it.each([
    { value: inch(2.4375), line: "2.4375 in" },
    { value: degF(68), line: "68 °F" },
    { value: measured(inch(2.433172), inch(0.000122)), line: "2.43317 ± 0.00024 in (95 %, k = 2.0)" },
  ])("is one line: $line", ({ value, line }) => {
    expect(shown(value)).toEqual({ title: line, blocks: [] });
  });

  it("lists several on a line, and says how many it leaves out", () => {
    expect(text([inch(1), mm(2)])).toContain("1 in, 2 mm");
    expect(text(Array.from({ length: 250 }, () => thou(1)))).toContain("and 50 more");
  });
});

describe("present(anything else)", () => {
  it.each([true, "words", 3, {}, { wear: sampleWear() }, [], [1, 2], { kind: "toString" }, { kind: 7 }])(
    "leaves %s to plain text",
    (value) => {
      expect(present(value)).toBeUndefined();
    },
  );
});

describe("a remark full of markup", () => {
  it.each([
    ["table", sampleTable()],
    ["profile", sampleProfile()],
  ])("stays what it is in the cells of a %s, and does nothing in HTML", (_, value) => {
    expect(cells(value)).toContain(hostileRemark);
    const html = renderHtml(shown(value), { picture: () => "", withStyle: false });
    expect(html).toContain("&lt;img");
    expect(html).not.toContain("<img src=x");
  });
});

describe("every presentation", () => {
  it.each([
    sampleTable(),
    sampleProfile(),
    sampleWear("metric", { withLimit: true }),
    sampleTaper({ bow: -0.6, grossAt: 3 }),
    sampleIdentity(),
    sampleSetting(),
  ])("of $kind has rows as wide as its columns and no undefined, NaN or empty fact", (value) => {
    for (const { columns, rows } of tables(value))
      for (const row of rows) expect(row.cells.length).toBe(columns.length);
    for (const block of shown(value).blocks)
      if (block.type === "facts") for (const fact of block.facts) expect(fact.value).not.toBe("");
    expect(text(value)).not.toMatch(/undefined|NaN|Infinity|\[object/);
    expect(Object.isFrozen(shown(value))).toBe(true);
  });
});
