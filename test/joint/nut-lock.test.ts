import { describe, expect, it } from "vitest";
import { threadNamed } from "../../kernel-helpers/handbook/index.js";
import { type DrawUp, nutLock, predictHand, threadHand } from "../../kernel-helpers/joint/index.js";
import { inch, lbfFoot, measured, mm, thou } from "../../kernel-helpers/quantity/index.js";
import { present } from "../../kernel-helpers/view/present.js";
import { renderText } from "../../kernel-helpers/view/render-text.js";
import { expectClose } from "../support/expect-close.js";

const rounding = { rel: 1e-9, because: "a few roundings" };
const duty = { driver: "wheel", rotation: "clockwise", seenFrom: "nut side" } as const;
const right = threadHand(predictHand(duty), { seen: "right" });
const thread = "1 1/2-6 UNC";
/** What of a draw-up the nut looks at: 1:16, drawn up by 0.02 to 0.04 in. */
const up = {
  shaftTaper: { kind: "measured", value: 1 / 16, standardUncertainty: 1e-5, degreesOfFreedom: 20 },
  drawUp: { low: inch(0.02), middle: inch(0.03), high: inch(0.04) },
  interference: measured(thou(1.875), thou(0.1)),
  nutTorque: { low: lbfFoot(300), high: lbfFoot(900) },
} as unknown as DrawUp;
const pin = { hand: right, drawUp: up, thread, lock: "split pin, 6 slots and 2 holes", places: 12 };

describe("nutLock(input)", () => {
  it("turns a screw by 360° a pitch: 0.03 in at 6 threads an inch are 64.8°", () => {
    const { turn, step } = nutLock(pin);
    expectClose(turn.middle.in("degree"), 0.03 * 6 * 360, rounding);
    expectClose(turn.high.in("degree") / turn.low.in("degree"), 2, rounding);
    expectClose(step.angle.in("degree"), 30, rounding);
    expectClose(step.way.in("inch"), 1 / 72, rounding);
    // 1 thou on diameter for 16 along a taper of 1:16 (published with tapered hubs; here by geometry).
    expectClose(step.interference.in("thou"), 1000 / 72 / 16, rounding);
  });
  it("goes once round in as many places as it has", () => {
    for (const places of [1, 2, 6, 12, 36]) {
      const { step } = nutLock({ ...pin, places });
      expectClose(places * step.way.si, threadNamed(thread).pitch.si, rounding);
    }
  });
  it("finds a place wherever the hub stands if the draw-up allowed is as wide as a step, else in a share", () => {
    expect(nutLock(pin).verdict).toBe("locks");
    const coarse = nutLock({ ...pin, places: 6 });
    // 0.02 in allowed, 1/36 in from place to place.
    expectClose(coarse.chancePlace, 0.02 * 36, rounding);
    expect(coarse.verdict).toBe("may fall between two places");
    expect(coarse.reasons.join()).toMatch(/In 28 % of the cases no place .*never turn the nut back/);
    // The same by trying: places of the lock against a window that moves by a hundredth of a step.
    const hits = Array.from({ length: 1000 }, (_, i) => {
      const from = (i / 1000) * (1 / 36);
      const next = Math.ceil(from * 36) / 36;
      return next <= from + 0.02;
    });
    expectClose(hits.filter(Boolean).length / 1000, coarse.chancePlace, {
      rel: 2e-3,
      because: "a thousand trials, evenly spaced",
    });
  });
  it("adds torque in proportion to the interference", () => {
    const { stepTorque, step } = nutLock(pin);
    expectClose(stepTorque!.in("lbfFoot"), (900 * step.interference.in("thou")) / 1.875, rounding);
    const without = { ...up, nutTorque: undefined } as unknown as DrawUp;
    expect(nutLock({ ...pin, drawUp: without }).stepTorque).toBeUndefined();
  });
  // Common practice, no source: the driven member drags the nut its way; the hand seen wins over the one called for.
  it("says what running and braking do to a nut whose lock is forgotten", () => {
    expect(nutLock(pin)).toMatchObject({ tighten: "clockwise", running: "tightens it", braking: undefined });
    const left = threadHand(predictHand(duty), { seen: "left", resolved: "the stud was renewed once" });
    expect(nutLock({ ...pin, hand: left })).toMatchObject({
      tighten: "counter-clockwise",
      loosen: "clockwise",
      running: "loosens it",
    });
    const braked = threadHand(predictHand({ ...duty, brake: "driver" }), { seen: "right" });
    expect(nutLock({ ...pin, hand: braked })).toMatchObject({
      running: "tightens it",
      braking: "loosens it",
    });
    expect(nutLock({ ...pin, hand: braked }).reasons[0]).toMatch(/but braking loosens it; locked it must be/);
  });
  it("refuses a lock without name or places, and a thread nobody knows", () => {
    expect(() => nutLock({ ...pin, lock: " " })).toThrow(/lock must say what keeps the nut/);
    expect(() => nutLock({ ...pin, places: 0 })).toThrow(/whole number of at least 1.*got 0/);
    expect(() => nutLock({ ...pin, places: 2.5 })).toThrow(/got 2.5/);
    expect(() => nutLock({ ...pin, thread: "9/7-3 XYZ" })).toThrow(/9\/7-3 XYZ/);
  });
});

describe("present(nut lock)", () => {
  it("says which way, how far, and what one place more does, in inch and in mm", () => {
    const text = renderText(present(nutLock(pin))!).replace(/\s+/g, " ");
    expect(text).toMatch(/it locks within the draw-up wanted/);
    expect(text).toMatch(/clockwise/);
    expect(text).toMatch(/65° \(43° to 86°\)/);
    expect(text).toMatch(/0\.014 in of draw-up, 0\.87 thou of interference/);
    const metric = {
      ...up,
      drawUp: { low: mm(0.2), middle: mm(0.3), high: mm(0.4) },
    } as unknown as DrawUp;
    expect(
      renderText(present(nutLock({ ...pin, drawUp: metric, thread: "M36 × 3" }))!).replace(/\s+/g, " "),
    ).toMatch(/0\.25 mm of draw-up, 16 µm/);
  });
});
