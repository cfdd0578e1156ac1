import { describe, expect, it } from "vitest";
import {
  massesOf,
  partMass,
  type SolidShape,
  type SolidSize,
  solidFigures,
} from "../../kernel-helpers/intake/index.js";
import { inch, kilogramPerCubicMetre } from "../../kernel-helpers/quantity/index.js";
import { instrumentFrom, readTable, type Table } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";

const header =
  "part [text],piece [text],shape [text],count [-],across [in],far [in],inside [in],length [in],thick [in],along [in],material [text]";
const rule = instrumentFrom("rule", { title: "rule", resolution: "1/16 in", repeatability: "0.03 in" });

function pieces(...rows: string[]): Table {
  const text = ["# instrument: rule", header, ...rows].join("\n");
  return readTable(new TextEncoder().encode(text), {
    name: "pieces",
    file: "tables/pieces.csv",
    instruments: { rule },
  });
}

const cases: readonly (readonly [SolidShape, Partial<Record<SolidSize, number>>])[] = [
  ["cylinder", { across: 0.3, length: 0.5 }],
  ["cylinder", { across: 0.3, inside: 0.1, length: 0.5 }],
  ["ring", { across: 0.8, inside: 0.7, length: 0.15 }],
  ["cone", { across: 0.3, far: 0.2, length: 0.4 }],
  ["cone", { across: 0.2, far: 0.35, inside: 0.06, length: 0.4 }],
  ["arm", { across: 0.06, thick: 0.03, inside: 0.15, far: 0.6 }],
  ["box", { across: 0.2, thick: 0.1, length: 0.3 }],
];

/** Volume, first and polar moment by summing small cells, knowing only whether a point lies inside. */
function byCells(shape: SolidShape, s: Partial<Record<SolidSize, number>>): [number, number, number] {
  const { across = 0, far = 0, inside = 0, length = 0, thick = 0 } = s;
  const within = (x: number, y: number, z: number): boolean => {
    const r = Math.hypot(y, z);
    if (shape === "box") return Math.abs(y) < across / 2 && Math.abs(z) < thick / 2;
    if (shape === "arm")
      return (
        y > inside / 2 && y < far / 2 && (z / (across / 2)) ** 2 + ((x - thick / 2) / (thick / 2)) ** 2 < 1
      );
    const outer = shape === "cone" ? across + ((far - across) * x) / length : across;
    return r < outer / 2 && r >= inside / 2;
  };
  const [lx, half] = [shape === "arm" ? thick : length, Math.max(across, far) / 2];
  const [ly, lz] = shape === "arm" ? [far / 2, across / 2] : [half, half];
  const n = 160;
  const [dx, dy, dz] = [lx / n, (2 * ly) / n, (2 * lz) / n];
  let [v, m, p] = [0, 0, 0];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      for (let k = 0; k < n; k++) {
        const [x, y, z] = [(i + 0.5) * dx, -ly + (j + 0.5) * dy, -lz + (k + 0.5) * dz];
        if (!within(x, y, z)) continue;
        v += 1;
        m += x;
        p += y * y + z * z;
      }
  const cell = dx * dy * dz;
  return [v * cell, m / v, p * cell];
}

describe("solidFigures", () => {
  it.each(cases)("of a %s %j agrees with a sum over small cells", (shape, sizes) => {
    const found = solidFigures(shape, sizes);
    const [volume, centre, polar] = byCells(shape, sizes);
    const tolerance = {
      rel: 0.006,
      because: "cells of 1/160 of the body; measured 0.003 at most, on thin rims",
    };
    expectClose(found.volume, volume, tolerance);
    expectClose(found.centre, centre, tolerance);
    expectClose(found.polar, polar, tolerance);
  });
  it("a cone with equal ends is a cylinder, and two halves of a cone are the whole", () => {
    const exact = { rel: 1e-12, because: "identity; rounding only" };
    const cone = solidFigures("cone", { across: 0.3, far: 0.3, length: 0.4 });
    const cylinder = solidFigures("cylinder", { across: 0.3, length: 0.4 });
    for (const name of ["volume", "centre", "polar"] as const) expectClose(cone[name], cylinder[name], exact);
    const whole = solidFigures("cone", { across: 0.4, far: 0.2, length: 0.6 });
    const near = solidFigures("cone", { across: 0.4, far: 0.3, length: 0.3 });
    const rest = solidFigures("cone", { across: 0.3, far: 0.2, length: 0.3 });
    expectClose(near.volume + rest.volume, whole.volume, exact);
    expectClose(near.polar + rest.polar, whole.polar, exact);
    expectClose(
      (near.volume * near.centre + rest.volume * (0.3 + rest.centre)) / whole.volume,
      whole.centre,
      exact,
    );
  });
  it("refuses a size that is missing, or an inside as large as the outside", () => {
    expect(() => solidFigures("ring", { across: 1, length: 1 })).toThrow(/a ring needs inside/);
    expect(() => solidFigures("ring", { across: 1, inside: 1, length: 1 })).toThrow(
      /inside of this ring must be/,
    );
    expect(() => solidFigures("arm", { across: 0.1, thick: 0.1, inside: 1, far: 0.5 })).toThrow(
      /inside of this arm/,
    );
  });
});

