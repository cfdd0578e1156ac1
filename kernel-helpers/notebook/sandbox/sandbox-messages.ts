/** What the sandbox is asked. */
export interface ToSandbox {
  readonly id: number;
  readonly type: "execute_request" | "journalbox_reset_request";
  readonly content: Readonly<Record<string, unknown>>;
  readonly cellId?: string;
}

/** What comes out of the sandbox; made by foreign code, perhaps, so nothing of it is taken for granted. */
export interface FromSandbox {
  readonly id: number;
  /** "ready" once it can be asked; "reply"; else the type of an output. */
  readonly type: string;
  readonly content: Readonly<Record<string, unknown>>;
}
