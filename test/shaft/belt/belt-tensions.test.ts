import { describe, expect, it } from "vitest";
import { hp, inch, lbf, measured, mm, newton, radian, rpm } from "../../../kernel-helpers/quantity/index.js";
import { beltPulls, beltTensions, beltWrap } from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";
import { tableOf } from "../balance/support.js";

const rounding = { rel: 1e-9, because: "a few roundings" };
const header = "belt [text],strand [text],force [lbf],dip [in]";
const options = {
  spans: { drive: inch(64) },
  dipUncertainty: inch(0.02),
  forceUncertainty: lbf(0.2),
};
/** A string of tension T, pulled aside by r of its span; S stretches it. */
const pull = (tension: number, r: number, stiffness = 0): number => {
  const sine = (2 * r) / Math.sqrt(1 + 4 * r * r);
  return 2 * (tension + stiffness * (Math.sqrt(1 + 4 * r * r) - 1)) * sine;
};

describe("beltTensions(table, options)", () => {
  it("agrees with the rule of makers' instructions: at a dip of 1/64 of the span the force is 1/16 of the tension", () => {
    // Force/deflection method: deflection force = T_st/16 (lbs) at 1/64 inch per inch of span, the belt's own
    // constant Y left out; span = √(C² − ((D − d)/2)²). Common to the tensioning instructions of belt makers.
    const table = tableOf(header, "drive,upper,0,0", "drive,upper,10,1");
    expectClose(beltTensions(table, options).belts[0]!.tension.value.in("lbf"), 160, {
      rel: 6e-4,
      because: "the rule takes the sine for the tangent: 1/2048",
    });
    const wrap = beltWrap({ pulley: inch(30), other: inch(44), centres: inch(108), drive: "open" });
    expectClose(wrap.straight.value.in("inch"), Math.sqrt(108 ** 2 - 7 ** 2), rounding);
  });
  it("finds the tension of a string of known truth over its own sag, and the mean of two strands", () => {
    const at = (strand: string, tension: number, sag: number): string[] =>
      [0, 0.5, 0.9].map((dip) => `drive,${strand},${pull(tension, dip / 64)},${sag + dip}`);
    const { belts, warnings } = beltTensions(
      tableOf(header, ...at("upper", 255, 0.4), ...at("lower", 245, 0.6)),
      options,
    );
    expectClose(belts[0]!.strands[0]!.tension.value.in("lbf"), 255, rounding);
    expectClose(belts[0]!.strands[1]!.tension.value.in("lbf"), 245, rounding);
    expectClose(belts[0]!.tension.value.in("lbf"), 250, rounding);
    expect(warnings).toEqual([]);
  });
  it("takes off what the pull itself stretches the belt, where its stiffness is given", () => {
    const rows = [0, 0.6, 1].map((dip) => `drive,upper,${pull(250, dip / 64, 30_000)},${dip}`);
    const table = tableOf(header, ...rows);
    const counted = beltTensions(table, { ...options, stiffness: lbf(30_000) }).belts[0]!;
    expectClose(counted.tension.value.in("lbf"), 250, {
      rel: 2e-4,
      because: "stretch to the third power of the dip: the next term is r² of it",
    });
    // Not counted: too tight by 2S·r², 14.6 lbf at 1/64.
    const plain = beltTensions(table, options).belts[0]!.tension.value.in("lbf");
    expect(plain).toBeGreaterThan(257);
    expect(plain).toBeLessThan(265);
  });
  it("states the uncertainty that moving each reading by its own gives", () => {
    const rows = (force: number, free: number, dip: number) =>
      tableOf(header, `drive,upper,0,${free}`, `drive,upper,${force},${dip}`);
    const at = (...of: [number, number, number]): number =>
      beltTensions(rows(...of), options).belts[0]!.tension.value.si;
    const u = Math.hypot(
      ...(
        [
          [0.2, 0, 0],
          [0, 0.02, 0],
          [0, 0, 0.02],
        ] as const
      ).map(([a, b, c]) => (at(10 + a, 0.5 + b, 1.5 + c) - at(10 - a, 0.5 - b, 1.5 - c)) / 2),
    );
    const found = beltTensions(rows(10, 0.5, 1.5), options).belts[0]!.tension;
    expectClose(found.standardUncertainty.si, u, rounding);
  });
  it("hands beltPulls a tension: twice it on the shaft of a belt half round its pulley", () => {
    const table = tableOf(
      header,
      "drive,upper,0,0",
      "drive,upper,16,1",
      "drive,lower,0,0",
      "drive,lower,16,1",
    );
    const { tension } = beltTensions(table, options).belts[0]!;
    const found = beltPulls({
      power: hp(2),
      speed: rpm(110),
      diameter: inch(30),
      wrap: radian(Math.PI),
      friction: { low: 0.3, high: 0.3 },
      initialTension: tension,
    });
    expectClose(found.pull.value.si, 2 * tension.value.si, rounding);
    expect(found.tensionKnown).toBe(true);
  });
  it("says what it cannot see: one strand, strands that differ, a deep dip, and takes mm and newton", () => {
    const one = tableOf(header, "drive,upper,0,0", "drive,upper,20,1.5");
    const { warnings } = beltTensions(one, options);
    expect(warnings.join("\n")).toMatch(/one straight part was read/);
    expect(warnings.join("\n")).toMatch(/more than 1\/64 of its span/);
    const two = tableOf(header, "drive,upper,0,0", "drive,upper,10,1", "drive,lower,0,0", "drive,lower,15,1");
    expect(beltTensions(two, options).warnings.join()).toMatch(/the load still pulls at rest/);
    const metric = tableOf(
      "belt [text],strand [text],force [N],dip [mm]",
      "drive,upper,0,0",
      `drive,upper,${lbf(10).in("newton")},25.4`,
    );
    const inches = tableOf(header, "drive,upper,0,0", "drive,upper,10,1");
    const found = beltTensions(metric, {
      spans: { drive: mm(64 * 25.4) },
      dipUncertainty: mm(0.5),
      forceUncertainty: newton(1),
    }).belts[0]!.tension;
    expectClose(found.value.si, beltTensions(inches, options).belts[0]!.tension.value.si, rounding);
    expect(found.value.writtenIn).toBe("newton");
  });
  it("refuses gaps and readings that tell nothing, each with its line", () => {
    const refused = (...rows: string[]) => expect(() => beltTensions(tableOf(header, ...rows), options));
    refused("drive,upper,0,0", "drive,upper,-,1").toThrow(
      "beltTensions: runs.csv line 3: a reading needs force and dip, got a gap; write 0 for no force",
    );
    refused("drive,upper,0,0", "drive,upper,-5,1").toThrow(/line 3: force must be 0 or more, got −5 lbf/);
    refused("drive,upper,10,1").toThrow(/"upper" of "drive" needs its dip without a force/);
    refused("drive,upper,0,1").toThrow(/"upper" of "drive" needs a reading with a force/);
    refused("drive,upper,0,1", "drive,upper,10,1").toThrow(/line 3: a force must make the dip deeper/);
    refused("other,upper,0,0", "other,upper,10,1").toThrow(/spans has only "drive"/);
    expect(() =>
      beltTensions(tableOf(header, "drive,upper,0,0", "drive,upper,10,1"), {
        ...options,
        stiffness: measured(lbf(1e7), lbf(1)),
      }),
    ).toThrow(/more than its whole tension/);
    expect(() =>
      beltTensions(tableOf(header, "drive,upper,0,0"), { ...options, dipUncertainty: inch(0) }),
    ).toThrow(/dipUncertainty must be above 0/);
  });
});
