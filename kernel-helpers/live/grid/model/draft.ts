/** Text that has been typed and not been saved, as a browser keeps it. */
export interface Draft {
  readonly text: string;
  /** The SHA-256 of the file it was typed into. */
  readonly base: string;
  /** When it was last typed, in milliseconds since 1970. */
  readonly at: number;
}

/** A draft as stored text. */
export function writeDraft(draft: Draft): string {
  return JSON.stringify({ text: draft.text, base: draft.base, at: draft.at });
}

/** A stored draft, or undefined where the text is none. */
export function readDraft(stored: string | null): Draft | undefined {
  if (stored === null) return undefined;
  try {
    const value: unknown = JSON.parse(stored);
    if (typeof value !== "object" || value === null) return undefined;
    const { text, base, at } = value as Record<string, unknown>;
    if (typeof text !== "string" || typeof base !== "string" || typeof at !== "number") return undefined;
    return Object.freeze({ text, base, at });
  } catch {
    return undefined;
  }
}
