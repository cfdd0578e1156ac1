import { describe, expect, it } from "vitest";
import { material } from "../../kernel-helpers/handbook/index.js";
import { drawUpFor, meanInterference } from "../../kernel-helpers/joint/draw-up-cases.js";
import { type DrawUpInput, drawUp, interferenceFromDrawUp } from "../../kernel-helpers/joint/index.js";
import { inch, lbfFoot, measured, thou } from "../../kernel-helpers/quantity/index.js";
import { fitTaper, profileOf, readTable, type TaperFit } from "../../kernel-helpers/survey/index.js";
import type { Drawing } from "../../kernel-helpers/view/drawing/drawing.js";
import { drawingSize } from "../../kernel-helpers/view/drawing/drawing-svg.js";
import { present } from "../../kernel-helpers/view/present.js";
import { renderText } from "../../kernel-helpers/view/render-text.js";
import { expectClose } from "../support/expect-close.js";
import { expectNarrowLayout } from "../support/fits-telephone.js";

/** A taper surveyed at nine stations from 0 on, all but free of error. */
function taperOf(smallEnd: number, taper: number, length: number, uncertainty = 0.001): TaperFit {
  const rows = Array.from({ length: 9 }, (_, i) => (length * i) / 8).map(
    (x) => `${x},${(smallEnd + taper * x).toFixed(7)}`,
  );
  const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
  const table = readTable(bytes, { name: "taper", file: "taper.csv" });
  return fitTaper(
    profileOf(table, { readingUncertainty: thou(uncertainty), stationUncertainty: thou(uncertainty) }),
  );
}

const input: DrawUpInput = {
  // Hub of 4 in whose bore is 1 in up the shaft's taper when it touches.
  shaft: taperOf(2.0, 1 / 16, 6),
  bore: taperOf(2.0625, 1 / 16, 4),
  hub: {
    material: material("grey iron class 20"),
    outside: inch(5.5),
    length: inch(4),
    keywayDepth: inch(0.2),
  },
  shaftMaterial: material("steel"),
  friction: { low: 0.1, high: 0.2 },
  gauge: thou(1),
};
const small = { abs: 2e-3, because: "readings of a thousandth of a thou, drawn" };

describe("drawUp(input) with like tapers", () => {
  const up = drawUp(input);
  it("has a sketch for a telephone too, which says all that the wide one says", () => {
    const shown = present(up)!;
    const words = ({ shapes }: Drawing): readonly string[] =>
      shapes.flatMap((shape) => ("text" in shape ? [shape.text] : []));
    const wide = shown.blocks.find(({ type }) => type === "drawing");
    if (wide?.type !== "drawing") throw new Error("no sketch");
    expect(words(expectNarrowLayout(shown))).toEqual(words(wide.drawing));
  });
  it("finds first contact where the shaft has the diameter of the bore", () => {
    expectClose(up.firstContact.middle.in("inch"), 1, small);
    expectClose(up.gap.middle.in("thou"), 0, { abs: 0.01, because: "like tapers" });
  });
  // Source: tables of practice: 1:16, 0.010 in on diameter for 0.160 in drive-up; so 1 thou for 16.
  it("draws up sixteen times the interference wanted at 1:16", () => {
    const halfWay = up.fit.diameter.in("inch");
    expectClose(up.drawUp.low.in("inch"), 16 * 0.0005 * halfWay, { rel: 5e-3, because: "like tapers" });
    expectClose(up.drawUp.high.in("inch"), 16 * 0.001 * halfWay, { rel: 5e-3, because: "like tapers" });
    expectClose(up.seat.middle.si, up.firstContact.middle.plus(up.drawUp.middle).si, {
      rel: 1e-3,
      because: "contact and way",
    });
  });
  it("carries the gauge's doubt into the interference, as the plain formula does", () => {
    const plain = interferenceFromDrawUp(measured(up.drawUp.middle, thou(1)), measured(1 / 16, 0));
    expectClose(up.interference.value.si, plain.value.si, { rel: 5e-3, because: "like tapers" });
    expectClose(up.interference.standardUncertainty.si, plain.standardUncertainty.si, {
      rel: 0.03,
      because: "20 000 draws, and a little from the tapers",
    });
  });
  it("fits with the interference it says, and holds", () => {
    expectClose(up.fit.interference.middle.si, up.interference.value.si, { rel: 2e-3, because: "draws" });
    expect(up.verdict).toBe("holds");
    expect(up.stops).toEqual([]);
  });
});

