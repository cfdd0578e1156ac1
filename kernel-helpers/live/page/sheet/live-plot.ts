import type { Figure } from "../../../view/blocks.js";
import { finishFigure } from "../../../view/finish-figure.js";
import { fitLabels } from "./fit-labels.js";

/** What is used of the library. */
interface Plotly {
  newPlot(place: HTMLElement, data: unknown, layout: unknown, config: unknown): Promise<unknown>;
  readonly Plots: { resize(place: HTMLElement): void };
  purge(place: HTMLElement): void;
}

/** The plotting library lies on our own server, and is fetched when the first figure comes into view. */
const address = "/static/plotly/plotly-cartesian.min.js";

/** An element in which the library has drawn. */
interface PlottedElement extends HTMLElement {
  on(event: "plotly_afterplot", hear: () => void): void;
}

let library: Promise<Plotly> | undefined;

function loadPlotly(): Promise<Plotly> {
  library ??= new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = address;
    script.addEventListener("load", () => resolve((window as unknown as { Plotly: Plotly }).Plotly));
    script.addEventListener("error", () => {
      library = undefined; // another figure may try again
      reject(new Error("The plotting library could not be fetched."));
    });
    document.head.append(script);
  });
  return library;
}

const config = {
  displaylogo: false,
  showSendToCloud: false,
  modeBarButtons: [["zoom2d", "pan2d", "resetScale2d", "toImage"]],
};

/**
 * Puts a live plot in the place of a figure's picture when it comes into view. Where that is not possible the
 * picture stays; it also is what gets printed.
 *
 * @returns ends the plot
 */
export function livenFigure(place: HTMLElement, given: Figure): () => void {
  let figure: Figure;
  try {
    figure = finishFigure(given);
  } catch {
    return () => {}; // not a figure that may be drawn; its picture or its description stands
  }
  let plot: HTMLElement | undefined;
  let ended = false;
  const resizing = new ResizeObserver(() => {
    if (plot !== undefined && plot.offsetWidth > 0)
      void loadPlotly().then(({ Plots }) => plot?.isConnected && Plots.resize(plot));
  });
  const seen = new IntersectionObserver(
    (entries) => {
      if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
      seen.disconnect();
      void draw().catch(() => plot?.remove());
    },
    { rootMargin: "200px" },
  );
  seen.observe(place);

  async function draw(): Promise<void> {
    const plotly = await loadPlotly();
    if (ended) return;
    const { width, height, ...layout } = figure.layout;
    plot = document.createElement("div");
    plot.className = "jb-live";
    plot.style.maxWidth = `${width}px`;
    plot.style.height = `${height}px`;
    place.append(plot);
    await plotly.newPlot(
      plot,
      structuredClone(figure.data),
      { ...structuredClone(layout), height, autosize: true },
      config,
    );
    const drawn = plot as PlottedElement;
    drawn.on("plotly_afterplot", () => fitLabels(drawn, Number(width)));
    fitLabels(drawn, Number(width));
    place.classList.add("is-live");
    resizing.observe(plot);
  }

  return () => {
    ended = true;
    seen.disconnect();
    resizing.disconnect();
    if (plot !== undefined) void loadPlotly().then(({ purge }) => purge(plot!));
  };
}
