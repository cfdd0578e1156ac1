import { compareTexts, type TextStretch } from "../model/index.js";
import type { TableSession } from "../table-session.js";
import { button, element } from "./element.js";

/** So many lines are shown on either side of a stretch that differs. */
const context = 2;

/** Shows both texts of a conflict side by side, and lets one be chosen. */
export class ConflictView {
  readonly root: HTMLDialogElement = element("dialog", {
    class: "conflict",
    "aria-labelledby": "conflict-title",
  });
  readonly #session: TableSession;
  readonly #focus: () => void;

  constructor(session: TableSession, focus: () => void) {
    this.#session = session;
    this.#focus = focus;
    this.root.addEventListener("close", () => this.#focus());
  }

  open(): void {
    const { conflict, editor } = this.#session;
    if (conflict === undefined || this.root.open) return;
    const choose = (act: () => void) => (): void => {
      this.root.close();
      act();
      this.#focus();
    };
    this.root.replaceChildren(
      element("h2", { id: "conflict-title" }, "Two texts of this table"),
      element(
        "p",
        {},
        "Left what you have here, right what stands on disk. Nothing has been written. Whichever you choose, Undo brings the one typed here back as long as this page is open.",
      ),
      element("div", { class: "scroller" }, comparison(compareTexts(editor.text, conflict.text))),
      element(
        "div",
        { class: "keys" },
        button(
          "Keep mine and write it",
          choose(() => void this.#session.keepMine()),
        ),
        button(
          "Take the one on disk",
          choose(() => this.#session.takeTheirs()),
        ),
        button("Decide later", () => this.root.close()),
      ),
    );
    this.root.showModal();
  }

  /** Nothing is left to decide: the dialog closes. */
  draw(): void {
    if (this.root.open && this.#session.conflict === undefined) this.root.close();
  }
}

function comparison(stretches: readonly TextStretch[]): HTMLElement {
  const body = element("tbody");
  for (const [i, { same, mine, theirs }] of stretches.entries()) {
    if (same) {
      const [isFirst, isLast] = [i === 0, i === stretches.length - 1];
      const before = isFirst ? [] : mine.slice(0, context);
      const rest = mine.slice(before.length);
      const behind = isLast ? [] : rest.slice(-context);
      const left = rest.length - behind.length;
      for (const line of before) body.append(pair(line, line, "same"));
      if (left > 0) body.append(pair(`… ${left} lines alike`, "", "left-out"));
      for (const line of behind) body.append(pair(line, line, "same"));
      continue;
    }
    for (let line = 0; line < Math.max(mine.length, theirs.length); line++)
      body.append(pair(mine[line], theirs[line], "differs"));
  }
  const head = element(
    "tr",
    {},
    element("th", { scope: "col" }, "Here"),
    element("th", { scope: "col" }, "On disk"),
  );
  return element("table", { class: "comparison" }, element("thead", {}, head), body);
}

function pair(mine: string | undefined, theirs: string | undefined, kind: string): HTMLElement {
  if (kind === "left-out") return element("tr", { class: kind }, element("td", { colspan: 2 }, mine!));
  const side = (text: string | undefined, sign: string): HTMLElement =>
    text === undefined
      ? element("td", { class: "none" }, "no such line")
      : element(
          "td",
          {},
          kind === "differs" ? element("span", { class: "sign", "aria-hidden": "true" }, sign) : "",
          text,
        );
  return element("tr", { class: kind }, side(mine, "◂ "), side(theirs, "▸ "));
}
