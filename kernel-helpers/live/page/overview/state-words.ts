import type { SheetStateName } from "../api/rebuild.js";
import { element } from "../dom/element.js";

const words: Readonly<Record<SheetStateName, { readonly sign: string; readonly meaning: string }>> = {
  fresh: { sign: "✓", meaning: "What it shows follows from what is on disk." },
  stale: { sign: "↻", meaning: "Something it stands on has changed." },
  failed: { sign: "✗", meaning: "Its last run stopped at a fault." },
  "never run": { sign: "–", meaning: "It has not been run yet." },
};

/** A state as a mark: sign and word, the colour only besides. */
export function stateMark(state: SheetStateName): HTMLElement {
  const { sign, meaning } = words[state];
  const name = state.replace(" ", "-");
  return element("span", { class: `state is-${name}`, title: meaning }, `${sign} ${state}`);
}
