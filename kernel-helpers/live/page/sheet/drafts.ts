import type { INotebookContent } from "@jupyterlab/nbformat";

/** Text that was typed and not saved. */
export interface Draft {
  /** SHA-256 of the file that it was typed over. */
  readonly base: string;
  /** When the last letter was typed, in milliseconds since 1970. */
  readonly typedAt: number;
  readonly notebook: INotebookContent;
}

/** A draft that a closed page left; it stays stored until it is let go. */
export interface FoundDraft extends Draft {
  letGo(): void;
}

/** How long a draft's own page has to show that it is still open [ms]. */
const patience = 400;

/**
 * Keeps the unsaved text of one sheet in this browser, so that it outlives the page, the kernel and the server.
 *
 * Each page has a draft of its own, and holds a lock of the same name for as long as it is open. By that another
 * page tells a draft that was left behind from one that somebody is writing.
 */
export class DraftBox {
  readonly #prefix: string;
  readonly #own: string;

  /** @param rebuild tells the rebuild from others that this address may show at other times */
  constructor(rebuild: string, sheet: string) {
    this.#prefix = `journalbox draft ${JSON.stringify([rebuild, sheet])} `;
    this.#own = this.#prefix + crypto.randomUUID();
    void navigator.locks.request(this.#own, () => new Promise(() => {})); // held until the page is gone
  }

  /** @throws DOMException the browser has no room left */
  keep(draft: Draft): void {
    localStorage.setItem(this.#own, JSON.stringify(draft));
  }

  drop(): void {
    localStorage.removeItem(this.#own);
  }

  /** The drafts that closed pages have left, the newest first. Each is given to one page only. */
  async takeLeftBehind(): Promise<readonly FoundDraft[]> {
    const keys = Object.keys(localStorage).filter(
      (key) => key.startsWith(this.#prefix) && !key.startsWith(this.#own),
    );
    const found = await Promise.all(keys.map((key, index) => this.#take(key, `${this.#own} from ${index}`)));
    return found.filter((draft) => draft !== undefined).sort((a, b) => b.typedAt - a.typedAt);
  }

  /** Moves a draft under a name of this page, so that it is found again should this page go too. */
  async #take(key: string, kept: string): Promise<FoundDraft | undefined> {
    const [page] = key.split(" from ", 1);
    try {
      return await navigator.locks.request(page!, { signal: AbortSignal.timeout(patience) }, () => {
        const text = localStorage.getItem(key);
        if (text === null) return undefined;
        const draft = JSON.parse(text) as Draft;
        localStorage.setItem(kept, text);
        localStorage.removeItem(key);
        return { ...draft, letGo: () => localStorage.removeItem(kept) };
      });
    } catch {
      return undefined; // its page is still open, or what is stored cannot be read
    }
  }
}
