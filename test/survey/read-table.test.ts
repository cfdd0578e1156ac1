import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inch } from "../../kernel-helpers/quantity/index.js";
import { column } from "../../kernel-helpers/survey/columns.js";
import type { Table } from "../../kernel-helpers/survey/table.js";
import { expectClose } from "../support/expect-close.js";
import { faultsOf, tableOf } from "../support/faults-of.js";

const survey = `# machine: mill, line shaft
# read in the morning, by lamp light

station [in], angle [deg], diameter [in], remark
0.5, 0, 2.4374,
0.5, 90, 2 7/16, "light rust, filed"
# the key seat begins here
1.0, 0, -, not reached

1.0, 90, 2.4332 in,
`;
const wide = "station [in],diameter @ 0 deg [in],diameter @ 90° [in]\n1,2.43,2.44\n2,2.42,-\n";
const values = (table: Table, name: string): readonly number[] => column(table, name).values;

describe("readTable(bytes, options)", () => {
  const table = tableOf(survey);

  it("names each column, its unit and what it measures", () => {
    expect(table.columns.map(({ name, dimension, unit }) => [name, dimension, unit])).toEqual([
      ["station", "length", "inch"],
      ["angle", "angle", "degree"],
      ["diameter", "length", "inch"],
      ["remark", "text", undefined],
    ]);
    expect(table.columns[2]!.header).toBe("diameter [in]");
    expect(table.unitSystem).toBe("inch");
  });
  it("gives SI values: decimals, fractions, cells that repeat their unit; NaN for -", () => {
    expect(values(table, "diameter")).toEqual([2.4374, 2.4375, Number.NaN, 2.4332].map((x) => x * 0.0254));
    expect(values(table, "angle")).toEqual([0, Math.PI / 2, 0, Math.PI / 2]);
    expect(values(table, "diameter")[3]).toBe(inch(2.4332).si);
  });
  it("keeps every cell as written, and the line of every row", () => {
    expect(column(table, "diameter").text).toEqual(["2.4374", "2 7/16", "-", "2.4332 in"]);
    expect(column(table, "remark").text).toEqual(["", "light rust, filed", "not reached", ""]);
    expect(column(table, "remark").values).toEqual([]);
    expect(table.lines).toEqual([5, 6, 8, 10]);
    expect(table.rowCount).toBe(4);
  });
  it("keeps remarks wherever they stand, with key, value and line", () => {
    expect(table.remarks).toEqual([
      { key: "machine", value: "mill, line shaft", line: 1 },
      { key: "", value: "read in the morning, by lamp light", line: 2 },
      { key: "", value: "the key seat begins here", line: 7 },
    ]);
  });
  it("takes no clock time or address for a key, and no capitals as part of one", () => {
    const remarks = tableOf("#Read at 10:30\n# see http://x\n#BY:A\n# Set on: 2 in\n#\nload [N]\n1").remarks;
    expect(remarks.map(({ key, value }) => [key, value])).toEqual([
      ["", "Read at 10:30"],
      ["", "see http://x"],
      ["by", "A"],
      ["set on", "2 in"],
      ["", ""],
    ]);
  });
  it("reads the wide form, one column an angle", () => {
    const table = tableOf(wide);
    expect(table.columns.map(({ name, angle }) => [name, angle])).toEqual([
      ["station", undefined],
      ["diameter", 0],
      ["diameter", Math.PI / 2],
    ]);
    expect(table.columns[2]!.values).toEqual([2.44 * 0.0254, Number.NaN]);
    expect(table.warnings).toEqual([]);
  });
  it("reads plain numbers, words and quantities of other kinds", () => {
    const table = tableOf(
      'repeat [-],box [text],pull [lbf],date,note\n1,"left, inner",120,3 May,"said ""so"""',
    );
    expect(values(table, "repeat")).toEqual([1]);
    expect(column(table, "box").text).toEqual(["left, inner"]);
    expectClose(values(table, "pull")[0]!, 533.786593, {
      rel: 1e-8,
      because: "120 × 4.4482216152605 N, 9 digits",
    });
    expect(column(table, "date").text).toEqual(["3 May"]);
    expect(column(table, "note").text).toEqual(['said "so"']);
    expect(table.unitSystem).toBeUndefined();
  });
  it("reads an inch sign as a unit, in headers and cells", () => {
    const table = tableOf('station ["],diameter [″]\n 2 7/16",2.4375"\n');
    expect(values(table, "station")).toEqual([2.4375 * 0.0254]);
    expect(values(table, "diameter")).toEqual([2.4375 * 0.0254]);
  });
  it("reads a cell in quotes with spaces round it", () => {
    expect(values(tableOf('station [in],diameter [in]\n "1" , "2.43" \n'), "diameter")).toEqual([
      2.43 * 0.0254,
    ]);
  });
  it("lets words at the end of a row be left out, and passes over blank rows and columns", () => {
    const table = tableOf("station [in],diameter [in],,remark,\n1,2.43\n,,,,\n   \n2,2.44,,worn,\n");
    expect(column(table, "remark").text).toEqual(["", "worn"]);
    expect(table.lines).toEqual([2, 5]);
    expect(table.columns).toHaveLength(3);
  });
  it("keeps a remark of several lines, and counts them", () => {
    const table = tableOf('station [in],remark,diameter [in]\n1,"rust\nand pits",2.43\n2,,2.43');
    expect(column(table, "remark").text).toEqual(["rust\nand pits", ""]);
    expect(table.lines).toEqual([2, 4]);
  });
  it("reads headers that a spreadsheet has wrapped", () => {
    expect(tableOf('station [in],"diameter\n@ 90 deg [in]"\n1,2.43').columns[1]!.header).toBe(
      "diameter @ 90 deg [in]",
    );
  });
  it("keeps a # that stands inside a row", () => {
    expect(column(tableOf("station [in],diameter [in],remark\n1,2.43,rust # 3 #"), "remark").text).toEqual([
      "rust # 3 #",
    ]);
  });
  it("takes columns of one name at angles a degree apart", () => {
    const table = tableOf("station [in],bore @ 90 deg [in],bore @ 91 deg [in]\n1,2.43,2.44");
    expect(table.columns.map(({ angle }) => angle)).toEqual([undefined, Math.PI / 2, (91 * Math.PI) / 180]);
  });
  it("takes one reading", () => {
    expect(tableOf("station [in],diameter [in]\n1,2.43").rowCount).toBe(1);
  });
  it("takes a byte order mark, CRLF, old Macintosh line ends and UTF-16, all alike", () => {
    const text = "# by: ä\nstation [in],diameter [in],remark\n1,2.4332,ü\n\n2,2.4331,\n";
    const plain = tableOf(text);
    const utf16 = Buffer.from(`\ufeff${text}`, "utf16le");
    for (const content of [
      `\ufeff${text}`,
      text.replaceAll("\n", "\r\n"),
      text.replaceAll("\n", "\r"),
      utf16,
      Buffer.from(utf16).swap16(),
    ])
      expect({ ...tableOf(content), sha256: "" }).toEqual({ ...plain, sha256: "" });
    expect(plain.lines).toEqual([3, 5]);
  });
  it("hashes the bytes as they are", () => {
    const text = "station [in],diameter [in]\n1,2.43\n";
    // Source: GNU coreutils sha256sum of the same bytes.
    expect(tableOf(text).sha256).toBe("ac81518ba01a3aa66117b1b33857d3c0c59745c5186d65c33a659e7b1314d8f8");
    expect(tableOf(`\ufeff${text}`).sha256).not.toBe(tableOf(text).sha256);
  });
  it("leaves the bytes as they were and freezes what it returns", () => {
    const bytes = new TextEncoder().encode(survey);
    const copy = bytes.slice();
    const table = tableOf(bytes);
    expect(bytes).toEqual(copy);
    for (const part of [
      table,
      table.columns,
      table.columns[0],
      table.columns[0]!.values,
      table.remarks,
      table.lines,
    ])
      expect(Object.isFrozen(part)).toBe(true);
  });
});

