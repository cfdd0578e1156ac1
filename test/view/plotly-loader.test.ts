import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { gunzipSync } from "node:zlib";
import { Window } from "happy-dom";
import { describe, expect, it, vi } from "vitest";
import { figureHtml } from "../../kernel-helpers/view/figure-html.js";
import { loaderFor, plotlyLoaderHtml, withoutPlotlyLoader } from "../../kernel-helpers/view/plotly-loader.js";
import { typicalFigure } from "./typical-figure.js";

/** A library that only writes down what it is asked to draw. */
const fakeLibrary = `window.Plotly = {
  newPlot: function (place, data, layout) { window.drawn.push([place, data, layout]); return Promise.resolve(); },
  Plots: { resize: function (place) { window.resized.push(place); } }
};`;

const fragment = figureHtml({ figure: typicalFigure, svg: "<svg/>", alt: "figure" });

class FakePage {
  readonly window = { drawn: [] as unknown[][], resized: [] as unknown[], Plotly: undefined as unknown };
  readonly #document = new Window().document;
  readonly #observed: (() => void)[] = [];
  plotWidth = 500;

  constructor() {
    this.#document.head.appendChild = ((script: { textContent: string }) => {
      new Function("window", script.textContent)(this.window);
    }) as never;
    const createElement = this.#document.createElement.bind(this.#document);
    this.#document.createElement = ((tag: string) => {
      const element = createElement(tag);
      Object.defineProperty(element, "offsetWidth", { get: () => this.plotWidth });
      return element;
    }) as never;
  }

  /** Puts an output in the page and runs its scripts, as a notebook does. */
  show(html: string): void {
    this.#document.body.insertAdjacentHTML("beforeend", html.replace(/<script.*?<\/script>/gs, ""));
    for (const [, source] of html.matchAll(/<script[^>]*>(.*?)<\/script>/gs)) this.run(source!);
  }

  run(script: string): void {
    const observed = this.#observed;
    class ResizeObserver {
      constructor(readonly callback: () => void) {}
      observe(): void {
        observed.push(this.callback);
        this.callback();
      }
    }
    new Function("window", "document", "ResizeObserver", script)(this.window, this.#document, ResizeObserver);
  }

  resize(width: number): void {
    this.plotWidth = width;
    for (const callback of this.#observed) callback();
  }

  query(selector: string): readonly unknown[] {
    return [...this.#document.querySelectorAll(selector)];
  }

  get pictures(): readonly { readonly style: { readonly display: string } }[] {
    return this.query("img") as never;
  }
}

describe("plotlyLoaderHtml()", () => {
  it("carries the very file of the installed library", () => {
    const file = createRequire(__filename).resolve("plotly.js-cartesian-dist-min");
    const [, packed] = plotlyLoaderHtml().match(/\}\)\("([^"]+)"\);<\/script>$/)!;
    expect(gunzipSync(Buffer.from(packed!, "base64")).equals(readFileSync(file))).toBe(true);
  });
  it("is one marked script element of less than 0.7 MB", () => {
    expect(plotlyLoaderHtml()).toMatch(/^<script data-journalbox="plotly">[^<]*<\/script>$/);
    expect(plotlyLoaderHtml().length).toBeLessThan(700_000);
  });
});

describe("the page's script", () => {
  it("draws a figure that waits for the library, in place of its picture", async () => {
    const page = new FakePage();
    page.show(fragment);
    page.show(loaderFor(fakeLibrary));
    expect(page.window.drawn).toEqual([]);
    await vi.waitFor(() => expect(page.window.drawn).toHaveLength(1));
    const [, data, layout] = page.window.drawn[0]!;
    expect(data).toEqual(typicalFigure.data);
    expect(layout).toMatchObject({ height: 420, autosize: true });
    expect(layout).not.toHaveProperty("width");
    expect(page.pictures.map((picture) => picture.style.display)).toEqual(["none"]);
  });
  it("draws a figure that comes after the library", async () => {
    const page = new FakePage();
    page.show(loaderFor(fakeLibrary));
    await vi.waitFor(() => expect(page.window.Plotly).toBeDefined());
    page.show(fragment);
    expect(page.window.drawn).toHaveLength(1);
  });
  it("waits for the place of a figure whose script runs first", async () => {
    const page = new FakePage();
    page.show(loaderFor(fakeLibrary));
    await vi.waitFor(() => expect(page.window.Plotly).toBeDefined());
    page.run(fragment.match(/<script>(.*)<\/script>/)![1]!);
    expect(page.window.drawn).toEqual([]);
    page.show(fragment.replace(/<script>.*/, ""));
    await vi.waitFor(() => expect(page.window.drawn).toHaveLength(1));
  });
  it("draws each figure once, however often the loader comes", async () => {
    const page = new FakePage();
    page.show(fragment + loaderFor(fakeLibrary) + loaderFor(fakeLibrary) + fragment);
    await vi.waitFor(() => expect(page.window.drawn.length).toBeGreaterThan(0));
    await new Promise((done) => setTimeout(done, 50));
    expect(page.window.drawn).toHaveLength(2);
    expect(page.query(".jb-live")).toHaveLength(2);
  });
  it("draws when the plot first has a width, and fits it to a new one", async () => {
    const page = new FakePage();
    page.plotWidth = 0;
    page.show(fragment + loaderFor(fakeLibrary));
    await vi.waitFor(() => expect(page.query(".jb-live")).toHaveLength(1));
    expect(page.window.drawn).toEqual([]);
    page.resize(600);
    expect(page.window.drawn).toHaveLength(1);
    page.resize(300);
    expect(page.window.drawn).toHaveLength(1);
    expect(page.window.resized).toHaveLength(1);
  });
  it("leaves the picture where the library fails", async () => {
    const page = new FakePage();
    page.show(fragment + loaderFor(fakeLibrary.replace("Promise.resolve()", "Promise.reject(new Error())")));
    await vi.waitFor(() => expect(page.window.drawn).toHaveLength(1));
    await vi.waitFor(() => expect(page.pictures[0]!.style.display).toBe(""));
    expect(page.query(".jb-live")).toEqual([]);
  });
  it("leaves another plotly in the page as it was", async () => {
    const page = new FakePage();
    const other = { newPlot: () => undefined };
    page.window.Plotly = other;
    page.show(fragment + loaderFor(fakeLibrary));
    await vi.waitFor(() => expect(page.window.drawn).toHaveLength(1));
    expect(page.window.Plotly).toBe(other);
  });
});

describe("withoutPlotlyLoader(html)", () => {
  it("takes out the loaders and nothing else", () => {
    const loader = plotlyLoaderHtml();
    expect(withoutPlotlyLoader(`<p>a</p>${loader}<script>b()</script>${loader}c`)).toBe(
      "<p>a</p><script>b()</script>c",
    );
  });
});