describe("massesOf", () => {
  it("gives the published weight of round steel bar, per foot", () => {
    // Weight of round steel bars, 1 in: 2.67 lb a foot; 3 in: 24.03. Machinery's Handbook, weights of steel bars (from memory).
    const table = pieces("one,bar,cylinder,1,1,-,-,12,-,0,steel", "three,bar,cylinder,1,3,-,-,12,-,0,steel");
    const published = {
      rel: 0.004,
      because: "three digits, and 0.2833 lb/in³ there against 7850 kg/m³ here",
    };
    expectClose(partMass(massesOf(table), "one").mass.value.in("pound"), 2.67, published);
    expectClose(partMass(massesOf(table), "three").mass.value.in("pound"), 24.03, published);
  });
  it("adds pieces by count, with centre and moment about one axis", () => {
    const masses = massesOf(
      pieces(
        "wheel,rim,ring,1,30,-,28,6,-,10,grey iron class 20",
        "wheel,arms,arm,6,2.5,28,6,-,1.25,12,grey iron class 20",
      ),
    );
    const wheel = masses.parts[0]!;
    expect(wheel.pieces.map(({ count }) => count)).toEqual([1, 6]);
    const exact = { rel: 1e-12, because: "sums of the same numbers" };
    expectClose(wheel.pieces[0]!.mass.value.si + wheel.pieces[1]!.mass.value.si, wheel.mass.value.si, exact);
    const [rim, arms] = wheel.pieces.map(({ mass }) => mass.value.si) as [number, number];
    expectClose(wheel.centre.value.in("inch"), (rim * 13 + arms * 12.625) / (rim + arms), exact);
    expectClose(masses.inertia.value.si, wheel.inertia.value.si, exact);
    const rho = kilogramPerCubicMetre(7200).si;
    expectClose(rim, ((rho * Math.PI) / 4) * (30 ** 2 - 28 ** 2) * 6 * 0.0254 ** 3, exact);
  });
  it("carries the uncertainty of sizes and of the metal as the closed derivatives do", () => {
    const bar = massesOf(pieces("bar,bar,cylinder,1,2,-,-,20,-,0,grey iron class 20")).parts[0]!;
    const u = Math.hypot(0.03, 1 / 16 / Math.sqrt(12));
    const rho = (7300 - 7000) / Math.sqrt(12) / 7200;
    const relative = Math.hypot((2 * u) / 2, u / 20, rho);
    expectClose(bar.mass.standardUncertainty.si / bar.mass.value.si, relative, {
      rel: 1e-5,
      because: "differences over a hundredth of u",
    });
  });
  it("takes one density for all pieces of a metal, so that a wheel in two pieces is as uncertain as in one", () => {
    const noRule = (...rows: string[]): Table =>
      readTable(new TextEncoder().encode([header, ...rows].join("\n")), { name: "p", file: "p.csv" });
    const whole = massesOf(noRule("w,a,ring,1,20,-,10,4,-,0,grey iron class 20"));
    const halves = massesOf(
      noRule("w,a,ring,1,20,-,10,2,-,0,grey iron class 20", "w,b,ring,1,20,-,10,2,-,2,grey iron class 20"),
    );
    expectClose(halves.mass.standardUncertainty.si, whole.mass.standardUncertainty.si, {
      rel: 1e-9,
      because: "identity; rounding of differences",
    });
    expect(whole.warnings[0]).toMatch(/count as exact/);
  });
  it("counts rough castings, not turned steel", () => {
    const rows = ["a,a,cylinder,1,2,-,-,20,-,0,grey iron class 20", "b,b,cylinder,1,2,-,-,20,-,0,steel"];
    const [plain, rough] = [massesOf(pieces(...rows)), massesOf(pieces(...rows), { castings: inch(1 / 16) })];
    const u = (of: typeof plain, i: number): number => of.parts[i]!.mass.standardUncertainty.si;
    expect(u(rough, 0)).toBeGreaterThan(u(plain, 0));
    expect(u(rough, 1)).toBe(u(plain, 1));
  });
  it("names file, line and column of a row that cannot be", () => {
    expect(() => massesOf(pieces("w,a,ball,1,2,-,-,2,-,0,steel"))).toThrow(
      /pieces.csv line 3, column "shape": found "ball"/,
    );
    expect(() => massesOf(pieces("w,a,cylinder,1,2,3,-,2,-,0,steel"))).toThrow(
      /line 3, column "far": found a size/,
    );
    expect(() => massesOf(pieces("w,a,cylinder,1,2,-,-,-,-,0,steel"))).toThrow(/line 3.*needs length/);
    expect(() => massesOf(pieces("w,a,cylinder,1.5,2,-,-,1,-,0,steel"))).toThrow(/line 3, column "count"/);
    expect(() => massesOf(pieces("w,a,cylinder,1,2,-,-,1,-,0,cheese"))).toThrow(/line 3.*cheese/);
    expect(() => massesOf(pieces("w,a,cylinder,1,2,-,-,1,-,-,steel"))).toThrow(/line 3, column "along"/);
    expect(() => partMass(massesOf(pieces("w,a,cylinder,1,2,-,-,1,-,0,steel")), "x")).toThrow(/there are w/);
  });
});
