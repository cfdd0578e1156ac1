/** A cell failed: its types were wrong, or it threw. The kernel lives on. */
export class CellError extends Error {
  override readonly name = "CellError";
  /** The kind of error, e.g. "RangeError". */
  readonly ename: string;
  readonly evalue: string;
  /** Lines ready to print, with terminal colours. */
  readonly traceback: readonly string[];

  constructor(error: {
    readonly ename: string;
    readonly evalue: string;
    readonly traceback: readonly string[];
  }) {
    super(`${error.ename}: ${error.evalue}`);
    this.ename = error.ename;
    this.evalue = error.evalue;
    this.traceback = Object.freeze([...error.traceback]);
  }
}

/** The kernel ended by itself: `process.exit` in a cell, lack of memory, or a fault of its own. */
export class KernelDiedError extends Error {
  override readonly name = "KernelDiedError";
  readonly exitCode: number | null;
  readonly signal: NodeJS.Signals | null;

  /** `lastWords` is the end of what it wrote to its own error output. */
  constructor(exitCode: number | null, signal: NodeJS.Signals | null, lastWords: string) {
    const how = signal === null ? `with exit code ${exitCode}` : `by signal ${signal}`;
    super(`the kernel ended ${how}${lastWords === "" ? "" : `: ${lastWords}`}`);
    this.exitCode = exitCode;
    this.signal = signal;
  }
}

/** A cell took longer than allowed, and was interrupted; where that did not help, the kernel was ended. */
export class CellTimeoutError extends Error {
  override readonly name = "CellTimeoutError";
  readonly kernelLives: boolean;

  constructor(milliseconds: number, kernelLives: boolean) {
    const end = kernelLives ? "it was interrupted" : "it could not be interrupted, so the kernel was ended";
    super(`the cell took longer than ${milliseconds / 1000} s: ${end}`);
    this.kernelLives = kernelLives;
  }
}