describe("readTable(bytes, options): repeats, order and angles", () => {
  it("takes a place twice where a column, the row's remark or a remark line says repeat", () => {
    const rows = "1,2.43\n1,2.44\n";
    expect(tableOf(`# repeats: each read twice\nstation [in],diameter [in]\n${rows}`).rowCount).toBe(2);
    expect(tableOf("station [in],repeat [-],diameter [in]\n1,1,2.43\n1,2,2.44").rowCount).toBe(2);
    expect(tableOf("station [in],diameter [in],remark\n1,2.43,\n1,2.44,repeat: slipped").rowCount).toBe(2);
  });
  it("takes a station at two angles, or under two labels, for two places", () => {
    expect(tableOf("station [in],box [text],diameter [in]\n1,left,2.43\n1,right,2.44").warnings).toEqual([]);
    expect(tableOf("station [in],angle [deg],diameter [in]\n1,0,2.43\n1,90,2.44").warnings).toEqual([]);
  });
  it("warns of stations out of order and keeps the order of the file", () => {
    const table = tableOf("station [in],diameter [in]\n1,2.43\n20,2.43\n3,2.43\n4,2.43\n0.5,2.43\n6,2.43");
    expect(table.warnings).toEqual([
      "Stations out of order: line 3 (20 in), line 6 (0.5 in). They are kept as written; a digit may be wrong, or the shaft was walked back.",
    ]);
    expect(values(table, "station").map((x) => Math.round(x / 0.00254) / 10)).toEqual([1, 20, 3, 4, 0.5, 6]);
  });
  it("warns of a first station that does not fit those behind it", () => {
    expect(tableOf("station [in],diameter [in]\n10,2.43\n2,2.43\n3,2.43\n4,2.43").warnings[0]).toMatch(
      /out of order: line 2 \(10 in\)\./,
    );
  });
  it("does not warn of a walk from the far end, nor of one walk an angle", () => {
    const walk = (angle: number): string => [1, 2, 3].map((x) => `${x},${angle},2.43\n`).join("");
    expect(tableOf("station [in],diameter [in]\n3,2.43\n2,2.43\n1,2.43").warnings).toEqual([]);
    expect(tableOf(`station [in],angle [deg],diameter [in]\n${walk(0)}${walk(90)}`).warnings).toEqual([]);
  });
  it("warns of a station that lacks an angle most others have, unless - says so", () => {
    const rows = "1,0,2.43\n1,90,2.43\n2,0,2.43\n3,0,2.43\n3,90,2.43\n";
    expect(tableOf(`station [in],angle [deg],diameter [in]\n${rows}`).warnings).toEqual([
      "Stations not read at an angle that most others have: 2 in at 90° (line 4).",
    ]);
    expect(tableOf(`station [in],angle [deg],diameter [in]\n${rows}2,90,-`).warnings).toEqual([
      "Stations out of order: line 6 (3 in). They are kept as written; a digit may be wrong, or the shaft was walked back.",
    ]);
  });
  it("does not warn of an angle that only half of the stations have", () => {
    const rows = "1,0,2.43\n1,90,2.43\n2,0,2.43\n3,0,2.43\n3,90,2.43\n4,0,2.43";
    expect(tableOf(`station [in],angle [deg],diameter [in]\n${rows}`).warnings).toEqual([]);
  });
  it("takes a diameter far from the others when it is said to be checked", () => {
    const rows = "1,2.43,\n2,2.43,\n3,9.5,flange";
    expect(faultsOf(`station [in],diameter [in],remark\n${rows}`)).toHaveLength(1);
    expect(faultsOf(`station [in],diameter [in],remark\n${rows} not checked`)).toHaveLength(1);
    expect(tableOf(`station [in],diameter [in],remark\n${rows} - checked`).rowCount).toBe(3);
    expect(tableOf(`# checked: line 5\nstation [in],diameter [in],remark\n${rows}`).rowCount).toBe(3);
  });
});

