import { describe, expect, it } from "vitest";
import type { TableFault } from "../../kernel-helpers/survey/table-faults.js";
import { errorOf, faultsOf, tableOf } from "../support/faults-of.js";

/** A table with one diameter as given, on line 4. */
const withDiameter = (cell: string): string =>
  `station [in],diameter [in],remark\n1,2.4332,\n2,2.4331,\n3,${cell},\n4,2.4330,\n`;

/** The one fault of a table; its message names everything in it. */
function onlyFault(content: string | Uint8Array): TableFault {
  const error = errorOf(content);
  expect(error.faults).toHaveLength(1);
  const fault = error.faults[0]!;
  expect(fault.file).toBe("survey.csv");
  const parts = [fault.file, fault.column, fault.found, fault.expected, fault.mend];
  for (const part of fault.line === 0 ? parts : [...parts, `line ${fault.line}`])
    expect(error.message).toContain(part);
  return fault;
}

/** The fault of a cell on line 4 of the diameters. */
function faultOfCell(cell: string, found: string = `"${cell}"`): TableFault {
  const fault = onlyFault(withDiameter(cell));
  expect(fault).toMatchObject({ line: 4, column: "diameter [in]", columnNumber: 2, found });
  return fault;
}

describe("readTable(bytes, options): faults of the header", () => {
  it("a header without unit", () => {
    expect(onlyFault("station [in],diameter\n1,2.43")).toEqual({
      file: "survey.csv",
      line: 1,
      column: "diameter",
      columnNumber: 2,
      found: '"diameter"',
      expected: "a unit in square brackets behind the name",
      mend: 'write e.g. "diameter [in]"; [-] for a plain number, [text] for words',
    });
  });
  it("a unit in other brackets, or in none: shows how it is meant to be", () => {
    for (const header of ["diameter (mm)", "diameter mm", "diameter_mm"])
      expect(onlyFault(`station [mm],${header}\n1,61.8`).mend).toMatch(/write e\.g\. "diameter \[mm\]"/);
  });
  it("an unknown unit", () => {
    const fault = onlyFault("station [in],diameter [inchs]\n1,2.43");
    expect(fault).toMatchObject({ line: 1, column: "diameter [inchs]", columnNumber: 2 });
    expect(fault.expected).toMatch(/a unit that is known: .*mm.*in.*thou/);
  });
  it("a unit in the wrong case", () => {
    expect(onlyFault("station [in],diameter [IN]\n1,2.43").mend).toBe("capitals count: write [in]");
  });
  it("a unit that measures something else than the name says", () => {
    const fault = onlyFault("station [deg],diameter [in]\n1,2.43");
    expect(fault.expected).toBe("a length, for this is called station");
    expect(fault.mend).toMatch(/° measures an angle/);
    expect(onlyFault("station [in],bore [lb]\n1,2.43").expected).toMatch(/a length/);
    expect(onlyFault("station [in],angle [in]\n1,2.43").expected).toMatch(/an angle/);
  });
  it("two headers alike", () => {
    const fault = onlyFault("station [in],diameter [in],Diameter [in]\n1,2.43,2.43");
    expect(fault).toMatchObject({
      line: 1,
      column: "Diameter [in]",
      columnNumber: 3,
      found: 'a second "diameter"',
    });
    expect(fault.expected).toMatch(/column 2 is called so/);
    expect(fault.mend).toMatch(/"diameter @ 90 deg \[in\]"/);
  });
  it("two headers alike at one angle, however it is written", () => {
    const fault = onlyFault("station [in],diameter @ 90 deg [in],diameter @ 0.25 turn [in]\n1,2.43,2.43");
    expect(fault.columnNumber).toBe(3);
    expect(onlyFault("station [in],bore @ 0 deg [in],bore @ 360 deg [in]\n1,2.43,2.43").columnNumber).toBe(3);
  });
  it("an angle without unit, or none, behind the @", () => {
    for (const header of ["diameter @ 90 [in]", "diameter @ [in]", "diameter @ 90 deg @ 0 deg [in]"]) {
      const fault = onlyFault(`station [in],${header}\n1,2.43`);
      expect(fault.expected).toBe("an angle with its unit behind the @");
      expect(fault.mend).toBe('write e.g. "diameter @ 90 deg [in]"');
    }
  });
  it("angles in a column and in the headers", () => {
    const fault = onlyFault("station [in],angle [deg],diameter @ 90 deg [in]\n1,0,2.43");
    expect(fault).toMatchObject({ column: "angle [deg]", columnNumber: 2, expected: "the angle said once" });
  });
  it("a unit without a name", () => {
    expect(onlyFault("station [in],[in]\n1,2.43")).toMatchObject({
      column: "[in]",
      expected: "a name before the unit",
    });
  });
  it("a table in both inch and mm", () => {
    const fault = onlyFault("station [mm],diameter [in]\n1,2.43");
    expect(fault).toMatchObject({ line: 1, column: "diameter [in]", columnNumber: 2 });
    expect(fault.found).toBe('lengths in "station [mm]" and in "diameter [in]"');
    expect(fault.expected).toMatch(/inch or metric lengths in one table, not both/);
  });
  it("diameters side by side in inch and mm, and nothing that only follows from it", () => {
    const fault = onlyFault(
      "station [in],diameter @ 0 deg [in],diameter @ 90 deg [mm]\n1,2.43,2.43\n2,2.43,2.42",
    );
    expect(fault).toMatchObject({ line: 1, column: "diameter @ 90 deg [mm]", columnNumber: 3 });
  });
  it("a header without unit whose instrument is named: asked for the unit only", () => {
    const fault = onlyFault("# instrument station: tape\nstation,diameter [in]\n1,2.43");
    expect(fault).toMatchObject({ line: 2, column: "station", columnNumber: 1 });
  });
  it("a header only of spaces", () => {
    expect(onlyFault(" , \n1,2.43")).toMatchObject({ line: 1, found: "only empty cells" });
  });
  it("no header above the readings", () => {
    expect(onlyFault("1,2.43\n2,2.43")).toMatchObject({
      line: 1,
      found: "numbers",
      mend: "write a header above the first row",
    });
  });
  it("an empty table: no bytes, blank lines only, remarks only, a header only", () => {
    expect(onlyFault("")).toMatchObject({ line: 0, found: "nothing" });
    expect(onlyFault("\n \n")).toMatchObject({ line: 0, found: "nothing" });
    expect(onlyFault("# by: A\n")).toMatchObject({ line: 0, found: "remarks only" });
    expect(onlyFault("# by: A\nstation [in],diameter [in]\n")).toMatchObject({
      line: 2,
      found: "a header and no rows",
      mend: "write the readings below it",
    });
  });
});

