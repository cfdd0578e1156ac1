import { escapeHtml } from "../../view/escape.js";
import { textDataUri } from "./data-uri.js";

/** A link that hands over a file from inside the page, offline too. */
export function downloadLink(file: string, mediaType: string, text: string): string {
  const name = escapeHtml(file);
  return `<a class="download" download="${name}" href='${textDataUri(mediaType, text)}'>${name}</a>`;
}
