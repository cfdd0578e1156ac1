import { beforeAll, describe, expect, it } from "vitest";
import { openDrawingWindow } from "../../../kernel-helpers/view/picture/drawing-window.js";
import { textWidth } from "../../../kernel-helpers/view/picture/text-width.js";
import { expectClose } from "../../support/expect-close.js";

interface Measured {
  getBBox(): { x: number; y: number; width: number; height: number };
  getBoundingClientRect(): { left: number; top: number; width: number; height: number };
  getTotalLength(): number;
}

let measure: (svg: string) => Measured;

beforeAll(async () => {
  const { document } = await openDrawingWindow();
  measure = (svg) => {
    document.body.innerHTML = `<svg xmlns="http://www.w3.org/2000/svg">${svg}</svg>`;
    return document.querySelector(".it") as unknown as Measured;
  };
});

describe("getBBox() of a text", () => {
  // At 12 px Arial's ascent 10.86 and descent 2.54 become 11 and 3 px.
  it("is as wide as its letters and as high as its font, about the base line", () => {
    const box = measure(`<text class="it" x="5" y="20" style="font-size: 12px">Taper</text>`).getBBox();
    expect(box).toMatchObject({ x: 5, y: 9, height: 14, width: textWidth("Taper", 12, false) });
  });
  it("stands about its point when anchored in the middle or at the end", () => {
    const width = textWidth("Taper", 12, false);
    for (const [anchor, x] of [
      ["middle", -width / 2],
      ["end", -width],
    ] as const)
      expect(measure(`<g text-anchor="${anchor}"><text class="it">Taper</text></g>`).getBBox().x).toBe(x);
  });
  it("counts bold letters as bold", () => {
    const box = measure(`<text class="it" style="font-weight: bold">Taper</text>`).getBBox();
    expect(box.width).toBe(textWidth("Taper", 12, true));
  });
  it("is as wide as the longest of its lines and as high as all", () => {
    const lines = `<tspan class="line" x="0" y="0" dy="0em">a</tspan><tspan class="line" x="0" y="0" dy="1.3em">abc</tspan>`;
    const box = measure(`<text class="it" style="font-size:10px">${lines}</text>`).getBBox();
    expect(box).toMatchObject({ width: textWidth("abc", 10, false), height: 24, y: -9 });
  });
  it("sets raised letters smaller and higher, on the same line", () => {
    const raised = `2<tspan style="font-size:70%" dy="-0.6em">16</tspan><tspan dy="0.42em">\u200b</tspan>`;
    const box = measure(`<text class="it" style="font-size:10px">${raised}</text>`).getBBox();
    expectClose(box.width, textWidth("2", 10, false) + textWidth("16", 7, false), {
      rel: 1e-12,
      because: "rounding",
    });
    expectClose(box.y, -4.2 - 6, { rel: 1e-12, because: "0.6 em of 7 px up, ascent 6 px; rounding" });
  });
  it("is empty for no letters", () => {
    expect(measure(`<text class="it"></text>`).getBBox()).toMatchObject({ x: 0, y: 0, width: 0, height: 0 });
  });
});

describe("getBBox() of shapes", () => {
  it("is the shape's own, without its transform", () => {
    const rectangle = `<rect class="it" x="1" y="2" width="30" height="40" transform="translate(100,0)"/>`;
    expect(measure(rectangle).getBBox()).toMatchObject({ x: 1, y: 2, width: 30, height: 40 });
    expect(measure(`<circle class="it" cx="5" cy="5" r="2"/>`).getBBox()).toMatchObject({ x: 3, width: 4 });
    expect(measure(`<line class="it" x1="9" y1="1" x2="2" y2="4"/>`).getBBox()).toMatchObject({
      x: 2,
      width: 7,
    });
  });
  it("of a group holds its children where their transforms put them, and no hidden ones", () => {
    const children =
      `<path d="M0,0H5V5" transform="translate(10,10)"/><rect x="0" y="0" width="1" height="1"/>` +
      `<rect x="99" width="9" height="9" style="display: none"/><defs><rect width="500" height="500"/></defs>`;
    expect(measure(`<g class="it">${children}</g>`).getBBox()).toMatchObject({
      x: 0,
      y: 0,
      width: 15,
      height: 15,
    });
  });
});

describe("getBoundingClientRect()", () => {
  it("is the box on the page, through all transforms", () => {
    const nested = `<g transform="translate(100,50)"><g transform="rotate(90)"><rect class="it" width="30" height="10"/></g></g>`;
    const box = measure(nested).getBoundingClientRect();
    for (const [got, wanted] of [
      [box.left, 90],
      [box.top, 50],
      [box.width, 10],
      [box.height, 30],
    ] as const)
      expectClose(got, wanted, { rel: 1e-12, because: "rounding of sine and cosine" });
  });
});

describe("getTotalLength()", () => {
  it("follows the path's attribute when it changes", () => {
    const path = measure(`<path class="it" d="M0,0H5"/>`);
    expect(path.getTotalLength()).toBe(5);
    (path as unknown as { setAttribute(name: string, value: string): void }).setAttribute("d", "M0,0H8");
    expect(path.getTotalLength()).toBe(8);
  });
});
