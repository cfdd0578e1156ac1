import type { Copy } from "./keep-copy.js";

export interface CopyWords {
  readonly text: string;
  readonly actions: readonly { readonly label: string; readonly act: () => void }[];
}

/** What is said when a text was put beside the sheet. */
export function copyWords({ kind, name }: Copy): CopyWords {
  if (kind === "download") return { text: `Your text was downloaded as ${name}.`, actions: [] };
  const open = (): void => location.assign(`/sheet/${encodeURIComponent(name)}`);
  return { text: `Your text is saved as the sheet ${name}.`, actions: [{ label: "Open it", act: open }] };
}
