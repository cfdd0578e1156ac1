import { describe, expect, it } from "vitest";
import { inch, lbf, mm, newton, quantity, rpm, thou } from "../../../kernel-helpers/quantity/index.js";
import {
  cuttingForce,
  growthBySpringing,
  longestFreeLength,
  spindleSpeed,
  turnedRoughness,
} from "../../../kernel-helpers/shaft/index.js";
import { divideStock } from "../../../kernel-helpers/shaft/turning/divide-stock.js";
import { speedNotAbove } from "../../../kernel-helpers/shaft/turning/spindle-speed.js";
import { expectClose } from "../../support/expect-close.js";

describe("turnedRoughness(feed, noseRadius)", () => {
  it("is the published Ra = 0.0321 f²/r", () => {
    // G. Boothroyd & W. A. Knight, Fundamentals of Machining and Machine Tools (from memory).
    expectClose(turnedRoughness(mm(0.2), mm(0.8)).ra.in("mm"), (0.0321 * 0.2 ** 2) / 0.8, {
      rel: 2e-3,
      because: "printed to three digits",
    });
  });
  it("is what a row of parabolas has when it is measured point by point", () => {
    const [f, r, n] = [0.2, 0.8, 20000];
    const heights = Array.from({ length: n }, (_, i) => ((i + 0.5) / n - 0.5) ** 2 * (f ** 2 / (2 * r)));
    const mean = heights.reduce((a, b) => a + b, 0) / n;
    const ra = heights.reduce((a, b) => a + Math.abs(b - mean), 0) / n;
    const { rz, ra: found } = turnedRoughness(mm(f), mm(r));
    expectClose(found.in("mm"), ra, { rel: 1e-6, because: "20000 points" });
    expectClose(rz.in("mm"), Math.max(...heights), { rel: 1e-3, because: "20000 points" });
    // The circle itself, not the parabola: r − √(r² − f²/4).
    expectClose(rz.in("mm"), r - Math.sqrt(r ** 2 - f ** 2 / 4), {
      rel: 5e-3,
      because: "parabola for circle",
    });
  });
  it("refuses a feed that would cut a thread", () => {
    expect(() => turnedRoughness(mm(1), mm(0.8))).toThrow(
      "feed must be below the nose radius, 0.8 mm, got 1 mm",
    );
    expect(() => turnedRoughness(mm(0), mm(0.8))).toThrow("feed must be above 0");
  });
});

describe("cuttingForce(metal, { depth, feed, noseRadius })", () => {
  it("is k_c times the area of the cut", () => {
    const cut = { depth: mm(2), feed: mm(0.2), noseRadius: mm(0.4) };
    const { tangential, thickness, width } = cuttingForce("steel 1040", cut);
    expectClose(thickness.in("mm") * width.in("mm"), 2 * 0.2, { rel: 1e-9, because: "the chip's area" });
    const kc = 2220 * thickness.in("mm") ** -0.14;
    expectClose(tangential.in("newton"), kc * 0.4, { rel: 1e-9, because: "Kienzle's law" });
  });
  it("nears the straight edge's b = a/sin κ, h = f·sin κ for a nose without radius", () => {
    const { thickness, width } = cuttingForce("steel", {
      depth: mm(3),
      feed: mm(0.2),
      noseRadius: mm(0.001),
    });
    const kappa = (75 * Math.PI) / 180;
    expectClose(width.in("mm"), 3 / Math.sin(kappa), { rel: 1e-3, because: "radius of 1/3000 of the depth" });
    expectClose(thickness.in("mm"), 0.2 * Math.sin(kappa), {
      rel: 1e-3,
      because: "radius of 1/3000 of the depth",
    });
  });
  it("does not jump where the nose alone no longer cuts", () => {
    const at = (depth: number) =>
      cuttingForce("steel", { depth: mm(depth), feed: mm(0.1), noseRadius: mm(0.8) }).tangential.si;
    const edge = 0.8 * (1 - Math.cos((75 * Math.PI) / 180));
    expectClose(at(edge + 1e-9), at(edge), { rel: 1e-6, because: "both forms meet" });
    expect(at(edge * 1.1)).toBeGreaterThan(at(edge));
  });
  it("names what is wrong", () => {
    expect(() => cuttingForce("steel", { depth: mm(0), feed: mm(0.1), noseRadius: mm(1) })).toThrow(
      "depth must be above 0, got 0 mm",
    );
    expect(() => cuttingForce("wood", { depth: mm(1), feed: mm(0.1), noseRadius: mm(1) })).toThrow(
      /got "wood"/,
    );
  });
});

