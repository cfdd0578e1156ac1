import { describe, expect, it } from "vitest";
import { degree, inch } from "../../../kernel-helpers/quantity/index.js";
import { balance, balanceRuns } from "../../../kernel-helpers/shaft/index.js";
import { randomGenerator } from "../../../kernel-helpers/statistics/index.js";
import { expectClose } from "../../support/expect-close.js";
import { type Machine, runsOf, tableOf, vector } from "./support.js";

const radius = inch(13);
const exact = { rel: 1e-7, because: "the readings are written with 15 digits and solved by QR" };

/** A bearing pair that answers both planes, unevenly and out of phase. */
const machine: Machine = {
  answers: [
    [vector(1.3, 25), vector(0.4, -70)],
    [vector(0.35, 110), vector(0.9, 160)],
  ],
  unbalance: [vector(5, 200), vector(3, 75)],
};
const onePlane: Machine = { answers: [[vector(1.3, 25)]], unbalance: [vector(5, 200)] };
const none: [number, number] = [0, 0];

describe("balance(runs)", () => {
  it("finds in one plane the mass that takes the unbalance away, half a turn from it", () => {
    const { planes } = balance(runsOf(onePlane, [[none], [[2, 60]]], { radius }));
    expectClose(planes[0]!.mass.value.in("ounce"), 5, exact);
    expectClose(planes[0]!.angle.value.in("degree"), 20, exact);
    expectClose(planes[0]!.unbalance.amount.value.in("ounceInch"), 65, exact);
  });
  it("agrees with the textbook's vector triangle, worked by hand", () => {
    // As it is 4 at 60°, with 2 oz at 0° it is 5 at 100°: effect = 5∠100° − 4∠60° = 3.218∠153.03°, so the mass is
    // 2 · 4/3.218 = 2.486 oz at 60° + 180° − 153.03° = 86.97°.
    const table = tableOf("mass [oz],angle [deg],amplitude [thou],phase [deg]", "0,0,4,60", "2,0,5,100");
    const { planes } = balance(balanceRuns(table, { radius, phase: "as the angles" }));
    const hand = { rel: 5e-4, because: "worked by hand to four digits" };
    expectClose(planes[0]!.mass.value.in("ounce"), 2.486, hand);
    expectClose(planes[0]!.angle.value.in("degree"), 86.97, hand);
  });
  it("agrees with a published example in two planes: 1.96 at −122° and 1.06 at 121°", () => {
    // Read in the public repository MagedMohamedTurk/Turbomachinery-Rotors-Balancing, test/config.yaml, least_squares,
    // test_case_2 (it names no source of its own): 170∠112° and 53∠78°; with 1.15 at 0° in the first plane 235∠94° and
    // 58∠68°, in the second 189∠115° and 77∠104°. Masses in grams and readings in µm here: the example gives no units.
    const header = ["1", "2"]
      .flatMap((p) => [`mass ${p} [g]`, `angle ${p} [deg]`])
      .concat(["1", "2"].flatMap((p) => [`amplitude ${p} [µm]`, `phase ${p} [deg]`]));
    const rows = ["0,0,0,0,170,112,53,78", "1.15,0,0,0,235,94,58,68", "0,0,1.15,0,189,115,77,104"];
    const table = tableOf(header.join(","), ...rows);
    const { planes } = balance(balanceRuns(table, { radius, phase: "as the angles" }));
    const printed = {
      rel: 0.015,
      because: "two and three printed digits; 1.073 by hand for the 1.06 printed",
    };
    expectClose(planes[0]!.mass.value.in("gram"), 1.96, printed);
    expectClose(planes[1]!.mass.value.in("gram"), 1.06, printed);
    const whole = { rel: 0, abs: 1, because: "printed to whole degrees, phases read to whole degrees" };
    expectClose(planes[0]!.angle.value.in("degree"), 360 - 122, whole);
    expectClose(planes[1]!.angle.value.in("degree"), 121, whole);
  });
  it("agrees with a case history: four pickups, two planes, the first trial mass left on: 15.3 at 3°, 6.6 at 113°", () => {
    // T. D. Feese and P. E. Grazier, Balance This! Case Histories From Difficult Balance Jobs, Proceedings of the 33rd
    // Turbomachinery Symposium, 2004, two-plane example; read as entered in the public repository
    // MagedMohamedTurk/Turbomachinery-Rotors-Balancing, test/config.yaml, Balanceit_Example_Two_Plane, whose remark
    // gives what the authors print. Taken for ounces and thou here: the entry gives no units.
    const pickups = ["a", "b", "c", "d"];
    const header = [
      "mass aft [oz],angle aft [deg],mass fore [oz],angle fore [deg]",
      ...pickups.map((name) => `amplitude ${name} [thou],phase ${name} [deg]`),
    ].join(",");
    const rows = [
      "0,0,0,0,.68,32,.56,86,1.94,231,2.07,335",
      "11.1,35,0,0,1.31,1,1.25,75,.93,251,1,342",
      "11.1,35,3.7,135,.54,9,.52,75,.81,196,.9,296",
    ];
    const { planes } = balance(balanceRuns(tableOf(header, ...rows), { radius, phase: "as the angles" }));
    const printed = { rel: 4e-3, because: "15.3 and 6.6 are printed to a tenth: 15.33 and 6.617 by hand" };
    expectClose(planes[0]!.mass.value.in("ounce"), 15.3, printed);
    expectClose(planes[1]!.mass.value.in("ounce"), 6.6, printed);
    const whole = { rel: 0, abs: 0.5, because: "printed to whole degrees" };
    expectClose(planes[0]!.angle.value.in("degree"), 3, whole);
    expectClose(planes[1]!.angle.value.in("degree"), 113, whole);
  });
  it("finds the unbalance of a machine of known truth in two planes", () => {
    const { planes } = balance(
      runsOf(
        machine,
        [
          [none, none],
          [[2, 60], none],
          [none, [3, 200]],
        ],
        { radius },
      ),
    );
    expectClose(planes[0]!.mass.value.in("ounce"), 5, exact);
    expectClose(planes[0]!.angle.value.in("degree"), 20, exact);
    expectClose(planes[1]!.mass.value.in("ounce"), 3, exact);
    expectClose(planes[1]!.angle.value.in("degree"), 255, exact);
  });
  it("leaves nothing when the correction is put back into the machine", () => {
    const { planes } = balance(
      runsOf(
        machine,
        [
          [none, none],
          [[2, 60], none],
          [none, [3, 200]],
        ],
        { radius },
      ),
    );
    const put = planes.map(({ mass, angle }) => [mass.value.in("ounce"), angle.value.in("degree")] as const);
    const check = runsOf(machine, [[none, none], [[1, 0], none], put], { radius }).runs[2]!;
    for (const { re, im } of check.readings)
      expectClose(Math.hypot(re, im) / 2.54e-5, 0, {
        rel: 1,
        abs: 1e-6,
        because: "of readings of some thou, 1e-6 thou is rounding",
      });
  });
  it("takes trial masses left on, a check run and a repeated one as further rows, with the same answer", () => {
    const runs = runsOf(
      machine,
      [
        [none, none],
        [[2, 60], none],
        [
          [2, 60],
          [3, 200],
        ],
        [
          [4, 30],
          [2, 250],
        ],
        [none, none],
      ],
      { radius },
    );
    const result = balance(runs);
    expectClose(result.planes[0]!.mass.value.in("ounce"), 5, exact);
    expectClose(result.planes[1]!.angle.value.in("degree"), 255, exact);
    expect(result.linearChance).toBeGreaterThan(0.99);
    // From the check run, which carried 4 oz at 30°: what is still to add.
    const left = runsOf(
      machine,
      [
        [none, none],
        [[2, 60], none],
        [none, [3, 200]],
        [
          [4, 30],
          [2, 250],
        ],
      ],
      { radius },
    );
    const { mass, angle } = balance(left).planes[0]!.fromLastRun;
    const [x, y] = [
      5 * Math.cos(0.349066) - 4 * Math.cos(0.523599),
      5 * Math.sin(0.349066) - 4 * Math.sin(0.523599),
    ];
    expectClose(mass.in("ounce"), Math.hypot(x, y), { rel: 1e-5, because: "angles written with six digits" });
    expectClose(angle.in("degree"), (Math.atan2(y, x) * 180) / Math.PI + 360, {
      rel: 1e-5,
      because: "angles written with six digits",
    });
  });
  it("tells what the check run left: the unbalance and the masses that were on, added", () => {
    const runs = runsOf(
      machine,
      [
        [none, none],
        [[2, 60], none],
        [none, [3, 200]],
        [
          [4.5, 25],
          [3, 255],
        ],
      ],
      { radius },
    );
    const { planes, pickups } = balance(runs);
    // 5 oz at 200° and 4.5 oz at 25°, by components; the second plane is balanced out.
    const at = (degrees: number): readonly [number, number] => [
      Math.cos((degrees * Math.PI) / 180),
      Math.sin((degrees * Math.PI) / 180),
    ];
    const [x, y] = [0, 1].map((i) => 5 * at(200)[i]! + 4.5 * at(25)[i]!);
    expectClose(planes[0]!.left.amount.value.in("ounceInch"), 13 * Math.hypot(x!, y!), exact);
    expectClose(
      planes[0]!.left.angle.value.in("degree"),
      ((Math.atan2(y!, x!) * 180) / Math.PI + 360) % 360,
      exact,
    );
    expect(planes[1]!.left.amount.value.in("ounceInch")).toBeLessThan(1e-5);
    expect(planes[0]!.left.amount.standardUncertainty.si).toBeGreaterThan(0);
    // The readings as they were, for the polar figure.
    expect(pickups[1]!.runs.map(({ line }) => line)).toEqual([2, 3, 4, 5]);
    expectClose(pickups[1]!.runs[3]!.amplitude, pickups[1]!.last, exact);
  });
  it("finds the same with phases counted the other way, when that is said, and not when it is not", () => {
    const masses: [number, number][][] = [
      [none, none],
      [[2, 60], none],
      [none, [3, 200]],
    ];
    const against = balance(runsOf(machine, masses, { radius, phase: "against the angles" }));
    expectClose(against.planes[1]!.angle.value.in("degree"), 255, exact);
    const table = tableOf("mass [oz],angle [deg],amplitude [thou],phase [deg]", "0,0,4,-60", "2,0,5,-100");
    const wrong = balance(balanceRuns(table, { radius, phase: "as the angles" })).planes[0]!;
    expectClose(wrong.angle.value.in("degree"), 360 - 86.97, {
      rel: 5e-4,
      because: "the angle from the trial mass is turned about, worked by hand",
    });
  });
  it("states an uncertainty that the truth keeps to: within 95 % in 93 to 97 % of 2 000 noisy surveys", () => {
    const random = randomGenerator(20260504);
    let [inside, all] = [0, 0];
    for (let i = 0; i < 2000; i++) {
      const noise = (): number => 0.05 * random.normal();
      const runs = runsOf(onePlane, [[none], [[4, 60]]], { radius, noise });
      const known = { ...runs, uncertainties: runs.runs.map(() => [0.05 * 2.54e-5]) };
      const { mass } = balance(known).planes[0]!;
      all++;
      if (Math.abs(mass.value.in("ounce") - 5) < 1.96 * mass.standardUncertainty.in("ounce")) inside++;
    }
    expect(inside / all).toBeGreaterThan(0.93);
    expect(inside / all).toBeLessThan(0.97);
  });
  it("keeps to it in two planes, of the masses and of what the check run left", () => {
    const random = randomGenerator(20260505);
    const u = 0.05;
    // Direction by direction, against truth: what takes the unbalance away, and what a check run leaves.
    const put: [number, number][] = [
      [4.5, 25],
      [3, 255],
    ];
    let [inside, all] = [0, 0];
    for (let i = 0; i < 1000; i++) {
      const noise = (): number => u * random.normal();
      const runs = runsOf(machine, [[none, none], [[4, 60], none], [none, [4, 200]], put], { radius, noise });
      const known = { ...runs, uncertainties: runs.runs.map(() => [u * 2.54e-5, u * 2.54e-5]) };
      balance(known).planes.forEach(({ mass, left }, p) => {
        const [truth, at] = [machine.unbalance[p]!, put[p]!];
        const size = Math.hypot(truth.re, truth.im);
        const stays = Math.hypot(
          truth.re + at[0] * Math.cos((at[1] * Math.PI) / 180),
          truth.im + at[0] * Math.sin((at[1] * Math.PI) / 180),
        );
        all++;
        if (Math.abs(mass.value.in("ounce") - size) < 1.96 * mass.standardUncertainty.in("ounce")) inside++;
        if (p === 1) return; // what stays there is nothing: the length of a vector about 0 is not normal
        all++;
        const { value, standardUncertainty } = left.amount;
        if (Math.abs(value.in("ounceInch") - 13 * stays) < 1.96 * standardUncertainty.in("ounceInch"))
          inside++;
      });
    }
    expect(inside / all).toBeGreaterThan(0.93);
    expect(inside / all).toBeLessThan(0.97);
  });
  it("says that a machine does not answer in proportion, and widens the uncertainty", () => {
    const runs = runsOf(onePlane, [[none], [[2, 60]], [[4, 60]]], { radius });
    const bent = {
      ...runs,
      runs: runs.runs.map((run, k) => (k < 2 ? run : { ...run, readings: [{ re: 0, im: 0 }] })),
    };
    const [straight, crooked] = [balance(runs), balance(bent)];
    expect(straight.warnings).toEqual([]);
    expect(crooked.warnings.join()).toMatch(/do not answer the masses in proportion/);
    expect(crooked.planes[0]!.mass.standardUncertainty.si).toBeGreaterThan(
      2 * straight.planes[0]!.mass.standardUncertainty.si,
    );
  });
  it("says that a trial mass was too small to tell anything", () => {
    const runs = runsOf(onePlane, [[none], [[0.05, 60]]], { radius });
    expect(balance(runs).warnings.join()).toMatch(/Line 3: the mass changed no reading/);
  });
  it("refuses trials that tell nothing: none at all, two alike, or both planes in step", () => {
    expect(() => balance(runsOf(onePlane, [[none], [none]], { radius }))).toThrow(
      'balance: no run of runs.csv has a trial mass in plane "p1": all are 0',
    );
    expect(() =>
      balance(
        runsOf(
          machine,
          [
            [none, none],
            [
              [2, 60],
              [1, 60],
            ],
            [
              [2, 60],
              [1, 60],
            ],
          ],
          { radius },
        ),
      ),
    ).toThrow(/3 runs with different masses are needed, got 2 in .*tell the same \(line 4\)/);
    expect(() =>
      balance(
        runsOf(
          machine,
          [
            [none, none],
            [
              [2, 60],
              [1, 60],
            ],
            [
              [4, 60],
              [2, 60],
            ],
          ],
          { radius },
        ),
      ),
    ).toThrow(/cannot tell the two planes apart/);
  });
  it("refuses pickups that answer both planes alike, and fewer pickups than planes", () => {
    const alike: Machine = {
      answers: [
        [vector(1, 0), vector(1, 0)],
        [vector(2, 30), vector(2, 30)],
      ],
      unbalance: machine.unbalance,
    };
    const masses: [number, number][][] = [
      [none, none],
      [[2, 60], none],
      [none, [3, 200]],
    ];
    expect(() => balance(runsOf(alike, masses, { radius }))).toThrow(/nothing tells the planes apart/);
    const single: Machine = { answers: [machine.answers[0]!], unbalance: machine.unbalance };
    expect(() => balance(runsOf(single, masses, { radius }))).toThrow(
      /2 planes need at least 2 pickups, got 1/,
    );
  });
});

