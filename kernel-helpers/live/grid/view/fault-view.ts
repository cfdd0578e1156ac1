import { lineNamed, lineNumbers, type PlacedFault } from "../model/index.js";
import type { TableSession } from "../table-session.js";
import { button, element } from "./element.js";

/** So many faults are listed; the first ones show what is the matter. */
const listedAtMost = 50;

/** The list of all faults and doubts; each leads to its cell. */
export class FaultView {
  readonly root: HTMLElement;
  readonly #session: TableSession;
  readonly #jump: (piece: number, column: number) => void;
  readonly #title = element("h2");
  readonly #list = element("ul");
  #shown: unknown;

  /** @param jump  leads to a cell; column −1 to the line */
  constructor(session: TableSession, jump: (piece: number, column: number) => void) {
    this.#session = session;
    this.#jump = jump;
    this.root = element("section", { class: "faults", "aria-label": "Faults" }, this.#title, this.#list);
  }

  draw(): void {
    const { check, isAway, isCheckDue, editor } = this.#session;
    this.root.hidden = editor.columns.length === 0;
    if (check === undefined) {
      this.#title.textContent = isAway ? "Not checked: the server is away" : "Being checked …";
      return;
    }
    const wrong = check.faults.filter(({ isEmpty }) => !isEmpty);
    const empty = check.faults.filter(({ isEmpty }) => isEmpty);
    this.#title.textContent =
      titleOf(wrong.length, empty.length, check.warnings.length) +
      (isCheckDue && isAway ? " (when last checked)" : "");
    if (this.#shown === check) return;
    this.#shown = check;
    const items = wrong
      .slice(0, listedAtMost)
      .map((fault) => this.#item(fault, "faulty", fault.where, fault.text));
    if (wrong.length > listedAtMost)
      items.push(
        element("li", {}, `and ${wrong.length - listedAtMost} more; they show when these are mended`),
      );
    const [first] = empty;
    if (first !== undefined)
      items.push(
        this.#item(
          first,
          "to-write",
          cellsText(empty.length),
          `The first: ${first.where}. Write - where no reading was taken.`,
        ),
      );
    this.#list.replaceChildren(
      ...items,
      ...hiddenTexts(empty),
      ...check.warnings.map((warning) => this.#warning(warning)),
    );
  }

  #item(fault: PlacedFault, sign: string, where: string, text: string): HTMLElement {
    const id = `fault-${fault.piece}-${fault.column}`;
    const place =
      fault.piece < 0
        ? element("strong", {}, where)
        : button(where, () => this.#jump(fault.piece, fault.column));
    return element("li", { class: sign }, place, element("span", { id }, text));
  }

  #warning(text: string): HTMLElement {
    const line = lineNamed(text);
    const { document } = this.#session.editor;
    const piece = line === undefined ? -1 : lineNumbers(document).indexOf(line);
    const place =
      piece < 0 ? element("strong", {}, "doubt") : button(`line ${line}`, () => this.#jump(piece, -1));
    return element("li", { class: "doubtful" }, place, element("span", {}, text));
  }
}

/** Descriptions of cells that are still empty, for those who hear the page. */
function hiddenTexts(faults: readonly PlacedFault[]): readonly HTMLElement[] {
  return faults
    .slice(1, listedAtMost)
    .map((fault) => element("li", { hidden: true, id: `fault-${fault.piece}-${fault.column}` }, fault.text));
}

function cellsText(count: number): string {
  return count === 1 ? "1 cell still empty" : `${count} cells still empty`;
}

function titleOf(wrong: number, empty: number, doubts: number): string {
  const parts: string[] = [];
  if (wrong > 0) parts.push(wrong === 1 ? "1 fault" : `${wrong} faults`);
  if (empty > 0) parts.push(cellsText(empty));
  if (doubts > 0) parts.push(doubts === 1 ? "1 doubt" : `${doubts} doubts`);
  return parts.length === 0 ? "No faults" : parts.join(", ");
}
