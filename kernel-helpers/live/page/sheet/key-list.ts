import { ask } from "../dom/ask.js";
import { element } from "../dom/element.js";
import { keys } from "./keys.js";

/** Shows what the keys do. */
export async function showKeyList(): Promise<void> {
  const rows = keys.map(({ keys: chord, words }) =>
    element(
      "div",
      {},
      element(
        "dt",
        {},
        ...chord.map((key) => element("kbd", {}, key.replace("Accel", control).replaceAll(" ", " + "))),
      ),
      element("dd", {}, words),
    ),
  );
  const note = element("p", {}, "Single letters work when no cell is being written in (Escape).");
  await ask("Keys", [note, element("dl", { class: "keys" }, ...rows)], [{ label: "Close", value: true }]);
}

const control = /mac/i.test(navigator.platform) ? "⌘" : "Ctrl";
