import { describe, expect, it } from "vitest";
import {
  boxCooling,
  clearanceChoice,
  type ForetoldBox,
  runningFilm,
  runningPrediction,
} from "../../../kernel-helpers/bearing/index.js";
import { oil, runningFitByThumb } from "../../../kernel-helpers/handbook/index.js";
import { degF, inch, lbf, measured, quantity, rpm, thou } from "../../../kernel-helpers/quantity/index.js";
import { expectClose } from "../../support/expect-close.js";

const box: ForetoldBox = {
  name: "far box",
  diameter: inch(2.5),
  length: inch(5),
  speed: rpm(900),
  oil: oil("ISO VG 46"),
  diametralClearance: measured(thou(5), thou(0.3)),
  load: measured(lbf(1500), lbf(100)),
  boxSurface: quantity(250, "inch2"),
  cooling: boxCooling("shaft-stirred air"),
  roughness: thou(0.1),
};
const room = degF(70);
const rules = [runningFitByThumb(inch(2.5))];
const choose = (change: Partial<ForetoldBox> = {}, stopAt = degF(170)) =>
  clearanceChoice([{ ...box, ...change }], { room, stopAt, rules });

const at = { diametralClearance: thou(5), load: lbf(1500), room };

describe("clearanceChoice(boxes, options)", () => {
  it("ends where a box would pass its stop temperature with 95 %", () => {
    const { film } = choose();
    expect(film!.lowBecause).toMatch(/may pass 170 °F/);
    const exact = { ...box, diametralClearance: measured(film!.low, thou(0)) };
    const { rise } = runningPrediction([exact], room).boxes[0]!;
    expectClose(room.in("degF") + (rise.value.si + 1.645 * rise.standardUncertainty.si) * 1.8, 170, {
      rel: 1e-3,
      because: "the end is halved twelve times",
    });
  });
  it("ends where the film gets as thin as 3 times the roughness", () => {
    // So well cooled that it is not the heat that ends it.
    const cooled = {
      boxSurface: quantity(5000, "inch2"),
      load: measured(lbf(3000), lbf(1)),
      roughness: thou(0.25),
    };
    const { film } = choose(cooled);
    expect(film!.lowBecause).toMatch(/thinner than 3 times the roughness/);
    const at = { ...box, ...cooled, diametralClearance: film!.low, load: cooled.load.value, room };
    expectClose(runningFilm(at).filmRatio, 3, { rel: 2e-3, because: "the end is halved twelve times" });
  });
  it("gives the chance that what is intended comes out within each range", () => {
    const { film } = choose();
    const edge = choose({ diametralClearance: measured(film!.high, thou(0.2)) });
    expectClose(edge.film!.chance, 0.5, {
      rel: 0.01,
      because: "half of a normal spread lies on either side",
    });
    expect(edge.verdict).toBe("cannot tell yet");
    expect(choose({ diametralClearance: measured(film!.low.times(0.9), thou(0.01)) }).verdict).toBe(
      "does not fit",
    );
    expect(choose().ranges.map(({ name }) => name)).toEqual(["rule of thumb", "oil film"]);
  });
  it("narrows as the stop temperature comes down, to none", () => {
    expect(choose({}, degF(150)).film!.low.si).toBeGreaterThan(choose().film!.low.si);
    const none = choose({}, degF(80));
    expect(none.film).toBeUndefined();
    expect(none.verdict).toBe("does not fit");
  });
  it("counts the oil that is given: says who is short of it, and where its film gets too thin", () => {
    const short = choose({ supply: quantity(0.001, "litrePerMinute"), load: measured(lbf(1500), lbf(1)) });
    const { film } = short;
    expect(film?.lowBecause ?? film?.highBecause ?? short.because).toMatch(/short of oil|At no clearance/);
    const nearly = choose({ supply: runningFilm({ ...box, ...at }).sideFlow.times(0.9) });
    expect(nearly.verdict).toBe("fits");
    expect(nearly.because).toMatch(/far box is short of oil, and no clearance mends that/);
    // Oil for everybody: not a word of it.
    expect(choose({ supply: quantity(9, "litrePerMinute") }).because).not.toMatch(/short/);
  });
  it("refuses boxes of two sizes, no boxes, and a stop below the room", () => {
    const options = { room, stopAt: degF(150), rules };
    expect(() => clearanceChoice([box, { ...box, name: "other", diameter: inch(3) }], options)).toThrow(
      /one size and one clearance/,
    );
    expect(() => clearanceChoice([], options)).toThrow(/at least one box/);
    expect(() => choose({}, degF(60))).toThrow(/stopAt must be above/);
  });
});
