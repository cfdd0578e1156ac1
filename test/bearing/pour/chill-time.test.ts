import { describe, expect, it } from "vitest";
import { type ChillOptions, chillTimes } from "../../../kernel-helpers/bearing/index.js";
import { expectClose } from "../../support/expect-close.js";

const heats: ChillOptions = {
  metal: 400,
  freezing: 1e5,
  mould: 6000,
  conductance: 100,
  poured: 700,
  liquidus: 620,
  solidus: 510,
  mouldAt: 400,
};

describe("chillTimes(options, share)", () => {
  it("agrees with the balance stepped in small steps of time", () => {
    const times = chillTimes(heats, 0.3);
    let [metal, mould, t] = [700, 400, 0];
    const passed: number[] = [];
    const ends = [620, 620 - 0.3 * 110, 510];
    const step = 1e-3;
    while (ends.length > passed.length) {
      const capacity = metal > 620 ? 400 : 1e5 / 110;
      const heat = 100 * (metal - mould) * step;
      metal -= heat / capacity;
      mould += heat / 6000;
      t += step;
      if (metal <= ends[passed.length]!) passed.push(t);
    }
    const found = [times.liquidus!, times.share!, times.solidus!];
    found.forEach((time, i) => {
      expectClose(time, passed[i]!, { rel: 2e-3, because: "Euler's steps of 1 ms" });
    });
  });
  it("tends to the plain exponential in a mould without end", () => {
    const { liquidus } = chillTimes({ ...heats, mould: 1e12 }, 0.3);
    expectClose(liquidus!, 4 * Math.log(300 / 220), { rel: 1e-6, because: "Newton's law of cooling" });
  });
  it("never gets solid in a mould that warms up first", () => {
    expect(chillTimes({ ...heats, mould: 900 }, 0.1).solidus).toBeUndefined();
  });
  it("refuses temperatures that do not fall", () => {
    expect(() => chillTimes({ ...heats, poured: 600 }, 0.3)).toThrow("must fall from pouring to liquidus");
    expect(() => chillTimes({ ...heats, conductance: 0 }, 0.3)).toThrow("conductance must be above 0, got 0");
    expect(() => chillTimes(heats, 1)).toThrow("share must lie between 0 and 1, got 1");
  });
});
