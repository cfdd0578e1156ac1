import type { Draft } from "../model/index.js";
import type { TableSession } from "../table-session.js";
import { button, element } from "./element.js";

/** What has to be known and may have to be decided, above the table. */
export class NoticeView {
  readonly root: HTMLElement = element("section", { class: "notices", "aria-label": "Notices" });
  readonly #session: TableSession;
  readonly #compare: () => void;
  #shown = "";

  /** @param compare  shows both texts of a conflict */
  constructor(session: TableSession, compare: () => void) {
    this.#session = session;
    this.#compare = compare;
  }

  draw(): void {
    const notices = this.#notices();
    // Drawn anew only where something else is to be read: a button one is about to press stays.
    const shown = notices.map(({ outerHTML }) => outerHTML).join();
    if (shown === this.#shown) return;
    this.#shown = shown;
    this.root.replaceChildren(...notices);
  }

  #notices(): readonly HTMLElement[] {
    const { isAway, isLockedOut, isKept, trouble, conflict, restored, drafts } = this.#session;
    const notices: HTMLElement[] = [];
    if (isAway)
      notices.push(
        notice(
          "warn",
          "The server is away. Go on typing: all of it is kept in this browser, and saved on your word when the server is back.",
        ),
      );
    if (isLockedOut)
      notices.push(
        notice(
          "warn",
          "The server was started anew and does not know this page. Open the address it printed in another tab, then come back: nothing typed here is lost.",
        ),
      );
    if (!isKept) notices.push(notice("bad", "This browser keeps nothing. Save before you close the page."));
    if (trouble !== "") notices.push(notice("bad", trouble));
    if (conflict !== undefined) notices.push(this.#conflictNotice());
    else if (restored !== undefined)
      notices.push(
        notice(
          "plain",
          `What was typed here and not saved (${timeOf(restored)}) has been put back.`,
          button("Throw it away", () => this.#session.dropRestored()),
        ),
      );
    for (const draft of drafts)
      notices.push(
        notice(
          "plain",
          `Another tab left a text that was not saved (${timeOf(draft)}).`,
          button("Put it in place of this one", () => this.#session.takeDraft(draft)),
          button("Throw it away", () => this.#session.dropDraft(draft)),
        ),
      );
    notices.push(...this.#sheetNotices());
    return notices;
  }

  #conflictNotice(): HTMLElement {
    const session = this.#session;
    if (session.conflict!.sha256 === null)
      return notice(
        "warn",
        "The file of this table is gone from the disk.",
        button("Write it again", () => void session.keepMine()),
      );
    const compare = button("Compare and choose", this.#compare);
    if (session.isDirty)
      return notice(
        "warn",
        "The file was changed by somebody else while you were typing. Nothing was written over.",
        compare,
      );
    return notice(
      "warn",
      "The file was changed by somebody else.",
      button("Take over what stands there now", () => session.takeTheirs()),
      compare,
    );
  }

  #sheetNotices(): readonly HTMLElement[] {
    const { sheets, savedOnce } = this.#session;
    const { stale, becameStale, run, isRunning, failed } = sheets;
    if (isRunning) return [notice("plain", run)];
    const notices: HTMLElement[] = [];
    if (run !== "")
      notices.push(
        notice(failed.length > 0 ? "bad" : "good", run, ...failed.map((name) => this.#sheetLink(name))),
      );
    if (stale.length > 0 && (savedOnce || run !== ""))
      notices.push(
        notice(
          "plain",
          becameStale.length > 0 ? "Saved. These worksheets are now stale:" : "These worksheets are stale:",
          ...stale.map(({ name }) => this.#sheetLink(name)),
          button(
            stale.length === 1 ? "Run it" : `Run all ${stale.length}`,
            () => void this.#session.sheets.runStale(),
            {
              class: "main",
            },
          ),
        ),
      );
    return notices;
  }

  #sheetLink(name: string): HTMLElement {
    return element("a", { href: `/sheet/${encodeURIComponent(name)}` }, this.#session.sheets.titleOf(name));
  }
}

function notice(
  kind: "plain" | "good" | "warn" | "bad",
  text: string,
  ...more: readonly HTMLElement[]
): HTMLElement {
  const role = kind === "bad" ? "alert" : "status";
  return element("div", { class: `notice ${kind}`, role }, element("p", {}, text), ...more);
}

/** The time of today; the date as well where it is another day. */
function timeOf({ at }: Draft): string {
  const date = new Date(at);
  const isToday = date.toDateString() === new Date().toDateString();
  return isToday
    ? date.toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" })
    : date.toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
}
