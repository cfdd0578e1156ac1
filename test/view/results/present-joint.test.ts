import { afterEach, describe, expect, it } from "vitest";
import { fitFriction, material, materials } from "../../../kernel-helpers/handbook/index.js";
import {
  heatingPlan,
  hubFit,
  interferenceByPractice,
  type PressRig,
  pressRig,
  type Rig,
  releaseOf,
} from "../../../kernel-helpers/joint/index.js";
import {
  degF,
  inch,
  kilowatt,
  ksi,
  lbf,
  setUnitSystem,
  shortTonForce,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import type { Block, Presentation } from "../../../kernel-helpers/view/blocks.js";
import { drawingSize } from "../../../kernel-helpers/view/drawing/drawing-svg.js";
import { finishFigure } from "../../../kernel-helpers/view/finish-figure.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import { expectNarrowLayout } from "../../support/fits-telephone.js";

const iron = material("grey iron class 20");
const plain = material("steel A36");
const base = {
  diameter: inch(2.28),
  length: inch(4.25),
  interference: thou(1.5),
  friction: 0.15,
  hub: { material: iron, outside: inch(5.5), keywayDepth: inch(0.1875) },
  shaft: { material: material("steel") },
};
const seized = hubFit({
  diameter: inch(2.28),
  length: inch(4.25),
  taper: 1 / 16,
  interference: interferenceByPractice(inch(2.28)),
  hub: { material: iron, outside: inch(5.5), keywayDepth: inch(0.1875) },
  shaft: { material: material("steel") },
  friction: fitFriction("rusted"),
});
const rig: Rig = {
  jack: { capacity: shortTonForce(50), stroke: inch(6) },
  rods: { thread: "1 1/4-7 UNC", proof: ksi(74), span: inch(10), length: inch(26) },
  beam: { section: { width: inch(1.25), height: inch(5), bars: 2 }, material: plain },
  plate: { width: inch(8), thickness: inch(2.5), slot: inch(2.625), material: plain },
  hub: { face: inch(5.5), length: inch(4.25), material: iron },
  shaft: { end: inch(1.75), material: material("steel") },
  offCentre: inch(1 / 16),
  release: inch(0.25),
};
const judged = pressRig(rig, seized.pressOff);
const release = releaseOf(seized, judged);
const shown = (value: unknown): Presentation => present(value)!;
const one = <T extends Block["type"]>(value: unknown, type: T): Extract<Block, { type: T }> =>
  shown(value).blocks.find((block): block is Extract<Block, { type: T }> => block.type === type)!;
const all = (value: unknown): string => renderText(shown(value)).replace(/\s+/g, " ");

afterEach(() => setUnitSystem(undefined));

describe("present(hub fit)", () => {
  it("says the force first, as a range in two units, and whether the taper holds itself", () => {
    const text = one(seized, "text").text;
    const low = Math.round(seized.pressOff.low.in("lbf") / 1000) * 1000;
    expect(text).toMatch(
      new RegExp(`^To press it off takes ${low} to \\d+ lbf \\([\\d.]+ to [\\d.]+ short tonf\\)`),
    );
    expect(text).toContain("The taper holds by itself: taking off the nut does not free it.");
    const steep = hubFit({ ...base, taper: 7 / 24, friction: { low: 0.1, high: 0.2 } });
    expect(one(steep, "text").text).toMatch(/may let go of itself .* hold it before the nut comes off/);
  });
  it("gives the verdict on the hub with stress, strength and chance", () => {
    expect(one(seized, "verdict")).toMatchObject({ outcome: "yes", text: "The hub stands its own fit." });
    const tight = hubFit({ ...base, interference: thou(12), friction: 0.2 });
    expect(one(tight, "verdict").outcome).toBe("no");
    expect(one(tight, "verdict").because).toMatch(/against 20 ksi tensile strength/);
  });
  it("leaves out of the table what gains nothing, and follows the unit system", () => {
    expect(one(seized, "table").rows.map(({ cells }) => cells[0])).toEqual([
      "friction",
      "interference",
      "hub modulus",
    ]);
    setUnitSystem("metric");
    expect(all(seized)).toMatch(/To press it off takes \d+ to \d+ kN \([\d.]+ to [\d.]+ t\)/);
    expect(all(seized)).not.toMatch(/lbf to|ksi/);
  });
});

describe("present(press rig)", () => {
  it("answers, names the weakest part, and says where to stop", () => {
    const { outcome, because } = one(judged, "verdict");
    expect(outcome).toBe("cannot tell yet");
    expect(because).toMatch(/the weakest part, the shaft end, allows 34000 lbf .* Stop at 34000 lbf/);
    expect(one(pressRig(rig, lbf(10000)), "verdict").outcome).toBe("yes");
    expect(one(pressRig(rig, lbf(90000)), "verdict").outcome).toBe("no");
  });
  it("draws the rig within its frame, the weakest part alone in the pen of warnings, forces against each other", () => {
    const { drawing, alt } = one(judged, "drawing");
    const size = drawingSize(drawing);
    expect(size.width).toBeLessThanOrEqual(drawing.width);
    expect(size.height).toBeLessThanOrEqual(drawing.height);
    const warned = (of: PressRig): number =>
      one(of, "drawing").drawing.shapes.filter((shape) => shape.type === "polygon" && shape.pen === "warn")
        .length;
    expect(warned(judged)).toBe(1);
    // Two rods, four nuts.
    const thin = pressRig({ ...rig, rods: { ...rig.rods, proof: ksi(10) } }, seized.pressOff);
    expect([thin.weakest, warned(thin)]).toEqual(["tie rods", 6]);
    const arrows = drawing.shapes.flatMap((shape) =>
      shape.type === "arrow" ? [shape.to[0] - shape.from[0]] : [],
    );
    expect(arrows.map(Math.sign)).toEqual([1, -1, -1]);
    expect(alt).toMatch(/The jack pushes the shaft to the right, the rods pull the hub to the left\./);
    expect(alt).toMatch(/Weakest: shaft end\./);
  });
  it("has a layout for a telephone, with every part named and each rod's force told", () => {
    const { shapes } = expectNarrowLayout(shown(judged));
    const words = shapes.flatMap((shape) => (shape.type === "text" ? [shape.text] : []));
    expect(words).toEqual(expect.arrayContaining(["cross-beam", "bearing plate", "jack", "hub", "shaft"]));
    expect(words.some((text) => /^2 rods .*, \d+ lbf in each$/.test(text))).toBe(true);
  });
  it("marks in the table what does not stand, in words too", () => {
    for (const { cells, mark } of one(judged, "table").rows)
      expect(mark === "bad").toBe(cells.includes("does not stand"));
  });
  it("pictures the stored energy as a sledge falling: E = m g h", () => {
    const energy = judged.spring.energy.in("lbfFoot");
    const [, printed, fall] = /([\d.]+) lbf·ft: a sledge of 10 lb falling ([\d.]+) ft/.exec(all(judged))!;
    expect(Math.abs(Number(printed) - energy)).toBeLessThan(0.5);
    expect(Math.abs(Number(fall) - energy / 10)).toBeLessThan(0.06);
  });
});

describe("present(release)", () => {
  it("answers both questions: cold, and heat", () => {
    expect(one(release, "verdict").text).toBe("Whether it presses off cold cannot be told yet.");
    expect(one(release, "text").text).toMatch(
      /^Have heat ready, and press first\. In the middle case .* [\d.]+ °F warmer than the shaft, in the tightest with/,
    );
    const easy = hubFit({ ...base, friction: 0.06 });
    const cold = releaseOf(easy, pressRig(rig, easy.pressOff));
    expect(one(cold, "verdict")).toMatchObject({ outcome: "yes", text: "It presses off cold." });
    expect(one(cold, "text").text).toMatch(/^Heat is not needed/);
  });
  it("shows the ways with what stands against each", () => {
    const rows = one(release, "table").rows.map(({ cells }) => [cells[0], cells[2]]);
    expect(rows[0]).toEqual(["press cold", "shaft end allows 34000 lbf, the hub may need more"]);
    expect(rows.map(([name]) => name)).toEqual(["press cold", "press and heat the hub", "heat alone"]);
  });
});

describe("present(heating plan)", () => {
  const plan = heatingPlan({
    fit: seized,
    power: { low: kilowatt(5), high: kilowatt(7) },
    room: degF(65),
    remaining: release.interferenceLeft,
  });
  it("says for each case when it opens and for how long, or what it lacks", () => {
    const { outcome, because } = one(plan, "verdict");
    expect(outcome).toBe("cannot tell yet");
    expect(because).toMatch(
      /^Easy case: opens after [\d.]+ (s|min), stays open [\d.]+ min\. Middle case: opens/,
    );
    expect(because).toMatch(
      /Hard case: never opens; the hub leads the shaft by [\d.]+ °F at most and must by/,
    );
  });
  it("warns of a fierce flame by a verdict", () => {
    const fierce = heatingPlan({ fit: seized, power: kilowatt(25), room: degF(65) });
    const verdicts = shown(fierce).blocks.filter((block) => block.type === "verdict");
    expect(verdicts[1]).toMatchObject({ outcome: "no", text: "The flame is too fierce for the hub." });
  });
  it("draws temperatures and interference on one clock, as the page can draw it", () => {
    const { figure, caption } = one(plan, "figure");
    expect(() => finishFigure(figure)).not.toThrow();
    expect(figure.data.map(({ name }) => name)).toEqual([
      "hub, middle case",
      "shaft, middle case",
      "easy",
      "middle",
      "hard",
    ]);
    expect(caption).toContain("The strip is its window.");
    const first = (name: string): number => (figure.data.find((d) => d.name === name)!.y as number[])[0]!;
    expect(first("hub, middle case")).toBe(65);
    expect(first("shaft, middle case")).toBe(65);
  });
});

describe("present(material)", () => {
  it("names the source of every figure, for every metal of the handbook", () => {
    for (const metal of materials) {
      const { rows } = one(metal, "table");
      expect(rows.length).toBeGreaterThanOrEqual(8);
      for (const { cells } of rows) expect(cells.at(-1)!.length).toBeGreaterThan(10);
    }
  });
  it("shows the class of an iron as its strength in the unit system set", () => {
    setUnitSystem("inch");
    const tensile = one(iron, "table").rows.find(({ cells }) => cells[0] === "tensile strength")!;
    expect(tensile.cells.slice(1, 4)).toEqual(["20", "ksi", "20 to 22"]);
  });
});
