import { describe, expect, it } from "vitest";
import { inch, measured, thou } from "../../../kernel-helpers/quantity/index.js";
import type { TaperFit } from "../../../kernel-helpers/survey/index.js";
import type { FigureBlock } from "../../../kernel-helpers/view/blocks.js";
import { finishFigure } from "../../../kernel-helpers/view/finish-figure.js";
import { drawPng } from "../../../kernel-helpers/view/picture/index.js";
import { profileFigure, taperFigure, wearFigure } from "../../../kernel-helpers/view/results/index.js";
import { expectClose } from "../../support/expect-close.js";
import { sampleProfile, sampleTaper, sampleWear } from "../../support/sample-results.js";

/** What the tests look at in a trace; all of it is optional, as in plotly. */
interface Trace {
  readonly type?: string;
  readonly name?: string;
  readonly x?: readonly (number | null)[];
  readonly y?: readonly (number | null)[];
  readonly hovertext?: string | readonly string[];
  readonly yaxis?: string;
  readonly marker?: { readonly symbol?: string; readonly color?: string };
}

const drawable = ["scatter", "bar", "heatmap", "histogram", "box", "contour"];

/** The sample with a kink at station 3 in, 0.3 thou below the line. */
function kinkedTaper(): TaperFit {
  const fit = sampleTaper();
  const side = (off: number) => measured(fit.taper.value + off, 1e-5);
  const kink = {
    station: measured(inch(3), inch(0.1)),
    offLine: thou(-0.3),
    before: side(-2e-4),
    behind: side(3e-4),
  };
  return { ...fit, residualShape: { ...fit.residualShape, shape: "kinked", kinks: [kink] } };
}

const figures: Readonly<Record<string, FigureBlock>> = {
  "a profile in inches": profileFigure(sampleProfile("inch")),
  "a profile in millimetres": profileFigure(sampleProfile("metric")),
  "wear in inches": wearFigure(sampleWear("inch")),
  "wear in millimetres, with a limit": wearFigure(sampleWear("metric", { withLimit: true })),
  "wear with nominal and limit far off the scale": wearFigure({
    ...sampleWear(),
    nominal: inch(2.5),
    limit: inch(2.375),
  }),
  "wear without a nominal": wearFigure({ ...sampleWear(), nominal: undefined }),
  "a straight taper": taperFigure(sampleTaper()),
  "two tapers that meet": taperFigure(kinkedTaper()),
  "a barrel with a gross reading": taperFigure(sampleTaper({ bow: 0.6, grossAt: 4 })),
};

const traces = ({ figure }: FigureBlock): readonly Trace[] => figure.data as readonly Trace[];
const hovers = (block: FigureBlock): string[] => traces(block).flatMap(({ hovertext }) => hovertext ?? []);
const labels = ({ figure }: FigureBlock): string[] =>
  (figure.layout.annotations as readonly { text: string }[]).map(({ text }) => text);

describe.each(Object.entries(figures))("the figure of %s", (_, block) => {
  it("passes the house's check, within 720 px", () => {
    expect(finishFigure(block.figure).layout.width).toBeLessThanOrEqual(720);
  });

  it("draws only with traces of every plotly bundle in use", () => {
    for (const { type } of traces(block)) expect(drawable).toContain(type);
  });

  it("gives each point one value and one hover text, none of them NaN", () => {
    for (const { x = [], y = [], hovertext } of traces(block)) {
      expect(y.length).toBe(x.length);
      if (Array.isArray(hovertext)) expect(hovertext.length).toBe(x.length);
      for (const value of [...x, ...y]) expect(value === null || Number.isFinite(value)).toBe(true);
    }
  });

  it("draws as a picture", async () => {
    const png = await drawPng(block.figure, { scale: 1 });
    expect([...png.subarray(1, 4)].map((byte) => String.fromCharCode(byte)).join("")).toBe("PNG");
  });

  it("says what it shows to those who cannot see it", () => {
    expect(block.alt.length).toBeGreaterThan(20);
  });

  it("is the same bytes each time, and survives JSON", () => {
    expect(JSON.parse(JSON.stringify(block.figure))).toEqual(block.figure);
  });
});

