import type { INotebookContent } from "@jupyterlab/nbformat";
import { ask } from "../dom/ask.js";
import { element } from "../dom/element.js";
import { compareSheets, type Difference } from "./compare-sheets.js";

/** What to do with two versions of a sheet. */
export type Resolution = "copy" | "take theirs" | "keep mine";

export interface TwoVersions {
  readonly title: string;
  readonly mine: INotebookContent;
  readonly theirs: INotebookContent;
  /** What the other version is, as the head of its column: "On disk now". */
  readonly theirsIs: string;
  /** What the buttons say. */
  readonly labels: Readonly<Record<Resolution, string>>;
}

/**
 * Asks which of two versions shall stand; undefined where the user rather goes on writing. Nothing is done yet.
 */
export async function askWhichStands(versions: TwoVersions): Promise<Resolution | undefined> {
  const { title, labels, theirsIs } = versions;
  const count = compareSheets(versions.mine, versions.theirs).length;
  const words =
    count === 0 ? "The cells are the same; their order differs." : `They differ in ${cellsOf(count)}.`;
  const answer = await ask<Resolution | "show">(
    title,
    [element("p", {}, `There are two versions of this sheet: yours, and "${theirsIs}". ${words}`)],
    [
      { label: "Show both", value: "show", kind: "main" },
      { label: labels.copy, value: "copy" },
      { label: labels["take theirs"], value: "take theirs" },
    ],
  );
  return answer === "show" ? showBoth(versions) : answer;
}

function showBoth({ title, mine, theirs, theirsIs, labels }: TwoVersions): Promise<Resolution | undefined> {
  const rows = compareSheets(mine, theirs).map(differenceRow);
  const table = element(
    "table",
    { class: "versions" },
    element(
      "thead",
      {},
      element("tr", {}, element("th", {}, "Cell"), element("th", {}, "Yours"), element("th", {}, theirsIs)),
    ),
    element("tbody", {}, ...rows),
  );
  return ask<Resolution>(
    title,
    [table],
    [
      { label: labels["keep mine"], value: "keep mine" },
      { label: labels.copy, value: "copy" },
      { label: labels["take theirs"], value: "take theirs" },
    ],
    "wide",
  );
}

function differenceRow({ place, mine, theirs }: Difference): HTMLElement {
  return element("tr", {}, element("th", { scope: "row" }, String(place)), column(mine), column(theirs));
}

function column(source: string | undefined): HTMLElement {
  return element("td", {}, source === undefined ? "not there" : element("pre", {}, source));
}

function cellsOf(count: number): string {
  return count === 1 ? "one cell" : `${count} cells`;
}
