import {
  errorRendererFactory,
  htmlRendererFactory,
  type IRenderMime,
  imageRendererFactory,
  latexRendererFactory,
  markdownRendererFactory,
  RenderMimeRegistry,
  textRendererFactory,
} from "@jupyterlab/rendermime";
import { Widget } from "@lumino/widgets";
import { formulas } from "./formulas.js";
import { ownResults } from "./own-result.js";

/**
 * How outputs and texts are shown. Nothing that a notebook brings along is trusted, whoever ran it: HTML and
 * Markdown go through JupyterLab's sanitizer, an SVG is shown as an image, scripts are not run at all.
 */
export function makeRenderers(markdownParser: IRenderMime.IMarkdownParser): RenderMimeRegistry {
  const foreign = [
    htmlRendererFactory,
    markdownRendererFactory,
    latexRendererFactory,
    imageRendererFactory,
    errorRendererFactory,
    textRendererFactory,
  ].map(distrusting);
  return new RenderMimeRegistry({
    initialFactories: [ownResults, drawings, ...foreign],
    latexTypesetter: formulas,
    markdownParser,
  });
}

function distrusting(factory: IRenderMime.IRendererFactory): IRenderMime.IRendererFactory {
  return {
    ...factory,
    createRenderer: (options) => {
      const renderer = factory.createRenderer(options);
      const renderModel = renderer.renderModel.bind(renderer);
      renderer.renderModel = (model) => renderModel(untrusted(model));
      return renderer;
    },
  };
}

function untrusted(model: IRenderMime.IMimeModel): IRenderMime.IMimeModel {
  const { data, metadata } = model;
  return { trusted: false, data, metadata, setData: (options) => model.setData(options) };
}

class Drawing extends Widget implements IRenderMime.IRenderer {
  async renderModel({ data }: IRenderMime.IMimeModel): Promise<void> {
    const image = document.createElement("img");
    image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(String(data["image/svg+xml"]))}`;
    image.alt = "Picture made by this cell";
    this.node.replaceChildren(image);
  }
}

const drawings: IRenderMime.IRendererFactory = {
  safe: true,
  mimeTypes: ["image/svg+xml"],
  defaultRank: 80,
  createRenderer: () => new Drawing(),
};