describe("readTable(bytes, options): properties", () => {
  // Tenths of a thousandth up to 9.9999 in, near one another so that none is doubted.
  const readings = fc.array(fc.integer({ min: 20000, max: 50000 }), { minLength: 1, maxLength: 30 });

  it("gives the same SI values for the same readings in inches and millimetres", () => {
    fc.assert(
      fc.property(readings, (tenths) => {
        const inches = tenths.map((t, i) => `${i / 4},${t / 10000}`).join("\n");
        const millimetres = tenths.map((t, i) => `${(i / 4) * 25.4},${(t * 254) / 100000}`).join("\n");
        const a = tableOf(`station [in],diameter [in]\n${inches}`);
        const b = tableOf(`station [mm],diameter [mm]\n${millimetres}`);
        expect([a.unitSystem, b.unitSystem]).toEqual(["inch", "metric"]);
        for (const [i, value] of values(a, "diameter").entries())
          expectClose(values(b, "diameter")[i]!, value, {
            rel: 7e-16,
            because: "on either side the reading, its unit and their product are rounded, 2⁻⁵³ each",
          });
      }),
    );
  });
  it("does not mind the order of the columns", () => {
    const cells = readings.map((tenths) =>
      tenths.map((t, i) => [`${i}`, `${t / 10000}`, i % 3 === 0 ? "rust, pits" : ""]),
    );
    const headers = ["station [in]", "diameter [in]", "remark"];
    const order = fc.shuffledSubarray([0, 1, 2], { minLength: 3 });
    fc.assert(
      fc.property(cells, order, (rows, order) => {
        const write = (columns: readonly number[]): string =>
          [headers, ...rows].map((row) => columns.map((c) => `"${row[c]}"`).join()).join("\n");
        const [plain, turned] = [tableOf(write([0, 1, 2])), tableOf(write(order))];
        for (const name of ["station", "diameter", "remark"])
          expect(column(turned, name)).toEqual(column(plain, name));
        expect(turned.lines).toEqual(plain.lines);
      }),
    );
  });
  // Anything that can be typed on one line, without spaces at its ends.
  const words = fc
    .string({ unit: "grapheme", maxLength: 40 })
    .map((text) => text.replace(/\p{Cc}/gu, "").trim());

  it("gives back the text of a row's remark and of a remark line", () => {
    fc.assert(
      fc.property(words, words, (inRow, inLine) => {
        const table = tableOf(
          `# note: ${inLine}\nstation [in],remark,diameter [in]\n1,"${inRow.replaceAll('"', '""')}",2.43\n`,
        );
        expect(column(table, "remark").text).toEqual([inRow]);
        expect(table.remarks).toEqual([{ key: "note", value: inLine, line: 1 }]);
      }),
    );
  });
});
