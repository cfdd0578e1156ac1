import { describe, expect, it } from "vitest";
import { possibleCauses, type RunInOptions, runIn } from "../../../kernel-helpers/bearing/index.js";
import { degC, degF, deltaC, deltaF, measured, rpm } from "../../../kernel-helpers/quantity/index.js";
import { randomGenerator } from "../../../kernel-helpers/statistics/index.js";
import { readTable, type Table } from "../../../kernel-helpers/survey/index.js";
import { expectClose } from "../../support/expect-close.js";

const tableOf = (...lines: readonly string[]): Table =>
  readTable(new TextEncoder().encode(lines.join("\n")), { name: "run-in", file: "run-in.csv" });
const rise = (end: number, tau: number) => (t: number) => end * (1 - Math.exp(-t / tau));
const times = [0, 5, 10, 15, 20, 30, 40, 50, 60, 80, 100];
/** Boxes by rise over a room of 20 °C, without noise. */
const boxes = (
  pulley: (t: number) => number,
  far: (t: number) => number,
  at: readonly number[] = times,
): Table =>
  tableOf(
    "time [min],speed [rpm],room [degC],pulley box [degC],far box [degC]",
    ...at.map((t) => `${t},110,20,${(20 + pulley(t)).toFixed(4)},${(20 + far(t)).toFixed(4)}`),
  );
const options: RunInOptions = { stopAt: degC(70), thermometer: deltaC(0.5) };
const foretold = (box: string, degrees: number, u = 3) => ({
  box,
  rise: measured(deltaC(degrees), deltaC(u)),
});
const exact = { rel: 1e-4, because: "temperatures written with four decimals" };

