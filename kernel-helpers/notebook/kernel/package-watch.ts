import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { packageRoot, packageVersion } from "../../record/package-root.js";

/** Looked at no more often than this [ms]. */
const every = 2000;

/**
 * Watches whether this installation's own files are still those it started with. A build that writes the same
 * bytes anew is no change.
 */
export class PackageWatch {
  readonly #folder: string;
  readonly #versionNow: () => string;
  #stamp: string;
  readonly #content: string;
  #lastLook = Number.NEGATIVE_INFINITY;

  constructor(folder: string = join(packageRoot(), "dist"), versionNow: () => string = packageVersion) {
    this.#folder = folder;
    this.#versionNow = versionNow;
    this.#stamp = this.#stampNow();
    this.#content = this.#contentNow();
  }

  /** The version installed now, where files have changed; undefined where they have not, or it is too soon to look. */
  look(now: number): string | undefined {
    if (now - this.#lastLook < every) return undefined;
    this.#lastLook = now;
    try {
      const stamp = this.#stampNow();
      if (stamp === this.#stamp) return undefined;
      this.#stamp = stamp;
      return this.#contentNow() === this.#content ? undefined : this.#versionNow();
    } catch {
      return undefined; // in the middle of an update: the next look will tell
    }
  }

  #stampNow(): string {
    return this.#files()
      .map((file) => {
        const { mtimeMs, size } = statSync(file);
        return `${file} ${mtimeMs} ${size}`;
      })
      .join("\n");
  }

  #contentNow(): string {
    const hash = createHash("sha256");
    for (const file of this.#files()) hash.update(`${file}\n`).update(readFileSync(file));
    return hash.digest("hex");
  }

  #files(): readonly string[] {
    return readdirSync(this.#folder, { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith(".js"))
      .sort()
      .map((file) => join(this.#folder, file));
  }
}
