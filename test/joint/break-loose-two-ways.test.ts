import { describe, expect, it } from "vitest";
import { nutFactorOf, threadNamed } from "../../kernel-helpers/handbook/index.js";
import {
  breakLooseTwoWays,
  type NutRemoval,
  nutRemoval,
  screwTorque,
} from "../../kernel-helpers/joint/index.js";
import { lbf, psi } from "../../kernel-helpers/quantity/index.js";
import { compareMeasured } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";

const removalOf = (thread: string, state: string): NutRemoval =>
  nutRemoval({ thread: threadNamed(thread), yield: psi(36000), state });

describe("breakLooseTwoWays(removal)", () => {
  it("rests on the published K: friction 0.15 in thread and seat is a nut factor of 0.20", () => {
    // Shigley & Nisbett, 9th ed., p. 437, below eq. 8-27 (from memory): whatever the bolt, f = f_c = 0.15 gives K ≈ 0.20.
    for (const name of ["1/2-13 UNC", "3/4-16 UNF", "1 1/2 in BSW", "M36 × 3"]) {
      const thread = threadNamed(name);
      const { whole } = screwTorque({ thread, preload: lbf(1000), friction: 0.15 }, "tighten");
      expectClose(whole.si / (lbf(1000).si * thread.majorDiameter.si), 0.2, {
        rel: 0.06,
        because: "published to two digits for all sizes; measured 5 %",
      });
    }
  });
  it("takes off for the lead what lies between tightening and loosening", () => {
    const thread = threadNamed("1 1/2 in BSW");
    const nut = { thread, preload: lbf(1000), friction: 0.1 };
    const between = screwTorque(nut, "tighten").whole.si - screwTorque(nut, "loosen").whole.si;
    expectClose(between, (lbf(1000).si * thread.pitch.si) / Math.PI, {
      rel: 0.02,
      because: "1 + (f/cos α)², 1.3 % at this friction",
    });
  });
  it("gives middle and u = half the range/√3 of the nut factor, at the middle of the preload", () => {
    const removal = removalOf("1 1/2 in BSW", "oiled");
    const { value, standardUncertainty } = breakLooseTwoWays(removal).byFactor;
    const { low, high } = nutFactorOf("lubricated");
    const arm = ((removal.preload.low.si + removal.preload.high.si) / 2) * 1.5 * 0.0254;
    expectClose(standardUncertainty.si, (arm * (high - low)) / Math.sqrt(12), {
      rel: 1e-12,
      because: "its definition",
    });
    expectClose(value.si, arm * 0.18 - arm / 1.5 / 6 / Math.PI, { rel: 1e-12, because: "its definition" });
  });
  it.each(["anti-seize", "oiled", "dry", "rusted", "seized"])("finds both to agree for %s", (state) => {
    for (const thread of ["3/4-16 UNF", "1 1/2 in BSW", "M36 × 3"]) {
      const { byFriction, byFactor } = breakLooseTwoWays(removalOf(thread, state));
      expect(compareMeasured(["friction", byFriction], ["factor", byFactor]).agrees).toBe(true);
    }
  });
  it("does not find a nut named dry to agree with one that is freshly pasted", () => {
    const pasted = breakLooseTwoWays(removalOf("1 1/2 in BSW", "anti-seize")).byFriction;
    const dry = breakLooseTwoWays(removalOf("1 1/2 in BSW", "dry")).byFactor;
    expect(compareMeasured(["pasted", pasted], ["dry", dry]).agrees).toBe(false);
  });
  it("rejects a state it has no nut factor for", () => {
    expect(() => breakLooseTwoWays({ ...removalOf("1 1/2 in BSW", "dry"), state: "waxed" })).toThrow(
      /breakLooseTwoWays: state must be one of anti-seize, .*, got "waxed"/,
    );
  });
});
