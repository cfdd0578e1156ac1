import { describe, expect, it } from "vitest";
import {
  alloyChosen,
  boxCooling,
  boxDesign,
  chooseBabbitt,
  type ForetoldBox,
  runningPrediction,
} from "../../../kernel-helpers/bearing/index.js";
import { babbitt, oil } from "../../../kernel-helpers/handbook/index.js";
import {
  degF,
  inch,
  lbf,
  measured,
  quantity,
  rpm,
  setUnitSystem,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import { expectClose } from "../../support/expect-close.js";
import { readReference } from "../../support/read-reference.js";

const air = { boxSurface: quantity(250, "inch2"), cooling: boxCooling("moving air"), roughness: thou(0.06) };
const box: ForetoldBox = {
  name: "far box",
  diameter: inch(2.5),
  length: inch(8),
  speed: rpm(110),
  oil: oil("ISO VG 100"),
  diametralClearance: measured(thou(4), thou(0.3)),
  load: measured(lbf(800), lbf(60)),
  ...air,
};
const designOf = (change: Partial<ForetoldBox> = {}, supply = "drop") => {
  const boxes = [{ ...box, ...change }];
  return boxDesign(boxes, runningPrediction(boxes, degF(65)), supply);
};
const choiceOf = (change: Partial<ForetoldBox> = {}, supply = "drop") =>
  chooseBabbitt(designOf(change, supply));
const standing = (choice: ReturnType<typeof choiceOf>, number: number) =>
  choice.ranked.find(({ alloy }) => alloy.number === number)!;
const outcome = (choice: ReturnType<typeof choiceOf>, number: number, name: string) =>
  standing(choice, number).criteria.find((one) => one.name === name)!.outcome;

describe("boxDesign(boxes, prediction, supply)", () => {
  it("gives pressure, speed and pv as they are defined", () => {
    const [found] = designOf().boxes;
    const exact = { rel: 1e-12, because: "elementary" };
    expectClose(found!.pressure.value.in("psi"), 40, exact);
    expectClose(found!.pressure.standardUncertainty.in("psi"), 3, exact);
    expectClose(found!.speed.in("footPerMinute"), (Math.PI * 2.5 * 110) / 12, exact);
    expectClose(found!.pressureTimesSpeed, found!.pressure.value.si * found!.speed.si, exact);
    expectClose(found!.lengthOverDiameter, 3.2, exact);
    expect(found!.highestPressure.value.si).toBeGreaterThan(found!.pressure.value.si);
  });
  it("refuses a supply that is none, and a box of which nothing is foretold", () => {
    expect(() => designOf({}, "bucket")).toThrow(
      /supply must be one of hand, drop, wick, ring, bath, forced/,
    );
    expect(() =>
      boxDesign([{ ...box, name: "third box" }], runningPrediction([box], degF(65)), "ring"),
    ).toThrow(/nothing is foretold of "third box", only of "far box"/);
  });
});

describe("chooseBabbitt(design)", () => {
  it("reads the strength straight between the standard's 68 and 212 °F", () => {
    // ASTM B23-00, table X1.1, as it stands in the reference file.
    const published = readReference("astm-b23-white-metal");
    const row = published.numbers("alloy").indexOf(2);
    const yieldAt = (name: string): number => published.numbers(name)[row]!;
    const design = designOf();
    const { filmTemperature, highestPressure } = design.boxes[0]!;
    const share = (filmTemperature.in("degF") - 68) / (212 - 68);
    const hot = yieldAt("yield68_psi") + share * (yieldAt("yield212_psi") - yieldAt("yield68_psi"));
    expectClose(standing(chooseBabbitt(design), 2).strength!.value, hot / highestPressure.value.in("psi"), {
      rel: 1e-9,
      because: "the same line; temperatures and pressures are rounded to their last digits",
    });
  });
  it("takes alloy 2 for a slow line shaft with drop oil: strong, no lead, scrapes", () => {
    expect(choiceOf().best).toBe(babbitt(2));
  });
  it("halves the strength when the load is doubled and the film stays as it is", () => {
    const design = designOf();
    const [one] = design.boxes;
    const twice = {
      ...one!,
      highestPressure: measured(
        one!.highestPressure.value.times(2),
        one!.highestPressure.standardUncertainty.times(2),
      ),
    };
    expectClose(
      standing(chooseBabbitt({ ...design, boxes: [twice] }), 3).strength!.value * 2,
      standing(chooseBabbitt(design), 3).strength!.value,
      { rel: 1e-12, because: "a quotient" },
    );
  });
  it("rejects by load the alloys that yield, the weaker first", () => {
    const design = designOf();
    const pressed = (psiHighest: number) =>
      chooseBabbitt({
        ...design,
        boxes: [
          {
            ...design.boxes[0]!,
            highestPressure: measured(quantity(psiHighest, "psi"), quantity(psiHighest / 20, "psi")),
          },
        ],
      });
    const weak = pressed(1500);
    expect(standing(weak, 8).standing).toBe("rejected");
    expect(standing(weak, 3).standing).toBe("would do");
    expect(pressed(20_000).best).toBeUndefined();
    expect(pressed(20_000).options.every(({ breaks }) => breaks.length > 0)).toBe(true);
  });
  it("holds old oil that stays against a lead base, and speed too", () => {
    expect(outcome(choiceOf({}, "ring"), 7, "oil that stays")).toBe("against");
    expect(outcome(choiceOf({}, "drop"), 7, "oil that stays")).toBe("good");
    const fast = { speed: rpm(1800), oil: oil("ISO VG 32"), boxSurface: quantity(3000, "inch2") };
    expect(outcome(choiceOf(fast, "forced"), 7, "speed")).toBe("against");
    expect(outcome(choiceOf(fast, "forced"), 2, "speed")).toBe("good");
  });
  it("rejects what rubs too hard where the oil may fail, and not where it does not", () => {
    const hard = {
      speed: rpm(1200),
      oil: oil("ISO VG 32"),
      boxSurface: quantity(3000, "inch2"),
      load: measured(lbf(2500), lbf(100)),
    };
    expect(outcome(choiceOf(hard, "hand"), 2, "rubbing")).toBe("fails");
    expect(outcome(choiceOf(hard, "ring"), 2, "rubbing")).toBe("good");
  });
  it("says of an alloy without tabled strength that it cannot tell", () => {
    const found = standing(choiceOf(), 15);
    expect(found.standing).toBe("cannot tell");
    expect(found.strength).toBeUndefined();
  });
  it("tells where each criterion comes from", () => {
    for (const { criteria } of choiceOf().ranked)
      for (const { source } of criteria) expect(source).toMatch(/ASTM B23|Machinery's Handbook|no source/);
  });
  it("tells heat in whole degrees, on the reader's scale", () => {
    const heat = (): string => {
      const one = choiceOf().ranked.find(({ alloy }) => alloy.number === 3)!;
      const { because, source } = one.criteria.find(({ name }) => name === "pouring heat")!;
      return `${because}; ${source}`;
    };
    expect(heat()).toMatch(/^poured at 915 °F: more dross.*hot above 850 °F/);
    setUnitSystem("metric");
    try {
      expect(heat()).toMatch(/^poured at 491 °C: more dross.*hot above 454 °C/);
    } finally {
      setUnitSystem(undefined);
    }
  });
  it("refuses no alloys, and a factor below 1", () => {
    expect(() => chooseBabbitt(designOf(), { alloys: [] })).toThrow(/at least one alloy/);
    expect(() => chooseBabbitt(designOf(), { demanded: 0.5 })).toThrow(/demanded must be 1 or more/);
  });
});

describe("alloyChosen(choice, name)", () => {
  it("finds the alloy, in any case, and lists the alloys for a name that is none", () => {
    expect(alloyChosen(choiceOf(), "astm b23 ALLOY 3")).toBe(babbitt(3));
    expect(() => alloyChosen(choiceOf(), "Babbitt")).toThrow(
      /must be one of "ASTM B23 alloy 2".*got "Babbitt"/,
    );
  });
});
