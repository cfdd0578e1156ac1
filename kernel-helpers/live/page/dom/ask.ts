import { button, element } from "./element.js";

export interface Choice<T> {
  readonly label: string;
  readonly value: T;
  readonly kind?: "main" | "quiet";
}

/** Asks the user to choose; undefined where the question is closed without an answer (Escape). */
export function ask<T>(
  title: string,
  body: readonly (Node | string)[],
  choices: readonly Choice<T>[],
  width: "narrow" | "wide" = "narrow",
): Promise<T | undefined> {
  return new Promise((resolve) => {
    let answer: T | undefined;
    const buttons = choices.map(({ label, value, kind }) =>
      button({
        label,
        kind,
        act: () => {
          answer = value;
          dialog.close();
        },
      }),
    );
    const dialog = element(
      "dialog",
      { class: `question is-${width}`, "aria-label": title },
      element("h2", {}, title),
      element("div", { class: "question-body" }, ...body),
      element("div", { class: "choices" }, ...buttons),
    );
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(answer);
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}