describe("drawUp(input) with tapers apart", () => {
  it("bears first at the large end where the shaft is the steeper, by the gap along the hub", () => {
    const up = drawUp({ ...input, bore: taperOf(2.0625, 1 / 16 - 0.0002, 4) });
    expect(up.bearsFirst).toBe("at its large end");
    expectClose(up.gap.middle.in("thou"), 0.8, { abs: 0.01, because: "0.0002 in an inch over 4 in" });
    // Large end of the bore: 2.0625 + 4·(1/16 − 0.0002) = 2.3117; the shaft has it at 4.9872; less the hub.
    expectClose(up.firstContact.middle.in("inch"), (2.3117 - 2) * 16 - 4, small);
    expectClose(up.bearsAllAfter.middle.in("inch"), 0.0008 * 16, { rel: 0.02, because: "readings" });
  });
  it("bears first at the small end where the bore is the steeper", () => {
    const up = drawUp({ ...input, bore: taperOf(2.0625, 1 / 16 + 0.0002, 4) });
    expect(up.bearsFirst).toBe("at its small end");
    expectClose(up.firstContact.middle.in("inch"), 1, small);
  });
  it("warns where the hub would rock, and refuses two tapers that never fit", () => {
    const rocks = drawUp({ ...input, bore: taperOf(2.0625, 1 / 16 - 0.0008, 4) });
    expect(rocks.warnings.join()).toMatch(/bears at one end and rocks/);
    expect(() => drawUp({ ...input, bore: taperOf(2.0625, 1 / 12, 4) })).toThrow(
      /^drawUp: the two tapers must be near each other, got 0\.0625 for the shaft and 0\.08333 for the bore/,
    );
  });
});

describe("meanInterference(drawUp, taper, gap)", () => {
  it("is the mean over slices of what each place along the hub has", () => {
    for (const [way, gap] of [
      [0.02, 0.0008],
      [0.005, 0.0008],
      [0.02, 0],
    ] as const) {
      const n = 100_000;
      let sum = 0;
      for (let i = 0; i < n; i++) sum += Math.max(0, way / 16 - (gap * (i + 0.5)) / n);
      expectClose(meanInterference(way, 1 / 16, gap), sum / n, { rel: 1e-8, because: "100 000 slices" });
    }
  });
  it("is undone by drawUpFor", () => {
    for (const wanted of [0.0001, 0.0004, 0.002])
      expectClose(meanInterference(drawUpFor(wanted, 1 / 16, 0.0008), 1 / 16, 0.0008), wanted, {
        rel: 1e-12,
        because: "rounding",
      });
  });
});

describe("drawUp(input) with stops", () => {
  const halfWay = 2.1875;
  const least = 16 * 0.0005 * halfWay;
  it("bottoms first where the shoulder stands nearer than the least draw-up", () => {
    const up = drawUp({ ...input, shoulder: inch(5 + least - 0.01) });
    expect(up.verdict).toBe("bottoms first");
    expectClose(up.stops[0]!.chanceFirst, 1, { abs: 1e-3, because: "far nearer than the doubt" });
    expect(up.stops[0]!.left.high.si).toBeLessThan(0);
  });
  it("cannot tell where it stands just there, and tells with better readings", () => {
    const rough = { ...input, shaft: taperOf(2.0, 1 / 16, 6, 1) };
    const edge = drawUp({ ...rough, shoulder: inch(5 + least + 0.005) });
    expect(edge.verdict).toBe("cannot tell yet");
    expect(edge.reasons.join()).toMatch(
      /meets the shoulder before it has the least interference wanted in [\d.]+ %/,
    );
    expect(drawUp({ ...input, shoulder: inch(5 + least + 0.005) }).verdict).toBe("holds");
  });
  it("minds where the nut comes up against the shaft", () => {
    const up = drawUp({ ...input, nutStop: inch(1.01), shoulder: inch(6) });
    expect(up.verdict).toBe("bottoms first");
    expect(up.stops.map(({ what, chanceFirst }) => [what, Math.round(chanceFirst)])).toEqual([
      ["shoulder", 0],
      ["nut's stop", 1],
    ]);
  });
});

