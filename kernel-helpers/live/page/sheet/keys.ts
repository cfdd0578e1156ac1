import { CommandRegistry } from "@lumino/commands";
import type { Commands } from "./commands.js";

/** Where a key has its meaning. */
const anywhere = ".jp-Notebook";
const choosing = ".jp-Notebook.jp-mod-commandMode";
const writing = ".jp-Notebook.jp-mod-editMode";

interface Key {
  readonly where: string;
  readonly keys: readonly string[];
  readonly command: keyof Commands;
  /** What the list of keys says. */
  readonly words: string;
}

/**
 * The keys of a sheet, by Jupyter's conventions.
 *
 * @source Jupyter Notebook documentation, "Keyboard shortcuts" (command mode and edit mode)
 */
export const keys: readonly Key[] = [
  { where: anywhere, keys: ["Shift Enter"], command: "runAndGoOn", words: "run the cell, go to the next" },
  { where: anywhere, keys: ["Accel Enter"], command: "run", words: "run the cell" },
  { where: anywhere, keys: ["Alt Enter"], command: "runAndInsert", words: "run the cell, add one below" },
  { where: "body", keys: ["Accel S"], command: "save", words: "save" },
  { where: choosing, keys: ["Enter"], command: "edit", words: "write in the cell" },
  { where: writing, keys: ["Escape"], command: "leave", words: "leave the cell" },
  { where: choosing, keys: ["ArrowUp"], command: "selectAbove", words: "cell above" },
  { where: choosing, keys: ["ArrowDown"], command: "selectBelow", words: "cell below" },
  { where: choosing, keys: ["K"], command: "selectAbove", words: "cell above" },
  { where: choosing, keys: ["J"], command: "selectBelow", words: "cell below" },
  { where: choosing, keys: ["Shift ArrowUp"], command: "extendAbove", words: "choose the cell above too" },
  { where: choosing, keys: ["Shift ArrowDown"], command: "extendBelow", words: "choose the cell below too" },
  { where: choosing, keys: ["A"], command: "addAbove", words: "add a cell above" },
  { where: choosing, keys: ["B"], command: "addCodeBelow", words: "add a cell below" },
  { where: choosing, keys: ["D", "D"], command: "deleteCells", words: "delete the cell" },
  { where: choosing, keys: ["X"], command: "cut", words: "cut the cell" },
  { where: choosing, keys: ["C"], command: "copy", words: "copy the cell" },
  { where: choosing, keys: ["V"], command: "paste", words: "paste below" },
  { where: choosing, keys: ["Z"], command: "undo", words: "undo the last change of cells" },
  { where: choosing, keys: ["Shift Z"], command: "redo", words: "redo it" },
  { where: choosing, keys: ["M"], command: "makeText", words: "make it text" },
  { where: choosing, keys: ["Y"], command: "makeCode", words: "make it code" },
  { where: choosing, keys: ["Shift M"], command: "merge", words: "join the chosen cells" },
  { where: choosing, keys: ["I", "I"], command: "interrupt", words: "stop the cell at work" },
  { where: choosing, keys: ["0", "0"], command: "startOver", words: "start the kernel over" },
  { where: choosing, keys: ["S"], command: "save", words: "save" },
  { where: writing, keys: ["Accel Shift -"], command: "split", words: "cut the cell in two at the cursor" },
  {
    where: `${writing} .jp-mod-completer-enabled:not(.jp-mod-at-line-beginning)`,
    keys: ["Tab"],
    command: "complete",
    words: "what the name may go on with",
  },
  {
    where: `${writing} .jp-mod-completer-active`,
    keys: ["Enter"],
    command: "acceptCompletion",
    words: "take the chosen one",
  },
  { where: writing, keys: ["Shift Tab"], command: "explain", words: "what the name at the cursor means" },
];

/** Lets the keys do what they stand for. */
export function bindKeys(commands: Commands): void {
  const registry = new CommandRegistry();
  for (const name of Object.keys(commands) as (keyof Commands)[])
    registry.addCommand(name, { execute: () => commands[name]() });
  for (const { where, keys: chord, command } of keys)
    registry.addKeyBinding({ selector: where, keys: [...chord], command });
  document.addEventListener("keydown", (event) => registry.processKeydownEvent(event), true);
}
