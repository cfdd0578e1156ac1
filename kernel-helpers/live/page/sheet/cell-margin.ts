import type { IInputPrompt } from "@jupyterlab/cells";
import type { IOutputPrompt } from "@jupyterlab/outputarea";
import { Widget } from "@lumino/widgets";
import { element } from "../dom/element.js";

/** What has become of a code cell, in words as the margin says them. */
export type CellStanding =
  | "not run"
  | "waiting"
  | "running"
  | "done"
  | "stopped"
  | "cut off"
  | "changed"
  | "from before";

/** The margin of a cell: its number, and what has become of it, in words. */
export class CellMargin extends Widget implements IInputPrompt {
  /**
   * JupyterLab tells its count of executions here; the margin shows the place of the cell, as the
   * report and the states of sheets count it, over all cells from 1.
   */
  executionCount: string | null = null;

  constructor() {
    super();
    this.addClass("margin");
  }

  /** @param standing of a code cell; a text has none */
  say(number: number, standing?: CellStanding): void {
    const wanted = `${number} ${standing ?? ""}`;
    if (this.node.dataset.shown === wanted) return;
    this.node.dataset.shown = wanted;
    if (standing === undefined) delete this.node.dataset.standing;
    else this.node.dataset.standing = standing;
    this.node.replaceChildren(element("b", {}, String(number)), element("span", {}, standing ?? ""));
  }
}

/** The margin beside a result: empty, for the margin of the cell has said all. */
export class ResultMargin extends Widget implements IOutputPrompt {
  executionCount: number | null = null;

  constructor() {
    super();
    this.addClass("margin");
  }
}
