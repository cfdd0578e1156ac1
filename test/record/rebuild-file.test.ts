import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { RebuildFileFaults, readRebuildFile } from "../../kernel-helpers/record/rebuild-file.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const good = {
  schema: 1,
  title: "Test shaft",
  units: "inch",
  machine: { rotation: "clockwise" },
  dimensions: { "shaft nominal": "2 7/16 in" },
  parts: { shaft: { title: "shaft", expansion: "6.5e-6 1/°F" } },
  instruments: { mic: { title: "micrometer", resolution: "0.0001 in", repeatability: "0.0002 in" } },
};

function read(content: unknown): ReturnType<typeof readRebuildFile> {
  const text = typeof content === "string" ? content : JSON.stringify(content, null, 2);
  return readRebuildFile(join(temporaryFolder({ "rebuild.json": text }), "rebuild.json"));
}

function faultsOf(content: unknown): readonly string[] {
  try {
    read(content);
  } catch (error) {
    if (error instanceof RebuildFileFaults) return error.faults;
    throw error;
  }
  throw new Error("no fault was found");
}

describe("readRebuildFile(path)", () => {
  it("gives the machine's facts with quantities made", () => {
    const facts = read(good);
    expect(facts.title).toBe("Test shaft");
    expect(facts.invented).toBe(false);
    expect(facts.dimensions["shaft nominal"]!.in("inch")).toBe(2.4375);
    expect(facts.instruments.mic!.repeatability.in("thou")).toBe(0.2);
    expect(facts.machine).toEqual([{ label: "rotation", value: "clockwise" }]);
  });
  it("reports all faults of the form at once, each with its place", () => {
    const faults = faultsOf({
      schema: 2,
      units: "imperial",
      instruments: { mic: { title: "", resolution: "0.0001 in", colour: "red" } },
    });
    const text = faults.join("\n");
    expect(text).toMatch(/the file: "title" is missing/);
    expect(text).toMatch(/schema: found 2, expected 1/);
    expect(text).toMatch(/units: found "imperial", expected one of inch, metric/);
    expect(text).toMatch(/instruments\.mic: "repeatability" is missing/);
    expect(text).toMatch(/instruments\.mic: "colour" is not known here; known are title, resolution/);
    expect(text).toMatch(/instruments\.mic\.title: nothing stands here/);
    expect(faults).toHaveLength(6);
  });
  it("reports all quantities that cannot be read at once, each with its place", () => {
    const faults = faultsOf({
      ...good,
      dimensions: { bore: "2,5 in", length: "3 lb", stroke: "12" },
      instruments: { mic: { title: "micrometer", resolution: "0.0001", repeatability: "0.0002 in" } },
    });
    const text = faults.join("\n");
    expect(text).toMatch(/dimensions\.bore: .*comma/);
    expect(text).toMatch(/dimensions\.length: .*lb measures a mass, but a length was expected/);
    expect(text).toMatch(/dimensions\.stroke: .*has no unit/);
    expect(text).toMatch(/instruments\.mic: .*0\.0001/);
    expect(faults).toHaveLength(4);
  });
  it("names the line where the file is no JSON", () => {
    expect(faultsOf('{\n  "schema": 1,\n  "title": oops\n}').join()).toMatch(/not valid JSON/);
  });
});
