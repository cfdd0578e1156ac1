import { describe, expect, it } from "vitest";
import {
  gigapascal,
  inch,
  kilogram,
  kilogramPerCubicMetre,
  measured,
  mm,
  pound,
  poundPerCubicInch,
  psi,
  quantity,
  quantityFromSi,
  rpm,
} from "../../../kernel-helpers/quantity/index.js";
import { criticalSpeeds, type ShaftModel } from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";

const ends = [
  { name: "left", at: mm(0) },
  { name: "right", at: mm(1000) },
];
const steel = { modulus: gigapascal(200), density: kilogramPerCubicMetre(7850) };
const second = (d: number): number => (Math.PI / 64) * d ** 4;
const inertia = (si: number) => quantityFromSi("moment of inertia", si);
/** As good as massless. */
const feather = { modulus: gigapascal(200), density: kilogramPerCubicMetre(1e-6) };
const bar: ShaftModel = {
  stretches: [{ from: mm(0), to: mm(1000), diameter: mm(20) }],
  material: steel,
  supports: ends,
};

describe("criticalSpeeds(model, options)", () => {
  it("agrees with Shigley example 7-5: 124.7 rad/s exact, Rayleigh 124.8, Dunkerley 120.3", () => {
    const found = criticalSpeeds({
      stretches: [{ from: inch(0), to: inch(31), diameter: inch(1) }],
      material: { modulus: psi(30e6), density: poundPerCubicInch(1e-9) },
      supports: [
        { name: "left", at: inch(0) },
        { name: "right", at: inch(31) },
      ],
      wheels: [
        { name: "first", at: inch(7), mass: pound(35) },
        { name: "second", at: inch(20), mass: pound(55) },
      ],
    });
    const printed = { rel: 1e-3, because: "printed to four digits" };
    expectClose(found.modes[0]!.speed.value.si, 124.68, printed);
    expectClose(found.rayleigh.si, 124.8, printed);
    expectClose(found.dunkerley.si, 120.3, printed);
  });
  it("agrees with the even bar on two supports: ω_n = (nπ/l)² √(EI/ρA), less what its own tilting takes", () => {
    const found = criticalSpeeds({ ...bar, material: steel }, { modes: 3 });
    const [area, ei] = [(Math.PI / 4) * 0.02 ** 2, 200e9 * second(0.02)];
    found.modes.forEach(({ speed }, i) => {
      const k = (i + 1) * Math.PI;
      // Forward whirl with the section's own inertia: ω² (ρA − ρI k²) = EI k⁴ (I_d − I_p = −I).
      const omega = Math.sqrt((ei * k ** 4) / (7850 * (area - second(0.02) * k * k)));
      expectClose(speed.value.si, omega, { rel: 1e-4, because: "24 elements, the third mode of a bar" });
    });
  });
  it("comes to the cantilever as two bearings close up: ω = 1.8751² √(EI/ρA l⁴), a load far out by Fa²(a + s)/3EI", () => {
    const ei = 200e9 * second(0.02);
    const speed = (apart: number): number =>
      criticalSpeeds(
        {
          ...bar,
          supports: [
            { name: "left", at: mm(0) },
            { name: "right", at: mm(apart) },
          ],
        },
        { modes: 1 },
      ).atRest.si;
    const built = 1.875104 ** 2 * Math.sqrt(ei / (7850 * (Math.PI / 4) * 0.02 ** 2));
    // The overhang is shorter by s (ω up by 2s/l), and its root gives by s/3EI (down by 2s/3l): 4s/3l, none as s goes to 0.
    const [wide, narrow] = [1 - speed(8) / built, 1 - speed(4) / built];
    expectClose(2 * narrow - wide, 0, {
      abs: 2e-4,
      because: "second order of 0.8 %, and the section's own tilting",
    });
    expectClose(narrow, (-4 / 3) * 0.004, {
      rel: 0.03,
      because: "first order in 0.004, and the section's own tilting",
    });
    const wheels = [{ name: "pulley", at: mm(1000), mass: kilogram(20) }];
    const supports = [
      { name: "left", at: mm(0) },
      { name: "right", at: mm(100) },
    ];
    const loaded = criticalSpeeds({ ...bar, material: feather, supports, wheels }, { modes: 1 });
    // Overhang 0.9 beside a span of 0.1: F a² (a + s)/3EI.
    expectClose(loaded.atRest.si, Math.sqrt((3 * ei) / (20 * 0.9 ** 2)), {
      rel: 1e-5,
      because: "the shaft weighs next to nothing",
    });
  });
  it("agrees with a mass in the middle of a shaft of two diameters: ω² = 1/(m f), f by Castigliano", () => {
    const found = criticalSpeeds(
      {
        stretches: [
          { from: mm(0), to: mm(500), diameter: mm(25) },
          { from: mm(500), to: mm(1000), diameter: mm(20) },
        ],
        material: feather,
        supports: ends,
        wheels: [{ name: "pulley", at: mm(500), mass: kilogram(20) }],
      },
      { modes: 1 },
    );
    // ∫ (x/2)²/EI over both halves of a span of 1.
    const gives = [0.025, 0.02].reduce((sum, d) => sum + 0.5 ** 3 / (12 * 200e9 * second(d)), 0);
    expectClose(found.atRest.si, 1 / Math.sqrt(20 * gives), {
      rel: 1e-5,
      because: "the shaft weighs next to nothing",
    });
  });
  it("gives an inch and a metric shaft the same speeds", () => {
    const metric = criticalSpeeds(
      { ...bar, wheels: [{ name: "w", at: mm(300), mass: kilogram(20) }] },
      { modes: 2 },
    );
    const inches = criticalSpeeds(
      {
        stretches: [{ from: inch(0), to: inch(1000 / 25.4), diameter: inch(20 / 25.4) }],
        material: {
          modulus: psi(200e9 / 6894.757293168),
          density: poundPerCubicInch(7850 / 27679.904710203),
        },
        supports: [
          { name: "left", at: inch(0) },
          { name: "right", at: inch(1000 / 25.4) },
        ],
        wheels: [{ name: "w", at: inch(300 / 25.4), mass: pound(20 / 0.45359237) }],
      },
      { modes: 2 },
    );
    metric.modes.forEach(({ speed }, i) => {
      expectClose(inches.modes[i]!.speed.value.si, speed.value.si, {
        rel: 1e-8,
        because: "conversion factors to 12 digits, roundings of the modes",
      });
    });
  });
  it("agrees with the overhung disc, gyroscopic moment included: the larger root of its quadratic", () => {
    // Disc at the end of a massless shaft over two bearings: flexibilities by the unit load method.
    const [a, l, m] = [0.2, 1, 12];
    const [id, ip] = [0.08, 0.16];
    const ei = 200e9 * second(0.04);
    const yy = (a * a * (l + a)) / (3 * ei);
    const yt = (a * (2 * l + 3 * a)) / (6 * ei);
    const tt = (l + 3 * a) / (3 * ei);
    // det(1 − ω² F diag(m, I_d − I_p)) = 0
    const j = id - ip;
    const [A, B] = [m * j * (yy * tt - yt * yt), -(m * yy + j * tt)];
    const roots = [-1, 1].map((s) => (-B + s * Math.sqrt(B * B - 4 * A)) / (2 * A)).filter((x) => x > 0);
    const model: ShaftModel = {
      stretches: [{ from: mm(0), to: mm(1200), diameter: mm(40) }],
      material: feather,
      supports: [
        { name: "left", at: mm(200) },
        { name: "right", at: mm(1200) },
      ],
      wheels: [
        {
          name: "disc",
          at: mm(0),
          mass: kilogram(m),
          polarInertia: inertia(ip),
          diametralInertia: inertia(id),
        },
      ],
    };
    const found = criticalSpeeds(model, { modes: 1 });
    expect(roots).toHaveLength(1);
    expectClose(found.modes[0]!.speed.value.si, Math.sqrt(roots[0]!), {
      rel: 1e-5,
      because: "the shaft weighs next to nothing",
    });
    expect(found.modes[0]!.speed.value.si).toBeGreaterThan(found.atRest.si);
    // The tied planes give the same as the one plane, as their stiffnesses come together.
    const k = 1e9;
    const nearly = model.supports.map((s) => ({
      ...s,
      stiffness: {
        horizontal: quantity(k, "newtonPerMillimetre"),
        vertical: quantity(k * 1.0001, "newtonPerMillimetre"),
      },
    }));
    const tied = criticalSpeeds({ ...model, supports: nearly }, { modes: 2 });
    const forward = tied.modes.map(({ speed }) =>
      Math.abs(speed.value.si / found.modes[0]!.speed.value.si - 1),
    );
    expect(Math.min(...forward)).toBeLessThan(1e-4);
    // The backward one: I_d + I_p resists.
    const jb = id + ip;
    const [Ab, Bb] = [m * jb * (yy * tt - yt * yt), -(m * yy + jb * tt)];
    const backward = Math.sqrt((-Bb - Math.sqrt(Bb * Bb - 4 * Ab)) / (2 * Ab));
    const off = tied.modes.map(({ speed }) => Math.abs(speed.value.si / backward - 1));
    expect(Math.min(...off)).toBeLessThan(1e-4);
    // The bearings as good as alike, or alike: the slowest is the backward one, and the verdict holds against it.
    const run = (speed: number) => criticalSpeeds(model, { modes: 1, speed: rpm(speed * 9.549296585513721) });
    const held = run(0.9 * backward);
    const bound = { rel: 1e-5, because: "the shaft weighs next to nothing" };
    expect(held.lowest.sense).toBe("backward");
    expectClose(held.lowest.speed.value.si, backward, bound);
    expect(held.nearest!.sense).toBe("backward");
    expectClose(held.margin!.value, 0.1, { rel: 1e-4, because: "a tenth below it" });
    expect(held.verdict).toBe("too near");
    // Far enough from the forward whirl, too near to the backward one.
    expect(0.9 * backward).toBeLessThan(0.8 * held.modes[0]!.speed.value.si);
    expect(run(0.7 * backward).verdict).toBe("clear");
    expect(run(0.995 * held.atRest.si).nearest!.sense).toBe("at rest");
    // One mode was sought, and it runs above it.
    const above = run(5 * held.modes[0]!.speed.value.si);
    expect(above.verdict).toBe("cannot tell yet");
    expect(above.warnings.join()).toMatch(/ask for more modes.*passes through/);
  });
  it("lies above Dunkerley and below Rayleigh, and settles as stretches are split", () => {
    const wheels = [{ name: "pulley", at: mm(300), mass: kilogram(20) }];
    const found = criticalSpeeds({ ...bar, wheels }, { modes: 2 });
    expect(found.dunkerley.si).toBeLessThan(found.atRest.si);
    expect(found.rayleigh.si).toBeGreaterThanOrEqual(found.atRest.si);
    const stretches = Array.from({ length: 100 }, (_, i) => ({
      from: mm(10 * i),
      to: mm(10 * (i + 1)),
      diameter: mm(20),
    }));
    const fine = criticalSpeeds({ ...bar, stretches, wheels }, { modes: 2 });
    expectClose(fine.modes[1]!.speed.value.si, found.modes[1]!.speed.value.si, {
      rel: 1e-5,
      because: "24 and 100 elements",
    });
  });
  it("agrees with a rigid shaft on springs: ω = √(2k/m)", () => {
    const stiffness = quantity(1, "newtonPerMillimetre");
    const supports = ends.map((s) => ({ ...s, stiffness }));
    const found = criticalSpeeds(
      { ...bar, stretches: [{ from: mm(0), to: mm(1000), diameter: mm(100) }], supports },
      { modes: 1 },
    );
    const mass = 7850 * (Math.PI / 4) * 0.01;
    expectClose(found.modes[0]!.speed.value.si, Math.sqrt(2000 / mass), {
      rel: 1e-4,
      because: "the shaft bends a little too",
    });
  });
  it("carries the doubt of the modulus and of a mass: half of their relative one", () => {
    const material = { ...feather, modulus: measured(gigapascal(200), gigapascal(4)) };
    const wheels = [{ name: "pulley", at: mm(500), mass: kilogram(20) }];
    const { speed } = criticalSpeeds({ ...bar, material, wheels }, { modes: 1 }).modes[0]!;
    expectClose(speed.standardUncertainty.si / speed.value.si, 0.01, {
      rel: 1e-3,
      because: "half differences",
    });
  });
  it("judges the running speed with its doubt", () => {
    const wheels = [{ name: "pulley", at: mm(500), mass: measured(kilogram(20), kilogram(1)) }];
    const first = criticalSpeeds({ ...bar, wheels }).modes[0]!.speed.value.in("rpm");
    const at = (share: number) => criticalSpeeds({ ...bar, wheels }, { speed: rpm(share * first) });
    expect(at(0.4).verdict).toBe("clear");
    expect(at(0.95).verdict).toBe("too near");
    expect(at(0.79).verdict).toBe("cannot tell yet");
    expectClose(at(0.4).margin!.value, 0.6, {
      rel: 1e-4,
      because:
        "the backward whirl of a thin shaft without a disc is slower by some parts in a hundred thousand",
    });
  });
  it("refuses options out of their range", () => {
    expect(() => criticalSpeeds(bar, { modes: 0 })).toThrow(/modes must be a whole number/);
    expect(() => criticalSpeeds(bar, { speed: rpm(0) })).toThrow(/speed must be more than 0/);
    expect(() => criticalSpeeds(bar, { keepAway: 2 })).toThrow(/keepAway/);
    expect(() => criticalSpeeds({ ...bar, supports: [] })).toThrow(
      /two places or more, each once, got no support/,
    );
  });
});
