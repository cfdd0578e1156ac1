/** How to run one cell. */
export interface CellOptions {
  /** How long it may take; without limit where not given [ms]. */
  readonly timeout?: number;
  /** After that it is interrupted, and may take this long to come to rest; five seconds where not given [ms]. */
  readonly interruptTimeout?: number;
  /** Called for each message the cell causes: stream, execute_result, display_data, error, …; late ones too. */
  readonly onOutput?: (output: KernelOutput) => void;
  /** The id of the cell in its notebook. */
  readonly cellId?: string;
  /** True for a cell whose value is not to be shown, nor counted: only what it does matters. */
  readonly silent?: boolean;
  /** Whether cells already sent are given up when this one fails; true where not given. */
  readonly stopOnError?: boolean;
}

/** A message the kernel published on behalf of a cell. */
export interface KernelOutput {
  readonly type: string;
  readonly content: Readonly<Record<string, unknown>>;
}

/** A cell that went well. */
export interface CellReply {
  readonly executionCount: number;
  readonly outputs: readonly KernelOutput[];
}

/** What a run asks of a kernel. */
export interface RunningKernel {
  execute(code: string, options?: CellOptions): Promise<CellReply>;
  reset(sheet: {
    readonly directory: string;
    readonly sheet?: string;
    readonly pictures?: "drawn" | "owed";
    readonly thrownAway?: boolean;
  }): Promise<void>;
  close(): Promise<void>;
}
