import { describe, expect, it } from "vitest";
import {
  boxCooling,
  foretoldFriction,
  loadsAgainstForetold,
  runningPrediction,
} from "../../../kernel-helpers/bearing/index.js";
import { oil } from "../../../kernel-helpers/handbook/index.js";
import {
  degF,
  degree,
  inch,
  lbf,
  measured,
  quantity,
  rpm,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import type { ShaftLoads } from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";

const box = {
  diameter: inch(2.425),
  length: inch(8),
  speed: rpm(110),
  oil: oil("ISO VG 100"),
  boxSurface: quantity(230, "inch2"),
  cooling: boxCooling("still air"),
  roughness: thou(0.06),
  diametralClearance: measured(thou(4), thou(0.4)),
  load: measured(lbf(850), lbf(90)),
};
const [near, far] = [
  { ...box, name: "near box" },
  { ...box, name: "far box", load: measured(lbf(250), lbf(40)) },
];
const prediction = runningPrediction([near, far], degF(65));

describe("foretoldFriction(prediction)", () => {
  it("is the film's friction coefficient times load and radius, box by box", () => {
    const torque = prediction.boxes.reduce(
      (sum, { film, load }) => sum + film.frictionCoefficient * load.value.si * inch(2.425 / 2).si,
      0,
    );
    expectClose(foretoldFriction(prediction).value.si, torque, {
      rel: 1e-6,
      because: "two routes through the film's results",
    });
  });
  it("is Petroff's for a lightly loaded box: T = 4π²μ r³ l N/c, the least a film can drag", () => {
    const light = runningPrediction([{ ...near, load: measured(lbf(20), lbf(2)) }], degF(65));
    const { film } = light.boxes[0]!;
    const [r, l, n] = [inch(2.425 / 2).si, inch(8).si, 110 / 60];
    const petroff = (4 * Math.PI ** 2 * film.viscosity.si * r ** 3 * l * n) / film.radialClearance.si;
    expectClose(foretoldFriction(light).value.si, petroff, {
      rel: 5e-3,
      because: "an eccentricity of some thousandths adds its square",
    });
  });
  it("does not count the cooling in its doubt: a box cooled worse is hotter, and drags less, not more", () => {
    const sure = runningPrediction(
      [near, far].map((one) => ({ ...one, coolingShare: 0.01 })),
      degF(65),
    );
    expectClose(
      foretoldFriction(sure).standardUncertainty.si,
      foretoldFriction(prediction).standardUncertainty.si,
      { rel: 1e-9, because: "the same shares" },
    );
  });
  it("refuses boxes foretold for different speeds", () => {
    const mixed = runningPrediction([near, { ...far, speed: rpm(55) }], degF(65));
    expect(() => foretoldFriction(mixed)).toThrow(/one speed, got 110 rpm for "near box" and 55 rpm/);
  });
});

describe("loadsAgainstForetold(prediction, now)", () => {
  const loads = (...forces: number[]): ShaftLoads => ({
    kind: "shaft loads",
    loadCase: "12 hp",
    boxes: ["near box", "far box"].map((name, i) => ({
      name,
      force: measured(lbf(forces[i]!), lbf(30)),
      direction: degree(20),
    })),
    places: [],
  });
  it("tells more and less by 1.96 times the uncertainties of both together", () => {
    const u = Math.hypot(90, 30);
    const states = (near: number, far: number): string[] =>
      loadsAgainstForetold(prediction, loads(near, far)).boxes.map(({ state }) => state);
    expect(states(850 + 1.95 * u, 250)).toEqual(["as reckoned", "as reckoned"]);
    expect(states(850 + 1.97 * u, 250 - 1.97 * 50)).toEqual(["more", "less"]);
  });
  it("scales the mean pressure with the load, and foretells the change of rise that the film itself gives", () => {
    const [now] = loadsAgainstForetold(prediction, loads(1000, 250)).boxes;
    expectClose(now!.meanPressure.in("psi"), 1000 / (8 * 2.425), { rel: 1e-9, because: "force over area" });
    const again = runningPrediction([{ ...near, load: measured(lbf(1000), lbf(30)) }], degF(65));
    const change = Math.abs(again.boxes[0]!.rise.value.si - prediction.boxes[0]!.rise.value.si);
    expectClose(now!.riseChange.si, change, {
      rel: 0.25,
      because: "a straight line through a curve, over 1.7 standard uncertainties of the load",
    });
  });
  it("names a box that has no load", () => {
    const one = { ...loads(850, 250), boxes: loads(850, 250).boxes.slice(0, 1) };
    expect(() => loadsAgainstForetold(prediction, one)).toThrow(
      /no load is given for "far box", only for "near box"/,
    );
  });
});
