import { describe, expect, it } from "vitest";
import { boxCooling, boxesOnJournals } from "../../../kernel-helpers/bearing/index.js";
import { oil } from "../../../kernel-helpers/handbook/index.js";
import { inch, lbf, measured, quantity, rpm, thou } from "../../../kernel-helpers/quantity/index.js";
import { finishedJournals } from "../../../kernel-helpers/shaft/index.js";

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
});
