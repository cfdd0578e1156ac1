import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import {
  bytesOf,
  type Files,
  leaveOut,
  leftOutSentences,
  type PrivateName,
  readLeftOut,
  textOf,
  writeLeftOut,
} from "../../../kernel-helpers/record/bundle/index.js";
import { tableWithout } from "../../../kernel-helpers/record/bundle/table-without.js";
import { searchFor } from "../../../kernel-helpers/record/bundle/text-search.js";
import { readTable } from "../../../kernel-helpers/survey/index.js";

const table = `# who: Quillwright
# private: the owner must not know
station [in], diameter [in], price [-], remark
1, 2.4375, 120, "seen by
Quillwright, twice"
2, 2.4370, 130,
# checked: line 6
3, 2.1000, 140, Private - ask first
`;

const notebook = {
  nbformat: 4,
  nbformat_minor: 5,
  metadata: {},
  cells: [
    { cell_type: "markdown", id: "intro", metadata: {}, source: "Measured with Quillwright." },
    {
      cell_type: "code",
      id: "cost",
      metadata: {},
      execution_count: 1,
      source: ['rebuild.table("t").column(', '"price")'],
      outputs: [
        { output_type: "stream", name: "stdout", text: ["seen by\n", "Quillwright, twice"] },
        { output_type: "stream", name: "stdout", text: "2.4375" },
      ],
    },
  ],
};

const files: Files = new Map([
  [
    "rebuild.json",
    bytesOf(
      '{"schema":1,"title":"T","units":"inch","machine":{"Owner":"Mill & Sons","what":"a shaft"},"words":{"driven by":"shaft"}}',
    ),
  ],
  ["tables/t.csv", bytesOf(table)],
  ["tables/other.csv", bytesOf("a [in]\r\n1\r\n")],
  ["sheets/01-t.ipynb", bytesOf(JSON.stringify(notebook))],
  ["sheets/02-u.ipynb", bytesOf(JSON.stringify({ ...notebook, cells: [] }))],
  ["out/01-t.ipynb", bytesOf(JSON.stringify(notebook))],
  [
    "record/01-t.json",
    bytesOf(
      '{"schema":2,"inputs":{"tables/t.csv":"x"},"published":{"a":"bought of Mill &amp; Sons","b":2.4375}}',
    ),
  ],
  ["record/02-u.json", bytesOf('{"schema":2,"inputs":{"tables/t.csv":"x"},"published":{}}')],
  ["record/inputs/t.0123456789ab.csv", bytesOf(table)],
]);

const any = (...names: string[]): readonly PrivateName[] => names.map((name) => ({ section: "any", name }));
const sha = (path: string): string => createHash("sha256").update(files.get(path)!).digest("hex");

describe("tableWithout(text, private)", () => {
  it("takes out columns, remarks and what is marked private, and keeps the number of every line", () => {
    const { text, parts, texts } = tableWithout(table, { columns: ["price", "remark"], remarks: ["who"] });
    expect(text.split("\n")).toEqual([
      '# left out: the remark "who"',
      "# left out: a remark marked private",
      "station [in], diameter [in]",
      "1, 2.4375",
      "",
      "2, 2.4370",
      "# checked: line 6",
      "3, 2.1000",
      '# left out: the column "price" (3 entries)',
      '# left out: the column "remark" (2 entries)',
      "",
    ]);
    expect(parts.map(({ count }) => count)).toEqual([1, 1, 3, 2]);
    expect(texts).toContain("seen by\nQuillwright, twice");
  });

  it("leaves a table that the reader takes, with the same readings", () => {
    const options = { name: "t", file: "t.csv" };
    const before = readTable(bytesOf(table.replace("2.1000", "2.4360")), options);
    const without = tableWithout(table.replace("2.1000", "2.4360"), {
      columns: ["price", "remark"],
      remarks: [],
    });
    const after = readTable(bytesOf(without.text), options);
    expect(after.lines).toEqual(before.lines);
    expect(after.columns.slice(0, 2).map(({ values }) => [...values])).toEqual(
      before.columns.slice(0, 2).map(({ values }) => [...values]),
    );
  });

  it("gives back a table without anything private as it was, to the byte", () => {
    const text = "\uFEFF# a: b\r\na [in],b [in]\r\n\r\n1,2\r\n";
    expect(tableWithout(text, { columns: ["c"], remarks: ["d"] })).toEqual({ text, parts: [], texts: [] });
  });

  it("knows a column at several angles, whatever its capitals and spaces", () => {
    const wide = "station [in], Price @ 0 deg [-], Price @ 90 deg [-]\n1, 2, 3\n";
    expect(tableWithout(wide, { columns: ["PRICE "], remarks: [] }).text).toMatch(/^station \[in\]\n1\n/);
  });

  it("refuses what cannot be taken apart, rather than share it", () => {
    expect(() => tableWithout('a [in], by\n"1, AB\n', { columns: ["by"], remarks: [] })).toThrow(
      /tableWithout/,
    );
  });
});

