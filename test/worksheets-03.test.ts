import { beforeAll, describe, expect, it } from "vitest";
import type { HeatingPlan, HubFit, PressRig, Release } from "../kernel-helpers/joint/index.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemoRun } from "./support/run-demo.js";

// What the demos' facts must come to, reckoned here by hand: sizes in metres, moduli in pascals.
const truths = [
  {
    demo: "demo",
    // Half-way along the seat, 2.125 in from the stop, on the taper the readings were made with.
    diameter: 2.258 * 0.0254,
    length: 4.25 * 0.0254,
    outside: 5.5 * 0.0254,
    halfTaper: 1 / 32,
    friction: 0.35,
    cold: "cannot tell yet",
    rig: "cannot tell yet",
  },
  {
    demo: "demo-metric",
    diameter: 0.0553,
    length: 0.06,
    outside: 0.12,
    halfTaper: 1 / 20,
    friction: 0.15,
    cold: "yes",
    rig: "stands",
  },
] as const;

describe.each(truths)("worksheet 03 on $demo", (truth) => {
  let folder: string;
  const published = <T>(name: string): T =>
    publishedValue(readSheetRecord(folder, "03-hub-removal")!, name) as T;

  beforeAll(async () => {
    folder = await copyOfDemoRun(truth.demo);
  }, 240_000);

  it("finds the seat on the taper and a force near the middle of the ranges, reckoned by hand", () => {
    const fit = published<HubFit>("hubFit");
    expectClose(fit.diameter.si, truth.diameter, {
      rel: 1e-3,
      because: "the taper's readings and the faces",
    });
    expectClose(fit.length.si, truth.length, { rel: 1e-9, because: "two stations" });
    const [d, outside] = [truth.diameter, truth.outside];
    const hub = ((outside ** 2 + d ** 2) / (outside ** 2 - d ** 2) + 0.26) / (11.8e6 * 6894.757);
    const pressure = (0.00075 * d) / (d * (hub + (1 - 0.3) / 207e9));
    const force = Math.PI * d * truth.length * pressure * (truth.friction - truth.halfTaper);
    expectClose(fit.pressOff.middle.si, force, {
      rel: 0.06,
      because: "the middle of a product is not the product of the middles; measured 4 %",
    });
    expect(fit.selfHolding.chance).toBe(1);
    expect(fit.hubStress).toMatchObject({ rule: "largest tension", verdict: "holds" });
    expect(fit.narrowing[0]!.input).toBe("friction");
  });
  it("judges the rig by its weakest part, the end of the shaft", () => {
    const rig = published<PressRig>("pressRig");
    expect(rig).toMatchObject({ weakest: "shaft end", verdict: truth.rig });
    expect(rig.checks.find(({ part }) => part === "shaft end")!.pressForce.si).toBe(rig.rating.si);
    expect(rig.ram.verdict).toBe("reaches");
  });
  it("says whether it comes off cold, and what heat adds", () => {
    const release = published<Release>("release");
    expect(release.cold).toBe(truth.cold);
    const heating = published<HeatingPlan>("heating");
    expect(heating.gentle).toBe(true);
    expect(heating.remaining.si).toBe(release.interferenceLeft.si);
    expect(heating.cases[1].opens).toBeDefined();
    if (truth.cold === "yes") expect(release.warmer.high.si).toBe(0);
    else expect(release.warmer.high.si).toBeGreaterThan(release.warmer.middle.si);
  });
});
