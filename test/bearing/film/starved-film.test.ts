import { describe, expect, it } from "vitest";
import { filmState, starvedFilm, starvedFilms } from "../../../kernel-helpers/bearing/index.js";
import { expectClose } from "../../support/expect-close.js";

const square = starvedFilms(1);

/** Short bearing (Ocvirk): closed pressure, its loads by plain sums. Film from θₛ to π, both dimensionless as filmState. */
function short(eccentricity: number, from: number, lengthOverDiameter: number) {
  const n = 20_000;
  const step = (Math.PI - from) / n;
  let [c, s] = [0, 0];
  for (let i = 0; i < n; i++) {
    const theta = from + (i + 0.5) * step;
    // P = (L/D)²·ε sin θ/(2H³)·(1 − ζ²), and ∫(1 − ζ²)dζ from −1 to 1 is 4/3.
    const line =
      ((lengthOverDiameter ** 2 * eccentricity * Math.sin(theta)) /
        (2 * (1 + eccentricity * Math.cos(theta)) ** 3)) *
      (4 / 3);
    c += line * Math.cos(theta) * step;
    s += line * Math.sin(theta) * step;
  }
  return {
    sommerfeld: 1 / (3 * Math.PI * Math.hypot(c, s)),
    attitude: Math.atan2(s, -c),
    // All that the film grows thinner by leaves: (h(θₛ) − h(π))·U·L/2.
    side: Math.PI * eccentricity * (1 + Math.cos(from)),
  };
}

describe("starvedFilm(films, sommerfeld, brought)", () => {
  it("agrees with the closed form of a short bearing whose film begins late", () => {
    const films = starvedFilms(0.02);
    for (const [eccentricity, degrees] of [
      [0.5, 90],
      [0.7, 120],
      [0.85, 100],
    ] as const) {
      const from = (degrees * Math.PI) / 180;
      const by = short(eccentricity, from, 0.02);
      const found = starvedFilm(films, by.sommerfeld, by.side)!;
      expectClose(found.eccentricity, eccentricity, {
        rel: 2e-3,
        because: "of order L/D, 0.02; measured 0.0011 at most",
      });
      expectClose(found.attitude, by.attitude, { rel: 0.01, because: "likewise; measured 0.009 at most" });
      expectClose(found.begins, from - Math.PI + by.attitude, {
        rel: 0.08,
        because: "the closed form has a step of pressure there, the film none; measured 0.064 at most",
      });
    }
  });
  it("with all the oil it can lose is the film that begins where it is thickest", () => {
    const full = filmState(0.6, 1);
    const side = full.flow * full.sideShare;
    for (const more of [1, 3])
      expectClose(starvedFilm(square, full.sommerfeld, more * side)!.eccentricity, 0.6, {
        rel: 1e-3,
        because: "read between eccentricities 0.025 apart; measured 3e-4",
      });
  });
  it("is the thinner and begins the later the less is brought, until nothing is left", () => {
    const found = [0.5, 0.2, 0.05, 0.01].map((brought) => starvedFilm(square, 0.3, brought)!);
    found.slice(1).forEach((film, i) => {
      expect(film.eccentricity).toBeGreaterThan(found[i]!.eccentricity);
      expect(film.begins).toBeGreaterThan(found[i]!.begins);
      // The same load on less film.
      expect(film.meanOverHighest).toBeLessThan(found[i]!.meanOverHighest);
    });
    expect(starvedFilm(square, 0.3, 1e-9)).toBeUndefined();
  });
  it("carries its load and loses what is brought: the same film solved by itself on a finer mesh", () => {
    for (const [sommerfeld, brought] of [
      [0.121, 0.3],
      [0.3, 0.1],
      [1, 0.02],
    ] as const) {
      const found = starvedFilm(square, sommerfeld, brought)!;
      const alone = filmState(
        found.eccentricity,
        1,
        { at: "film begins", fromThickest: found.begins - found.attitude + Math.PI },
        { around: 400, along: 90 },
      );
      expectClose(alone.sommerfeld, sommerfeld, { rel: 0.03, because: "measured 0.020 at most" });
      expectClose(alone.flow * alone.sideShare, brought, {
        rel: 0.08,
        because: "far less than drops are counted to; measured 0.057 at most",
      });
    }
  });
  it("drags between an emptied ring and a full one, and a nearly full one as Petroff has it", () => {
    const { friction } = starvedFilm(square, 0.3, 0.05)!;
    expect(friction.least).toBeLessThan(friction.most);
    expect(friction.least).toBeGreaterThan(0);
    const light = starvedFilm(square, 3, 10)!;
    expectClose(light.friction.most, 2 * Math.PI ** 2 * 3, {
      rel: 0.01,
      because: "terms of order ε², ε 0.04",
    });
  });
  it("refuses what carries or brings nothing, and shapes that were not reckoned", () => {
    expect(() => starvedFilm(square, 0, 1)).toThrow("starvedFilm: sommerfeld must be above 0, got 0");
    expect(() => starvedFilm(square, 1, -1)).toThrow("starvedFilm: brought must be above 0, got -1");
    expect(() => starvedFilms(20)).toThrow(/between 0.02 and 10, got 20/);
  });
});
