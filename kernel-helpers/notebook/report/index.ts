/** One self-contained HTML file for a whole rebuild. */
export { buildReport } from "./build-report.js";
export type { Labelled, ReportInput, ReportRecord, ReportSheet, ReportTable } from "./report-input.js";
export { ReportSections } from "./report-sections.js";