describe("searchFor(texts)", () => {
  it("finds whole words only, whatever capitals, line ends and entities", () => {
    const search = searchFor(["light rust", "A & B", "12.5", "x"]);
    expect(search.tooShort).toBe(1);
    for (const text of ["Light\n rust!", "a &amp; b", "at 12.5 in"])
      expect(search.standsIn(text), text).toBe(true);
    for (const text of ["light rusty", "112.5", "x"]) expect(search.standsIn(text), text).toBe(false);
  });

  it("takes signs of patterns as they are", () => {
    const search = searchFor(["(a+b)*", "[c]"]);
    expect(search.standsIn("see (a+b)* there")).toBe(true);
    expect(search.standsIn("aab")).toBe(false);
  });
});

describe("leaveOut(files, names)", () => {
  const shared = leaveOut(files, any("price", "remark", "who", "owner"));
  const text = (path: string): string => textOf(shared.files.get(path)!);

  it("leaves nothing of it in any file but those of people, and names these", () => {
    for (const [path, content] of shared.files) {
      if (path.startsWith("sheets/") || path === "out/01-t.ipynb") continue;
      expect(textOf(content), path).not.toMatch(/Quillwright|Mill|ask first|owner must/);
    }
    expect(shared.stillNamed).toEqual(["out/01-t.ipynb, cell intro", "sheets/01-t.ipynb, cell intro"]);
  });

  it("replaces the outputs that show it, and no others", () => {
    const outputs = JSON.parse(text("out/01-t.ipynb")).cells[1].outputs;
    expect(outputs[0].data["text/plain"]).toMatch(/^Left out/);
    expect(outputs[1].text).toBe("2.4375");
  });

  it("replaces texts of a record, and no number", () => {
    expect(JSON.parse(text("record/01-t.json")).published).toEqual({ a: "(left out)", b: 2.4375 });
  });

  it("says of each file what is gone, how many, and the hash of the whole file", () => {
    const { leftOut } = shared;
    expect(leftOut.files.map(({ file }) => file)).toEqual([
      "out/01-t.ipynb",
      "rebuild.json",
      "record/01-t.json",
      "record/inputs/t.0123456789ab.csv",
      "tables/t.csv",
    ]);
    for (const { file, sha256 } of leftOut.files) expect(sha256).toBe(sha(file));
    expect(shared.files.has("record/inputs/t.0123456789ab.csv")).toBe(false);
    expect(shared.files.get("tables/other.csv")).toEqual(files.get("tables/other.csv"));
  });

  it("says which sheets cannot be run again, and which may come to other results", () => {
    expect(shared.leftOut.cannotRun).toEqual([{ sheet: "01-t", asksFor: '"price"' }]);
    expect(shared.leftOut.mayDiffer).toEqual(["02-u"]);
    const said = leftOutSentences(shared.leftOut).join("\n");
    expect(said).toMatch(/^Left out of rebuild\.json: the machine fact "Owner" \(1 entry\)\.$/m);
    expect(said).toMatch(/^Left out of tables\/t\.csv: .*the column "price" \(3 entries\)/m);
    expect(said).toMatch(/01-t asks for "price", which was left out: it cannot be run again/);
    expect(said).toMatch(/02-u read a file that is not whole here/);
  });

  it("leaves out what is marked private without being asked", () => {
    const { leftOut } = leaveOut(files, []);
    expect(leftOut.files.map(({ file }) => file)).toContain("tables/t.csv");
  });

  it("refuses a name that is nowhere, for it may be a slip of the pen; lists what there is", () => {
    expect(() => leaveOut(files, any("prise"))).toThrow(
      /a name "prise" .* columns a, station, diameter, price, remark/,
    );
    expect(() => leaveOut(files, [{ section: "words", name: "price" }])).toThrow(
      /a word "price" .* driven by/,
    );
    expect(leaveOut(files, any("prise"), ["prise"]).leftOut.files).toEqual(leaveOut(files, []).leftOut.files);
  });
});

describe("readLeftOut(files)", () => {
  it("reads what writeLeftOut wrote, and nothing else", () => {
    const { leftOut } = leaveOut(files, any("who"));
    expect(readLeftOut(new Map([["left-out.json", writeLeftOut(leftOut)]]))).toEqual(leftOut);
    expect(readLeftOut(new Map())).toBeUndefined();
    expect(() => readLeftOut(new Map([["left-out.json", bytesOf("[]")]]))).toThrow(/readLeftOut/);
  });
});
