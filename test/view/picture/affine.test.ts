import { describe, expect, it } from "vitest";
import { applyTo, compose, identity, parseTransform } from "../../../kernel-helpers/view/picture/affine.js";
import { expectClose } from "../../support/expect-close.js";

function expectPoint(actual: readonly [number, number], x: number, y: number): void {
  for (const [got, wanted] of [
    [actual[0], x],
    [actual[1], y],
  ] as const)
    expectClose(got, wanted, { rel: 1e-12, abs: 1e-12, because: "rounding of sine and cosine" });
}

describe("parseTransform(attribute)", () => {
  it("leaves everything in place without an attribute", () => {
    expect(parseTransform(null)).toEqual(identity);
  });
  it("applies the last written first, as SVG does", () => {
    expectPoint(applyTo(parseTransform("translate(10, 20) scale(2)"), 1, 1), 12, 22);
    expectPoint(applyTo(parseTransform("scale(2)translate(10,20)"), 1, 1), 22, 42);
  });
  it("turns clockwise on the screen, by degrees", () => {
    expectPoint(applyTo(parseTransform("rotate(90)"), 1, 0), 0, 1);
  });
  it("turns about a centre, which stays", () => {
    expectPoint(applyTo(parseTransform("rotate(-37,5,8)"), 5, 8), 5, 8);
    expectPoint(applyTo(parseTransform("rotate(90 5 8)"), 6, 8), 5, 9);
  });
  it("takes one number of translate and scale as SVG does", () => {
    expectPoint(applyTo(parseTransform("translate(3)"), 1, 1), 4, 1);
    expectPoint(applyTo(parseTransform("scale(3)"), 1, 2), 3, 6);
  });
  it("reads a matrix column by column", () => {
    expectPoint(applyTo(parseTransform("matrix(1 2 3 4 5 6)"), 10, 100), 315, 426);
  });
});

describe("compose(outer, inner)", () => {
  it("is one after the other", () => {
    const [turn, move] = [parseTransform("rotate(30)"), parseTransform("translate(4,-7)")];
    const [x, y] = applyTo(move, 2, 3);
    expectPoint(applyTo(compose(turn, move), 2, 3), ...applyTo(turn, x, y));
  });
});
