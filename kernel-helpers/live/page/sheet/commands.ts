import { type Notebook, NotebookActions } from "@jupyterlab/notebook";
import type { Completion } from "./completion.js";
import type { Explanation } from "./explanation.js";
import type { KernelDesk } from "./kernel-desk.js";
import type { SheetRunner } from "./sheet-runner.js";

/** All that can be done on a sheet, each under its own name: what buttons and keys stand for. */
export interface Commands {
  run(): void;
  runAndGoOn(): void;
  runAndInsert(): void;
  runAll(): void;
  startOver(): void;
  startOverAndRunAll(): void;
  interrupt(): void;
  save(): void;
  addCodeBelow(): void;
  addTextBelow(): void;
  addAbove(): void;
  deleteCells(): void;
  moveUp(): void;
  moveDown(): void;
  makeCode(): void;
  makeText(): void;
  cut(): void;
  copy(): void;
  paste(): void;
  undo(): void;
  redo(): void;
  split(): void;
  merge(): void;
  selectAbove(): void;
  selectBelow(): void;
  extendAbove(): void;
  extendBelow(): void;
  edit(): void;
  leave(): void;
  complete(): void;
  acceptCompletion(): void;
  explain(): void;
}

export interface CommandParts {
  readonly notebook: Notebook;
  readonly desk: KernelDesk;
  readonly runner: SheetRunner;
  readonly completion: Completion;
  readonly explanation: Explanation;
  /** Saves, and says what became of it. */
  readonly save: () => void;
  /** Whether cells can be run now; says why not where they cannot. */
  readonly mayRun: () => boolean;
  /** Does something with the kernel, and says where that fails. */
  readonly withKernel: (act: () => Promise<void>) => Promise<boolean>;
  readonly deleted: (count: number) => void;
}

export function makeCommands(parts: CommandParts): Commands {
  const { notebook, desk, runner, completion, explanation } = parts;
  const selected = () => notebook.widgets.filter((cell) => notebook.isSelectedOrActive(cell));
  const run = (cells: readonly (typeof notebook.widgets)[number][]): boolean => {
    if (!parts.mayRun()) return false;
    runner.run(cells);
    return true;
  };
  const insert = (type: "code" | "markdown"): void => {
    NotebookActions.insertBelow(notebook);
    NotebookActions.changeCellType(notebook, type);
    notebook.mode = "edit";
  };
  const startOver = (): Promise<boolean> => {
    runner.forgetWaiting();
    return parts.withKernel(() => desk.restart());
  };
  const runAll = (): void => void run(notebook.widgets);

  return {
    run() {
      if (run(selected())) notebook.mode = "command";
    },
    runAndGoOn() {
      const cells = selected();
      if (!run(cells)) return;
      notebook.mode = "command";
      const last = notebook.widgets.indexOf(cells.at(-1)!);
      notebook.deselectAll();
      if (last < notebook.widgets.length - 1) notebook.activeCellIndex = last + 1;
      else insert("code");
    },
    runAndInsert() {
      if (run(selected())) insert("code");
    },
    runAll,
    startOver: () => void startOver(),
    startOverAndRunAll: () => void startOver().then((started) => started && runAll()),
    interrupt() {
      runner.forgetWaiting();
      void parts.withKernel(() => desk.interrupt());
    },
    save: parts.save,
    addCodeBelow: () => insert("code"),
    addTextBelow: () => insert("markdown"),
    addAbove: () => NotebookActions.insertAbove(notebook),
    deleteCells() {
      const count = selected().length;
      NotebookActions.deleteCells(notebook);
      parts.deleted(count);
    },
    moveUp: () => NotebookActions.moveUp(notebook),
    moveDown: () => NotebookActions.moveDown(notebook),
    makeCode: () => NotebookActions.changeCellType(notebook, "code"),
    makeText: () => NotebookActions.changeCellType(notebook, "markdown"),
    cut: () => NotebookActions.cut(notebook),
    copy: () => NotebookActions.copy(notebook),
    paste: () => NotebookActions.paste(notebook),
    undo: () => NotebookActions.undo(notebook),
    redo: () => NotebookActions.redo(notebook),
    split: () => NotebookActions.splitCell(notebook),
    merge: () => NotebookActions.mergeCells(notebook),
    selectAbove: () => NotebookActions.selectAbove(notebook),
    selectBelow: () => NotebookActions.selectBelow(notebook),
    extendAbove: () => NotebookActions.extendSelectionAbove(notebook),
    extendBelow: () => NotebookActions.extendSelectionBelow(notebook),
    edit() {
      notebook.mode = "edit";
    },
    leave() {
      if (explanation.isShown) explanation.hide();
      else notebook.mode = "command";
    },
    complete: () => completion.invoke(),
    acceptCompletion: () => completion.accept(),
    explain: () => void parts.withKernel(() => explanation.show()),
  };
}
