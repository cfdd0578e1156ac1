import katexPlugin, { type MarkdownKatexOptions } from "@vscode/markdown-it-katex";
import katex, { type KatexOptions } from "katex";
import MarkdownIt from "markdown-it";
import { escapeHtml } from "../../view/escape.js";
import type { MimeBundle } from "../file/notebook-format.js";
import { isPictureDataUri, pictureDataUri } from "./data-uri.js";
import { highlightCode } from "./highlight-code.js";
import type { Outline } from "./outline.js";

type Attachments = Readonly<Record<string, MimeBundle>>;

/** Where a Markdown text stands. */
export interface MarkdownPlace {
  readonly outline: Outline;
  /** Pictures pasted into the cell: file name, then contents in base64 by media type. */
  readonly attachments?: Attachments;
  /** A first heading that only repeats this is left out. */
  readonly titleAbove?: string;
}

/**
 * Markdown with mathematics as HTML. HTML in the text is shown as text; pictures must travel inside the page, and
 * links must be full addresses: of others the address is named.
 */
export function renderMarkdown(source: string, place: MarkdownPlace): string {
  const tokens = markdown.parse(source, {});
  const [first, heading] = tokens;
  const repeats = first?.type === "heading_open" && heading!.content.trim() === place.titleAbove;
  const kept = repeats ? tokens.slice(3) : tokens;
  for (const [index, token] of kept.entries()) {
    if (token.type === "heading_open") token.tag = `h${place.outline.enter(Number(token.tag.slice(1)))}`;
    // Opening, text, closing: a heading is three tokens.
    if (token.type === "heading_close") token.tag = kept[index - 2]!.tag;
  }
  for (const { children } of kept) if (children !== null) settle(children, place.attachments ?? {});
  return markdown.renderer.render(kept, markdown.options, {});
}

/** A formula on a line of its own, as HTML; dollar signs round it are dropped. */
export function renderFormula(latex: string): string {
  const bare = latex.trim().replace(/^\$\$?([\s\S]*?)\$\$?$/, "$1");
  return `<p class="katex-block">${katex.renderToString(bare, { ...mathOptions, displayMode: true })}</p>`;
}

/** Whether HTML made here holds mathematics: its text cannot hold a bare quotation mark, so nothing else can match. */
export function holdsMath(html: string): boolean {
  return html.includes('class="katex');
}

const mathOptions: KatexOptions & MarkdownKatexOptions = {
  throwOnError: false,
  trust: false, // no links, pictures or classes out of a formula
  strict: "ignore",
  maxSize: 40, // [em]
  maxExpand: 1000,
};

const markdown = new MarkdownIt({ html: false, linkify: true, highlight: highlightCode });
// "notes.md" is a file, not a site: only what is written as a full address becomes a link.
markdown.linkify.set({ fuzzyLink: false, fuzzyEmail: false });
markdown.use(katexPlugin, mathOptions);

markdown.renderer.rules.table_open = () =>
  '<div class="scroll" role="region" aria-label="table" tabindex="0"><table>\n';
markdown.renderer.rules.table_close = () => "</table></div>\n";

/** Turns pictures and links into the HTML that is right for a page that stands alone. */
function settle(tokens: readonly MarkdownIt.Token[], attachments: Attachments): void {
  const openLinks: string[] = [];
  for (const token of tokens) {
    switch (token.type) {
      case "image":
        toHtml(token, pictureHtml(addressOf(token, "src"), token.content, attachments));
        break;
      case "link_open": {
        const address = addressOf(token, "href");
        openLinks.push(address);
        const opening = `<a href="${escapeHtml(address)}" rel="noopener noreferrer">`;
        toHtml(token, leadsOutside(address) ? opening : "");
        break;
      }
      case "link_close": {
        const address = openLinks.pop() ?? "";
        toHtml(token, leadsOutside(address) ? "</a>" : ` (${escapeHtml(address)})`);
        break;
      }
    }
  }
}

function toHtml(token: MarkdownIt.Token, html: string): void {
  token.type = "html_inline";
  token.content = html;
}

function pictureHtml(address: string, alt: string, attachments: Attachments): string {
  const source = pictureSource(address, attachments);
  if (source !== undefined) return `<img src="${escapeHtml(source)}" alt="${escapeHtml(alt)}">`;
  const named = escapeHtml(`${alt} ${address}`.trim());
  return `<span class="left-out">[picture not in this file: ${named}]</span>`;
}

function addressOf(token: MarkdownIt.Token, name: string): string {
  return String(token.attrGet(name) ?? "");
}

/** Only a full address leads anywhere from a file that stands alone. */
function leadsOutside(address: string): boolean {
  return /^(?:https?|mailto):/i.test(address);
}

function pictureSource(address: string, attachments: Attachments): string | undefined {
  if (isPictureDataUri(address)) return address;
  if (!address.startsWith("attachment:")) return undefined;
  const name = decodeName(address.slice("attachment:".length));
  const bundle = Object.hasOwn(attachments, name) ? attachments[name]! : {};
  for (const [mediaType, contents] of Object.entries(bundle)) {
    const uri = typeof contents === "string" ? pictureDataUri(mediaType, contents) : undefined;
    if (uri !== undefined) return uri;
  }
  return undefined;
}

function decodeName(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name; // a per cent sign that encodes nothing
  }
}
