import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openRebuild } from "../../kernel-helpers/record/index.js";
import { readRebuildFile } from "../../kernel-helpers/record/rebuild-file.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const folderWith = (sections: object): string =>
  temporaryFolder({
    "rebuild.json": JSON.stringify({ schema: 1, title: "Test shaft", units: "inch", ...sections }),
  });

describe("rebuild.quantity(name, kind)", () => {
  const rebuild = openRebuild({
    folder: folderWith({
      quantities: {
        power: "12 hp",
        "shaft speed": "110 rpm",
        "shop temperature": "65 °F",
        "jack stroke": "5'-6\"",
      },
    }),
  });
  it("gives a quantity of rebuild.json in its unit", () => {
    expect(rebuild.quantity("power", "power").in("hp")).toBe(12);
    expect(rebuild.quantity("shaft speed", "rotational speed").toString()).toBe("110 rpm");
    expect(rebuild.quantity("jack stroke", "length").toString()).toBe("5.5 ft");
  });
  it("gives undefined for one that may be missing, and an error that lists what is given for one that may not", () => {
    expect(rebuild.quantityIfGiven("mass", "mass")).toBeUndefined();
    expect(() => rebuild.quantity("mass", "mass")).toThrow(
      'quantity: rebuild.json gives no "mass"; add it under "quantities" with its unit; given are power, shaft speed, shop temperature, jack stroke',
    );
  });
  it("says what was found where it is of another kind", () => {
    expect(() => rebuild.quantity("power", "force")).toThrow(
      'quantity: "power" of rebuild.json is a power, but a force was expected: 12 hp',
    );
    expect(() => rebuild.quantityIfGiven("shop temperature", "temperature difference")).toThrow(
      /is a temperature/,
    );
  });
});

describe("rebuild.temperature(name)", () => {
  const rebuild = openRebuild({
    folder: folderWith({
      quantities: { "shop temperature": "65 °F", oven: "180 degC", furnace: "700 K", power: "12 hp" },
    }),
  });
  it("gives a temperature on whatever scale it was written", () => {
    expect(rebuild.temperature("shop temperature").toString()).toBe("65 °F");
    expect(rebuild.temperature("oven").in("degC")).toBe(180);
    expect(rebuild.temperature("furnace").in("kelvin")).toBe(700);
    expect(rebuild.temperatureIfGiven("bath")).toBeUndefined();
  });
  it("refuses what is none", () => {
    expect(() => rebuild.temperature("power")).toThrow(/is a power, but a temperature was expected: 12 hp/);
    expect(() => rebuild.temperature("bath")).toThrow(/gives no "bath"/);
  });
});

describe("rebuild.word(name)", () => {
  const rebuild = openRebuild({ folder: folderWith({ words: { "driven by": "belt" } }) });
  it("gives a word of rebuild.json", () => {
    expect(rebuild.word("driven by")).toBe("belt");
    expect(rebuild.wordIfGiven("oil")).toBeUndefined();
    expect(() => rebuild.word("oil")).toThrow(
      'word: rebuild.json gives no "oil"; add it under "words"; given are driven by',
    );
  });
});

describe("readRebuildFile(path), quantities", () => {
  it("reports every one that cannot be read, each with its place", () => {
    const path = join(
      folderWith({ quantities: { power: "12", mass: "180 stonez", speed: "110 RPM" }, words: { oil: "" } }),
      "rebuild.json",
    );
    expect(() => readRebuildFile(path)).toThrow(/words\.oil: nothing stands here/);
    const faulty = join(folderWith({ quantities: { power: "12", mass: "180 stonez" } }), "rebuild.json");
    expect(() => readRebuildFile(faulty)).toThrow(
      /quantities\.power: "12" has no unit[\s\S]*quantities\.mass: "180 stonez": "stonez" is not a known unit/,
    );
  });
});
