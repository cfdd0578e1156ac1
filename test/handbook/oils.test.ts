import { describe, expect, it } from "vitest";
import { type Oil, oil, oils, viscosity } from "../../kernel-helpers/handbook/index.js";
import { degC, degF } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const microreyn = (of: Oil, fahrenheit: number): number => viscosity(of, degF(fahrenheit)).in("reyn") * 1e6;

describe("viscosity(oil, temperature)", () => {
  it("agrees with the printed constants of every SAE grade, and the values reckoned from them", () => {
    const { numbers, rows } = readReference("sae-oil-viscosity");
    const [grades, mu0, b] = [numbers("SAE"), numbers("mu0_microreyn"), numbers("b_degF")];
    expect(rows.length).toBe(6);
    grades.forEach((grade, i) => {
      expectClose(microreyn(oil(`SAE ${grade}`), 140), mu0[i]! * Math.exp(b[i]! / 235), {
        rel: 1e-9,
        because: "the printed formula",
      });
    });
    // Shigley, Table 12-1, for SAE 30: 15.07, 4.60 and 1.22 µreyn at 100, 140 and 210 °F.
    for (const [at, printed] of [
      [100, 15.07],
      [140, 4.6],
      [210, 1.22],
    ] as const)
      expectClose(microreyn(oil("SAE 30"), at), printed, { rel: 3e-3, because: "printed to three digits" });
    // A chart reading (Faires, problem 551): SAE 10W at 140 °F is 2.2 µreyn.
    expectClose(microreyn(oil("SAE 10"), 140), 2.2, { rel: 0.02, because: "read off a chart to two digits" });
  });
  it("agrees with a worked example of ASTM D341: 404 at 40 and 28 at 100 °C give 132.13 at 60 °C", () => {
    const heavy: Oil = {
      ...oil("ISO VG 320"),
      law: { form: "two points", at40: 404, at100: 28, density: 880 },
    };
    const density = 880 - 0.65 * 45;
    expectClose((viscosity(heavy, degC(60)).in("millipascalSecond") / density) * 1e3, 132.13, {
      rel: 1e-3,
      because: "the example rounds its constants to four digits",
    });
  });
  it("gives each ISO grade its own number at 40 °C, and less the hotter it is", () => {
    for (const one of oils.filter(({ law }) => law.form === "two points")) {
      const grade = Number(/\d+/.exec(one.name)![0]);
      const at = (t: number): number => viscosity(one, degC(t)).in("millipascalSecond");
      expectClose(at(40) / (0.88 - 0.00065 * 25), grade, { rel: 1e-9, because: "the curve goes through it" });
      for (let t = 0; t < 140; t += 10) expect(at(t + 10)).toBeLessThan(at(t));
    }
  });
  it("has no ISO grade but those of ISO 3448, each half as thick again as the one below it", () => {
    // ISO 3448:1992, table 1, midpoints at 40 °C in mm²/s (from memory).
    const midpoints = [2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500];
    const grades = oils.flatMap(({ name, law }) =>
      law.form === "two points" ? [{ name, at40: law.at40 }] : [],
    );
    expect(grades.length).toBeGreaterThanOrEqual(6);
    for (const { name, at40 } of grades) {
      expect(midpoints).toContain(at40);
      expect(name).toBe(`ISO VG ${at40}`);
    }
    // No grade of the row they are tabled over is left out, and at 100 °C none is as thin as the one below it.
    const first = midpoints.indexOf(grades[0]!.at40);
    expect(grades.map(({ at40 }) => at40)).toEqual(midpoints.slice(first, first + grades.length));
    grades.slice(1).forEach(({ name, at40 }, i) => {
      expectClose(at40 / grades[i]!.at40, 1.5, {
        rel: 0.05,
        because: "the standard rounds its midpoints to two digits",
      });
      const at100 = (of: string): number => viscosity(oil(of), degC(100)).si;
      expect(at100(name)).toBeGreaterThan(at100(grades[i]!.name));
    });
  });
  it("refuses an oil that is not tabled, and a temperature outside", () => {
    expect(() => oil("whale oil")).toThrow(
      /must be one of ISO VG 32, .*got "whale oil"; for another oil take the grade nearest/,
    );
    expect(() => viscosity(oil("SAE 30"), degC(200))).toThrow(/between -10 and 150 °C, got 200 °C/);
  });
});
