import { describe, expect, it } from "vitest";
import {
  boxCooling,
  clearanceMap,
  clearanceMapInSteps,
  runningFilm,
} from "../../../kernel-helpers/bearing/index.js";
import { oil } from "../../../kernel-helpers/handbook/index.js";
import { degF, inch, type Length, lbf, quantity, rpm, thou } from "../../../kernel-helpers/quantity/index.js";
import { expectClose } from "../../support/expect-close.js";

const box = {
  diameter: inch(2.425),
  length: inch(8),
  load: lbf(900),
  speed: rpm(110),
  room: degF(65),
  boxSurface: quantity(230, "inch2"),
  cooling: boxCooling("still air"),
  roughness: thou(0.06),
};
const options = {
  ...box,
  clearances: [thou(2), thou(8)] as const,
  oils: [oil("ISO VG 46"), oil("ISO VG 220")],
};

describe("clearanceMap(options)", () => {
  it("holds at each clearance and oil what running that box gives", () => {
    const map = clearanceMap({ ...options, steps: 4 });
    const { diametralClearance, film } = map.oils[1]!.films[1]!;
    expectClose(diametralClearance.in("thou"), 4, { rel: 1e-12, because: "evenly spaced" });
    expectClose(
      film!.rise.si,
      runningFilm({ ...box, diametralClearance: thou(4), oil: oil("ISO VG 220") }).rise.si,
      {
        rel: 1e-12,
        because: "the same film",
      },
    );
  });
  it("shows the thicker oil hotter at every clearance", () => {
    const [thin, thick] = clearanceMap({ ...options, steps: 5 }).oils;
    thin!.films.forEach(({ film }, i) => {
      expect(thick!.films[i]!.film!.rise.si).toBeGreaterThan(film!.rise.si);
    });
  });
  it("rests after each film in steps, and gives the same", () => {
    const steps = clearanceMapInSteps({ ...options, steps: 2 });
    const told: string[] = [];
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        expect(step.value).toEqual(clearanceMap({ ...options, steps: 2 }));
        break;
      }
      told.push(`${step.value.done} of ${step.value.of} ${step.value.what}`);
    }
    expect(told).toEqual(["1 of 4 films", "2 of 4 films", "3 of 4 films", "4 of 4 films"]);
  });
  it("foretells the film at the clearance intended, as sure as clearance and load are", () => {
    const sure = { intended: thou(4), clearanceUncertainty: thou(0.4), loadUncertainty: lbf(90) };
    const at = clearanceMap({ ...options, ...sure, steps: 2 }).oils[0]!.atIntended!;
    const alone = (diametralClearance: Length) =>
      runningFilm({ ...box, diametralClearance, oil: oil("ISO VG 46") });
    expectClose(at.film.leastFilm.si, alone(thou(4)).leastFilm.si, { rel: 1e-12, because: "the same film" });
    const half = Math.abs(alone(thou(4.4)).rise.si - alone(thou(3.6)).rise.si) / 2;
    const share = at.shares.find(({ from }) => from === "clearance")!.standardUncertainty.si;
    expectClose(share, half, { rel: 1e-6, because: "half the difference of both sides" });
    const blind = clearanceMap({ ...options, intended: thou(4), steps: 2 }).oils[0]!.atIntended!;
    expect(at.uncertainty.leastFilm.si).toBeGreaterThan(blind.uncertainty.leastFilm.si);
    expect(clearanceMap({ ...options, steps: 2 }).oils[0]!.atIntended).toBeUndefined();
  });
  it("leaves a gap where the box finds no balance", () => {
    const small = { ...options, speed: rpm(4000), boxSurface: quantity(20, "inch2"), steps: 3 };
    expect(clearanceMap(small).oils[1]!.films[0]!.film).toBeUndefined();
  });
  it("refuses a range that is none, and no oil", () => {
    expect(() => clearanceMap({ ...options, clearances: [thou(8), thou(2)] })).toThrow(
      /clearances must grow/,
    );
    expect(() => clearanceMap({ ...options, oils: [] })).toThrow(/at least one oil/);
    expect(() => clearanceMap({ ...options, steps: 1 })).toThrow(/steps/);
  });
});
