import { describe, expect, it } from "vitest";
import { coastDown, runIn } from "../../../kernel-helpers/bearing/index.js";
import {
  degC,
  degree,
  deltaC,
  inch,
  measured,
  ounce,
  pound,
  quantity,
  rpm,
} from "../../../kernel-helpers/quantity/index.js";
import {
  balance,
  balanceOnWays,
  balanceRuns,
  judgeUnbalance,
  permissibleUnbalance,
  splitCorrection,
} from "../../../kernel-helpers/shaft/index.js";
import { readTable, type Table } from "../../../kernel-helpers/survey/index.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import { coastDownFigure } from "../../../kernel-helpers/view/results/coast-down-figure.js";
import { runInFigure } from "../../../kernel-helpers/view/results/run-in-figure.js";

const tableOf = (name: string, ...lines: readonly string[]): Table =>
  readTable(new TextEncoder().encode(lines.join("\n")), { name, file: `${name}.csv` });
const text = (value: unknown): string => renderText(present(value)!);

describe("present(balance)", () => {
  const marks = [0, 45, 90, 135, 180, 225, 270, 315];
  const ways = (heavy: number) =>
    balanceOnWays(
      tableOf(
        "ways",
        "angle [deg],mass [oz]",
        ...marks.map((a) => `${a},${6 - heavy * Math.cos(((a - 30) * Math.PI) / 180)}`),
      ),
      { radius: inch(14), massUncertainty: ounce(0.2) },
    );
  it("says what to hang where, with its uncertainty, and draws it opposite the heavy side", () => {
    expect(text(ways(4))).toMatch(/Hang 4\.00 ± 0\.20 oz at 14 in from the axis, at 210\.0 ± 2\.8°/);
    expect(text(ways(4))).toMatch(
      /\[drawing\] The wheel's face, 0° at the top: heavy towards 30°, the correcting mass at 210°/,
    );
  });
  it("says that a wheel is balanced where nothing stands out", () => {
    expect(text(ways(0.05))).toMatch(/No heavy side stands out/);
  });
  it("says what to fasten to each plane, and what the last run's masses leave to add", () => {
    const runs = balanceRuns(
      tableOf("runs", "mass [oz],angle [deg],amplitude [thou],phase [deg]", "0,0,4,60", "2,0,5,100"),
      {
        radius: inch(13),
        phase: "as the angles",
      },
    );
    expect(text(runs)).toMatch(/2 runs/);
    expect(text(balance(runs))).toMatch(/Fasten 2\.\d+ ± .* oz at 13 in from the axis/);
  });
  it("gives the verdict against the grade in words, with margin and chance", () => {
    const permitted = permissibleUnbalance({ mass: pound(180), speed: rpm(110), grade: 6.3 });
    expect(text(permitted)).toMatch(/62 oz·in/);
    const found = {
      amount: measured(quantity(90, "ounceInch"), quantity(4, "ounceInch")),
      angle: measured(degree(1), degree(1)),
    };
    expect(text(judgeUnbalance(found, permitted))).toMatch(/NO: beyond grade G 6\.3[\s\S]*margin −28 oz·in/);
    const border = { ...found, amount: measured(quantity(62, "ounceInch"), quantity(4, "ounceInch")) };
    expect(text(judgeUnbalance(border, permitted))).toMatch(/CANNOT TELL YET[\s\S]*One more run/);
  });
  it("names the shares of a split correction", () => {
    expect(
      text(
        splitCorrection(
          ounce(5),
          degree(30),
          [0, 90].map((a) => degree(a)),
        ),
      ),
    ).toMatch(/4\.33 oz at 0° and 2\.5 oz at 90° do the work of 5 oz at 30°/);
  });
});

describe("present(run-in)", () => {
  const table = (end: number): Table =>
    tableOf(
      "run-in",
      "time [min],room [degC],pulley box [degC]",
      ...[0, 10, 20, 30, 45, 60, 90].map((t) => `${t},20,${(20 + end * (1 - Math.exp(-t / 30))).toFixed(2)}`),
    );
  const options = { stopAt: degC(70), thermometer: deltaC(0.5) };
  it("gives the verdict in one line, each box's end with its range, and the stop temperature in the figure", () => {
    const shown = text(runIn(table(30), options));
    expect(shown).toMatch(/YES: go on running; read again in \d+ min/);
    expect(shown).toMatch(/pulley box .* 50\.0 +4\d\.\d to 5\d\.\d/);
    expect(shown).toMatch(/stop temperature of 70 °C/);
  });
  it("tells where the forecast and two readings together lead, while the readings alone tell no end", () => {
    const early = tableOf("run-in", "time [min],room [degC],pulley box [degC]", "0,20,20", "10,20,28.5");
    const foretold = [{ box: "pulley box", rise: measured(deltaC(30), deltaC(2)) }];
    const shown = text(runIn(early, { ...options, foretold })).replace(/\s+/g, " ");
    expect(shown).toMatch(/CANNOT TELL YET/);
    expect(shown).toMatch(
      /By readings and forecast together, as far as the forecast holds: pulley box ends at 50\.0 °C, between 4\d\.\d and 5\d\.\d \(95 %\), nearly there in \d+ min\. The verdict stands on the readings alone/,
    );
    expect(text(runIn(table(30), { ...options, foretold }))).not.toMatch(/forecast together/);
  });
  it("names speed and oil at the foot of each stretch of the figure, and nothing where there is one", () => {
    const rows = [0, 10, 20, 30, 40, 50].map(
      (t) => `${t},${t < 30 ? 60 : 110},20,${20 + t / 4},${t === 0 ? "ISO 100" : ""}`,
    );
    const two = tableOf("run-in", "time [min],speed [rpm],room [degC],box [degC],oil [text]", ...rows);
    const labels = (of: Table): unknown[] =>
      (runInFigure(runIn(of, options)).figure.layout.annotations as { text: string }[]).map(
        (one) => one.text,
      );
    expect(labels(two)).toEqual(["60 rpm<br>ISO 100", "110 rpm", "stop at 70 °C"]);
    expect(labels(table(30))).toEqual(["stop at 70 °C"]);
  });
  it("says stop for the box that is going there", () => {
    expect(text(runIn(table(80), options))).toMatch(/NO: stop for pulley box/);
  });
  it("ranks what could be behind a departure, and says that none of it is certain", () => {
    const rise = measured(deltaC(12), deltaC(2));
    const shown = text(runIn(table(30), { ...options, foretold: [{ box: "pulley box", rise }] }));
    expect(shown).toMatch(/none of it certain/);
    expect(shown).toMatch(/clearance too small/);
  });
});

describe("present(coast-down)", () => {
  it("draws speed against time with the line through it, and gives the friction at both ends", () => {
    const rows = [0, 10, 20, 30].map((t) => `${t + 5},${110 - t}`);
    const found = coastDown(tableOf("coast-down", "time [s],speed [rpm]", ...rows), {
      inertia: quantity(10, "kilogramSquareMetre"),
      speedUncertainty: rpm(0.5),
    });
    const shown = text(found).replace(/\s+/g, " ");
    expect(shown).toMatch(/from 110 to 80 rpm in 30 s, with the straight line through it/);
    expect(shown).toMatch(/friction torque, fast 9\.27 ± 0\.41 lbf·in/);
    const [curve, readings] = coastDownFigure(found).figure.data as { x: number[]; y: number[] }[];
    expect(readings!.x).toEqual([0, 10, 20, 30]);
    expect(readings!.y).toEqual([110, 100, 90, 80]);
    // A straight line: half-way in time is half-way in speed.
    expect(curve!.y[20]).toBe(95);
  });
});
