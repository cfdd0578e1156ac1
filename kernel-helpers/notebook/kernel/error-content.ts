/** The content of a Jupyter `error` message and of a failing reply. */
export interface ErrorContent {
  /** The kind of error, e.g. "RangeError". */
  readonly ename: string;
  /** What is wrong, in one line where possible. */
  readonly evalue: string;
  /** Lines ready to print, with terminal colours. */
  readonly traceback: readonly string[];
}
