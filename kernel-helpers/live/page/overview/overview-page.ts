import type { LiveEvent } from "../../server/live-event.js";
import { fetchRebuild, type Rebuild, type SheetSummary, type TableSummary } from "../api/rebuild.js";
import { wordsOf } from "../api/request.js";
import { startRun } from "../api/run.js";
import { ServerLine } from "../api/server-line.js";
import { button, element } from "../dom/element.js";
import { Notices } from "../dom/notices.js";
import { sayHowServerStands } from "../dom/server-notice.js";
import { progressWords } from "./progress-words.js";
import { stateMark } from "./state-words.js";

/** The first page of a rebuild: its worksheets with their states, its tables, and what can be run. */
export async function showOverviewPage(): Promise<void> {
  const page = new OverviewPage();
  document.body.append(page.node);
  await page.refresh();
  page.listen();
}

class OverviewPage {
  readonly node: HTMLElement = element("main", { class: "overview" });
  readonly #head = element("header");
  readonly #notices = new Notices();
  readonly #sheets = element("ol", { class: "list" });
  readonly #tables = element("ul", { class: "list" });
  readonly #progress = element("p", { class: "progress", role: "status" });
  readonly #runAll = button({ label: "Run all", kind: "main", act: () => void this.#run() });
  readonly #runStale = button({ label: "Run what is not fresh", act: () => void this.#run("stale") });
  readonly #line = new ServerLine();
  #rebuild: Rebuild | undefined;
  #running = false;

  constructor() {
    this.node.append(
      this.#head,
      this.#notices.node,
      section(
        "Worksheets",
        this.#sheets,
        element("div", { class: "actions" }, this.#runAll, this.#runStale),
        this.#progress,
      ),
      section("Readings", this.#tables),
      element(
        "p",
        { class: "report-link" },
        element("a", { href: "/report", target: "_blank", rel: "noopener" }, "Open the report"),
        " as it was last written by a run of all worksheets.",
      ),
    );
  }

  async refresh(): Promise<void> {
    try {
      this.#show(await fetchRebuild());
      this.#notices.clear("rebuild");
    } catch (error) {
      this.#notices.show("rebuild", { kind: "trouble", text: wordsOf(error) });
    }
  }

  listen(): void {
    sayHowServerStands(this.#line, this.#notices);
    this.#line.told.connect((_, event) => this.#hear(event));
    this.#line.open();
  }

  #show(rebuild: Rebuild): void {
    this.#rebuild = rebuild;
    const { title, invented, notice, faults = [] } = rebuild;
    document.title = title;
    this.#head.replaceChildren(
      element("p", { class: "kind" }, "Rebuild"),
      element("h1", {}, title),
      invented ? element("p", { class: "invented" }, inventedWords) : "",
      notice === "" ? "" : element("p", { class: "remark" }, notice),
    );
    if (faults.length === 0) this.#notices.clear("faults");
    else this.#notices.show("faults", { kind: "trouble", text: `rebuild.json: ${faults.join(" ")}` });
    this.#sheets.replaceChildren(...rebuild.sheets.map(sheetRow));
    this.#tables.replaceChildren(...rebuild.tables.map(tableRow));
    if (rebuild.tables.length === 0) this.#tables.append(element("li", {}, "No table yet."));
    this.#setButtons();
  }

  #setButtons(): void {
    const sheets = this.#rebuild?.sheets ?? [];
    this.#runAll.disabled = this.#running || sheets.length === 0;
    this.#runStale.disabled = this.#running || sheets.every(({ state }) => state === "fresh");
  }

  async #run(which?: "stale"): Promise<void> {
    const stale = this.#rebuild?.sheets.filter(({ state }) => state !== "fresh").map(({ name }) => name);
    this.#setRunning(true);
    this.#progress.textContent = "Starting a kernel.";
    try {
      await startRun(which === "stale" ? stale : undefined);
    } catch (error) {
      this.#setRunning(false);
      this.#progress.textContent = `The run was not started: ${wordsOf(error)}`;
    }
  }

  #hear(event: LiveEvent): void {
    switch (event.type) {
      case "hello":
        this.#setRunning(false);
        void this.refresh();
        return;
      case "run-started":
        this.#setRunning(true);
        return;
      case "progress":
        this.#progress.textContent = progressWords(event);
        return;
      case "run-ended":
        this.#setRunning(false);
        this.#progress.textContent = endWords(event);
        void this.refresh();
        return;
      case "file-changed":
      case "state":
        void this.refresh();
        return;
    }
  }

  #setRunning(running: boolean): void {
    this.#running = running;
    this.#setButtons();
  }
}

const inventedWords =
  "This is a demonstration: the machine and its readings are invented. Do not use them for anything real.";

function endWords({ failed, report, error }: Extract<LiveEvent, { type: "run-ended" }>): string {
  if (error !== undefined) return `The run came to nothing: ${error}`;
  const written = report ? " The report is written." : "";
  if (failed.length === 0) return `Done.${written}`;
  return `Done, but ${failed.join(", ")} stopped at a fault.${written}`;
}

function section(title: string, ...parts: readonly Node[]): HTMLElement {
  return element("section", {}, element("h2", {}, title), ...parts);
}

function sheetRow({ name, title, state, why, own }: SheetSummary): HTMLElement {
  return element(
    "li",
    { "data-sheet": name },
    element(
      "a",
      { class: "target", href: `/sheet/${encodeURIComponent(name)}` },
      element("strong", {}, title),
      element("small", {}, own ? `sheets/${name}.ipynb` : "template; your first save makes it your own"),
    ),
    element("div", { class: "standing" }, stateMark(state), why === "" ? undefined : element("p", {}, why)),
  );
}

function tableRow({ name, file }: TableSummary): HTMLElement {
  return element(
    "li",
    { "data-table": name },
    element(
      "a",
      { class: "target", href: `/table/${encodeURIComponent(name)}` },
      element("strong", {}, name),
      element("small", {}, file),
    ),
  );
}
