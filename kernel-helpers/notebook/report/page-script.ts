import { plotlyElementId } from "./plotly-library.js";

/**
 * The only script of the report: when a figure comes near the window, unpacks plotly.js (once) and puts a live
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
      figure.classList.add("is-live");
    } catch {
      plot.remove();
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
