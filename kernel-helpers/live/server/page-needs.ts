import { readFileSync } from "node:fs";
import { join } from "node:path";
import { packageRoot } from "../../record/index.js";

/** The three pages there are. */
export type PageName = "overview" | "sheet" | "table";

/** What a page fetches as soon as it is opened, by names below /static/. */
export interface PageNeeds {
  readonly script: string;
  readonly style: string;
  /** Programs that the script would ask for one after another. */
  readonly parts: readonly string[];
}

/** The folder of the page's programs and styles, as built. */
export function pageFolder(): string {
  return join(packageRoot(), "dist", "live", "page");
}

/** What the build says a page needs; undefined where it was not built. Read anew each time, for it may be built anew. */
export function needsOf(page: PageName): PageNeeds | undefined {
  try {
    const all = JSON.parse(readFileSync(join(pageFolder(), "page.json"), "utf8")) as Partial<
      Record<PageName, PageNeeds>
    >;
    return all[page];
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  }
}
