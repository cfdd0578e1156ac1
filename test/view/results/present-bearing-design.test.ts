import { describe, expect, it } from "vitest";
import {
  boxCooling,
  boxDesign,
  chooseBabbitt,
  clearanceChoice,
  runningPrediction,
} from "../../../kernel-helpers/bearing/index.js";
import { oil, runningFitByThumb } from "../../../kernel-helpers/handbook/index.js";
import {
  degC,
  degF,
  inch,
  lbf,
  measured,
  mm,
  newton,
  quantity,
  rpm,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";

const box = {
  name: "far box",
  diameter: inch(2.5),
  length: inch(8),
  speed: rpm(110),
  oil: oil("ISO VG 100"),
  boxSurface: quantity(250, "inch2"),
  cooling: boxCooling("still air"),
  roughness: thou(0.06),
  diametralClearance: measured(thou(4), thou(0.3)),
  load: measured(lbf(800), lbf(60)),
};
const metric = {
  ...box,
  diameter: mm(60),
  length: mm(90),
  diametralClearance: measured(mm(0.09), mm(0.008)),
  load: measured(newton(2400), newton(200)),
};
const textOf = (result: unknown): string => renderText(presentResult(result)!).replace(/\s+/g, " ");

describe("the look of what the boxes ask", () => {
  it("shows load, pressure and pv in the units of the shop, with uncertainty", () => {
    const inInch = textOf(boxDesign([box], runningPrediction([box], degF(65)), "drop"));
    expect(inInch).toMatch(/40(\.0)? ± 5\.9 psi/);
    expect(inInch).toContain("2880 psi·ft/min");
    const inMetric = textOf(boxDesign([metric], runningPrediction([metric], degC(18)), "ring"));
    expect(inMetric).toMatch(/MPa·m\/s/);
    expect(inMetric).not.toMatch(/psi|°F/);
  });
  it("names the alloy, what is against the others, and every source", () => {
    const text = textOf(chooseBabbitt(boxDesign([box], runningPrediction([box], degF(65)), "drop")));
    expect(text).toMatch(/yes: ASTM B23 alloy 2/i);
    expect(text).toMatch(/72\.5 to 76\.5 % lead/);
    expect(text).toMatch(/Machinery's Handbook/);
    expect(text).toMatch(/common practice, no source/);
  });
  it("lays the clearances side by side and says DIAMETRAL", () => {
    const options = { room: degF(65), stopAt: degF(150), rules: [runningFitByThumb(inch(2.5))] };
    const text = textOf(clearanceChoice([box], options));
    expect(text).toMatch(/DIAMETRAL clearance will do/);
    expect(text).toMatch(/rule of thumb/);
    expect(text).toMatch(/oil film/);
  });
});
