import { describe, expect, it } from "vitest";
import { inch, micrometre, mm } from "../../../kernel-helpers/quantity/index.js";
import { type DrawnStretch, shaftDrawing } from "../../../kernel-helpers/shaft/index.js";
import { drawingSvg } from "../../../kernel-helpers/view/drawing/drawing-svg.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { expectClose } from "../../support/expect-close.js";
import { expectNarrowLayout } from "../../support/fits-telephone.js";

const seat: DrawnStretch = { name: "seat", length: mm(60), diameter: mm(54), endDiameter: mm(60) };
const journal: DrawnStretch = {
  name: "journal",
  length: mm(90),
  diameter: mm(60),
  tolerance: "f7",
  roughness: micrometre(0.8),
};
const given = { title: "Pump <shaft>", material: "steel" };

describe("shaftDrawing({ title, material, stretches })", () => {
  const drawn = shaftDrawing({ ...given, stretches: [seat, journal] });
  it("holds a diameter to the published limits of its zone: 60 f7 is −30, −60 µm", () => {
    const { limits } = drawn.stretches[1]!;
    expectClose(limits!.largest.in("mm"), 59.97, { rel: 1e-9, because: "ISO 286-2, 60 f7" });
    expectClose(limits!.smallest.in("mm"), 59.94, { rel: 1e-9, because: "ISO 286-2, 60 f7" });
  });
  it("is drawn for a telephone with numbers that lead to the table, whole lengths and title, and no size between the lines", () => {
    const { shapes } = expectNarrowLayout(present(drawn)!);
    const words = shapes.flatMap((shape) => ("text" in shape ? [shape.text] : []));
    expect(words).toEqual(expect.arrayContaining(["1", "2", "60", "90", "150", "Pump <shaft>"]));
    expect(words.join(" ")).not.toMatch(/⌀|59\.9/);
  });
  it("is as long as its stretches, and its taper is on diameter", () => {
    expectClose(drawn.length.in("mm"), 150, { rel: 1e-9, because: "a sum" });
    expectClose(drawn.stretches[0]!.taper!, 0.1, { rel: 1e-9, because: "6 mm in 60" });
  });
  it("names the stretch that is wrong", () => {
    const of = (stretch: Partial<DrawnStretch>) => () =>
      shaftDrawing({ ...given, stretches: [{ ...journal, ...stretch }] });
    expect(of({ length: inch(0) })).toThrow('"journal": length must be a length above 0, got 0 in');
    expect(of({ endDiameter: mm(50) })).toThrow("a taper is held by its gauge, got f7");
    expect(of({ tolerance: "H7" })).toThrow("tolerance must be a shaft's");
    expect(() => shaftDrawing({ ...given, stretches: [] })).toThrow(
      "at least one stretch must be given, got none",
    );
  });
  it("is drawn with every size, and the title as text", () => {
    const blocks = present(drawn)!.blocks;
    const drawing = blocks.find((block) => block.type === "drawing")!;
    const svg = drawingSvg((drawing as { drawing: Parameters<typeof drawingSvg>[0] }).drawing);
    for (const text of [
      "taper 1:10",
      "59.940 – 59.970",
      "Ra 0.8 µm",
      ">60<",
      ">90<",
      ">150<",
      "Pump &lt;shaft&gt;",
    ])
      expect(svg).toContain(text);
  });
  it("keeps its texts apart, however short the stretches", () => {
    const many = Array.from({ length: 7 }, (_, i) => ({
      ...journal,
      name: `j${i}`,
      length: mm(i === 3 ? 4000 : 20),
    }));
    const { blocks } = present(shaftDrawing({ ...given, stretches: many }))!;
    const { drawing } = blocks.find((block) => block.type === "drawing") as {
      drawing: { shapes: readonly { type: string; at?: readonly [number, number]; text?: string }[] };
    };
    const texts = drawing.shapes.filter(
      ({ type, text }) => type === "text" && text!.length > 1 && text !== given.title,
    );
    for (const a of texts)
      for (const b of texts)
        if (a !== b && Math.abs(a.at![1] - b.at![1]) < 12)
          expect(Math.abs(a.at![0] - b.at![0])).toBeGreaterThan(80);
  });
  const keyseat = { width: mm(18), depth: mm(7), length: mm(50), middle: mm(45) };
  const thread = { name: "M36 × 3", rootDiameter: mm(32.319) };
  it("tells what a micrometer reads over a keyseat: 60 less 7, as DIN 6885-1 has d − t1 for 18 × 11", () => {
    const { stretches } = shaftDrawing({ ...given, stretches: [{ ...journal, keyseat }] });
    expectClose(stretches[0]!.floorToFarSide!.in("mm"), 53, { rel: 1e-9, because: "a difference" });
  });
  it("tells it at the keyseat's middle on a taper, and says there how the floor runs", () => {
    const onSeat = { ...keyseat, length: mm(40), middle: mm(30), floor: "along the flank" as const };
    const shaft = shaftDrawing({ ...given, stretches: [{ ...seat, keyseat: onSeat }] });
    // 54 mm to 60 mm: 57 mm half-way.
    expectClose(shaft.stretches[0]!.floorToFarSide!.in("mm"), 50, { rel: 1e-9, because: "57 less 7" });
    expect(JSON.stringify(present(shaft)!.blocks)).toContain(
      "floor to far side 50 there, floor along the flank",
    );
  });
  it("names a keyseat or a thread that cannot be", () => {
    const of = (stretch: Partial<DrawnStretch>) => () =>
      shaftDrawing({ ...given, stretches: [{ ...journal, ...stretch }] });
    expect(of({ keyseat: { ...keyseat, middle: mm(20) } })).toThrow("must lie within its 90 mm");
    expect(of({ keyseat, tolerance: undefined as never, endDiameter: mm(70) })).toThrow(
      'the floor of a keyseat on a taper must be said: "along the flank" or "along the axis", got undefined',
    );
    expect(of({ keyseat: { ...keyseat, depth: mm(31) } })).toThrow("less deep than half of it");
    expect(of({ keyseat: { ...keyseat, width: mm(0) } })).toThrow("keyseat's width must be a length above 0");
    expect(of({ thread: { ...thread, rootDiameter: mm(61) } })).toThrow("its root below 60 mm");
  });
  it("draws thread, keyseat section and fillets, each with its size", () => {
    const stud: DrawnStretch = { name: "thread", length: mm(35), diameter: mm(36), thread };
    const stretches = [stud, seat, { ...journal, keyseat, fillet: mm(1.5) }];
    const { blocks } = present(shaftDrawing({ ...given, stretches }))!;
    const { drawing } = blocks.find(({ type }) => type === "drawing") as {
      drawing: Parameters<typeof drawingSvg>[0];
    };
    const svg = drawingSvg(drawing);
    for (const text of ["M36 × 3", "fillets R 1.5", ">18<", ">53<", "keyseat in 3, 50 long"])
      expect(svg).toContain(text);
    expect(svg).toContain("url(#hatch)");
  });
  it("draws a short keyseat in a long stretch longer than wide, within the stretch", () => {
    const stretches = [{ ...journal, length: mm(800), keyseat: { ...keyseat, middle: mm(770) } }];
    const { blocks } = present(shaftDrawing({ ...given, stretches }))!;
    const { drawing } = blocks.find(({ type }) => type === "drawing") as {
      drawing: {
        shapes: readonly { type: string; fill?: string; points?: readonly (readonly [number, number])[] }[];
      };
    };
    const outline = (fill: string) =>
      drawing.shapes.find((shape) => shape.type === "polygon" && shape.fill === fill)!.points!;
    const span = (fill: string, axis: 0 | 1) => {
      const places = outline(fill).map((point) => point[axis]);
      return [Math.min(...places), Math.max(...places)] as const;
    };
    const [[left, right], [top, bottom], body] = [span("shade", 0), span("shade", 1), span("metal", 0)];
    expect(right - left).toBeGreaterThan(2 * (bottom - top));
    expect(left).toBeGreaterThanOrEqual(body[0]);
    expect(right).toBeLessThanOrEqual(body[1] + 1e-6);
  });
});
