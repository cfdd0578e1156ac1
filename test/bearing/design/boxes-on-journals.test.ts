import { describe, expect, it } from "vitest";
import {
  boxCooling,
  boxesOnJournals,
  filmMap,
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
import { finishedJournals, type JournalLoad } from "../../../kernel-helpers/shaft/index.js";

const load = { force: measured(lbf(900), lbf(90)), turnsWithShaft: false };
const near = { name: "pulley box", from: inch(5), to: inch(13), diameter: measured(inch(2.425), thou(0.2)) };
const common = {
  length: inch(8),
  diametralClearance: measured(thou(4), thou(0.4)),
  oil: oil("ISO VG 100"),
  boxSurface: quantity(230, "inch2"),
  cooling: boxCooling("still air"),
  roughness: thou(0.06),
};

describe("boxesOnJournals(journals, common)", () => {
  it("takes name, diameter, load and speed from the journals", () => {
    const [box] = boxesOnJournals(
      finishedJournals({ journals: [{ ...near, load }], speed: rpm(110) }),
      common,
    );
    expect(box).toMatchObject({ name: "pulley box", diameter: inch(2.425), load: load.force });
    expect(box!.speed).toEqual(rpm(110));
  });
  it("refuses a journal without a load, and no speed anywhere", () => {
    expect(() => boxesOnJournals(finishedJournals({ journals: [near], speed: rpm(110) }), common)).toThrow(
      /"pulley box" must carry a load above 0, got none/,
    );
    expect(() => boxesOnJournals(finishedJournals({ journals: [{ ...near, load }] }), common)).toThrow(
      /carry no speed/,
    );
  });
  it("tells where the parting lines lie to a load that has a direction, and the film ends there", () => {
    const aside = { ...load, direction: degree(299), seenFrom: "the driven pulley" };
    const journals = finishedJournals({ journals: [{ ...near, load: aside }], speed: rpm(110) });
    const boxes = boxesOnJournals(journals, { ...common, turning: "clockwise" });
    expect(boxes[0]!.grooves!.map((angle) => Math.round(angle.in("degree")))).toEqual([-151, 29]);
    const [box] = runningPrediction(boxes, degF(65)).boxes;
    expect(box!.film.grooves).toEqual(boxes[0]!.grooves);
    const map = filmMap(box!, { ...boxes[0]!, roughness: common.roughness });
    for (const groove of map.grooves) {
      const at = map.angles.findIndex((angle) => Math.abs(angle.si - groove.si) < 1e-6);
      expect(Math.max(...map.pressure.map((row) => row[at]!))).toBe(0);
    }
    // A line just behind the load takes away what carries it: thinner than with the load midway.
    const midway = runningPrediction(
      boxes.map((one) => ({ ...one, grooves: [-90, 90].map((angle) => degree(angle)) })),
      degF(65),
    ).boxes[0]!;
    expect(box!.film.filmRatio).toBeLessThan(midway.film.filmRatio);
  });
  it("refuses a direction without a turning, and a load that turns with the shaft", () => {
    const aside = { ...load, direction: degree(299), seenFrom: "the driven pulley" };
    const of = (one: JournalLoad) =>
      finishedJournals({ journals: [{ ...near, load: one }], speed: rpm(110) });
    expect(() => boxesOnJournals(of(aside), common)).toThrow(/"pulley box" has a direction: turning must be/);
    expect(() => boxesOnJournals(of({ ...load, turnsWithShaft: true }), common)).toThrow(
      /"pulley box" must stand still, got one that turns with the shaft/,
    );
  });
});
