import type { IRenderMime } from "@jupyterlab/rendermime";
import { Widget } from "@lumino/widgets";
import { checkPresentation } from "../../../notebook/report/check-presentation.js";
import { blocksMimeType, type FigureBlock, type Presentation } from "../../../view/blocks.js";
import { escapeHtml } from "../../../view/escape.js";
import { renderHtml } from "../../../view/render-html.js";
import { livenFigure } from "./live-plot.js";

/**
 * Shows a result from its blocks. The HTML is made here, of text that is escaped; of the HTML that the cell sent
 * along only the pictures of its figures are used, as images, in which nothing can run.
 */
class OwnResult extends Widget implements IRenderMime.IRenderer {
  #plots: readonly (() => void)[] = [];

  async renderModel({ data }: IRenderMime.IMimeModel): Promise<void> {
    this.#endPlots();
    const presentation = checkPresentation(data[blocksMimeType]);
    if (presentation === undefined) {
      this.node.textContent = String(data["text/plain"] ?? "A result that cannot be shown.");
      return;
    }
    this.node.innerHTML = htmlOf(presentation, picturesIn(data["text/html"]));
    const figures = figuresOf(presentation);
    const places = this.node.querySelectorAll<HTMLElement>(".figure-place");
    this.#plots = [...places].map((place, index) => livenFigure(place, figures[index]!.figure));
  }

  override dispose(): void {
    this.#endPlots();
    super.dispose();
  }

  #endPlots(): void {
    for (const end of this.#plots) end();
    this.#plots = [];
  }
}

export const ownResults: IRenderMime.IRendererFactory = {
  safe: true,
  mimeTypes: [blocksMimeType],
  defaultRank: 0,
  createRenderer: () => new OwnResult(),
};

function htmlOf(presentation: Presentation, pictures: readonly string[]): string {
  const figures = figuresOf(presentation);
  return renderHtml(presentation, {
    withStyle: false,
    headingLevel: 3,
    picture: (block) => pictureHtml(block, pictures[figures.indexOf(block)]),
  });
}

function figuresOf({ blocks }: Presentation): readonly FigureBlock[] {
  return blocks.filter((block) => block.type === "figure");
}

function pictureHtml({ alt, figure }: FigureBlock, source: string | undefined): string {
  const { width, height } = figure.layout;
  const text = escapeHtml(alt);
  const size = [width, height].every(Number.isFinite) ? ` width="${width}" height="${height}"` : "";
  const picture = source === undefined ? `<p>${text}</p>` : `<img src="${source}" alt="${text}"${size}>`;
  return `<div class="figure-place">${picture}</div>`;
}

/** The pictures drawn by the kernel, one a figure, in order. */
function picturesIn(html: unknown): readonly string[] {
  if (typeof html !== "string") return [];
  const parsed = new DOMParser().parseFromString(html, "text/html");
  return [...parsed.querySelectorAll<HTMLImageElement>("[data-journalbox-figure] > img")]
    .map((image) => image.getAttribute("src") ?? "")
    .map((source) => (/^data:image\/svg\+xml;base64,[A-Za-z0-9+/=]*$/.test(source) ? source : undefined))
    .filter((source) => source !== undefined);
}
