import { describe, expect, it } from "vitest";
import { partingLines } from "../../../kernel-helpers/bearing/index.js";
import { degree } from "../../../kernel-helpers/quantity/index.js";
import { expectClose } from "../../support/expect-close.js";

const found = (load: number, turning: string): number[] =>
  partingLines(degree(load), turning).map((angle) => angle.in("degree"));
const inDegrees = { rel: 1e-12, abs: 1e-9, because: "sums of a few doubles" };

describe("partingLines(load, turning)", () => {
  it("lie a quarter turn to either side of a load straight down or straight up, whichever way it turns", () => {
    for (const load of [0, 180])
      for (const turning of ["clockwise", "counter-clockwise"]) {
        const [before, after] = found(load, turning);
        expectClose(before!, -90, inDegrees);
        expectClose(after!, 90, inDegrees);
      }
  });
  it("by hand: pressed towards 299°, turning clockwise, the left line at 270° comes 29° after the load", () => {
    const [before, after] = found(299, "clockwise");
    expectClose(after!, 29, inDegrees);
    expectClose(before!, -151, inDegrees);
  });
  it("turning the other way, what came after the load comes before it", () => {
    for (const load of [20, 121, 256, 299]) {
      const [one, other] = [found(load, "clockwise"), found(load, "counter-clockwise")];
      expectClose(one[0]!, -other[1]!, inDegrees);
      expectClose(one[1]!, -other[0]!, inDegrees);
    }
  });
  it("refuses another word for the turning", () => {
    expect(() => found(0, "left")).toThrow(
      'partingLines: turning must be one of clockwise, counter-clockwise, got "left"',
    );
  });
});