describe("wearFigure(wear)", () => {
  const wear = sampleWear("inch");
  const block = wearFigure(wear);

  it("shows every reading once, gross ones included", () => {
    const shown = hovers(block).filter((text) => text.includes("<b>station "));
    expect(shown.length).toBe(wear.profile.readings.length);
    for (const { line } of wear.profile.readings)
      expect(shown.filter((text) => text.includes(`line ${line}`)).length).toBe(2);
  });

  it("says of a reading its station, angle, diameter with uncertainty, depth, file, line and remark", () => {
    const text = hovers(block).find((t) => t.includes("station 14 in, 90°"));
    expect(text).toMatch(/2\.43\d{3} ± 0\.00020 in \(95 %\)/);
    expect(text).toMatch(/5\.\d thou below nominal/);
    expect(text).toContain("tables/shaft-survey.csv, line 22");
    expect(text).toContain("pits from lying wet");
  });

  it("shows a remark full of markup as text", () => {
    const text = hovers(block).find((t) => t.includes("station 15 in"));
    expect(text).toContain("&lt;img");
    expect(text).not.toContain("<img");
    expect(text).not.toContain("$");
  });

  it("gives each angle a marker and a colour of its own", () => {
    const readings = traces(block).filter(({ name }) => name?.startsWith("read at"));
    expect(readings.map(({ name }) => name)).toEqual(["read at 0°", "read at 90°"]);
    expect(new Set(readings.map(({ marker }) => marker?.symbol)).size).toBe(2);
    expect(new Set(readings.map(({ marker }) => marker?.color)).size).toBe(2);
  });

  it("keeps a reading ten times too large in sight, at the edge, with its line and value", () => {
    const range = (block.figure.layout.yaxis as { range: [number, number] }).range;
    expect(range[1]).toBeLessThan(2.45);
    const arrow = traces(block).find(({ marker }) => marker?.symbol === "arrow-up");
    expect(arrow?.y).toEqual([range[1]]);
    expect(labels(block)).toContainEqual(
      expect.stringMatching(/off the scale: line 34 at 90°, 24\.37\d\d in/),
    );
  });

  it("crosses out a gross reading that is on the scale", () => {
    const near = wearFigure(sampleWear("inch", { withLimit: true }));
    const crossed = traces(near).find(({ marker }) => marker?.symbol === "circle-x-open");
    expect(crossed?.x).toEqual([6]);
    expect(labels(near)).toContain("line 14 at 0°");
  });

  it("states how much larger than the shaft its wear is drawn, and draws it so", () => {
    const [, times] =
      labels(block)
        .join("\n")
        .match(/wear drawn ([\d.]+) times larger/) ?? [];
    const outline = traces(block).find(({ x }) => x?.length === 17);
    // Band 2 is 4.8 thou below 2.4375 in; nominal reaches to 1.
    const drawn = 1 - (Number(times) * 0.0048) / 2.4375;
    expectClose(outline?.y?.[2] ?? Number.NaN, drawn, {
      abs: 1e-6,
      because: "figures are tidied to 12 digits",
    });
    expect(outline?.y?.[3]).toBe(outline?.y?.[2]);
  });

  it("puts 0 on the scale of depths where nominal is on the scale of diameters", () => {
    const { yaxis, yaxis3 } = block.figure.layout as Record<string, { range: [number, number] }>;
    const [low, high] = yaxis!.range;
    const [deep, shallow] = yaxis3!.range;
    expectClose((2.4375 - low) * 1000, deep, {
      abs: 1e-6,
      because: "figures are tidied to 12 digits",
    });
    expectClose((2.4375 - high) * 1000, shallow, {
      abs: 1e-6,
      because: "figures are tidied to 12 digits",
    });
  });

  it("names nominal and limit on their lines", () => {
    const names = labels(wearFigure(sampleWear("inch", { withLimit: true })));
    expect(names).toContain("nominal 2 7/16 in");
    expect(names).toContain("limit 2.425 in");
  });

  it("points to a nominal far off the scale instead of drawing it", () => {
    const far = wearFigure({ ...wear, nominal: inch(2.5) });
    expect(labels(far)).toContain("↑ nominal 2 1/2 in");
    const line = traces(far).find(({ yaxis }) => yaxis === "y3");
    expect(line?.y).toEqual([null]);
  });

  it("says so where it thins out a long series", () => {
    const [reading] = wear.profile.readings;
    const readings = Array.from({ length: 5000 }, (_, i) => ({
      ...reading!,
      station: inch(i / 125),
      diameter: inch(2.437).minus(thou((i % 7) / 10)),
    }));
    const long = wearFigure({ ...wear, profile: { ...wear.profile, readings }, gross: [] });
    expect(long.caption).toContain("the lowest and the highest are drawn");
    expect(block.caption).not.toContain("the lowest and the highest");
    expect(hovers(long).length).toBeLessThan(1500);
  });
});

describe("taperFigure(fit)", () => {
  it("draws the bow where it is real, and not where the flanks are straight", () => {
    const names = (block: FigureBlock): (string | undefined)[] => traces(block).map(({ name }) => name);
    expect(names(figures["a barrel with a gross reading"]!)).toContain("bow (barrel)");
    expect(names(figures["a straight taper"]!).join()).not.toContain("bow");
  });

  it("shows a gross reading in both panels", () => {
    const marked = traces(figures["a barrel with a gross reading"]!).filter(
      ({ name }) => name === "gross, no weight",
    );
    expect(marked.length).toBe(2);
  });
});

describe("the figure of two tapers that meet", () => {
  it("draws the kinked line over the straight one, from end to end through the kink", () => {
    const kinks = traces(taperFigure(kinkedTaper())).find(({ name }) => name === "kink")!;
    expectClose(kinks.x![1]!, 3, { rel: 1e-12, because: "as given" });
    expectClose(kinks.y![1]!, -0.3, { rel: 1e-9, because: "as given" });
    expect([kinks.x![0], kinks.x![2]]).toEqual([0, 5]);
    expectClose(kinks.y![0]!, -0.3 + 0.2 * 3, {
      rel: 1e-6,
      because: "0.2 thou an inch less before the kink",
    });
    expectClose(kinks.y![2]!, -0.3 + 0.3 * 2, { rel: 1e-6, because: "0.3 thou an inch more behind it" });
  });
});
