import { describe, expect, it } from "vitest";
import { type Hand, type NutDutyWords, predictHand, threadHand } from "../../kernel-helpers/joint/index.js";

/**
 * Every combination, worked out by hand and marked so: common practice, no source. Read a row like this: the shaft
 * drives, turns clockwise as seen facing the nut; the wheel holds back, so on the shaft it creeps counter-clockwise and
 * drags the nut that way; a nut dragged counter-clockwise tightens if it is left-hand.
 */
const byHand: readonly (readonly [
  driver: "shaft" | "wheel",
  rotation: "clockwise" | "counter-clockwise",
  seenFrom: "nut side" | "far side",
  contact: "drag" | "rolling",
  running: Hand,
  brakeOnDriver: Hand,
  brakeOnDriven: Hand,
])[] = [
  ["shaft", "clockwise", "nut side", "drag", "left", "right", "left"],
  ["shaft", "counter-clockwise", "nut side", "drag", "right", "left", "right"],
  ["shaft", "clockwise", "far side", "drag", "right", "left", "right"],
  ["shaft", "counter-clockwise", "far side", "drag", "left", "right", "left"],
  ["wheel", "clockwise", "nut side", "drag", "right", "left", "right"],
  ["wheel", "counter-clockwise", "nut side", "drag", "left", "right", "left"],
  ["wheel", "clockwise", "far side", "drag", "left", "right", "left"],
  ["wheel", "counter-clockwise", "far side", "drag", "right", "left", "right"],
  // A loose wheel that rolls round turns the nut against its creep.
  ["shaft", "clockwise", "nut side", "rolling", "right", "left", "right"],
  ["shaft", "counter-clockwise", "nut side", "rolling", "left", "right", "left"],
  ["shaft", "clockwise", "far side", "rolling", "left", "right", "left"],
  ["shaft", "counter-clockwise", "far side", "rolling", "right", "left", "right"],
  ["wheel", "clockwise", "nut side", "rolling", "left", "right", "left"],
  ["wheel", "counter-clockwise", "nut side", "rolling", "right", "left", "right"],
  ["wheel", "clockwise", "far side", "rolling", "right", "left", "right"],
  ["wheel", "counter-clockwise", "far side", "rolling", "left", "right", "left"],
];

describe("predictHand(duty)", () => {
  it("is asked for every combination, each once", () => {
    expect(new Set(byHand.map((row) => row.slice(0, 4).join())).size).toBe(2 ** 4);
  });
  it.each(byHand)(
    "%s drives, %s from the %s, %s: running %s",
    (driver, rotation, seenFrom, contact, ...hands) => {
      const duty = { driver, rotation, seenFrom, contact };
      const [running, brakeOnDriver, brakeOnDriven] = hands;
      expect(predictHand(duty)).toMatchObject({ hand: running, whenBraking: undefined });
      expect(predictHand({ ...duty, brake: "driver" })).toMatchObject({
        hand: running,
        whenBraking: brakeOnDriver,
      });
      expect(predictHand({ ...duty, brake: "driven" })).toMatchObject({
        hand: running,
        whenBraking: brakeOnDriven,
      });
      expect(predictHand(duty).steps.at(-1)).toBe(
        `Turned ${running === "right" ? "clockwise" : "counter-clockwise"}, a ${running}-hand nut tightens.`,
      );
    },
  );

  // Cases of the trade, common practice, no source.
  it("gives the two ends of one grinder spindle opposite hands: right on the right, left on the left", () => {
    // Seen from its right end a bench grinder turns counter-clockwise, so that the front runs down.
    const rightEnd = predictHand({ driver: "shaft", rotation: "counter-clockwise", seenFrom: "nut side" });
    const leftEnd = predictHand({ driver: "shaft", rotation: "counter-clockwise", seenFrom: "far side" });
    expect([rightEnd.hand, leftEnd.hand]).toEqual(["right", "left"]);
  });
  it("gives a table fan, driven by its shaft clockwise as seen from the nut, a left-hand nut", () => {
    expect(predictHand({ driver: "shaft", rotation: "clockwise", seenFrom: "nut side" }).hand).toBe("left");
  });
  it("gives two wheels on the same side, turning the same way, opposite hands if one is driven and one drives", () => {
    const same = { rotation: "clockwise", seenFrom: "nut side" } as const;
    expect(predictHand({ driver: "shaft", ...same }).hand).not.toBe(
      predictHand({ driver: "wheel", ...same }).hand,
    );
  });

  it("names the field that is wrong", () => {
    const good: NutDutyWords = { driver: "wheel", rotation: "clockwise", seenFrom: "nut side" };
    expect(() => predictHand({ ...good, driver: "belt" })).toThrow(
      /predictHand: driver must be "shaft" or "wheel", got "belt"/,
    );
    expect(() => predictHand({ ...good, rotation: "" })).toThrow(/rotation must be "clockwise" or/);
    expect(() => predictHand({ ...good, seenFrom: "left" })).toThrow(
      /seenFrom must be "nut side" or "far side"/,
    );
    expect(() => predictHand({ ...good, brake: "hand" })).toThrow(
      /brake must be "none" or "driver" or "driven"/,
    );
    expect(() => predictHand({ ...good, contact: "loose" })).toThrow(/contact must be "drag" or "rolling"/);
  });
});

describe("threadHand(prediction, look)", () => {
  const right = predictHand({ driver: "wheel", rotation: "clockwise", seenFrom: "nut side" });
  it("turns a right-hand nut counter-clockwise to undo it, a left-hand one clockwise", () => {
    expect(threadHand(right, { seen: "right" })).toMatchObject({
      agrees: true,
      loosen: "counter-clockwise",
      tighten: "clockwise",
    });
    const left = predictHand({ driver: "wheel", rotation: "counter-clockwise", seenFrom: "nut side" });
    expect(threadHand(left, { seen: "Left-hand" })).toMatchObject({
      seen: "left",
      agrees: true,
      loosen: "clockwise",
      tighten: "counter-clockwise",
    });
  });
  it("stops at a conflict until the reason is written, and then believes the thread", () => {
    expect(() => threadHand(right, { seen: "left" })).toThrow(
      /the thread seen is left-hand, but running calls for right-hand\. Stop\..*pulls ahead/,
    );
    for (const resolved of ["", "  ", "ok", "it is"])
      expect(() => threadHand(right, { seen: "left", resolved })).toThrow(/Stop/);
    const settled = threadHand(right, {
      seen: "left",
      resolved: "traced twice with a needle; the pulley once stood on the other end",
    });
    expect(settled).toMatchObject({ agrees: false, seen: "left", loosen: "clockwise" });
    expect(settled.resolved).toMatch(/needle/);
    expect(settled.text).toMatch(/against what running calls for/);
  });
  it("keeps no reason where there is nothing to resolve", () => {
    expect(threadHand(right, { seen: "right", resolved: "left over from before" }).resolved).toBeUndefined();
  });
  it("stops while the hand has not been seen", () => {
    for (const seen of ["", "not seen yet", "both", undefined as unknown as string])
      expect(() => threadHand(right, { seen })).toThrow(
        /threadHand: seen must be "right" or "left", as seen on the thread itself.*nobody pulls yet/,
      );
  });
});
