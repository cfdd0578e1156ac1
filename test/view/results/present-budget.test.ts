import { afterEach, describe, expect, it } from "vitest";
import {
  deltaC,
  inch,
  measured,
  mm,
  perC,
  setUnitSystem,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import {
  type Budget,
  budget,
  correlated,
  exactly,
  uncertain,
} from "../../../kernel-helpers/statistics/index.js";
import type { FigureBlock, Presentation, TableBlock } from "../../../kernel-helpers/view/blocks.js";
import { finishFigure } from "../../../kernel-helpers/view/finish-figure.js";
import { present } from "../../../kernel-helpers/view/present.js";

const bore = uncertain(measured(inch(2.4405), thou(0.3), 9), "bore gauge");
const shaft = uncertain(measured(inch(2.4375), thou(0.4)), "micrometer");
const clearance = budget(bore.minus(shaft), { title: "Clearance at the drive end" });
const shown = (value: unknown): Presentation => present(value)!;
const table = ({ blocks }: Presentation): TableBlock => blocks.find((block) => block.type === "table")!;
const figure = ({ blocks }: Presentation): FigureBlock => blocks.find((block) => block.type === "figure")!;

afterEach(() => setUnitSystem(undefined));

describe("present(budget)", () => {
  it("says the result, its uncertainty, and where they come from", () => {
    const { title, blocks } = shown(clearance);
    expect(title).toBe("Clearance at the drive end");
    // 0.5 thou; t(95 %, 69.4) = 1.995.
    expect(blocks[0]).toEqual({
      type: "facts",
      facts: [
        { label: "result", value: "0.0030 ± 0.0010 in (95 %, k = 2.0)" },
        { label: "combined standard uncertainty", value: "0.50 thou" },
        {
          label: "expanded uncertainty, 95 %",
          value: "1.0 thou",
          note: "k = 1.99 for 69.4 degrees of freedom",
        },
      ],
    });
    // √0.36 = 0.6 of the uncertainty is left.
    expect(blocks[1]).toEqual({
      type: "text",
      text: "The largest contribution is that of micrometer: without it the uncertainty would be 40 % smaller.",
    });
  });

  it("lists the sources, largest first, and what they make together", () => {
    expect(table(shown(clearance)).rows.map(({ cells }) => cells)).toEqual([
      ["micrometer", "0.40 thou", "−1", "0.40", "64.0 %", "∞"],
      ["bore gauge", "0.30 thou", "1", "0.30", "36.0 %", "9"],
      ["together", "", "", "0.50", "100 %", "69.4"],
    ]);
  });

  it("gives sensitivities per unit of the source", () => {
    const growth = uncertain(measured(mm(250), mm(0.001)), "length")
      .times(uncertain(measured(perC(11.5e-6), perC(1e-6)), "expansion"))
      .times(uncertain(measured(deltaC(5), deltaC(0.5)), "temperature"));
    const cells = new Map(table(shown(growth)).rows.map(({ cells: row }) => [row[0], row]));
    // 250 mm × 11.5e-6 = 2.875 µm per °C; 250 mm × 5 °C = 1.25e6 µm per 1/°C.
    expect(cells.get("temperature")?.slice(1, 4)).toEqual(["0.50 °C", "2.88 µm per °C", "1.4"]);
    expect(cells.get("expansion")?.slice(1, 4)).toEqual(["1×10⁻⁶ /°C", "1250000 µm per 1/°C", "1.3"]);
    expect(cells.get("length")?.[2]).toBe("5.75×10⁻⁵");
  });

  it("draws the contributions as bars that the page can draw, longest at the top, each with its size beside its name", () => {
    const { figure: spec, alt, caption } = figure(shown(clearance));
    expect(() => finishFigure(spec)).not.toThrow();
    expect(spec.data[0]).toMatchObject({
      type: "bar",
      orientation: "h",
      x: [0.4, 0.3, 0.5],
      hovertext: ["0.40 thou (64 %)", "0.30 thou (36 %)", "0.50 thou"],
    });
    expect(spec.layout).toMatchObject({
      yaxis: {
        range: [2.5, -0.5],
        ticktext: [
          "micrometer<br><b>0.40 thou (64 %)</b>",
          "bore gauge<br><b>0.30 thou (36 %)</b>",
          "together<br><b>0.50 thou</b>",
        ],
      },
      xaxis: { range: [0, 0.525], title: { text: "contribution (thou)" } },
    });
    expect(alt).toContain("micrometer with 64 %");
    expect(caption).toContain("add in squares");
  });

  it("follows the unit system set", () => {
    setUnitSystem("metric");
    expect(table(shown(clearance)).rows[0]!.cells.slice(1, 4)).toEqual(["10 µm", "−1", "10"]);
  });

  it("folds many sources, and says how many bars are left out", () => {
    const many = Array.from({ length: 30 }, (_, i) => uncertain(measured(1, 0.1 + i / 100), `source ${i}`));
    const sum = many.reduce((total, next) => total.plus(next));
    const { figure: spec, caption } = figure(shown(sum));
    expect((spec.data[0]!.x as number[]).length).toBe(16);
    expect(caption).toContain("The 15 smallest are left out.");
    expect(table(shown(sum)).rows).toHaveLength(31);
    expect(() => finishFigure(spec)).not.toThrow();
  });

  it("says that correlated sources share, and that some cancel", () => {
    const { a, b } = correlated({ a: measured(1, 1), b: measured(1, 1) }, [["a", "b", 1]]);
    const cancelled = shown(a.minus(b));
    expect(table(cancelled).caption).not.toContain("The shares are of the variance");
    expect(cancelled.blocks[1]).toEqual({ type: "text", text: "The sources cancel each other." });
    expect(table(shown(a.plus(b.times(2)))).caption).toContain("Some sources are correlated");
  });

  it("takes a name for text, whatever it holds", () => {
    const hostile = uncertain(measured(1, 1), "<b>$x$</b>");
    expect((figure(shown(hostile)).figure.layout.yaxis as { ticktext: string[] }).ticktext[0]).toMatch(
      /^&lt;b&gt;&#36;x&#36;&lt;\/b&gt;<br><b>[^<]+<\/b>$/,
    );
  });
});

describe("present(uncertain value)", () => {
  it("is its budget, with one source or many", () => {
    expect(shown(bore.minus(shaft)).blocks).toEqual(
      shown({ ...clearance, title: "Uncertainty budget" } satisfies Budget).blocks,
    );
    expect(shown(bore).blocks[1]).toEqual({ type: "text", text: "All of it comes from bore gauge." });
  });

  it("of an exact value says so", () => {
    expect(shown(exactly(inch(2)))).toEqual({ title: "2 in, taken as exact", blocks: [] });
  });
});