describe("drawUp(input) with nut and torque", () => {
  const nut = { thread: "1 1/2-6 UNC", factor: { low: 0.15, high: 0.2 } };
  const up = drawUp({ ...input, nut, torque: lbfFoot(573) });
  // Source: Shigley & Nisbett, 9th edition, equation 8-27: T = K F d.
  it("gives the nut's torque by the nut factor, on the force that draws it up", () => {
    const expected = (0.15 * up.fit.pressOn.low.in("lbf") * 1.5) / 12;
    expectClose(up.nutTorque!.low.in("lbfFoot"), expected, { rel: 1e-9, because: "rounding" });
    expectClose(
      up.threadLoad!,
      up.fit.pressOn.high.in("lbf") / (1.405 * input.shaftMaterial.yield!.value.in("psi")),
      {
        rel: 1e-3,
        because: "the stress area is printed to four digits",
      },
    );
    expect(up.threadLoad! > 0.75).toBe(/loads the thread/.test(up.warnings.join()));
  });
  it("says in how many cases friction alone carries the torque", () => {
    expect(up.chanceCarries).toBe(1);
    const heavy = drawUp({ ...input, torque: lbfFoot(1e5) });
    expect([heavy.chanceCarries, heavy.verdict]).toEqual([0, "does not hold"]);
  });
});

describe("drawUp(input) stops at", () => {
  it.each([
    [
      "a bore wider than the hub",
      { hub: { ...input.hub, outside: inch(2) } },
      /^drawUp: the bore's large end must be smaller than hub\.outside/,
    ],
    [
      "a hub of no length",
      { hub: { ...input.hub, length: inch(0) } },
      /^drawUp: hub\.length must be more than 0/,
    ],
    ["a gauge of negative doubt", { gauge: thou(-1) }, /^drawUp: gauge must be 0 or more/],
    [
      "a taper counted from its large end",
      { shaft: taperOf(2.4, -1 / 16, 6) },
      /^drawUp: the shaft's diameter must grow with the station/,
    ],
    [
      "a nut factor upside down",
      { nut: { thread: "1 1/2-6 UNC", factor: { low: 0.3, high: 0.2 } } },
      /^drawUp: nut\.factor must run from low to high/,
    ],
  ])("%s", (_, change, message) => {
    expect(() => drawUp({ ...input, ...change } as DrawUpInput)).toThrow(message);
  });
});

describe("present(draw-up)", () => {
  const up = drawUp({
    ...input,
    bore: taperOf(2.0625, 1 / 16 - 0.0002, 4),
    shoulder: inch(5.2),
    nutStop: inch(1.5),
    torque: lbfFoot(573),
    nut: { thread: "1 1/2-6 UNC", factor: { low: 0.15, high: 0.2 } },
  });
  it("says how far to draw it up, with verdict, stops and torque", () => {
    const text = renderText(present(up)!).replace(/\s+/g, " ");
    expect(text).toMatch(/VERDICT YES: It holds: draw it up 0\.0\d+ in from first contact\./);
    expect(text).toMatch(/bears first at its large end/);
    expect(text).toMatch(/torque on the nut \d+ to \d+ lbf·ft/);
    expect(text).toMatch(/way left to the shoulder/);
  });
  it("draws it within its frame, with a mark where it touches first", () => {
    const block = present(up)!.blocks.find((b) => b.type === "drawing")!;
    const size = drawingSize(block.drawing);
    expect([size.width <= block.drawing.width, size.height <= block.drawing.height]).toEqual([true, true]);
    expect(
      block.drawing.shapes.filter((shape) => shape.type === "circle" && shape.pen === "warn").length,
    ).toBe(2);
    expect(block.alt).toMatch(/It bears first at its large end\. Left when it sits:/);
  });
});
