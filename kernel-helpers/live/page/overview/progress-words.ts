import type { ProgressEvent } from "../../server/live-event.js";

/** How far a run of sheets is, in a line; undefined for a step not worth a word. */
export function progressWords({
  stage,
  sheet = "",
  index = 0,
  cells,
  status,
  failure,
}: ProgressEvent): string {
  switch (stage) {
    case "waiting":
      return "Another run of this rebuild is under way; waiting for its end.";
    case "kernel-started":
      return "The kernel is ready.";
    case "sheet-started":
      return `${sheet}: starting.`;
    case "cell-started":
      return `${sheet}: cell ${index + 1}${cells === undefined ? "" : ` of ${cells}`}.`;
    case "sheet-ended":
      return status === "failed" ? `${sheet}: stopped. ${failure ?? ""}` : `${sheet}: done.`;
  }
}
