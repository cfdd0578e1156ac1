import { button, element } from "../dom/element.js";
import type { Commands } from "./commands.js";

/** Buttons whose use depends on what is going on. */
export interface Toolbar {
  readonly node: HTMLElement;
  setRunning(running: boolean): void;
  setCellType(type: string | undefined): void;
}

/** The buttons over the sheet: running on the left, the cell at hand on the right; folded away on narrow screens. */
export function makeToolbar(commands: Commands, showKeys: () => void): Toolbar {
  const stop = button({ label: "Stop", hint: "Stop the cell at work (I I)", act: commands.interrupt });
  const kind = element(
    "select",
    { title: "What the cell is (Y code, M text)", "aria-label": "What the cell is" },
    element("option", { value: "code" }, "Code"),
    element("option", { value: "markdown" }, "Text"),
  );
  kind.addEventListener("change", () => {
    if (kind.value === "code") commands.makeCode();
    else commands.makeText();
  });
  const running = element(
    "div",
    { class: "group", role: "group", "aria-label": "Run" },
    button({
      label: "Run cell",
      hint: "Run the cell and go to the next (Shift Enter)",
      kind: "main",
      act: commands.runAndGoOn,
    }),
    button({ label: "Run all", hint: "Run all cells from top to bottom", act: commands.runAll }),
    button({
      label: "Start over, run all",
      hint: "Start the kernel over, so that nothing old is left, and run all cells",
      act: commands.startOverAndRunAll,
    }),
    stop,
  );
  const cell = element(
    "div",
    { class: "group cell-group", role: "group", "aria-label": "Cell" },
    button({ label: "Add code", hint: "Add a code cell below (B)", act: commands.addCodeBelow }),
    button({ label: "Add text", hint: "Add a text cell below", act: commands.addTextBelow }),
    kind,
    button({ label: "Up", hint: "Move the cell up", act: commands.moveUp }),
    button({ label: "Down", hint: "Move the cell down", act: commands.moveDown }),
    button({ label: "Delete", hint: "Delete the cell (D D)", act: commands.deleteCells }),
    button({ label: "Keys", hint: "What the keys do", kind: "quiet", act: showKeys }),
  );
  const unfold = button({
    label: "Cell…",
    hint: "Add, move, delete, change a cell",
    act: () => {
      const open = node.classList.toggle("is-unfolded");
      unfold.setAttribute("aria-expanded", String(open));
    },
  });
  unfold.classList.add("unfold");
  const node = element(
    "div",
    { class: "tools", role: "toolbar", "aria-label": "Sheet" },
    running,
    unfold,
    cell,
  );
  // A click on a button must not take the cursor out of the cell.
  node.addEventListener("mousedown", (event) => {
    if ((event.target as Element).closest("button")) event.preventDefault();
  });
  return {
    node,
    setRunning: (isRunning) => {
      stop.disabled = !isRunning;
    },
    setCellType: (type) => {
      kind.disabled = type === undefined;
      if (type !== undefined) kind.value = type === "code" ? "code" : "markdown";
    },
  };
}
