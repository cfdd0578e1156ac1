import { type FSWatcher, statSync, watch } from "node:fs";
import { join } from "node:path";
import { fileHash, rebuildFileName, recordFolder } from "../../record/index.js";
import { stateFile } from "../../record/sheet-reads.js";
import type { FileChangedEvent, LiveEvent } from "./live-event.js";
import { listSheets, listTables, sheetsFolder, tablesFolder } from "./rebuild-files.js";
import { listedSheets } from "./sheet-states.js";

/** Editors write a file in several steps: look when they have come to rest [ms]. */
const rest = 120;
/** Where the system tells nothing, as on network drives, one must look oneself now and then [ms]. */
const every = 3000;

/** Records and outcomes are not told, but bear on the states. */
type Kind = FileChangedEvent["kind"] | "record" | "outcome";

interface Watched {
  readonly kind: Kind;
  readonly name: string;
  /** Place, size and times: while they stay the same, the bytes are taken to be the same. */
  readonly mark: string;
  readonly sha256: string | null;
}

/** Tells which files of a rebuild have changed, whoever changed them, and which states have changed with them. */
export class RebuildWatch {
  readonly #directory: string;
  readonly #tell: (event: LiveEvent) => void;
  readonly #timer: NodeJS.Timeout;
  readonly #watchers = new Map<string, FSWatcher>();
  #soon: NodeJS.Timeout | undefined;
  #files: ReadonlyMap<string, Watched> = new Map();
  #states: string;

  constructor(directory: string, tell: (event: LiveEvent) => void) {
    this.#directory = directory;
    this.#tell = tell;
    this.#files = this.#survey();
    this.#states = JSON.stringify(this.#statesNow());
    this.#watchFolders();
    this.#timer = setInterval(() => this.look(), every).unref();
  }

  /** Looks at once, and tells what is not as it was. */
  look(): void {
    clearTimeout(this.#soon);
    this.#watchFolders();
    const before = this.#files;
    const now = this.#survey();
    this.#files = now;
    const keys = [...new Set([...before.keys(), ...now.keys()])];
    const changed = keys.filter((key) => before.get(key)?.sha256 !== now.get(key)?.sha256);
    if (changed.length === 0) return;
    for (const key of changed) {
      const { kind, name } = (now.get(key) ?? before.get(key))!;
      const sha256 = now.get(key)?.sha256 ?? null;
      if (kind !== "record" && kind !== "outcome") this.#tell({ type: "file-changed", kind, name, sha256 });
    }
    const states = this.#statesNow();
    if (JSON.stringify(states) === this.#states) return;
    this.#states = JSON.stringify(states);
    this.#tell({ type: "state", sheets: states });
  }

  close(): void {
    clearInterval(this.#timer);
    clearTimeout(this.#soon);
    for (const watcher of this.#watchers.values()) watcher.close();
    this.#watchers.clear();
  }

  #statesNow(): readonly {
    name: string;
    state: ReturnType<typeof listedSheets>[number]["state"];
    why: string;
  }[] {
    return listedSheets(this.#directory).map(({ name, state, why }) => ({ name, state, why }));
  }

  #survey(): ReadonlyMap<string, Watched> {
    const found = new Map<string, Watched>();
    const add = (kind: Kind, name: string, path: string): void => {
      const stat = statSync(path, { throwIfNoEntry: false });
      if (stat === undefined) return;
      const key = `${kind}:${name}`;
      const mark = [path, stat.ino, stat.size, stat.mtimeMs, stat.ctimeMs].join(" ");
      const before = this.#files.get(key);
      const sha256 = before?.mark === mark ? before.sha256 : fileHash(path);
      found.set(key, { kind, name, mark, sha256 });
    };
    const directory = this.#directory;
    add("rebuild", rebuildFileName, join(directory, rebuildFileName));
    for (const name of listTables(directory))
      add("table", name, join(directory, tablesFolder, `${name}.csv`));
    for (const { name, path } of listSheets(directory)) {
      add("sheet", name, path);
      add("outputs", name, join(directory, "out", `${name}.ipynb`));
      add("record", name, join(directory, recordFolder, `${name}.json`));
      add("outcome", name, stateFile(directory, name, "run"));
    }
    return found;
  }

  /** Has the system tell when something happens in a folder; folders come and go, so this is asked time and again. */
  #watchFolders(): void {
    for (const folder of ["", tablesFolder, sheetsFolder, recordFolder, "out"]) this.#watchFolder(folder);
  }

  #watchFolder(folder: string): void {
    if (this.#watchers.has(folder)) return;
    const drop = (): void => {
      this.#watchers.get(folder)?.close();
      this.#watchers.delete(folder);
    };
    try {
      const watcher = watch(join(this.#directory, folder), { persistent: false }, (type) => {
        // A folder that was renamed or removed is watched no more, and one of that name may come again.
        if (
          type === "rename" &&
          statSync(join(this.#directory, folder), { throwIfNoEntry: false }) === undefined
        )
          drop();
        this.#lookSoon();
      });
      watcher.on("error", drop);
      this.#watchers.set(folder, watcher);
    } catch {
      // Not there, or not to be watched: looking now and then must do.
    }
  }

  #lookSoon(): void {
    clearTimeout(this.#soon);
    this.#soon = setTimeout(() => this.look(), rest).unref();
  }
}
