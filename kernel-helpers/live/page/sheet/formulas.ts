import type { IRenderMime } from "@jupyterlab/rendermime";

const delimiters = [
  { left: "$$", right: "$$", display: true },
  { left: "\\[", right: "\\]", display: true },
  { left: "$", right: "$", display: false },
  { left: "\\(", right: "\\)", display: false },
];

/** Sets the formulas in a piece of the page; KaTeX is fetched when the first one is there. */
export const formulas: IRenderMime.ILatexTypesetter = {
  async typeset(node) {
    if (!/[$\\]/.test(node.textContent ?? "")) return;
    const { default: render } = await import("katex/contrib/auto-render");
    render(node, { delimiters, throwOnError: false, trust: false });
  },
};
