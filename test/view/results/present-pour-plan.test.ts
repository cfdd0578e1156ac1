import { describe, expect, it } from "vitest";
import { jointsToLoad, pourPlan } from "../../../kernel-helpers/bearing/index.js";
import { babbitt } from "../../../kernel-helpers/handbook/index.js";
import {
  degC,
  degree,
  kilogram,
  measured,
  micrometre,
  mm,
  quantity,
  second,
} from "../../../kernel-helpers/quantity/index.js";
import { drawingExtent } from "../../../kernel-helpers/view/drawing/drawing-extent.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";
import { expectClose } from "../../support/expect-close.js";
import { expectNarrowLayout } from "../../support/fits-telephone.js";

const plan = pourPlan({
  name: "pulley box",
  alloy: babbitt(3),
  journal: measured(mm(59.9), micrometre(4)),
  clearance: micrometre(90),
  allowance: mm(0.3),
  shellBore: mm(80),
  length: mm(120),
  shellMass: kilogram(6),
  anchors: { count: 4, mouth: quantity(80, "mm2"), depth: mm(5) },
  shims: mm(1.5),
  riser: { diameter: mm(25), height: mm(50) },
  loss: 0.15,
  shellPreheat: degC(130),
  mandrelPreheat: degC(150),
  shop: degC(18),
  loadAt: degree(30),
  fillTime: second(2),
});
const shown = presentResult(plan)!;
const facts = shown.blocks.flatMap((block) => (block.type === "facts" ? block.facts : []));
const fact = (label: string): string => facts.find((one) => one.label === label)!.value;

describe("the pour card", () => {
  it("says first whether it fills, then shows the box, then what to read off at the pot", () => {
    expect(shown.title).toBe("Pour card: pulley box");
    expect(shown.ownPage).toBe(true);
    expect(shown.blocks.slice(0, 3).map(({ type }) => type)).toEqual(["verdict", "drawing", "facts"]);
    expect(shown.blocks[0]).toMatchObject({
      type: "verdict",
      because: expect.stringMatching(/^Filled in 2 s\./),
    });
  });
  it("gives sizes in the shop's unit, and names the clearance DIAMETRAL", () => {
    // As sure as the journal it is turned for: U = 1.96 u, which plan's journal gives.
    const [value, spread] = fact("turn the mandrel to").split(" ± ");
    expect(value).toBe(plan.mandrel.in("mm").toFixed(4));
    expectClose(Number.parseFloat(spread!), 1.96 * plan.journal.standardUncertainty.in("mm"), {
      rel: 0.01,
      because: "shown to two digits",
    });
    expect(fact("pour at")).toBe("491 °C");
    expect(facts.find(({ label }) => label === "finished bore")!.note).toMatch(
      /90 µm of DIAMETRAL clearance/,
    );
  });
  it("ends with what is looked at on the day, and room to write what it was", () => {
    const table = shown.blocks.find(({ type }) => type === "table");
    if (table?.type !== "table") throw new Error("the card has its table");
    expect(table.columns.map(({ title }) => title)).toEqual(["look at", "to be", "was"]);
    const told = new Map(table.rows.map(({ cells }) => [String(cells[0]), String(cells[1])]));
    expect(told.get("metal, stirred and skimmed")).toBe("491 ± 30 °C");
    expect(told.get("shell, mandrel")).toBe("130 °C, 150 °C");
    expect(table.rows.every(({ cells }) => /^_+$/.test(String(cells[2])))).toBe(true);
  });
  it("keeps grooves out of the loaded arc, in the drawing and in words", () => {
    expect(fact("oil grooves")).toMatch(/none within 60° of the load, which presses 30° from straight down/);
    const block = shown.blocks[1]!;
    if (block.type !== "drawing") throw new Error("the second block is the drawing");
    const arc = block.drawing.shapes.find((shape) => shape.type === "arc")!;
    expect(arc).toMatchObject({ from: -120, to: 0, pen: "warn" });
    expect(block.alt).toMatch(/oil grooves at the two joints, none within 60 degrees/);
    expect(drawingExtent(block.drawing)).toMatchObject({ left: 0, top: 0 });
  });
  it("sets the two views one under the other for a telephone", () => {
    const { shapes } = expectNarrowLayout(shown);
    const at = (text: string): number => {
      const found = shapes.find((shape) => shape.type === "text" && shape.text === text);
      return found?.type === "text" ? found.at[1] : Number.NaN;
    };
    expect(at("cut along the shaft") - at("from the end")).toBeGreaterThan(300);
  });
  it("writes the mandrel's size in the half that the load's arrow leaves free", () => {
    const placed = (of: typeof plan): number => {
      const block = presentResult(of)!.blocks.find(({ type }) => type === "drawing");
      if (block?.type !== "drawing") throw new Error("the card has its drawing");
      const word = block.drawing.shapes.find((shape) => shape.type === "text" && shape.text === "mandrel");
      return word?.type === "text" ? word.at[1] : Number.NaN;
    };
    const upwards = { ...plan, loadAt: degree(120), joints: jointsToLoad(degree(120)) };
    expect(placed(plan)).toBeLessThan(190);
    expect(placed(upwards)).toBeGreaterThan(190);
  });
  it("grooves no joint that the load presses near to", () => {
    const aside = { ...plan, loadAt: degree(299), joints: jointsToLoad(degree(299)) };
    const { blocks } = presentResult(aside)!;
    const rule = blocks
      .flatMap((block) => (block.type === "facts" ? block.facts : []))
      .find(({ label }) => label === "oil grooves");
    expect(rule!.value).toMatch(/^cut from the right parting line alone/);
    expect(rule!.value).toMatch(/the left parting line lies 29° from it, so there no groove and no relief/);
    const drawn = blocks.find((block) => block.type === "drawing")!;
    expect(drawn.alt).toMatch(/an oil groove at the right joint, none within 60 degrees/);
    const oils = (of: typeof drawn): number =>
      of.drawing.shapes.filter((shape) => "fill" in shape && shape.fill === "oil").length;
    const both = shown.blocks.find((block) => block.type === "drawing")!;
    expect(oils(both) - oils(drawn)).toBe(1);
  });
});
