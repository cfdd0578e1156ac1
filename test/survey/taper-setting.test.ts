import { describe, expect, it } from "vitest";
import { foot, inch, measured, mm } from "../../kernel-helpers/quantity/index.js";
import { taperSetting } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";

const rounding = { rel: 1e-12, because: "rounding only" };
const exact = (taper: number) => ({ taper: measured(taper, 0) });

describe("taperSetting(taper, { betweenCentres })", () => {
  // Source: F. D. Jones, Turning and Boring, Industrial Press, 1914/1919, worked examples of set-over.
  it("sets the tailstock over by 3/8 in for 1 in per foot on work 9 in long", () => {
    const { tailstockSetOver } = taperSetting(exact(1 / 12), { betweenCentres: inch(9) });
    expectClose(tailstockSetOver!.value.in("inch"), 3 / 8, rounding);
  });
  it("does the same for ends of 2 1/2 and 2 in over 6 in, work 9 in long: by the whole length, not the tapered", () => {
    const { tailstockSetOver } = taperSetting(exact((2.5 - 2) / 6), { betweenCentres: inch(9) });
    expectClose(tailstockSetOver!.value.in("inch"), 3 / 8, rounding);
    // Trap: by the tapered 6 in it would be 1/4 in.
    expect(Math.abs(tailstockSetOver!.value.in("inch") - 1 / 4)).toBeGreaterThan(0.1);
  });
  it("leaves the set-over open where the length is not given", () => {
    expect(taperSetting(exact(0.05)).tailstockSetOver).toBeUndefined();
  });
  it("warns where the set-over is large, and only there", () => {
    const warnings = (taper: number): string =>
      taperSetting(exact(taper), { betweenCentres: inch(20) }).warnings.join();
    expect(warnings(0.039)).toBe("");
    expect(warnings(0.0625)).toMatch(
      /A set-over of 0\.6[23] in is more than 1\/50 of the length between centres/,
    );
  });
});

describe("taperSetting(taper)", () => {
  // Source: taper tables, 1 in per foot: half angle 2.38594°, included 4° 46' 19".
  const { compoundAngle, attachmentPerFoot, indicator, drawUp } = taperSetting(exact(1 / 12));
  it("swings the compound slide by the HALF angle", () => {
    expectClose(compoundAngle.value.in("degree"), 2.38594, { abs: 6e-6, because: "5 printed decimals" });
  });
  it("sets the attachment in diameter per foot, whatever the length of the work", () => {
    expectClose(attachmentPerFoot.value.in("inch"), 1, rounding);
    const other = taperSetting(exact(1 / 12), { betweenCentres: foot(7) });
    expect(other.attachmentPerFoot.value.si).toBe(attachmentPerFoot.value.si);
  });
  it("lets the indicator rise on RADIUS: half the taper times the travel", () => {
    expect(indicator.map(({ travel }) => Number(travel.in("inch").toPrecision(12)))).toEqual([1, 2, 3]);
    for (const { travel, rise } of indicator) expectClose(rise.value.over(travel), 1 / 24, rounding);
    // It is the tangent of the compound's angle, and twice it that of the attachment.
    expectClose(Math.tan(compoundAngle.value.si), 1 / 24, rounding);
  });
  it("draws up 12 thou for each thousandth on diameter at 1:12", () => {
    expect(drawUp.onDiameter.in("thou")).toBe(1);
    expectClose(drawUp.axial.value.in("thou"), 12, rounding);
    // Published: drive-up = diametral interference × taper ratio; 1:16, 0.010 in → 0.160 in. Morse 2: 0.001 in ↔ 0.0200 in.
    expectClose(taperSetting(exact(1 / 16)).drawUp.axial.value.in("thou") * 10, 160, rounding);
    expectClose(taperSetting(exact(0.59941 / 12)).drawUp.axial.value.in("inch"), 0.02, {
      rel: 2e-3,
      because: "printed to 3 digits",
    });
  });
  it("speaks metric where the lengths do", () => {
    const metric = taperSetting(exact(0.1), { betweenCentres: mm(300) });
    expect(metric.indicator.map(({ travel }) => Number(travel.in("mm").toPrecision(12)))).toEqual([
      25, 50, 75,
    ]);
    expectClose(metric.drawUp.axial.value.in("micrometre"), 100, rounding);
  });
  it("takes the taper without sign", () => {
    expect(taperSetting(exact(-0.05)).compoundAngle.value.si).toBe(
      taperSetting(exact(0.05)).compoundAngle.value.si,
    );
    expect(taperSetting(exact(-0.05)).taper.value).toBe(0.05);
  });
});

describe("taperSetting(taper, { sineBar })", () => {
  it("stacks bar · sin(INCLUDED angle)", () => {
    const { sineBar } = taperSetting(exact(1 / 12), { sineBar: inch(5) });
    const included = ((4 + 46 / 60 + 19 / 3600) * Math.PI) / 180;
    expectClose(sineBar!.stack.value.in("inch"), 5 * Math.sin(included), {
      rel: 4e-5,
      because: "angle printed to the second",
    });
    // sin(2α) = 2t/(1 + t²), t = C/2: no angle needed.
    const t = 1 / 24;
    expectClose(sineBar!.stack.value.in("inch"), (5 * 2 * t) / (1 + t * t), rounding);
  });
});

describe("taperSetting(taper) with an uncertain taper", () => {
  it("carries it to every setting, as a small change of the taper would", () => {
    const [taper, u] = [0.05, 1e-4];
    const options = { betweenCentres: inch(30), sineBar: inch(5), travels: [inch(4)] };
    const settings = taperSetting({ taper: measured(taper, u, 7) }, options);
    const h = 1e-6;
    const [up, down] = [taperSetting(exact(taper + h), options), taperSetting(exact(taper - h), options)];
    const each = (of: typeof settings) => [
      of.compoundAngle,
      of.attachmentPerFoot,
      of.tailstockSetOver!,
      of.indicator[0]!.rise,
      of.sineBar!.stack,
      of.drawUp.axial,
    ];
    each(settings).forEach((setting, i) => {
      const derivative = Math.abs(each(up)[i]!.value.si - each(down)[i]!.value.si) / (2 * h);
      expectClose(setting.standardUncertainty.si, derivative * u, {
        rel: 1e-6,
        because: "central difference with step 1e-6",
      });
      expect(setting.degreesOfFreedom).toBe(7);
    });
  });
  it("warns where the taper is no larger than its uncertainty", () => {
    expect(taperSetting({ taper: measured(1e-5, 1e-5) }).warnings.join()).toMatch(
      /no larger than its uncertainty/,
    );
  });
  it("rejects no taper at all and lengths that are none", () => {
    expect(() => taperSetting(exact(0))).toThrow(/taper must be a finite number other than 0, got 0/);
    expect(() => taperSetting(exact(0.05), { betweenCentres: inch(0) })).toThrow(
      /betweenCentres must be a length greater than 0/,
    );
    expect(() => taperSetting(exact(0.05), { travels: [inch(-1)] })).toThrow(/travels\[0\] must be/);
  });
});
