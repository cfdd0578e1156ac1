import { button, element } from "./element.js";

export interface Notice {
  /** Something is wrong, or only worth knowing. */
  readonly kind: "trouble" | "word";
  readonly text: string;
  readonly actions?: readonly { readonly label: string; readonly act: () => void }[];
  /** Whether the user may put it away; what must not be missed stays until it is mended. */
  readonly canClose?: boolean;
}

/** The bars under the head of the page: what the user has to know now, and what can be done about it. */
export class Notices {
  readonly node: HTMLElement = element("div", { class: "notices", "aria-live": "polite" });
  readonly #bars = new Map<string, HTMLElement>();

  /** Shows a notice, in the place of an earlier one about the same thing. */
  show(about: string, { kind, text, actions = [], canClose = false }: Notice): void {
    const buttons = actions.map(({ label, act }) => button({ label, act }));
    if (canClose) buttons.push(button({ label: "Close", kind: "quiet", act: () => this.clear(about) }));
    const bar = element(
      "div",
      { class: `notice is-${kind}`, role: kind === "trouble" ? "alert" : "status", "data-about": about },
      element("p", {}, text),
      ...buttons,
    );
    const old = this.#bars.get(about);
    if (old === undefined) this.node.append(bar);
    else old.replaceWith(bar);
    this.#bars.set(about, bar);
  }

  clear(about: string): void {
    this.#bars.get(about)?.remove();
    this.#bars.delete(about);
  }
}
