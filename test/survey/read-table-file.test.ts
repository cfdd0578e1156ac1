import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readTableFile } from "../../kernel-helpers/survey/read-table-file.js";
import { tableOf } from "../support/faults-of.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const text = "station [in],diameter [in]\n1,2.43\n";

describe("readTableFile(path, options)", () => {
  it("reads what readTable reads, named after the file", () => {
    const folder = temporaryFolder({ "line-shaft.csv": text });
    expect(readTableFile(join(folder, "line-shaft.csv"))).toEqual(
      tableOf(text, { name: "line-shaft", file: "line-shaft.csv" }),
    );
  });
  it("takes the name and file it is given", () => {
    const folder = temporaryFolder({ "a.csv": text });
    const table = readTableFile(join(folder, "a.csv"), { name: "survey", file: "tables/a.csv" });
    expect([table.name, table.file]).toEqual(["survey", "tables/a.csv"]);
  });
  it("names the file in faults, and one that is not there", () => {
    const folder = temporaryFolder({ "a.csv": "station\n1" });
    expect(() => readTableFile(join(folder, "a.csv"))).toThrow(
      /^a\.csv has a fault:\na\.csv line 1, column "station"/,
    );
    expect(() => readTableFile(join(folder, "b.csv"))).toThrow(
      /readTableFile: there is no such file, got .*b\.csv/,
    );
    expect(() => readTableFile(folder)).toThrow(/the file cannot be read/);
  });
});
