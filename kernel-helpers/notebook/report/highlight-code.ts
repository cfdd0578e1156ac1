import hljs from "highlight.js/lib/core";
import json from "highlight.js/lib/languages/json";
import typescript from "highlight.js/lib/languages/typescript";
import { escapeHtml } from "../../view/escape.js";

hljs.registerLanguage("typescript", typescript); // also known as ts
hljs.registerLanguage("json", json);

/** Source as HTML for a code element, its words marked with classes hljs-*; plain where the language is unknown. */
export function highlightCode(source: string, language: string): string {
  if (hljs.getLanguage(language) === undefined) return escapeHtml(source);
  return hljs.highlight(source, { language, ignoreIllegals: true }).value;
}
