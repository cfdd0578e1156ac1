import { runRebuild, runSomeSheets } from "../../notebook/run-rebuild.js";
import { failureText } from "../../notebook/runner/failure-text.js";
import type { Progress } from "../../notebook/runner/run-sheets.js";
import { findSheets } from "../../record/index.js";
import type { ProgressEvent } from "./live-event.js";
import type { RunMessage } from "./run-job.js";

/** The program the server starts to run sheets: `run-program.js FOLDER SHEET...`; it tells its starter how it goes. */
const [directory, ...sheets] = process.argv.slice(2);
const isAll = findSheets(directory!).every(({ name }) => sheets.includes(name));

// Whoever started it is gone: nobody wants the answer, and kernels must not be left behind.
process.once("disconnect", () => process.exit(1));

function tell(message: RunMessage): void {
  process.send?.(message);
}

function progressEvent(progress: Progress): ProgressEvent {
  const common = { type: "progress", stage: progress.type } as const;
  switch (progress.type) {
    case "kernel-started":
      return common;
    case "sheet-started":
      return { ...common, sheet: progress.sheet, cells: progress.cells };
    case "cell-started":
      return { ...common, sheet: progress.sheet, index: progress.index, cells: progress.cells };
    case "sheet-ended": {
      const { sheet, status } = progress.result;
      const failure = status === "failed" ? { failure: failureText(progress.result) } : {};
      return { ...common, sheet, status, ...failure };
    }
  }
}

async function main(): Promise<void> {
  tell({ type: "run-started", sheets });
  const onProgress = (progress: Progress): void => tell(progressEvent(progress));
  const options = {
    directory: directory!,
    onProgress,
    onWait: () => tell({ type: "progress", stage: "waiting" }),
  };
  const results = isAll ? (await runRebuild(options)).results : await runSomeSheets(sheets, options);
  const failed = results.filter(({ status }) => status === "failed").map(({ sheet }) => sheet);
  tell({ type: "run-ended", failed, report: isAll });
}

main().then(
  () => process.disconnect(),
  (error: unknown) => {
    tell({
      type: "run-ended",
      failed: [],
      report: false,
      error: error instanceof Error ? error.message : String(error),
    });
    process.disconnect();
  },
);
