import type { Presentation } from "../../view/blocks.js";

/** What a front end is shown when the helpers were updated under a running kernel. */
export function updateNote(running: string, installed: string): Presentation {
  const how = running === installed ? `rebuilt (${installed})` : `updated from ${running} to ${installed}`;
  return {
    title: "Journalbox was updated",
    blocks: [
      {
        type: "warning",
        text: `Journalbox was ${how} while this kernel runs. The helpers it has loaded stay as they were: restart the kernel, so that all are of one version.`,
      },
    ],
  };
}
