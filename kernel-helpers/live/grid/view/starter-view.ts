import { starterHeaders } from "../model/index.js";
import type { TableSession } from "../table-session.js";
import { button, element } from "./element.js";

/** For a table without header: forms to begin with. */
export class StarterView {
  readonly root: HTMLElement = element("section", { class: "starter" });
  readonly #session: TableSession;
  readonly #focus: () => void;

  constructor(session: TableSession, focus: () => void) {
    this.#session = session;
    this.#focus = focus;
  }

  draw(): void {
    const { editor, sheets, isLoaded } = this.#session;
    this.root.hidden = editor.columns.length > 0 || !isLoaded;
    if (this.root.hidden) {
      this.root.replaceChildren();
      return;
    }
    const starters = starterHeaders(sheets.rebuild?.unitSystem).map(({ title, headers }) =>
      element(
        "li",
        {},
        button(title, () => {
          editor.start(headers);
          this.#focus();
        }),
        element("span", {}, headers.join(", ")),
      ),
    );
    this.root.replaceChildren(
      element("h2", {}, "This table is empty"),
      element("p", {}, "How are the readings to be written down?"),
      element("ul", {}, ...starters),
    );
  }
}
