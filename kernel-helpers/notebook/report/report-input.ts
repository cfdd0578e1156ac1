import type { Notebook } from "../file/notebook-format.js";

/** Everything a report shows. The same input gives the same bytes. */
export interface ReportInput {
  readonly title: string;
  /** What is known of the machine, in the order to show it. */
  readonly facts: readonly Labelled[];
  /** Set where the readings were made up to show the tool; the report then says so at its top. */
  readonly invented: boolean;
  /** What has to be known of this copy before it is read, a sentence each; none where not given. */
  readonly notices?: readonly string[];
  /** In the order they ran. */
  readonly sheets: readonly ReportSheet[];
  /** Shown in the order of their names. */
  readonly tables: readonly ReportTable[];
  /** Shown in the order of their names. */
  readonly records: readonly ReportRecord[];
  /** Versions and hashes, in the order to show them. */
  readonly provenance: readonly Labelled[];
}

export interface Labelled {
  readonly label: string;
  readonly value: string;
}

export interface ReportSheet {
  /** File name without ending, e.g. "04-shaft-survey". */
  readonly name: string;
  readonly title: string;
  /** The executed notebook; not given where its file could not be read. What its outputs hold is not trusted. */
  readonly notebook?: Notebook;
  readonly status: "ok" | "failed";
  /** Where and why it stopped, in a line or two; for a failed sheet. */
  readonly failure?: string;
}

export interface ReportTable {
  /** The name by which worksheets call it, e.g. "shaft-survey". */
  readonly name: string;
  /** File name, e.g. "shaft-survey.csv". */
  readonly file: string;
  /** The CSV as written. */
  readonly text: string;
  /** SHA-256 of the file, in hexadecimal digits. */
  readonly sha256: string;
}

export interface ReportRecord {
  /** File name, e.g. "04-shaft-survey.json". */
  readonly name: string;
  readonly text: string;
}