describe("balanceRuns(table, options)", () => {
  const header = "mass [oz],angle [deg],amplitude [thou],phase [deg]";
  it("takes the sense of the phase from a remark of the table, and asks for it where nothing says it", () => {
    const rows = [header, "0,0,4,60", "2,0,5,100"];
    expect(
      balanceRuns(tableOf("# phase: against the angles", ...rows), { radius }).runs[0]!.readings[0]!.im,
    ).toBeLessThan(0);
    expect(() => balanceRuns(tableOf(...rows), { radius })).toThrow(
      'runs.csv must say which way the phase is counted, "# phase: as the angles" or "# phase: against the angles", got no such remark',
    );
  });
  it("names the line and what is missing in it", () => {
    const options = { radius, phase: "as the angles" } as const;
    expect(() => balanceRuns(tableOf(header, "0,0,4,60", "2,0,-,100"), options)).toThrow(
      /line 3: a run needs amplitude and phase of every pickup/,
    );
    expect(() => balanceRuns(tableOf(header, "-,0,4,60", "2,0,5,100"), options)).toThrow(
      /line 2: the mass is missing; write 0 for none/,
    );
    expect(() => balanceRuns(tableOf(header, "0,0,4,60", "2,-,5,100"), options)).toThrow(
      /line 3: the angle of a mass of 2 oz is missing/,
    );
    expect(() => balanceRuns(tableOf(header, "0,0,4,60"), options)).toThrow(/2 runs are needed for 1 plane/);
  });
  it("takes two planes at most", () => {
    const three = ["a", "b", "c"].map((name) => `mass ${name} [oz],angle ${name} [deg]`).join(",");
    const table = tableOf(`${three},amplitude [thou],phase [deg]`, "0,0,0,0,0,0,4,60");
    expect(() => balanceRuns(table, { radius, phase: "as the angles" })).toThrow(
      /runs.csv: one or two planes can be reckoned, got 3: a, b, c/,
    );
  });
  it("says which column lacks its partner, and which plane its radius", () => {
    expect(() =>
      balanceRuns(tableOf("mass near [oz],angle near [deg],amplitude [thou]", "0,0,4"), {
        radius,
        phase: "as the angles",
      }),
    ).toThrow(/column "amplitude" needs a column "phase" beside it/);
    expect(() =>
      balanceRuns(
        tableOf("mass near [oz],angle near [deg],amplitude [thou],phase [deg]", "0,0,4,60", "2,0,5,100"),
        {
          radius: { far: radius },
          phase: "as the angles",
        },
      ),
    ).toThrow(/no radius is given for plane "near"/);
    expect(() =>
      balanceRuns(tableOf(header, "0,0,4,60", "2,0,5,100"), { radius: inch(0), phase: "as the angles" }),
    ).toThrow(/radius must be above 0/);
    expect(() =>
      balanceRuns(tableOf(header, "0,0,4,60", "2,0,5,100"), {
        radius,
        phase: "as the angles",
        phaseUncertainty: degree(0),
      }),
    ).toThrow(/must be above 0/);
  });
});
