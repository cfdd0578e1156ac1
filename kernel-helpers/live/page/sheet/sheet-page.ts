import type { INotebookContent } from "@jupyterlab/nbformat";
import { type Notebook, NotebookActions } from "@jupyterlab/notebook";
import { MessageLoop } from "@lumino/messaging";
import { Widget } from "@lumino/widgets";
import { viewStyle } from "../../../view/style.js";
import type { LiveEvent } from "../../server/live-event.js";
import { fetchRebuild, type SheetSummary } from "../api/rebuild.js";
import { ServerAway } from "../api/request.js";
import { ServerLine } from "../api/server-line.js";
import type { SheetData } from "../api/sheet-data.js";
import type { LoadedSheet } from "../api/sheets.js";
import { element } from "../dom/element.js";
import { Notices } from "../dom/notices.js";
import { sayHowServerStands } from "../dom/server-notice.js";
import { type Commands, makeCommands } from "./commands.js";
import { Completion } from "./completion.js";
import { DraftBox } from "./drafts.js";
import { Explanation } from "./explanation.js";
import { withJoinedLines } from "./join-lines.js";
import { KernelDesk } from "./kernel-desk.js";
import { KernelWatch } from "./kernel-watch.js";
import { showKeyList } from "./key-list.js";
import { bindKeys } from "./keys.js";
import { makeLanguages } from "./languages.js";
import { LeftDrafts } from "./left-drafts.js";
import { makeNotebook } from "./make-notebook.js";
import { ProgressLine } from "./progress-line.js";
import { SheetFile } from "./sheet-file.js";
import { SheetHead } from "./sheet-head.js";
import { SheetRunner } from "./sheet-runner.js";
import { SheetSaving } from "./sheet-saving.js";
import { withResultsOf } from "./sheet-text.js";
import { SheetView } from "./sheet-view.js";
import { makeToolbar, type Toolbar } from "./toolbar.js";

/** Shows a worksheet to be read, written and run. */
export async function showSheetPage(name: string, { loaded, executed, rebuild }: SheetData): Promise<void> {
  const drafts = new DraftBox(rebuild.id, name);
  const page = new SheetPage(loaded, executed, drafts);
  page.showState(rebuild.sheets);
  page.open();
  page.drafts.bringBack(await drafts.takeLeftBehind());
}

/** The parts of the page, and what one tells another. */
class SheetPage {
  readonly drafts: LeftDrafts;
  readonly #notices = new Notices();
  readonly #line = new ServerLine();
  readonly #progress = new ProgressLine();
  readonly #desk: KernelDesk;
  readonly #notebook: Notebook;
  readonly #runner: SheetRunner;
  readonly #watch: KernelWatch;
  readonly #file: SheetFile;
  readonly #saving: SheetSaving;
  readonly #commands: Commands;
  readonly #head: SheetHead;
  readonly #tools: Toolbar;