describe("growthBySpringing(work, at)", () => {
  // Shigley & Nisbett, 9th edition, example 7-5 (read): 1 in steel shaft, 31 in span, 35 lbf at 7 in: δ11 = 2.061e-4 in/lbf.
  const work = { diameter: inch(1), betweenCentres: inch(31), modulus: quantity(30e6, "psi"), force: lbf(1) };
  it("is twice the textbook's influence coefficients", () => {
    expectClose(growthBySpringing(work, inch(7)).in("inch"), 2 * 2.061e-4, {
      rel: 2e-3,
      because: "four digits, E 30 Mpsi",
    });
    expectClose(growthBySpringing(work, inch(20)).in("inch"), 2 * 3.534e-4, {
      rel: 2e-3,
      because: "four digits",
    });
  });
  it("is nothing at the centres, the same from either, most in the middle", () => {
    expect(growthBySpringing(work, inch(0)).si).toBe(0);
    expectClose(growthBySpringing(work, inch(5)).si, growthBySpringing(work, inch(26)).si, {
      rel: 1e-9,
      because: "symmetry",
    });
    expect(growthBySpringing(work, inch(15.5)).si).toBeGreaterThan(growthBySpringing(work, inch(14)).si);
  });
  it("is what longestFreeLength allows, in the middle of that length", () => {
    const free = longestFreeLength(work, thou(0.5));
    const there = { ...work, betweenCentres: free };
    expectClose(growthBySpringing(there, free.times(0.5)).in("thou"), 0.5, {
      rel: 1e-9,
      because: "the inverse",
    });
  });
  it("refuses a tool beside the work and a force below 0", () => {
    expect(() => growthBySpringing(work, inch(32))).toThrow(
      "the tool must be between the centres, 0 to 31 in, got 32 in",
    );
    expect(() => growthBySpringing({ ...work, force: newton(-1) }, inch(3))).toThrow(
      "force must be 0 or more",
    );
    expect(() => longestFreeLength(work, thou(0))).toThrow("what is allowed must be above 0");
  });
});

describe("spindleSpeed(speed, diameter)", () => {
  it("is the shop's 3.82 v/d", () => {
    expectClose(spindleSpeed(quantity(60, "footPerMinute"), inch(2.5)).in("rpm"), (3.82 * 60) / 2.5, {
      rel: 1e-3,
      because: "12/π rounded to 3.82",
    });
  });
  it("takes the lathe's fastest that is not above", () => {
    const speeds = [28, 44, 70, 110].map(rpm);
    expect(speedNotAbove(speeds, rpm(70))).toBe(speeds[2]);
    expect(speedNotAbove(speeds, rpm(69.9))).toBe(speeds[1]);
    expect(speedNotAbove(speeds, rpm(20))).toBeUndefined();
  });
});

describe("divideStock({ total, deepest, finishing, least })", () => {
  const um = 1e-6;
  const cuts = (total: number) =>
    divideStock({ total: total * um, deepest: 250 * um, finishing: 50 * um, least: 20 * um });
  it("takes off what is there, no more and no less, in cuts the tool can take", () => {
    for (const total of [20, 39, 40, 90, 101, 119, 120, 200, 350, 351, 1000, 5000]) {
      const list = cuts(total);
      expectClose(
        list.reduce((sum, { depth }) => sum + depth, 0),
        total * um,
        { rel: 1e-9, because: "metal is metal" },
      );
      for (const { depth } of list) {
        expect(depth).toBeGreaterThanOrEqual(20 * um * (1 - 1e-9));
        expect(depth).toBeLessThanOrEqual(250 * um * (1 + 1e-9));
      }
      expect(list.at(-1)!.name).toBe("finishing");
      if (list.length > 1) {
        expect(list.at(-2)!.name).toBe("measuring");
        expectClose(list.at(-2)!.depth, list.at(-1)!.depth, {
          rel: 1e-9,
          because: "so that both spring alike",
        });
      }
    }
  });
  it("refuses to rub", () => {
    expect(() => cuts(10)).toThrow(
      /only 10 µm \(0\.394 thou\) on radius are there to be cut.*by file, emery or grinding/,
    );
    expect(() => divideStock({ total: um, deepest: um, finishing: um, least: 20 * um })).toThrow(
      "is thinner than the tool cuts",
    );
    expect(() => divideStock({ total: 1, deepest: 50 * um, finishing: 50 * um, least: 20 * um })).toThrow(
      "must be above the finishing cut",
    );
  });
});