describe("readTable(bytes, options): faults of cells", () => {
  it("the letter O for a zero", () => {
    expect(errorOf(withDiameter("2.5O3")).message).toBe(
      'survey.csv has a fault:\nsurvey.csv line 4, column "diameter [in]": found "2.5O3", expected a number [in]; it holds the letter O for a zero: write 2.503',
    );
  });
  it("other text in a number column", () => {
    expect(faultOfCell("about 2.4").mend).toBe("correct it, or write - if no reading was taken");
    expect(faultOfCell("2.43?").expected).toBe("a number [in]");
  });
  it("NaN and Infinity in words", () => {
    for (const cell of ["NaN", "nan", "Infinity", "-inf"])
      expect(faultOfCell(cell).mend).toBe("correct it, or write - if no reading was taken");
  });
  it("a number too large to be held", () => {
    faultOfCell("1e400");
    expect(onlyFault(withDiameter("9".repeat(400))).mend).toMatch(/too large/);
  });
  it("a comma as decimal mark, in quotes", () => {
    expect(onlyFault(withDiameter('"2,5"'))).toMatchObject({
      line: 4,
      column: "diameter [in]",
      found: '"2,5"',
      mend: "it holds a comma: write 2.5 with a decimal point",
    });
  });
  it("a comma that may be a thousands mark", () => {
    expect(onlyFault(withDiameter('"2,433"')).mend).toMatch(/thousands or decimals: write 2433 or 2\.433/);
    expect(onlyFault(withDiameter('"1,234,567.5"')).mend).toMatch(/1234567\.5/);
  });
  it("a comma as decimal mark without quotes, which makes a cell too many", () => {
    const fault = onlyFault("station [in],diameter [in]\n1,2.43\n2,2,43");
    expect(fault).toMatchObject({ line: 3, column: "", found: "3 cells", expected: "2, as in the header" });
    expect(fault.mend).toMatch(/comma meant as decimal or thousands mark\? Write a decimal point/);
  });
  it("a file parted by semicolons, with all its decimal commas", () => {
    const faults = faultsOf("station [mm];diameter [mm]\n1;61,82\n2;61,83");
    expect(faults.map(({ line, found }) => [line, found])).toEqual([
      [1, "columns parted by semicolons"],
      [2, '"61,82"'],
      [3, '"61,83"'],
    ]);
    expect(faults[0]!.expected).toBe("columns parted by commas, numbers with a decimal point");
  });
  it("a file parted by tabs", () => {
    expect(onlyFault("station [mm]\tdiameter [mm]\n1\t61.82")).toMatchObject({
      line: 1,
      found: "columns parted by tabs",
    });
  });
  it("a missing angle", () => {
    expect(onlyFault("station [in],angle [deg],diameter [in]\n1,0,2.43\n1,,2.43")).toMatchObject({
      line: 3,
      column: "angle [deg]",
      columnNumber: 2,
      found: "no angle",
      expected: "a number [deg]",
      mend: "write it, or - if no angle was taken",
    });
  });
  it("a missing reading", () => {
    expect(faultOfCell("", "no reading").mend).toBe("write it, or - if no reading was taken");
  });
  it("a missing station, also when written -", () => {
    for (const cell of ["", "-"])
      expect(onlyFault(`station [in],diameter [in]\n1,2.43\n${cell},2.43`)).toMatchObject({
        line: 3,
        column: "station [in]",
        mend: "a row without station cannot be placed: write it, or delete the row",
      });
  });
  it("a cell with another unit than its column", () => {
    expect(faultOfCell("61.8 mm").mend).toBe("it has another unit than its column: write 2.4330709 (in)");
  });
  it("a reading ten times too large, or too small", () => {
    const fault = faultOfCell("24.332");
    expect(fault.expected).toBe("a diameter like the others of this name (median 2.4331 in)");
    expect(fault.mend).toMatch(
      /has the decimal point slipped\? Write 2\.4332; .*"checked".*"# checked: line 4"/,
    );
    expect(faultOfCell("0.24332").mend).toMatch(/slipped\? Write 2\.4332;/);
    expect(faultOfCell("24332").mend).toMatch(/slipped\? Write 2\.4332;/);
  });
  it("a reading in millimetres among inches, and the other way round", () => {
    expect(faultOfCell("61.8").mend).toMatch(/was it read in mm\? Write 2\.4330709;/);
    const metric = "station [mm],bore [mm]\n1,61.8\n2,61.8\n3,2.433\n";
    expect(onlyFault(metric).mend).toMatch(/was it read in inches\? Write 61\.7982;/);
  });
  it("a doubtful reading that no usual slip explains", () => {
    expect(faultOfCell("9.7").mend).toMatch(/^if it is right, write "checked"/);
  });
  it("a slipped reading in the wide form, against all angles together", () => {
    expect(
      onlyFault("station [in],diameter @ 0 deg [in],diameter @ 90 deg [in]\n1,2.43,24.3\n2,2.43,2.43"),
    ).toMatchObject({ line: 2, column: "diameter @ 90 deg [in]", columnNumber: 3, found: '"24.3"' });
  });
  it("a diameter of zero or less", () => {
    expect(faultOfCell("-2.4332").expected).toBe("a diameter greater than 0");
    expect(faultOfCell("0").expected).toBe("a diameter greater than 0");
  });
  it("does not judge lengths that are no diameters by their median", () => {
    expect(faultsOf("station [in],depth [in],bore [in]\n1,0.01,2.4\n2,0,2.4\n3,-4,x")).toHaveLength(1);
  });
  it("a character that cannot be seen", () => {
    expect(onlyFault(withDiameter("2.4\u200b332")).mend).toMatch(/cannot be seen/);
  });
  it("a cell below no header", () => {
    expect(onlyFault("station [in],diameter [in],\n1,2.43,\n2,2.43,5")).toMatchObject({
      line: 3,
      column: "",
      columnNumber: 3,
      found: '"5"',
      expected: "nothing: the column has no header",
    });
  });
  it("checks numbers below a header that is itself at fault", () => {
    expect(
      faultsOf("station [in],diameter\n1,2.43\n2,2.43\n3,2.4O").map(({ line, found }) => [line, found]),
    ).toEqual([
      [1, '"diameter"'],
      [4, '"2.4O"'],
    ]);
  });
});

