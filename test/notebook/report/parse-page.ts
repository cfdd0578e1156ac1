import { Window } from "happy-dom";

/** A page read as a browser reads it, with nothing in it run or fetched. */
export function parsePage(html: string): Document {
  const window = new Window({ settings: { enableJavaScriptEvaluation: false } });
  return new window.DOMParser().parseFromString(html, "text/html") as unknown as Document;
}
