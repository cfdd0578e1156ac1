/** A command: what it is for, how it is called, and what it does; it resolves to the exit code. */
export interface Command {
  readonly summary: string;
  readonly usage: string;
  readonly run: (args: readonly string[]) => Promise<number>;
}
