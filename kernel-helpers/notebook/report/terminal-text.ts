import Anser from "anser";
import { escapeHtml } from "../../view/escape.js";

/**
 * Text as a terminal would show it, as HTML for a pre element: colours become classes (ansi-red-fg, ansi-bold),
 * a line rewritten after a carriage return shows its last state, other control sequences vanish.
 */
export function terminalText(text: string): string {
  return Anser.ansiToHtml(escapeHtml(lastStates(withoutCommands(text))), { use_classes: true });
}

/** Escape sequences that are not CSI ("ESC ["): hyperlinks, window titles, resets; and stray control characters. */
function withoutCommands(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what this removes
      .replace(/\x1b\][^\x07\x1b]*(?:\x07|\x1b\\)?|\x1b[ -/]*[^[\]]/g, "")
      // biome-ignore lint/suspicious/noControlCharactersInRegex: likewise
      .replace(/[\x00-\x08\x0b\x0c\x0e-\x1a\x1c-\x1f\x7f]/g, "")
  );
}

function lastStates(text: string): string {
  const lines = text.replaceAll("\r\n", "\n").split("\n");
  return lines.map((line) => line.replace(/\r+$/, "").split("\r").at(-1)).join("\n");
}
