import type { Command } from "./command.js";
import { openCommand } from "./open.js";
import { runCommand } from "./run.js";

/** journalbox start: the first command of a newcomer. Runs the rebuild, then opens it in the browser. */
export const startCommand: Command = {
  summary: "runs a rebuild's worksheets, then opens it in the browser",
  usage: `journalbox start [folder]

Does what "journalbox run" does, and then what "journalbox open" does. Where the output goes to a file or
another program, so that nobody is there to look, it ends after the run.

Exit code: that of "journalbox run" where the page is not opened.`,

  async run(args) {
    const code = await runCommand.run(args);
    if (process.stdout.isTTY !== true) {
      console.log('\nNot a terminal, so the page is not opened; "journalbox open" does.');
      return code;
    }
    console.log("");
    return openCommand.run(args);
  },
};
