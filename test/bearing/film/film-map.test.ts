import { describe, expect, it } from "vitest";
import {
  boxCooling,
  type ForetoldBox,
  filmMap,
  runningPrediction,
} from "../../../kernel-helpers/bearing/index.js";
import { oil } from "../../../kernel-helpers/handbook/index.js";
import { degF, inch, lbf, measured, quantity, rpm, thou } from "../../../kernel-helpers/quantity/index.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";
import { expectClose } from "../../support/expect-close.js";

const box: ForetoldBox = {
  name: "far box",
  diameter: inch(2.5),
  length: inch(5),
  speed: rpm(110),
  oil: oil("ISO VG 100"),
  diametralClearance: measured(thou(4), thou(0.3)),
  load: measured(lbf(800), lbf(60)),
  boxSurface: quantity(250, "inch2"),
  cooling: boxCooling("still air"),
  roughness: thou(0.06),
};
const foretold = runningPrediction([box], degF(65)).boxes[0]!;
const map = filmMap(foretold, box);

describe("filmMap(box, size)", () => {
  it("carries the load: its pressure, summed up, is the load along its direction and nothing across", () => {
    const psi = 6894.757293168361;
    const angles = map.angles.map(({ si }) => si);
    const step = map.along[1]!.si - map.along[0]!.si;
    let [down, across] = [0, 0];
    // Trapezoids round the bearing, closed over half a turn from the load, where there is no pressure.
    map.pressure.forEach((row) => {
      row.forEach((p, i) => {
        const before = angles[i - 1] ?? angles.at(-1)! - 2 * Math.PI;
        const after = angles[i + 1] ?? angles[0]! + 2 * Math.PI;
        const force = (p * psi * (after - before) * step * box.diameter.si) / 4;
        down += force * Math.cos(angles[i]!);
        across += force * Math.sin(angles[i]!);
      });
    });
    expectClose(down, box.load.value.si, {
      rel: 0.01,
      because: "a coarse mesh, and a curve read between its states",
    });
    expect(Math.abs(across) / box.load.value.si).toBeLessThan(0.01);
  });
  it("has the least film and the highest pressure of the film foretold", () => {
    expectClose(map.leastFilm.si, foretold.film.leastFilm.si, {
      rel: 1e-9,
      because: "the same eccentricity",
    });
    expectClose(Math.min(...map.film.map(({ si }) => si)), map.leastFilm.si, {
      rel: 0.01,
      because: "nodes lie beside the thinnest place",
    });
    expectClose(map.leastAt.si, foretold.film.attitude.si, { rel: 0.01, because: "read between states" });
    expectClose(map.highest.si, foretold.film.highestPressure.si, {
      rel: 0.02,
      because: "nodes lie beside the top",
    });
  });
  it("has no pressure at the ends and at the grooves", () => {
    expect(Math.max(...map.pressure[0]!, ...map.pressure.at(-1)!)).toBe(0);
    for (const groove of map.grooves) {
      const nearest = map.angles.findIndex((angle) => Math.abs(angle.si - groove.si) < 1e-6);
      expect(nearest).toBeGreaterThanOrEqual(0);
      expect(Math.max(...map.pressure.map((row) => row[nearest]!))).toBe(0);
    }
  });
  it("refuses a box without a film, and a size not above 0", () => {
    const dry = { ...foretold, film: { ...foretold.film, eccentricity: 1 } };
    expect(() => filmMap(dry, box)).toThrow(/far box runs at an eccentricity of 1/);
    expect(() => filmMap(foretold, { ...box, roughness: thou(0) })).toThrow(/roughness must be above 0/);
  });
  it("is shown with its least film, what is needed, and the highest pressure", () => {
    const text = renderText(presentResult(map)!).replace(/\s+/g, " ");
    expect(text).toMatch(/Thinnest [\d.]+ ± [\d.]+ thou \(95 %\) at \d+°/);
    expect(text).toContain("0.18 thou");
    expect(text).toMatch(/[\d.]+ ± [\d.]+ psi at -?\d+°/);
  });
});
