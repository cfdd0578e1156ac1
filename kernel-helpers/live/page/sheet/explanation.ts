import { Text } from "@jupyterlab/coreutils";
import type { Notebook } from "@jupyterlab/notebook";
import { Widget } from "@lumino/widgets";
import { element } from "../dom/element.js";
import type { KernelDesk } from "./kernel-desk.js";

/** Shows the comment of the name at the cursor: what it is, its formula, units, range and source. */
export class Explanation {
  readonly #notebook: Notebook;
  readonly #desk: KernelDesk;
  readonly #node: HTMLElement = element("aside", { class: "explanation", role: "tooltip", hidden: true });

  constructor(notebook: Notebook, desk: KernelDesk) {
    this.#notebook = notebook;
    this.#desk = desk;
    document.body.append(this.#node);
    const away = (event: Event): void => {
      if (!this.#node.contains(event.target as Node)) this.hide();
    };
    for (const kind of ["pointerdown", "scroll", "input"]) document.addEventListener(kind, away, true);
    notebook.activeCellChanged.connect(() => this.hide());
  }

  get isShown(): boolean {
    return !this.#node.hidden;
  }

  hide(): void {
    this.#node.hidden = true;
  }

  async show(): Promise<void> {
    const { editor, model } = this.#notebook.activeCell ?? {};
    const { kernel } = this.#desk;
    if (!editor || model?.type !== "code" || kernel === undefined) return;
    const code = editor.model.sharedModel.getSource();
    const position = editor.getCursorPosition();
    const offset = Text.jsIndexToCharIndex(editor.getOffsetAt(position), code);
    const { content } = await kernel.requestInspect({ code, cursor_pos: offset, detail_level: 0 });
    const found = content.status === "ok" && content.found;
    const data = found ? content.data : { "text/plain": "Nothing is known of the name at the cursor." };
    await this.#fill(data);
    const at = editor.getCoordinateForPosition(position);
    if (at !== null) this.#place(at);
  }

  async #fill(data: Parameters<Notebook["rendermime"]["preferredMimeType"]>[0]): Promise<void> {
    const { rendermime } = this.#notebook;
    const type = "text/markdown" in data ? "text/markdown" : "text/plain";
    const renderer = rendermime.createRenderer(type);
    await renderer.renderModel(rendermime.createModel({ data, trusted: false }));
    this.#node.replaceChildren();
    this.#node.hidden = false;
    Widget.attach(renderer, this.#node);
  }

  /** Below the cursor, or above it where there is more room. */
  #place(at: { readonly left: number; readonly top: number; readonly bottom: number }): void {
    const { clientWidth, clientHeight } = document.documentElement;
    const below = clientHeight - at.bottom >= Math.min(this.#node.offsetHeight, at.top);
    const { style } = this.#node;
    style.left = `${Math.max(8, Math.min(at.left, clientWidth - this.#node.offsetWidth - 8))}px`;
    style.top = below ? `${at.bottom + 6}px` : "auto";
    style.bottom = below ? "auto" : `${clientHeight - at.top + 6}px`;
    style.maxHeight = `${(below ? clientHeight - at.bottom : at.top) - 20}px`;
  }
}
