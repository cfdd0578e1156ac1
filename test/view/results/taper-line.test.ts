import { describe, expect, it } from "vitest";
import { inch, measured, quantityFromSi } from "../../../kernel-helpers/quantity/index.js";
import { bowAt, taperLine } from "../../../kernel-helpers/view/results/taper-line.js";
import { expectClose } from "../../support/expect-close.js";
import { sampleTaper } from "../../support/sample-results.js";

describe("taperLine(fit)", () => {
  // Textbook: with n readings of standard uncertainty u, the line's variance at x is u²(1/n + (x − x̄)²/Sxx).
  const u = 2e-6;
  const x = [0, 1, 2, 3, 4, 5].map((i) => i * 0.0254);
  const mean = x.reduce((a, b) => a + b) / x.length;
  const spread = x.reduce((sum, xi) => sum + (xi - mean) ** 2, 0);
  const textbook = (at: number): number => u * Math.sqrt(1 / x.length + (at - mean) ** 2 / spread);
  const metres = (si: number) => quantityFromSi("length", si);
  const end = (at: number) => ({
    station: metres(at),
    diameter: measured(metres(0.05 + 0.05 * at), metres(textbook(at))),
  });
  const fit = {
    ...sampleTaper(),
    smallEnd: end(x[0]!),
    largeEnd: end(x[5]!),
    taper: measured(0.05, u / Math.sqrt(spread)),
  };

  it.each([0, 0.2, 0.5, 0.8, 1])("has the textbook's uncertainty at share %s of the length", (t) => {
    const line = taperLine(fit);
    expectClose(line.uncertainty(t), textbook(line.station(t)), { rel: 1e-9, because: "same algebra" });
  });

  it("is least uncertain in the middle", () => {
    const { uncertainty } = taperLine(fit);
    expect(uncertainty(0.5)).toBeLessThan(uncertainty(0));
    expect(uncertainty(0.5)).toBeLessThan(uncertainty(1));
  });

  it("runs from end to end, also where the diameter falls with the station", () => {
    const line = taperLine({ ...fit, smallEnd: fit.largeEnd, largeEnd: fit.smallEnd });
    expectClose(line.station(1), 0, { abs: 1e-15, because: "exact" });
    expectClose(line.diameter(0), 0.05 + 0.05 * 5 * 0.0254, { rel: 1e-12, because: "exact" });
    expectClose(line.uncertainty(0.5), textbook(mean), { rel: 1e-9, because: "same algebra" });
  });
});

describe("bowAt(bow, t)", () => {
  it("stands the bow above the ends in the middle", () => {
    const bow = inch(0.001).si;
    expectClose(bowAt(bow, 0.5) - bowAt(bow, 0), bow, { rel: 1e-12, because: "definition" });
    expectClose(bowAt(bow, 0), bowAt(bow, 1), { rel: 1e-12, because: "symmetry" });
  });

  it("is as much above the line as below it", () => {
    // Simpson's rule is exact for a parabola.
    const mean = (bowAt(1, 0) + 4 * bowAt(1, 0.5) + bowAt(1, 1)) / 6;
    expectClose(mean, 0, { abs: 1e-15, because: "exact" });
  });
});