describe("runIn(table, options)", () => {
  it("finds where each box ends and when, of known truth, and says to go on", () => {
    const found = runIn(boxes(rise(30, 25), rise(22, 20)), options);
    expectClose(found.boxes[0]!.end!.temperature.in("degC"), 50, exact);
    expectClose(found.boxes[1]!.end!.temperature.in("degC"), 42, exact);
    expectClose(found.boxes[0]!.end!.timeConstant.value.in("minute"), 25, { rel: 1e-3, because: "as above" });
    // A tenth of the rise is left after τ·ln 10 = 57.6 min: it is past that.
    expect(found.boxes[0]!.end!.nearlyThere.in("minute")).toBe(0);
    expect(found.state).toBe("go on");
    expect(found.text).toMatch(
      /^Go on: every box ends below the stop temperature at 110 rpm; read again in \d+ min\.$/,
    );
  });
  it("says when it will be nearly there: a tenth of the rise left after τ·ln 10", () => {
    const early = times.filter((t) => t <= 40);
    const { end } = runIn(boxes(rise(30, 25), rise(22, 20), early), options).boxes[0]!;
    expectClose(end!.nearlyThere.in("minute"), 25 * Math.log(10) - 40, {
      rel: 5e-3,
      because: "four decimals",
    });
  });
  it("gives the same in Fahrenheit and with the room given once for all", () => {
    const metric = runIn(boxes(rise(30, 25), rise(22, 20)), options);
    const inch = runIn(
      tableOf(
        "time [min],pulley box [degF]",
        ...times.map((t) => `${t},${(68 + 1.8 * rise(30, 25)(t)).toFixed(4)}`),
      ),
      { stopAt: degF(158), thermometer: deltaF(0.9), room: degC(20) },
    );
    expectClose(inch.boxes[0]!.end!.temperature.kelvin, metric.boxes[0]!.end!.temperature.kelvin, exact);
    expectClose(inch.boxes[0]!.end!.standardUncertainty.si, metric.boxes[0]!.end!.standardUncertainty.si, {
      rel: 1e-2,
      because: "temperatures written with four decimals",
    });
    expect(inch.unitSystem).toBe("inch");
  });
  it("does not take a room that warms up for a box that does", () => {
    const room = (t: number): number => 20 + 0.1 * t;
    const found = runIn(
      tableOf(
        "time [min],room [degC],pulley box [degC]",
        ...times.map((t) => `${t},${room(t)},${(room(t) + rise(30, 25)(t)).toFixed(4)}`),
      ),
      options,
    );
    expectClose(found.boxes[0]!.end!.temperature.in("degC"), 30 + room(100), exact);
    // The curve goes through the readings, with the room as it was at their time.
    const { curve } = found.boxes[0]!;
    const near = curve.find(({ time }) => time.in("minute") >= 30)!;
    const t = near.time.in("minute");
    expectClose(near.temperature.in("degC"), room(t) + rise(30, 25)(t), exact);
  });
  it("covers the true end in 93 to 97 % of 500 seeded runs read for one time constant and a half", () => {
    const random = randomGenerator(9);
    const early = Array.from({ length: 13 }, (_, i) => 3 * i);
    let inside = 0;
    for (let i = 0; i < 500; i++) {
      const found = runIn(
        boxes((t) => rise(30, 25)(t) + 0.5 * random.normal(), rise(22, 20), early),
        options,
      );
      const { end } = found.boxes[0]!;
      if (end === undefined || (end.from!.in("degC") <= 50 && 50 <= end.to!.in("degC"))) inside++;
    }
    expect(inside / 500).toBeGreaterThan(0.93);
    expect(inside / 500).toBeLessThan(0.975);
  }, 60_000);
  it("says stop when a box is at the stop temperature, and before that when its end lies above", () => {
    const there = runIn(boxes(rise(52, 25), rise(22, 20)), options);
    expect(there.state).toBe("stop");
    const heading = runIn(boxes(rise(70, 25), rise(22, 20), [0, 5, 10, 15, 20, 25]), options);
    expect(heading.boxes[0]!.now.in("degC")).toBeLessThan(70);
    expect(heading.text).toMatch(/^Stop: pulley box: by its readings it ends at/);
    expect(heading.boxes[1]!.state).toBe("go on");
  });
  it("cannot tell yet from the first readings, and says when the stop temperature would be reached", () => {
    const found = runIn(
      boxes((t) => 1.2 * t, rise(22, 20), [0, 5, 10]),
      options,
    );
    expect(found.state).toBe("cannot tell yet");
    expect(found.boxes[0]!.because).toMatch(/only 3 readings at this speed.*at 70 °C in 32 min/);
    // Half of that, so that it cannot pass unseen.
    expect(found.readNext.in("minute")).toBeLessThanOrEqual(15.9);
  });
  it("starts anew at another speed and another oil", () => {
    const two = tableOf(
      "time [min],speed [rpm],room [degC],oil [text],pulley box [degC]",
      ...[0, 10, 20, 30, 40].map((t) => `${t},60,20,ISO 100,${20 + rise(15, 20)(t)}`),
      ...[50, 60, 70, 80, 90, 110].map((t) => `${t},110,20,,${20 + 15 + rise(15, 20)(t - 40)}`),
      ...[120, 130, 140, 150, 165, 180, 200].map(
        (t) => `${t},110,20,ISO 68,${20 + 30 - rise(6, 20)(t - 110)}`,
      ),
    );
    const found = runIn(two, options);
    expect(found.stretches.map(({ speed, oil }) => `${speed} ${oil}`)).toEqual([
      "60 rpm ISO 100",
      "110 rpm ISO 100",
      "110 rpm ISO 68",
    ]);
    expectClose(found.boxes[0]!.end!.temperature.in("degC"), 44, {
      rel: 5e-3,
      because: "starts within the stretch",
    });
    expect(found.warnings).toEqual([]);
  });
  it("shares a box's time constant between stretches, so that three readings at a new speed tell its end", () => {
    const early = [0, 5, 10, 15, 20, 25, 30, 35, 40];
    const twoSpeeds = (tau: number, at: readonly number[]): Table =>
      tableOf(
        "time [min],speed [rpm],room [degC],pulley box [degC]",
        ...early.map((t) => `${t},60,20,${(20 + rise(15, 20)(t)).toFixed(4)}`),
        ...at.map((t) => `${45 + t},110,20,${(33 + rise(20, tau)(t)).toFixed(4)}`),
      );
    const [box] = runIn(twoSpeeds(20, [0, 5, 10]), options).boxes;
    expect(box!.sharing).toMatchObject({ stretches: 2, shared: true, level: 0.05 });
    expectClose(box!.end!.temperature.in("degC"), 53, exact);
    expectClose(box!.end!.timeConstant.value.in("minute"), 20, { rel: 1e-3, because: "four decimals" });
    // Where it changed, the last stretch stands alone, and three readings are too few for it.
    const [changed] = runIn(twoSpeeds(40, [0, 5, 10, 20, 30, 45, 60]), options).boxes;
    expect(changed!.sharing!.shared).toBe(false);
    expectClose(changed!.end!.temperature.in("degC"), 53, exact);
    expectClose(changed!.end!.timeConstant.value.in("minute"), 40, { rel: 1e-3, because: "four decimals" });
    const [few] = runIn(twoSpeeds(40, [0, 5, 10]), options).boxes;
    expect(few!.sharing!.shared).toBe(false);
    expect(few!.end).toBeUndefined();
    expect(few!.noEnd).toMatch(/^only 3 readings at this speed; 4 are needed/);
  });
  it("states each stretch's own time constant, of known truth, and none where its readings are too few", () => {
    const [box] = runIn(
      tableOf(
        "time [min],speed [rpm],room [degC],pulley box [degC]",
        ...[0, 5, 10, 15, 20, 25, 30, 35, 40].map((t) => `${t},60,20,${(20 + rise(15, 20)(t)).toFixed(4)}`),
        ...[0, 5, 10, 20, 30, 45, 60].map((t) => `${45 + t},110,20,${(33 + rise(20, 40)(t)).toFixed(4)}`),
        ...[0, 5].map((t) => `${110 + t},150,20,${(50 + rise(20, 40)(t)).toFixed(4)}`),
      ),
      options,
    ).boxes;
    const own = box!.ownTimeConstants;
    expect(own.map(({ stretch }) => stretch)).toEqual([0, 1]);
    const four = { rel: 1e-3, because: "four decimals" };
    expectClose(own[0]!.timeConstant.value.in("minute"), 20, four);
    expectClose(own[1]!.timeConstant.value.in("minute"), 40, four);
  });
  it("says which lines a box was not read on, and when what it says is older than the last row", () => {
    const rows = ["0,20,20,20", "10,20,-,24", "20,20,26,27", "30,20,27,29", "40,20,-,30"];
    const { warnings } = runIn(tableOf("time [min],room [degC],a [degC],b [degC]", ...rows), options);
    expect(warnings).toEqual([
      '"a" was not read on lines 3, 6: what is said of it holds for its reading before 40 min.',
    ]);
  });
  it("says nothing of sharing where there is one stretch, and is then the fit of that stretch", () => {
    const [box] = runIn(boxes(rise(30, 25), rise(22, 20)), options).boxes;
    expect(box!.sharing).toBeUndefined();
  });
  it("does not hold a forecast for one speed against the readings at another", () => {
    const run = (speed: number) =>
      runIn(boxes(rise(14, 25), rise(22, 20)), {
        ...options,
        foretold: [{ ...foretold("pulley box", 30), speed: rpm(speed) }],
      }).boxes[0]!;
    expect(run(220).agreement).toBe("foretold for another speed");
    expect(run(220).against).toBeUndefined();
    expect(run(220).causes).toEqual([]);
    expect(run(110.5).agreement).toBe("cooler");
  });
  it("tells an end from the second reading on where there is a forecast, and leaves the verdict to the readings", () => {
    const early = boxes(rise(30, 25), rise(22, 20), [0, 5]);
    const given = { ...options, foretold: [foretold("pulley box", 30, 2)] };
    const [pulley, far] = runIn(early, given).boxes;
    expect(pulley!.end).toBeUndefined();
    expect(pulley!.state).toBe("cannot tell yet");
    expectClose(pulley!.endWithForecast!.temperature.in("degC"), 50, exact);
    // Two readings tell nothing of the end: its uncertainty is that of the forecast.
    expectClose(pulley!.endWithForecast!.standardUncertainty.si, 2, {
      rel: 1e-6,
      because: "a few roundings",
    });
    expectClose(pulley!.endWithForecast!.timeConstant.value.in("minute"), 25, {
      rel: 1e-3,
      because: "four decimals",
    });
    expect(far!.endWithForecast).toBeUndefined();
    // Later the readings outweigh it: the mean of both by their weights.
    const whole = boxes(rise(30, 25), rise(22, 20));
    const wrong = { ...options, foretold: [foretold("pulley box", 33, 2)] };
    const [both] = runIn(whole, wrong).boxes;
    const [alone, w] = [both!.end!, both!.end!.standardUncertainty.si ** -2];
    expectClose(
      both!.endWithForecast!.temperature.in("degC"),
      (w * alone.temperature.in("degC") + 0.25 * 53) / (w + 0.25),
      { rel: 2e-3, because: "to first order in the shift of the end" },
    );
    expect(
      runIn(early, { ...options, foretold: [{ ...foretold("pulley box", 30), speed: rpm(220) }] }).boxes[0]!
        .endWithForecast,
    ).toBeUndefined();
  });
  it("widens that too where the readings scatter more than the thermometer", () => {
    const given = { ...options, foretold: [foretold("pulley box", 30, 3)] };
    const rough = boxes((t) => rise(30, 25)(t) + (t % 20 === 0 ? 3 : -3), rise(22, 20));
    const [calm, wild] = [boxes(rise(30, 25), rise(22, 20)), rough].map(
      (table) => runIn(table, given).boxes[0]!.endWithForecast!.standardUncertainty.si,
    );
    expect(wild!).toBeGreaterThan(2 * calm!);
  });
  it("covers the true end with readings and forecast together in 93 to 98 % of 400 seeded runs of four readings", () => {
    const random = randomGenerator(11);
    let [inside, told] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const found = runIn(
        boxes((t) => rise(30, 25)(t) + 0.5 * random.normal(), rise(22, 20), [0, 5, 10, 15]),
        {
          ...options,
          foretold: [foretold("pulley box", 30 + 3 * random.normal(), 3)],
        },
      );
      const end = found.boxes[0]!.endWithForecast;
      if (end === undefined) continue;
      told++;
      if (end.from!.in("degC") <= 50 && 50 <= end.to!.in("degC")) inside++;
    }
    // Only where the first readings happen to bend away from the forecast is nothing said.
    expect(told).toBeGreaterThan(380);
    expect(inside / told).toBeGreaterThan(0.93);
    expect(inside / told).toBeLessThan(0.98);
  }, 60_000);
  it("compares with the forecast within both uncertainties, and ranks what could make the difference", () => {
    const fine = runIn(boxes(rise(30, 25), rise(22, 20)), {
      ...options,
      foretold: [foretold("pulley box", 28), foretold("far box", 24)],
    });
    expect(fine.boxes.map(({ agreement }) => agreement)).toEqual(["as foretold", "as foretold"]);
    expect(fine.boxes[0]!.causes).toEqual([]);
    const hot = runIn(boxes(rise(40, 25), rise(22, 20)), {
      ...options,
      foretold: [foretold("pulley box", 24), foretold("far box", 22)],
    });
    expect(hot.boxes[0]!.agreement).toBe("hotter");
    expect(hot.boxes[0]!.causes.map(({ cause }) => cause).slice(0, 2)).toEqual([
      "clearance too small, or cap drawn too tight",
      "out of line, bearing on one edge",
    ]);
    expectClose(hot.boxes[0]!.against!.value.in("deltaC"), 16, { rel: 1e-3, because: "four decimals" });
    const both = runIn(boxes(rise(40, 25), rise(36, 20)), {
      ...options,
      foretold: [foretold("pulley box", 24), foretold("far box", 22)],
    });
    expect(both.boxes[0]!.causes[0]!.cause).toMatch(/belt too tight|clearance too small/);
    const cool = runIn(boxes(rise(14, 25), rise(22, 20)), {
      ...options,
      foretold: [foretold("pulley box", 30)],
    });
    expect(cool.boxes[0]!.agreement).toBe("cooler");
    expect(cool.boxes[0]!.causes[0]!.cause).toMatch(/clearance larger than planned/);
  });
  it("warns of a fall at constant speed, a jump, and a long pause, each with its lines", () => {
    const dip = boxes((t) => rise(30, 25)(t) - (t === 50 ? 8 : 0), rise(22, 20));
    expect(runIn(dip, options).warnings.join("\n")).toMatch(
      /"pulley box" fell while speed and oil stayed.*line 9/,
    );
    const jump = boxes((t) => rise(20, 25)(t) + (t >= 60 ? 15 : 0), rise(22, 20));
    expect(runIn(jump, options).warnings.join("\n")).toMatch(/"pulley box" jumped \(line 10\)/);
    const pause = boxes(rise(30, 25), rise(22, 20), [0, 5, 10, 15, 20, 90, 95]);
    expect(runIn(pause, options).warnings.join("\n")).toMatch(/Nothing was read between 20 min and 90 min/);
  });
  it("widens the uncertainty where the readings scatter more than the thermometer", () => {
    const rough = boxes((t) => rise(30, 25)(t) + (t % 20 === 0 ? 3 : -3), rise(22, 20));
    const found = runIn(rough, options);
    expect(found.warnings.join()).toMatch(/scatters more about its curve/);
    const width = (box: number): number =>
      found.boxes[box]!.end?.standardUncertainty.si ?? Number.POSITIVE_INFINITY;
    expect(width(0)).toBeGreaterThan(2 * width(1));
  });
  it("refuses times out of order, a missing room, no boxes, and a forecast for a box that is not there", () => {
    expect(() => runIn(tableOf("time [min],room [degC],box [degC]", "10,20,30", "5,20,31"), options)).toThrow(
      "runIn: run-in.csv line 3: times must grow, got 5 min after 10 min on line 2; count on past midnight and past a stop",
    );
    expect(() => runIn(tableOf("time [min],box [degC]", "10,30"), options)).toThrow(
      /the room's temperature is missing/,
    );
    expect(() => runIn(tableOf("time [min],room [degC]", "10,30"), options)).toThrow(
      /a column of temperatures for each box/,
    );
    expect(() => runIn(tableOf("time [min],room [degC],box [degC]"), options)).toThrow();
    expect(() =>
      runIn(boxes(rise(30, 25), rise(22, 20)), { ...options, foretold: [foretold("middle box", 20)] }),
    ).toThrow(/foretold for "middle box", but run-in.csv has only "pulley box", "far box"/);
    expect(() => runIn(boxes(rise(30, 25), rise(22, 20)), { ...options, thermometer: deltaC(0) })).toThrow(
      /thermometer/,
    );
  });
});

