import { describe, expect, it, vi } from "vitest";
import { traceTypes } from "../../../kernel-helpers/view/finish-figure.js";
import { drawSvg } from "../../../kernel-helpers/view/picture/draw-svg.js";
import { loadEngine } from "../../../kernel-helpers/view/picture/engine.js";
import { heatFigure, typicalFigure } from "../typical-figure.js";

/** Fails at the first mark-up fault: a stack of open elements must come out even. */
function expectWellFormed(xml: string): void {
  const open: string[] = [];
  for (const [, close, name, empty] of xml.matchAll(/<(\/?)([\w:-]+)(?:\s+[\w:-]+="[^"<]*")*\s*(\/?)>/g)) {
    if (close === "/") expect(open.pop()).toBe(name);
    else if (empty !== "/") open.push(name!);
  }
  expect(open).toEqual([]);
  expect(xml.match(/</g)!.length).toBe(xml.match(/<\/?[\w:-]+(?:\s+[\w:-]+="[^"<]*")*\s*\/?>/g)!.length);
}

describe("drawSvg(figure)", () => {
  it("gives a well-formed SVG of the size asked for", async () => {
    const svg = await drawSvg(typicalFigure);
    expectWellFormed(svg);
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"[^>]*width="720" height="420"/);
    expect(svg).not.toMatch(/NaN|undefined/);
  });
  it("holds the title, the axes' titles, the legend, the notes, the error bars and the shapes", async () => {
    const svg = await drawSvg(typicalFigure);
    for (const word of [
      "Diameter along the shaft",
      "station [in]",
      "diameter [in]",
      "at 0°",
      "fitted",
      "worn 3.9 thou",
      "2.4370",
    ])
      expect(svg).toContain(`>${word}<`);
    expect(svg.match(/class="yerror"/g)).toHaveLength(9);
    expect(svg).toMatch(/<path data-index="0"[^>]*fill: rgb\(193, 68, 14\)/);
    expect(svg).toMatch(/<path data-index="1"[^>]*stroke-dasharray/);
    expect(svg.match(/class="point"/g)).toHaveLength(9);
  });
  it("sizes the legend by its words", async () => {
    const long = { ...typicalFigure.data[0], name: "readings by the second inspector, at 0°" };
    const legendWidth = async (trace: object): Promise<number> => {
      const svg = await drawSvg({ ...typicalFigure, data: [{ ...trace, showlegend: true }] });
      return Number(svg.match(/<rect class="bg"[^>]*width="([\d.]+)"/)![1]);
    };
    const grown = (await legendWidth(long)) - (await legendWidth({ ...long, name: "at 0°" }));
    // 34 more letters at 11 px, on average about half an em each.
    expect(grown).toBeGreaterThan(34 * 11 * 0.4);
    expect(grown).toBeLessThan(34 * 11 * 0.6);
  });
  it("gives the same bytes again, after and beside other figures", async () => {
    const first = await drawSvg(typicalFigure);
    const [heat, beside] = await Promise.all([drawSvg(heatFigure), drawSvg(typicalFigure)]);
    expect(beside).toBe(first);
    expect(await drawSvg(heatFigure)).toBe(heat);
    expect(await drawSvg(typicalFigure)).toBe(first);
  });
  it("draws one figure at a time, however many are asked for at once", async () => {
    const { plotly } = await loadEngine();
    const toImage = plotly.toImage.bind(plotly);
    let [running, most] = [0, 0];
    const spy = vi.spyOn(plotly, "toImage").mockImplementation(async (figure, options) => {
      most = Math.max(most, ++running);
      const url = await toImage(figure, options);
      running--;
      return url;
    });
    await Promise.all([drawSvg(heatFigure), drawSvg(typicalFigure), drawSvg(heatFigure)]);
    expect(spy).toHaveBeenCalledTimes(3);
    expect(most).toBe(1);
    spy.mockRestore();
  });
  it("does not change the figure", async () => {
    const copy = structuredClone(typicalFigure);
    await drawSvg(typicalFigure);
    expect(typicalFigure).toEqual(copy);
  });
  it("leaves nothing of the figure behind in the window it draws on", async () => {
    await drawSvg(typicalFigure);
    const { document } = await loadEngine();
    const held = (): number => document.querySelectorAll("*").length;
    const before = held();
    for (let round = 0; round < 3; round++) await drawSvg(typicalFigure);
    expect(held()).toBe(before);
  });
  it("goes on drawing after a figure that could not be drawn", async () => {
    const bad = { data: [{ type: "scatterpolar" }], layout: typicalFigure.layout };
    await expect(drawSvg(bad)).rejects.toThrow(/figure: data\[0\]\.type .* got scatterpolar/);
    expect(await drawSvg(typicalFigure)).toContain("<svg");
  });
  it("draws a picture that the figure holds", async () => {
    const source = `data:image/svg+xml;base64,${Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>').toString("base64")}`;
    const images = [{ source, x: 0, y: 1, sizex: 0.5, sizey: 0.5 }];
    const svg = await drawSvg({ data: heatFigure.data, layout: { ...heatFigure.layout, images } });
    expect(svg).toMatch(/<image [^>]*href="data:image\//);
  });
  it("gives up a drawing that is stuck after 60 s, and draws those that wait behind it", async () => {
    const first = await drawSvg(typicalFigure);
    const { plotly } = await loadEngine();
    vi.spyOn(plotly, "toImage").mockReturnValueOnce(new Promise(() => undefined));
    // The first timer set is the limit of the stuck drawing: here it runs out at once.
    const { setTimeout } = globalThis;
    const timers = vi
      .spyOn(globalThis, "setTimeout")
      .mockImplementationOnce((run: () => void) => setTimeout(run, 1));
    const stuck = drawSvg(typicalFigure);
    const waiting = drawSvg(typicalFigure);
    await expect(stuck).rejects.toThrow(
      "drawSvg: a drawing must be ready within 60 s; this one was given up",
    );
    expect(timers.mock.calls[0]![1]).toBe(60_000);
    timers.mockRestore();
    expect(await waiting).toBe(first);
    expect((await loadEngine()).plotly).not.toBe(plotly);
  });
});

describe("traceTypes", () => {
  it("are the ones the bundle knows", async () => {
    const { plotly } = await loadEngine();
    expect(Object.keys(plotly.PlotSchema.get().traces).sort()).toEqual([...traceTypes].sort());
  });
});
