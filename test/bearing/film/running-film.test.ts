import { describe, expect, it } from "vitest";
import {
  boxCooling,
  filmAt,
  filmCurve,
  filmState,
  foretoldRises,
  runningFilm,
  runningPrediction,
  starvedFilm,
  starvedFilms,
} from "../../../kernel-helpers/bearing/index.js";
import { oil, viscosity } from "../../../kernel-helpers/handbook/index.js";
import {
  degC,
  degF,
  inch,
  lbf,
  measured,
  mm,
  quantity,
  quantityFromSi,
  rpm,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import { expectClose } from "../../support/expect-close.js";

const box = {
  diameter: inch(2.4375),
  length: inch(8),
  diametralClearance: thou(4),
  load: lbf(700),
  speed: rpm(110),
  oil: oil("ISO VG 100"),
  room: degF(65),
  boxSurface: quantity(250, "inch2"),
  cooling: boxCooling("shaft-stirred air"),
  roughness: thou(0.06),
};

describe("filmAt(curve, sommerfeld)", () => {
  it("reads between the states of a curve within 0.5 % of solving anew", () => {
    const curve = filmCurve(1, { at: "thickest film" });
    for (const eps of [0.33, 0.58, 0.73, 0.88]) {
      const direct = filmState(eps, 1);
      const read = filmAt(curve, direct.sommerfeld)!;
      const close = { rel: 0.005, because: "what is promised of reading between the states" };
      expectClose(read.eccentricity, eps, close);
      expectClose(read.friction, direct.friction, close);
      expectClose(read.flow, direct.flow, close);
    }
  });
  it("is Petroff's drag at light loads, and has no film beyond the heaviest", () => {
    const curve = filmCurve(1, { at: "thickest film" });
    expectClose(filmAt(curve, 100)!.friction, 2 * Math.PI ** 2 * 100, {
      rel: 2e-3,
      because: "terms of order ε²",
    });
    expect(filmAt(curve, 1e-5)).toBeUndefined();
  });
});

describe("runningFilm(options)", () => {
  it("agrees with Shigley's example of a bearing at its own temperature", () => {
    // Shigley, examples 12-1 to 12-4: µ 4 µreyn, N 30 rps, W 500 lbf, r 0.75, c 0.0015, l 1.5 in: S 0.135, h₀/c 0.42,
    // f 0.0070, P 222 psi, p max 529 psi; Qs 0.142 in³/s. The oil is made so thin by its law at any temperature.
    const flat = { ...oil("SAE 30"), law: { form: "exponential" as const, mu0: 4, b: 0 } };
    const found = runningFilm({
      ...box,
      diameter: inch(1.5),
      length: inch(1.5),
      diametralClearance: thou(3),
      load: lbf(500),
      speed: rpm(1800),
      oil: flat,
      boxSurface: quantity(1e6, "inch2"),
      // Inlet at the thickest film: 180° less the attitude of 51.8° before the load.
      grooves: [quantity(51.8 - 180, "degree")],
    });
    expectClose(found.sommerfeld, 0.135, { rel: 5e-3, because: "printed to three digits" });
    const chart = { rel: 0.02, because: "read off the charts by the book" };
    expectClose(found.leastFilm.in("inch"), 0.00063, chart);
    expectClose(found.frictionCoefficient, 0.007, chart);
    expectClose(found.meanPressure.in("psi"), 222, { rel: 5e-3, because: "printed to three digits" });
    expectClose(found.highestPressure.in("psi"), 529, chart);
    expectClose(found.sideFlow.si / 0.0254 ** 3, 0.142, chart);
  });
  it("keeps the energy: what friction makes, the box gives up; and the film is at its own viscosity", () => {
    const found = runningFilm(box);
    const gives = boxCooling("shaft-stirred air").si * box.boxSurface.si * found.rise.si;
    expectClose(found.frictionPower.si, gives, {
      rel: 1e-9,
      because: "the balance is bisected to the last digits",
    });
    expectClose(found.filmTemperature.kelvin - found.room.kelvin, 1.75 * found.rise.si, {
      rel: 2e-3,
      because: "temperatures are shown to a hundredth of a degree",
    });
    expectClose(found.viscosity.si, viscosity(box.oil, found.filmTemperature).si, {
      rel: 1e-3,
      because: "temperatures are shown to a hundredth of a degree",
    });
    expectClose(
      found.frictionPower.si,
      found.frictionCoefficient * box.load.si * box.speed.si * (box.diameter.si / 2),
      {
        rel: 1e-9,
        because: "f·W·ω·R",
      },
    );
  });
  it("runs hotter with a thicker oil, a tighter clearance and less cooling, and gives the same in millimetres", () => {
    const rise = (change: Partial<typeof box>): number => runningFilm({ ...box, ...change }).rise.si;
    expect(rise({ oil: oil("ISO VG 220") })).toBeGreaterThan(rise({}));
    expect(rise({ diametralClearance: thou(2) })).toBeGreaterThan(rise({}));
    expect(rise({ cooling: boxCooling("still air") })).toBeGreaterThan(rise({}));
    expectClose(
      rise({ diameter: mm(61.9125), length: mm(203.2), diametralClearance: mm(0.1016), room: degC(55 / 3) }),
      rise({}),
      {
        rel: 1e-6,
        because: "the same box in other units",
      },
    );
  });
  it("says boundary or mixed where the film is thinner than the roughness, and starved where too little oil is given", () => {
    expect(runningFilm({ ...box, load: lbf(30_000), speed: rpm(3) }).state).toBe("boundary");
    const mixed = runningFilm({
      ...box,
      load: lbf(3000),
      speed: rpm(20),
      roughness: thou(0.3),
      boxSurface: quantity(9000, "inch2"),
    });
    expect(mixed.state).toBe("mixed");
    expect(mixed.because).toMatch(/peaks touch/);
    const dry = runningFilm({ ...box, supply: quantity(0.0001, "litrePerMinute") });
    expect(dry.starved).toBe(true);
    expect(dry.because).toMatch(/less oil is given than a full film loses/);
    const enough = runningFilm({ ...box, supply: quantity(5, "litrePerMinute") });
    expect(enough.starved).toBe(false);
    expect(enough.short).toBeUndefined();
  });
  it("tells what film the oil given keeps up, thinner than the full one and the thinner the less comes", () => {
    const full = runningFilm(box);
    const shorts = [0.5, 0.1, 0.02].map(
      (share) => runningFilm({ ...box, supply: full.sideFlow.times(share) }).short!,
    );
    shorts.forEach((short, i) => {
      expectClose(short.share, [0.5, 0.1, 0.02][i]!, { rel: 1e-9, because: "given over lost" });
      expect(short.leastFilm.si).toBeLessThan((shorts[i - 1]?.leastFilm ?? full.leastFilm).si);
      expect(short.highestPressure.si).toBeGreaterThan(
        (shorts[i - 1]?.highestPressure ?? full.meanPressure).si,
      );
      expect(short.friction.least).toBeLessThan(short.friction.most);
    });
    // The film it tells, looked up by itself at the same Sommerfeld number and supply.
    const [r, c] = [box.diameter.si / 2, box.diametralClearance.si / 2];
    const flow = r * c * (box.speed.si / (2 * Math.PI)) * box.length.si;
    const alone = starvedFilm(
      starvedFilms(box.length.si / box.diameter.si),
      full.sommerfeld,
      (0.1 * full.sideFlow.si) / flow,
    )!;
    expectClose(shorts[1]!.leastFilm.si, c * (1 - alone.eccentricity), {
      rel: 1e-3,
      because: "length over diameter is kept to four decimals",
    });
    expect(runningFilm({ ...box, supply: quantity(1e-9, "litrePerMinute") }).short!.state).toBe("boundary");
  });
  it("refuses a clearance of nothing or in the wrong unit, no speed, and a box that cannot cool", () => {
    expect(() => runningFilm({ ...box, diametralClearance: thou(0) })).toThrow(
      /diametralClearance must be above 0, got 0 thou; without room .* commonly given 3\.4 to 4\.7 thou of DIAMETRAL/,
    );
    expect(() => runningFilm({ ...box, diametralClearance: inch(0.5) })).toThrow(/is it in thousandths/);
    expect(() => runningFilm({ ...box, speed: rpm(0) })).toThrow(
      /speed must be above 0, got 0 rpm; at rest no film forms: the speed it is to run at is needed/,
    );
    expect(() => runningFilm({ ...box, speed: rpm(9000), boxSurface: quantity(1, "inch2") })).toThrow(
      /no balance below 150 °C/,
    );
    expect(() => runningFilm({ ...box, filmOverBox: -1 })).toThrow(/filmOverBox/);
  });
});

describe("boxCooling(air)", () => {
  it("agrees with the printed values in Btu/(h·ft²·°F)", () => {
    const btu = 5.678263;
    expectClose(boxCooling("still air").si / btu, 2, { rel: 0.01, because: "printed to two digits" });
    expectClose(boxCooling("shaft-stirred air").si / btu, 2.7, {
      rel: 0.01,
      because: "printed to two digits",
    });
    expectClose(boxCooling("moving air").si / btu, 5.9, { rel: 0.01, because: "printed to two digits" });
    expect(() => boxCooling("storm")).toThrow(/must be one of still air/);
  });
});

describe("runningPrediction(boxes, room)", () => {
  const { diametralClearance: _, load: __, room: ___, ...rest } = box;
  const known = {
    name: "far box",
    ...rest,
    diametralClearance: measured(thou(4), thou(0.3)),
    load: measured(lbf(700), lbf(60)),
  };
  it("adds the sources as squares, the largest first, and none where nothing is uncertain", () => {
    const [far] = runningPrediction([known], degF(65)).boxes;
    const parts = far!.shares.map(({ standardUncertainty }) => standardUncertainty.si);
    expectClose(far!.rise.standardUncertainty.si, Math.hypot(...parts), {
      rel: 1e-12,
      because: "by definition",
    });
    expect(parts).toEqual([...parts].sort((a, b) => b - a));
    // Twice the uncertainty of the clearance doubles its share, while it is small.
    const wide = runningPrediction([{ ...known, diametralClearance: measured(thou(4), thou(0.6)) }], degF(65))
      .boxes[0]!;
    const share = (box: typeof wide): number =>
      box.shares.find(({ from }) => from === "clearance")!.standardUncertainty.si;
    expectClose(share(wide) / share(far!), 2, { rel: 0.05, because: "linear to first order" });
  });
  it("moves with the cooling as it must: a rise that half the cooling would raise", () => {
    const [far] = runningPrediction([{ ...known, coolingShare: 0.01 }], degF(65)).boxes;
    const up = runningFilm({ ...box, cooling: quantityFromSi("heat transfer coefficient", 15.3 * 1.01) });
    const down = runningFilm({ ...box, cooling: quantityFromSi("heat transfer coefficient", 15.3 * 0.99) });
    expectClose(
      far!.shares.find(({ from }) => from === "cooling of the box")!.standardUncertainty.si,
      Math.abs(up.rise.si - down.rise.si) / 2,
      { rel: 1e-6, because: "the same two films" },
    );
  });
  it("gives every figure of the film the spread that films drawn at random have", () => {
    // Monte Carlo (JCGM 101): the five sources drawn together, each normal but the factor from box to film, which is even; a plain generator of
    // Lehmer's, so that the draws are the same everywhere.
    const [far] = runningPrediction([known], degF(65)).boxes;
    let seed = 20_000_003;
    const even = (): number => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed / 2_147_483_647;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
    const law = box.oil.law;
    if (law.form !== "two points") throw new Error("the box of these tests runs on an ISO grade");
    const drawn = Array.from({ length: 1500 }, () => {
      const thicker = 1 + 0.06 * normal();
      return runningFilm({
        ...box,
        diametralClearance: thou(4 + 0.3 * normal()),
        load: lbf(700 + 60 * normal()),
        cooling: box.cooling.times(1 + 0.2 * normal()) as typeof box.cooling,
        oil: { ...box.oil, law: { ...law, at40: law.at40 * thicker, at100: law.at100 * thicker } },
        filmOverBox: 0.75 * (1 + 0.3 * Math.sqrt(3) * (2 * even() - 1)),
      });
    });
    const scatter = (figure: (film: (typeof drawn)[number]) => number): number => {
      const values = drawn.map(figure);
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
    };
    const { uncertainty } = far!;
    const close = {
      rel: 0.12,
      because: "1500 draws tell a scatter to 2 %; the rest is what a straight line leaves out",
    };
    expectClose(
      uncertainty.leastFilm.si,
      scatter(({ leastFilm }) => leastFilm.si),
      close,
    );
    expectClose(
      uncertainty.filmTemperature.si,
      scatter(({ filmTemperature }) => filmTemperature.kelvin),
      close,
    );
    expectClose(
      uncertainty.attitude.si,
      scatter(({ attitude }) => attitude.si),
      close,
    );
    expectClose(
      uncertainty.meanPressure.si,
      scatter(({ meanPressure }) => meanPressure.si),
      close,
    );
    expectClose(
      uncertainty.highestPressure.si,
      scatter(({ highestPressure }) => highestPressure.si),
      close,
    );
    expectClose(
      uncertainty.frictionPower.si,
      scatter(({ frictionPower }) => frictionPower.si),
      close,
    );
    expectClose(
      uncertainty.sideFlow.si,
      scatter(({ sideFlow }) => sideFlow.si),
      close,
    );
  });
  it("is the less sure of its rise, the less oil is brought, and says how much of it comes of that", () => {
    const [fed] = runningPrediction([known], degF(65)).boxes;
    const supply = fed!.film.sideFlow.times(0.1);
    const [short] = runningPrediction([{ ...known, supply }], degF(65)).boxes;
    expect(short!.rise.value.si).toBe(fed!.rise.value.si);
    const share = short!.shares.find(({ from }) => from === "oil that is not brought")!.standardUncertainty
      .si;
    const { least, most } = short!.film.short!.friction;
    expectClose(share, (fed!.rise.value.si * Math.max(Math.abs(most - 1), 1 - least)) / Math.sqrt(3), {
      rel: 1e-9,
      because: "a/√3 of the wider side",
    });
    expectClose(short!.rise.standardUncertainty.si, Math.hypot(fed!.rise.standardUncertainty.si, share), {
      rel: 1e-9,
      because: "added as squares",
    });
  });
  it("hands its rises to the run-in, and names the box that is at fault", () => {
    expect(foretoldRises(runningPrediction([known], degF(65))).map(({ box }) => box)).toEqual(["far box"]);
    expect(() => runningPrediction([{ ...known, speed: rpm(0) }], degF(65))).toThrow(
      /^far box: runningFilm: speed/,
    );
    expect(() => runningPrediction([], degF(65))).toThrow(/at least one box/);
  });
});
