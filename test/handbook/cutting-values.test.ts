import { describe, expect, it } from "vitest";
import { cuttingForceConstants, cuttingSpeed, leastChip } from "../../kernel-helpers/handbook/index.js";
import { expectClose } from "../support/expect-close.js";

describe("cuttingSpeed(metal, tool)", () => {
  it("is Jones's for machine steel, grey iron and hard bronze", () => {
    const range = (of: string) => {
      const { low, high } = cuttingSpeed(of, "high-speed steel");
      return [low, high].map((v) => Math.round(v.in("footPerMinute")));
    };
    expect(range("steel")).toEqual([45, 65]);
    expect(range("grey iron class 20")).toEqual([40, 50]);
    expect(range("bronze C93200")).toEqual([35, 80]);
  });
  it("is faster with carbide, and names what it does not know", () => {
    expect(cuttingSpeed("steel", "carbide").low.si).toBeGreaterThan(
      cuttingSpeed("steel", "high-speed steel").high.si,
    );
    expect(() => cuttingSpeed("bronze C93200", "carbide")).toThrow(
      "no published speed here for carbide in bronze C93200",
    );
    expect(() => cuttingSpeed("mithril", "carbide")).toThrow(/must be one of .*got "mithril"/);
    expect(() => cuttingSpeed("steel", "stone" as never)).toThrow('got "stone"');
  });
});

describe("cuttingForceConstants(metal)", () => {
  // A public table of specific cutting force [kN/mm²] by feed [mm] at a lead angle of 45° (read): the chip is f·sin 45°.
  const feeds = [0.16, 0.25, 0.4, 0.63, 1.0, 1.6];
  it.each([
    ["steel", [2.6, 2.4, 2.2, 2.05, 1.9, 1.8]],
    ["steel 4140", [4.35, 3.8, 3.3, 2.9, 2.5, 2.2]],
    ["grey iron class 20", [2.05, 1.8, 1.6, 1.45, 1.3, 1.15]],
  ] as const)("of %s gives the published force for every feed", (of, published) => {
    const { kc11, mc } = cuttingForceConstants(of);
    feeds.forEach((feed, i) => {
      const kc = (kc11 * (feed * Math.SQRT1_2) ** -mc) / 1000;
      expectClose(kc, published[i]!, {
        rel: 0.105,
        because: "printed to 0.05, at most 10 % off at the thickest chip",
      });
    });
  });
  it("names the metal it does not know", () => {
    expect(() => cuttingForceConstants("Babbitt 2")).toThrow("none known here for Babbitt 2");
  });
});

describe("leastChip(tool)", () => {
  it("is thinner for a stoned edge than for an insert's", () => {
    expect(leastChip("high-speed steel").si).toBeLessThan(leastChip("carbide").si);
    expect(() => leastChip("file" as never)).toThrow('got "file"');
  });
});