describe("readTable(bytes, options): faults of rows", () => {
  it("too few cells", () => {
    expect(onlyFault("station [in],angle [deg],diameter [in]\n1,0,2.43\n2,0")).toMatchObject({
      line: 3,
      column: "",
      found: "2 cells",
      expected: "3, as in the header",
    });
  });
  it("too many cells, for a comma in words", () => {
    const fault = onlyFault("station [in],diameter [in],remark\n1,2.43,rust, pits");
    expect(fault).toMatchObject({ line: 2, found: "4 cells", expected: "3, as in the header" });
    expect(fault.mend).toMatch(/stand in quotes: "light rust, filed"/);
  });
  it("a station twice, in the long form with its angle and in the wide form", () => {
    expect(
      onlyFault("station [in],angle [deg],diameter [in]\n1,0,2.43\n1,90,2.43\n1.0,90,2.44"),
    ).toMatchObject({
      line: 4,
      column: "station [in]",
      columnNumber: 1,
      found: "station 1 in at 90 deg again",
      expected: "each place once (it stands on line 3 too)",
    });
    const fault = onlyFault("station [in],diameter @ 0 deg [in]\n1,2.43\n1,2.44");
    expect(fault.found).toBe("station 1 in again");
    expect(fault.mend).toMatch(/write "repeat" in the row's remark, or add a column "repeat \[-\]"/);
  });
  it("but not rows whose station or angle is not known", () => {
    const found = faultsOf("station [in],diameter [in]\n-,2.43\n-,2.43").map(({ found }) => found);
    expect(found).toEqual(['"-"', '"-"']);
    expect(tableOf("station [in],angle [deg],diameter [in]\n1,-,2.43\n1,-,2.44").rowCount).toBe(2);
  });
  it("a repeat with the same number twice", () => {
    expect(onlyFault("station [in],repeat [-],diameter [in]\n1,1,2.43\n1,1,2.44").line).toBe(3);
  });
  it("a checked line that is no row", () => {
    expect(onlyFault("# checked: line 9\nstation [in],diameter [in]\n1,2.43")).toMatchObject({
      line: 1,
      found: '"checked: line 9"',
      expected: "the line of a row, counted in this file",
    });
  });
});

describe("readTable(bytes, options): quotes left open", () => {
  const header = "station [in],diameter [in],remark\n";
  const lines = (content: string): number[] => faultsOf(content).map(({ line }) => line);

  it("names the line where the quote opens, and still reads the rows below", () => {
    const faults = faultsOf(`${header}1,2.43,\n2,"2.43,\n3,2.4O,\n4,2.43,`);
    expect(faults.map(({ line, found }) => [line, found])).toEqual([
      [3, 'a quote (") that is not closed on this line'],
      [4, '"2.4O"'],
    ]);
    expect(faults[0]!.mend).toBe("close it, or delete it");
  });
  it("finds one that a later quote seems to close", () => {
    expect(lines(`${header}1,2.43,"rust\n2,2.43,pits"\n3,2.43,`)).toEqual([2]);
    expect(lines(`${header}1,2.43,"rust\n2,2.43,"pits"\n3,2.43,`)).toEqual([2]);
  });
  it("finds several, below remarks and blank lines too", () => {
    expect(lines(`# a "b\n\n${header}1,"2.43,\n# c\n\n2,2.43,"rust\n3,2.43,"x"\n`)).toEqual([4, 7]);
  });
  it("finds one closed by a quote in the middle of words, below which less than a row stands", () => {
    expect(lines(`${header}1,2.43,"rust\nand "pits" too\n2,2.43,`)).toEqual([2, 3, 3]);
  });
  it("finds one below a remark of several lines in the same row", () => {
    const notes = "station [in],remark,diameter [in],note\n";
    expect(lines(`${notes}1,"a\nb",2.43,"c\n2,,2.43,d"\n3,,2.43,`)).toEqual([3]);
  });
  it("finds one in the header", () => {
    expect(lines('station [in],"diameter [in]\n1,2.43\n')[0]).toBe(1);
  });
});

describe("readTable(bytes, options): faults of the bytes", () => {
  const bytes = (text: string): Uint8Array => Buffer.from(text, "latin1");

  it("bytes that are no UTF-8, with their lines, and the other faults too", () => {
    const faults = faultsOf(
      bytes("station [in],diameter [in],remark\r\n1,2.43,12 \xb0C\r\n2,2.43,\r\n3,2.4O,\xfc\r\n"),
    );
    expect(faults.map(({ line, found }) => [line, found])).toEqual([
      [2, 'a byte that is no UTF-8 (in Windows-1252 it would be "°")'],
      [4, 'a byte that is no UTF-8 (in Windows-1252 it would be "ü")'],
      [4, '"2.4O"'],
    ]);
    expect(faults[0]!.mend).toMatch(/save the file as UTF-8; it was probably saved as Windows-1252/);
  });
  it("UTF-16 without a byte order mark", () => {
    for (const content of [
      Buffer.from("station [in]\n1", "utf16le"),
      Buffer.from("station [in]\n1", "utf16le").swap16(),
    ])
      expect(onlyFault(content)).toMatchObject({ line: 0, column: "", mend: "save the file as UTF-8" });
  });
  it("UTF-16 that is cut short", () => {
    const content = Buffer.from("\ufeffstation [in]\n1", "utf16le").subarray(0, -1);
    expect(onlyFault(content).expected).toBe("text in UTF-16LE, as its mark says");
  });
  it("control characters, with their lines", () => {
    expect(onlyFault(bytes("station [in],remark,diameter [in]\n1,a,2.43\n2,b\x07\x08,2.43"))).toMatchObject({
      line: 3,
      found: "a control character (U+0007)",
    });
  });
});

describe("TableFaults", () => {
  it("holds all faults in the order of the file, and its message the first twenty", () => {
    const rows = Array.from({ length: 30 }, (_, i) => `${i},x,`).join("\n");
    const error = errorOf(`station [in],diameter [in],remark\n${rows}`);
    expect(error.name).toBe("TableFaults");
    expect(error.faults).toHaveLength(30);
    expect(error.faults.map(({ line }) => line)).toEqual(Array.from({ length: 30 }, (_, i) => i + 2));
    const lines = error.message.split("\n");
    expect(lines[0]).toBe("survey.csv has 30 faults:");
    expect(lines).toHaveLength(22);
    expect(lines[20]).toMatch(/line 21/);
    expect(lines[21]).toBe("and 10 more");
  });
  it("tells faults of the bytes, header, cells, rows and remarks at once", () => {
    const text = "# instrument: mc\nstation [in],diameter\n1,2.4O\n1,2.43\n2,2.43,5";
    expect(faultsOf(text, { instruments: {} }).map(({ line }) => line)).toEqual([1, 2, 3, 4, 5]);
  });
  it("shortens a long cell and puts it on one line", () => {
    const fault = onlyFault(withDiameter(`"${"much ".repeat(40)}"`));
    expect(fault.found.length).toBeLessThan(65);
  });
});
