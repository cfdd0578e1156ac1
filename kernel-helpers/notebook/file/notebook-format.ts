/**
 * A notebook as it is held here: nbformat 4.5, with each text as one string.
 *
 * @source Jupyter, "The Jupyter Notebook Format" (nbformat documentation), format 4.5
 */
export interface Notebook {
  readonly metadata: JsonObject;
  readonly cells: readonly Cell[];
}

export type Cell = CodeCell | TextCell;

export interface CodeCell {
  readonly cell_type: "code";
  readonly id: string;
  readonly metadata: JsonObject;
  readonly source: string;
  readonly outputs: readonly Output[];
  /** Null where the cell has not been run. */
  readonly execution_count: number | null;
}

export interface TextCell {
  readonly cell_type: "markdown" | "raw";
  readonly id: string;
  readonly metadata: JsonObject;
  readonly source: string;
  /** Pictures and the like inside the cell, by file name. */
  readonly attachments?: Readonly<Record<string, MimeBundle>>;
}

export type Output = StreamOutput | DataOutput | ErrorOutput;

export interface StreamOutput {
  readonly output_type: "stream";
  readonly name: string;
  readonly text: string;
}

export interface DataOutput {
  readonly output_type: "display_data" | "execute_result";
  readonly data: MimeBundle;
  readonly metadata: JsonObject;
  /** Of an execute_result only. */
  readonly execution_count?: number | null;
}

export interface ErrorOutput {
  readonly output_type: "error";
  readonly ename: string;
  readonly evalue: string;
  readonly traceback: readonly string[];
}

/** One thing in several forms, by MIME type: text as a string, JSON as it is. */
export type MimeBundle = Readonly<Record<string, unknown>>;

export type JsonObject = Readonly<Record<string, unknown>>;

/** Whether data of this MIME type are JSON themselves, and so are never split into lines. */
export function isJsonType(mimeType: string): boolean {
  return /^application\/(.*\+)?json$/.test(mimeType);
}

/** Whether data of this MIME type are written as a list of lines, so that a diff shows the line that changed. */
export function isLineType(mimeType: string): boolean {
  return (
    mimeType.startsWith("text/") || mimeType === "application/javascript" || mimeType === "image/svg+xml"
  );
}

/** What a cell id may be. */
export const cellIdPattern: RegExp = /^[a-zA-Z0-9-_]{1,64}$/;
