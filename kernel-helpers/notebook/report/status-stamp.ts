import type { ReportSheet } from "./report-input.js";

/** How the run of a sheet ended, in words first and colour second. */
export function statusStamp(status: ReportSheet["status"]): string {
  return status === "ok"
    ? '<span class="stamp ok">ran through</span>'
    : '<span class="stamp stopped">stopped</span>';
}