  constructor(loaded: LoadedSheet, executed: INotebookContent | undefined, drafts: DraftBox) {
    const content =
      executed === undefined ? loaded.notebook : withResultsOf(loaded.notebook, withJoinedLines(executed));
    this.#notebook = makeNotebook(makeLanguages(), content);
    this.#desk = new KernelDesk(loaded.name);
    this.#runner = new SheetRunner(this.#notebook, this.#desk);
    this.#watch = new KernelWatch(this.#desk, this.#runner, this.#notices);
    const view = new SheetView(this.#notebook, this.#runner);
    this.#file = new SheetFile(loaded, drafts, () => view.content);
    this.#saving = new SheetSaving(this.#file, view, this.#notices);
    this.drafts = new LeftDrafts(this.#file, view, this.#notices);
    this.#commands = makeCommands({
      notebook: this.#notebook,
      desk: this.#desk,
      runner: this.#runner,
      completion: new Completion(this.#notebook, this.#desk),
      explanation: new Explanation(this.#notebook, this.#desk),
      save: () => void this.#saving.save(),
      mayRun: () => this.#line.line === "open" && this.#desk.kernel !== undefined,
      withKernel: (act) => this.#watch.attempt(act),
      deleted: (count) => this.#sayDeleted(count),
    });
    this.#head = new SheetHead({ save: this.#commands.save, runAll: this.#commands.startOverAndRunAll });
    this.#tools = makeToolbar(this.#commands, () => void showKeyList());
  }

  /** Puts the page together, and takes up the lines to server and kernel. */
  open(): void {
    const body = element("div", { class: "sheet-body" });
    const top = element(
      "div",
      { class: "sheet-top" },
      this.#head.node,
      this.#tools.node,
      this.#progress.node,
      this.#notices.node,
    );
    document.head.append(element("style", {}, viewStyle));
    document.body.append(element("main", { class: "sheet" }, top, body));
    this.#notebook.addClass("jp-ThemedContainer");
    Widget.attach(this.#notebook, body);
    const fit = (): void => MessageLoop.sendMessage(this.#notebook, Widget.ResizeMessage.UnknownSize);
    new ResizeObserver(fit).observe(body);
    this.#connect();
    bindKeys(this.#commands);
    this.#notebook.activeCellIndex = 0;
    this.#runner.refresh();
    this.#head.showSaving(this.#file.saving);
    if (!this.#file.isOwn)
      this.#notices.show("template", { kind: "word", text: templateWords, canClose: true });
    this.#line.open();
    void this.#watch.attempt(() => this.#desk.start());
  }

  showState(sheets: readonly SheetSummary[]): void {
    const own = sheets.find(({ name }) => name === this.#file.name);
    if (own !== undefined) this.#head.showState(own);
  }

  #connect(): void {
    const notebook = this.#notebook;
    notebook.modelContentChanged.connect(() => {
      this.#file.typed();
      this.#runner.refresh();
    });
    notebook.modelChanged.connect(() => this.#file.typed());
    notebook.activeCellChanged.connect((_, cell) => this.#tools.setCellType(cell?.model.type));
    this.#file.changed.connect((_, saving) => this.#head.showSaving(saving));
    this.#file.noRoom.connect(() =>
      this.#notices.show("room", { kind: "trouble", text: noRoomWords, canClose: true }),
    );
    const showRunning = (): void =>
      this.#tools.setRunning(this.#runner.isRunning || this.#desk.state === "busy");
    this.#runner.progressed.connect((_, progress) => {
      this.#progress.showRun(progress);
      showRunning();
    });
    this.#runner.ended.connect((_, end) => {
      this.#progress.showEnd(end);
      void this.#saving.saveResults();
    });
    this.#desk.changed.connect((_, state) => {
      this.#progress.showKernel(state);
      showRunning();
    });
    sayHowServerStands(this.#line, this.#notices);
    this.#line.told.connect((_, event) => this.#hear(event));
    this.#line.changed.connect((_, line) => {
      if (line === "open") void this.#comeBack();
      else this.#file.keepDraft();
    });
    window.addEventListener("pagehide", () => this.#file.keepDraft());
    window.addEventListener("beforeunload", (event) => {
      this.#file.keepDraft();
      if (this.#file.isDirty) event.preventDefault();
    });
  }

  #hear(event: LiveEvent): void {
    const own = this.#file.name;
    if (event.type === "state" || event.type === "file-changed") void this.#refreshState();
    if (event.type === "file-changed" && event.kind === "sheet" && event.name === own)
      void this.#saving.lookAtDisk();
    if (event.type === "kernel" && event.sheet === own) this.#watch.hear(event);
  }

  async #refreshState(): Promise<void> {
    try {
      this.showState((await fetchRebuild()).sheets);
    } catch (error) {
      if (!(error instanceof ServerAway)) throw error; // the page says that already
    }
  }

  async #comeBack(): Promise<void> {
    await this.#refreshState();
    await this.#saving.lookAtDisk();
    await this.#watch.resume();
  }

  #sayDeleted(count: number): void {
    const putBack = (): void => {
      this.#notices.clear("deleted");
      NotebookActions.undo(this.#notebook);
    };
    this.#notices.show("deleted", {
      kind: "word",
      text: count === 1 ? "The cell is deleted." : `${count} cells are deleted.`,
      actions: [{ label: "Put back", act: putBack }],
      canClose: true,
    });
  }
}

const templateWords =
  "A template of Journalbox, which stays as it is: your first save puts a copy into this rebuild.";

const noRoomWords = "This browser has no room left to keep what you type. Save soon.";
