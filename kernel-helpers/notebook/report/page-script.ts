import { plotlyElementId } from "./plotly-library.js";

/** A mark wider than those of readings, such as the arrow at a reading off the scale [px]. */
const largeMark = 9;

/**
 * The script of the report's figures: when a figure comes near the window, unpacks plotly.js (once) and puts a live
 * plot beside the static picture, which goes out of sight on the screen and stays on paper. Where anything is
 * missing or fails, the picture simply stays.
 */
export const pageScript: string = `"use strict";
(() => {
  const figures = document.querySelectorAll("[data-figure]");
  const packed = document.getElementById("${plotlyElementId}");
  if (!packed || !window.DecompressionStream || !window.IntersectionObserver) return;

  // Only these buttons, whatever a figure asks for: plotly.js has one more that uploads the figure.
  const settings = {
    responsive: true,
    displaylogo: false,
    displayModeBar: "hover",
    modeBarButtons: [["toImage"], ["zoom2d", "pan2d", "resetScale2d"]],
    showSendToCloud: false,
    plotlyServerURL: "",
  };

  let library;
  function plotly() {
    library ??= unpack();
    return library;
  }

  async function unpack() {
    const bytes = Uint8Array.from(atob(packed.textContent), (character) => character.charCodeAt(0));
    const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"));
    const script = document.createElement("script");
    script.textContent = await new Response(stream).text();
    document.head.append(script);
    return window.Plotly;
  }

  async function draw(figure) {
    const { data, layout } = JSON.parse(figure.querySelector("script").textContent);
    const plot = document.createElement("div");
    plot.className = "live";
    figure.append(plot);
    try {
      const { newPlot } = await plotly();
      const fitting = { ...layout, autosize: true };
      delete fitting.width;
      await newPlot(plot, data, fitting, settings);
      plot.on("plotly_afterplot", () => fitLabels(plot, layout.width));
      fitLabels(plot, layout.width);
      figure.classList.add("is-live");
    } catch {
      plot.remove();
    }
  }

  // On a screen narrower than the figure was laid out for, labels would stick out or lie on each other: the first
  // are moved in, over a large mark where they would cover it, and those that find no place after them are left out.
  // Table and hover say the same.
  function fitLabels(plot, width) {
    const boxes = (what) => [...plot.querySelectorAll(what)].map((part) => part.getBoundingClientRect());
    const over = (a, b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
    const edge = Math.max(...boxes(".nsewdrag").map(({ right }) => right));
    const marks = boxes(".point").filter((box) => box.width > ${largeMark});
    const narrow = plot.clientWidth < 0.85 * width;
    const taken = [];
    for (const label of plot.querySelectorAll(".annotation")) {
      const move = (x, y) => (label.style.transform = "translate(" + x + "px, " + y + "px)");
      label.style.transform = label.style.visibility = "";
      if (!narrow) continue;
      const shift = Math.min(0, edge - label.getBoundingClientRect().right);
      if (shift < 0) move(shift, 0);
      const covered = marks.find((mark) => shift < 0 && over(label.getBoundingClientRect(), mark));
      if (covered) move(shift, covered.top - label.getBoundingClientRect().bottom);
      const box = label.getBoundingClientRect();
      if (taken.some((other) => over(box, other))) label.style.visibility = "hidden";
      else taken.push(box);
    }
  }

  const near = new IntersectionObserver((entries) => {
    for (const { isIntersecting, target } of entries) {
      if (!isIntersecting) continue;
      near.unobserve(target);
      draw(target);
    }
  }, { rootMargin: "600px" });
  for (const figure of figures) near.observe(figure);
})();
`;
