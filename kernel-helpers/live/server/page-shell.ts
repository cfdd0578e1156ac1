import { escapeHtml } from "../../view/escape.js";
import type { PageName, PageNeeds } from "./page-needs.js";

export interface PageShell {
  readonly page: PageName;
  /** The sheet's or table's name; "" for the overview. */
  readonly name: string;
  readonly title: string;
  /** Whose sheet or table it is, see rebuildId. */
  readonly rebuild: string;
  readonly needs: PageNeeds;
}

/** What the page's scripts expect to be told of the server, by JupyterLab's convention. No secret is in it. */
const config = JSON.stringify({ baseUrl: "/", wsUrl: "", appUrl: "/", appName: "Journalbox" });

/** The HTML of a page: nothing but what its scripts and styles are called, and what it is to show. */
export function pageShell({ page, name, title, rebuild, needs }: PageShell): string {
  const parts = needs.parts.map((part) => `<link rel="modulepreload" href="/static/${part}">\n`).join("");
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(title)}</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="/static/${needs.style}">
${parts}<script id="jupyter-config-data" type="application/json">${config}</script>
<script type="module" src="/static/${needs.script}"></script>
</head>
<body data-page="${page}" data-name="${escapeHtml(name)}" data-rebuild="${escapeHtml(rebuild)}">
<noscript>This page needs JavaScript.</noscript>
</body>
</html>
`;
}

/** A page that says one thing, for when there is nothing else to show. */
export function plainPage(title: string, text: string): string {
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title><link rel="icon" href="data:,">
<style>body { font: 1.2rem/1.5 system-ui, sans-serif; max-width: 40rem; margin: 4rem auto; padding: 0 1rem }</style>
</head>
<body><h1>${escapeHtml(title)}</h1><p>${escapeHtml(text)}</p></body>
</html>
`;
}