describe("possibleCauses(signs)", () => {
  const none = {
    hotter: false,
    cooler: false,
    settles: false,
    risesOn: false,
    pastCrest: false,
    jumped: false,
    othersFine: false,
    othersHotToo: false,
  };
  // Common practice, no source: what a fitter looks at first for each sign.
  it.each([
    [{ ...none, hotter: true, risesOn: true }, "starved of oil"],
    [{ ...none, hotter: true, settles: true }, "clearance too small, or cap drawn too tight"],
    [{ ...none, hotter: true, othersHotToo: true }, "belt too tight, or a heavier load than reckoned"],
    [{ ...none, hotter: true, othersFine: true }, "out of line, bearing on one edge"],
    [{ ...none, pastCrest: true }, "bedding in: high spots wearing down"],
    [{ ...none, jumped: true }, "dirt or a particle of metal between journal and bearing"],
    [{ ...none, cooler: true }, "clearance larger than planned, or the thermometer not at the hottest place"],
  ])("%o: first %s", (signs, first) => {
    const causes = possibleCauses(signs);
    expect(causes[0]!.cause).toBe(first);
    expect(causes.every(({ signs: held, look }) => held.length > 0 && look !== "")).toBe(true);
    expect(causes.map(({ weight }) => weight)).toEqual(
      [...causes.map(({ weight }) => weight)].sort((a, b) => b - a),
    );
  });
  it("names nothing where nothing departs", () => {
    expect(possibleCauses({ ...none, settles: true, othersFine: true })).toEqual([]);
  });
});
