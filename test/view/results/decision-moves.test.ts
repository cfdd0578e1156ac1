import { describe, expect, it } from "vitest";
import { degC, degF, deltaC, deltaF, inch, measured, thou } from "../../../kernel-helpers/quantity/index.js";
import { figureMoves, type ShownGrounds } from "../../../kernel-helpers/view/results/decision-moves.js";
import type { ShownFigure } from "../../../kernel-helpers/view/results/figure-text.js";

const grounds = (figure: ShownFigure): ShownGrounds => ({
  options: [{ name: "warm it", figures: { figure }, breaks: [] }],
  limits: {},
});
const by = (before: ShownFigure, after: ShownFigure): string | undefined =>
  figureMoves(grounds(before), grounds(after))[0]?.by;

describe("figureMoves(then, now)", () => {
  it.each<[string, ShownFigure, ShownFigure, string]>([
    ["a temperature in degrees", degF(200), degF(210), "+10 °F"],
    ["a temperature that falls", degC(95), degC(90), "−5 °C"],
    ["a difference of temperatures", deltaF(54), deltaF(60), "+6 °F"],
    ["one in Celsius", deltaC(30), deltaC(28), "−2 °C"],
    ["a length in the small unit of its system", inch(2.4319), inch(2.4329), "+1 thou"],
    [
      "an uncertain one against its uncertainty",
      measured(inch(2.431), thou(0.5)),
      measured(inch(2.432), thou(0.5)),
      "+1 thou, 2 times its standard uncertainty",
    ],
    ["a number", 3, 5, "+2"],
    ["words in no way", "no", "yes", ""],
  ])("tells by how much %s moved", (_what, before, after, told) => {
    expect(by(before, after)).toBe(told);
  });

  it("tells nothing of what moved by less than the arithmetic of two platforms differs", () => {
    expect(figureMoves(grounds(1), grounds(1 + 1e-12))).toEqual([]);
    expect(figureMoves(grounds(1), grounds(1 + 1e-8))).toHaveLength(1);
  });
});
