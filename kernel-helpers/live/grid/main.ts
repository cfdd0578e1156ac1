import "./grid.css";
import { TableEditor } from "./table-editor.js";
import { TableSession } from "./table-session.js";
import { AboutView } from "./view/about-view.js";
import { BarView } from "./view/bar-view.js";
import { CellFaults } from "./view/cell-faults.js";
import { CellInput } from "./view/cell-input.js";
import { ColumnDialog } from "./view/column-dialog.js";
import { ConflictView } from "./view/conflict-view.js";
import { element } from "./view/element.js";
import { FaultView } from "./view/fault-view.js";
import { keepAboveKeyboard } from "./view/keep-above-keyboard.js";
import { NoticeView } from "./view/notice-view.js";
import { PaperView } from "./view/paper-view.js";
import { StarterView } from "./view/starter-view.js";
import { StripView } from "./view/strip-view.js";
import { TableView } from "./view/table-view.js";
import { ToolsView } from "./view/tools-view.js";

/** The page of one table. Its name stands in the body's data-name. */
function startTablePage(name: string): void {
  const editor = new TableEditor();
  const spoken = element("p", { class: "unseen", role: "status", "aria-live": "polite" });
  const say = (text: string): void => {
    spoken.textContent = text;
    toast.textContent = text;
    toast.classList.remove("shown");
    requestAnimationFrame(() => toast.classList.add("shown"));
  };
  const toast = element("p", { class: "toast", "aria-hidden": "true" });

  const session = new TableSession(name, editor, () => draw());
  const faults = new CellFaults(session);
  const table = new TableView(session, faults);
  const focus = (): void => table.focus();
  const save = (): void =>
    void session.save().then(() => (session.conflict === undefined ? undefined : conflict.open()));
  const input = new CellInput(editor, table, { save, say });
  const about = new AboutView(session, faults);
  const conflict = new ConflictView(session, focus);
  const columnDialog = new ColumnDialog(editor, focus);
  const paper = new PaperView(session);
  const jump = (piece: number, column: number): void => {
    const line = editor.lineOf(piece);
    if (line === undefined) about.focus(piece);
    else {
      editor.moveTo({ line, column: Math.max(0, column) });
      focus();
    }
  };
  const bar = new BarView(session, save, focus);
  const notices = new NoticeView(session, () => conflict.open());
  const tools = new ToolsView(
    editor,
    () => columnDialog.open(),
    () => paper.printForm(),
  );
  const starter = new StarterView(session, focus);
  const faultList = new FaultView(session, jump);
  const strip = new StripView(session, faults, input, focus);
  const views = [bar, notices, about, tools, starter, table, faultList, strip, conflict];
  let drawing: "no" | "yes" | "again" = "no";
  const draw = (): void => {
    // Drawing moves the focus at times, and what hears of that asks to draw again: after this one.
    if (drawing !== "no") {
      drawing = "again";
      return;
    }
    do {
      drawing = "yes";
      for (const view of views) view.draw();
    } while (isAskedAgain());
    drawing = "no";
  };
  const isAskedAgain = (): boolean => drawing === "again";
  editor.listen(({ place, say: text }) => {
    if (place) draw();
    if (text !== undefined) say(text);
  });

  document.body.append(
    bar.root,
    element("main", {}, notices.root, about.root, tools.root, starter.root, table.scroller, faultList.root),
    strip.root,
    toast,
    spoken,
    conflict.root,
    columnDialog.root,
    paper.root,
  );
  addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "s" || event.defaultPrevented)
      return;
    event.preventDefault();
    save();
  });
  addEventListener("beforeunload", (event) => {
    // What is kept in the browser comes back by itself; only what is not needs a question.
    if (session.isDirty && !session.isKept) event.preventDefault();
  });
  keepAboveKeyboard();
  draw();
  void session.start().then(() => table.focus(true));
}

startTablePage(document.body.dataset.name ?? "");
