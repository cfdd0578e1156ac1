import { type Draft, readDraft, writeDraft } from "../model/index.js";

/** A draft with the key it is kept under. */
export interface KeptDraft extends Draft {
  readonly key: string;
}

/**
 * Keeps what is typed and not saved in this browser, a draft for each tab, so that two tabs do not write over
 * each other. A lock says which drafts belong to tabs that are still open.
 */
export class DraftStore {
  readonly #prefix: string;
  #key: string;

  private constructor(prefix: string, key: string) {
    this.#prefix = prefix;
    this.#key = key;
  }

  /** A rebuild's drafts are its own, though another may be shown at the same address later. A tab keeps its key over a reload; a copy of a tab gets a key of its own. */
  static async open(rebuild: string, table: string): Promise<DraftStore> {
    const prefix = `journalbox/table/${rebuild}/${table}/`;
    const store = new DraftStore(prefix, prefix + tabName());
    // After a reload the page that was may still hold it for a moment.
    const isOurs = (await holdLock(store.#key)) || (await later(500).then(() => holdLock(store.#key)));
    if (!isOurs) {
      store.#key = prefix + tabName(true);
      await holdLock(store.#key);
    }
    return store;
  }

  /** Drafts of this tab and of tabs that are gone, the latest first. */
  async found(): Promise<readonly KeptDraft[]> {
    const held = new Set(((await navigator.locks?.query())?.held ?? []).map(({ name }) => name));
    const drafts = storedKeys(this.#prefix).flatMap((key) => {
      if (key !== this.#key && held.has(key)) return [];
      const draft = readDraft(localStorage.getItem(key));
      return draft === undefined ? [] : [{ ...draft, key }];
    });
    return drafts.sort((a, b) => b.at - a.at);
  }

  /** Keeps a draft; false where the browser will not. */
  keep(text: string, base: string | null): boolean {
    try {
      localStorage.setItem(this.#key, writeDraft({ text, base: base ?? "", at: Date.now() }));
      return true;
    } catch {
      return false;
    }
  }

  drop(key: string = this.#key): void {
    try {
      localStorage.removeItem(key);
    } catch {
      // Where nothing can be kept there is nothing to drop.
    }
  }
}

function storedKeys(prefix: string): readonly string[] {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(prefix));
  } catch {
    return [];
  }
}

function tabName(fresh = false): string {
  try {
    const known = fresh ? null : sessionStorage.getItem("journalbox/tab");
    if (known !== null) return known;
    const name = crypto.randomUUID();
    sessionStorage.setItem("journalbox/tab", name);
    return name;
  } catch {
    return crypto.randomUUID();
  }
}

function later(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

/** Holds a lock as long as the tab is open; false where another tab has it. */
function holdLock(name: string): Promise<boolean> {
  if (navigator.locks === undefined) return Promise.resolve(true);
  return new Promise((resolve) => {
    navigator.locks
      .request(name, { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        return lock === null ? undefined : new Promise<void>(() => {});
      })
      .catch(() => resolve(true));
  });
}
