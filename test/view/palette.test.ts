import { describe, expect, it } from "vitest";
import {
  alarm,
  ink,
  paper,
  pencil,
  seriesLook,
  seriesLooks,
  stateLooks,
} from "../../kernel-helpers/view/palette.js";

type Triple = readonly [number, number, number];
type Matrix = readonly [Triple, Triple, Triple];

// Severity 1.0, on linear RGB. Machado, Oliveira and Fernandes, "A physiologically-based model for simulation
// of color vision deficiency", IEEE TVCG 15 (2009) 1291, tables of the authors' web page (from memory).
const eyes: Readonly<Record<string, Matrix>> = {
  "usual eyes": [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  "eyes without red cones": [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  "eyes without green cones": [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  "eyes without blue cones": [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

describe("palette", () => {
  it.each(Object.entries(eyes))("keeps the six series apart for %s", (_, matrix) => {
    const seen = seriesLooks.map(({ color }) => lab(times(matrix, linear(color))));
    const distances = seen.flatMap((a, i) => seen.slice(i + 1).map((b) => distance(a, b)));
    // About 2 is the least difference an eye tells side by side (CIE 1976); small marks apart need far more.
    expect(Math.min(...distances)).toBeGreaterThan(20);
  });

  it("gives markers and lines a contrast of at least 3 to 1, words at least 4.5 to 1", () => {
    // WCAG 2.2, success criteria 1.4.11 and 1.4.3.
    for (const { color } of seriesLooks) expect(contrast(color, paper)).toBeGreaterThanOrEqual(3);
    for (const color of [ink, pencil, alarm]) expect(contrast(color, paper)).toBeGreaterThanOrEqual(4.5);
  });

  it("tells states apart by their hatch as well as by colour", () => {
    const hatches = Object.values(stateLooks).map(({ hatch }) => hatch);
    expect(new Set(hatches).size).toBe(hatches.length);
  });
});

describe("seriesLook(index)", () => {
  it("gives 36 looks that all differ, and then begins again", () => {
    const looks = Array.from({ length: 36 }, (_, i) => JSON.stringify(seriesLook(i)));
    expect(new Set(looks).size).toBe(36);
    expect(seriesLook(36)).toEqual(seriesLook(0));
  });
});

// sRGB, IEC 61966-2-1: electrical to optical.
function linear(hex: string): Triple {
  const channel = (from: number): number => {
    const c = Number.parseInt(hex.slice(from, from + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

function times(matrix: Matrix, [x, y, z]: Triple): Triple {
  const row = ([a, b, c]: Triple): number => Math.min(1, Math.max(0, a * x + b * y + c * z));
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])];
}

// CIE 1976 L*a*b* under D65.
function lab([r, g, b]: Triple): Triple {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : (841 / 108) * t + 4 / 29);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function distance(a: Triple, b: Triple): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function contrast(a: string, b: string): number {
  const luminance = (hex: string): number => {
    const [r, g, bl] = linear(hex);
    return 0.2126 * r + 0.7152 * g + 0.0722 * bl + 0.05;
  };
  const [x, y] = [luminance(a), luminance(b)];
  return Math.max(x, y) / Math.min(x, y);
}
