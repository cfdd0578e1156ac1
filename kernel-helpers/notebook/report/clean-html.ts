import sanitizeHtml, { type IOptions } from "sanitize-html";
import { isPictureDataUri } from "./data-uri.js";

/**
 * The HTML of somebody else's output, without anything that runs, loads, sends, or leaves its place: text, tables,
 * lists and pictures that travel inside the page remain.
 */
export function cleanHtml(html: string): string {
  return sanitizeHtml(html, options).trim();
}

/** Whether cleaned HTML shows anything at all. */
export function isBlankHtml(html: string): boolean {
  return !/<(?:img|hr|table)\b/.test(html) && sanitizeHtml(html, { allowedTags: [] }).trim() === "";
}

const headings: readonly string[] = ["h1", "h2", "h3", "h4", "h5", "h6"];

const options: IOptions = {
  allowedTags: [
    ...[
      "p",
      "div",
      "span",
      "br",
      "hr",
      "pre",
      "code",
      "kbd",
      "samp",
      "var",
      "blockquote",
      "details",
      "summary",
    ],
    ...["b", "strong", "i", "em", "u", "s", "small", "sub", "sup", "mark", "abbr", "time"],
    ...["ul", "ol", "li", "dl", "dt", "dd", "a", "img", "figure", "figcaption"],
    ...["table", "caption", "colgroup", "col", "thead", "tbody", "tfoot", "tr", "th", "td"],
  ],
  // No class and no id: they could take on a meaning in this page.
  allowedAttributes: {
    "*": ["title", "lang", "dir", "style"],
    a: ["href", "rel", "target"],
    img: ["src", "alt", "width", "height"],
    ol: ["start"],
    th: ["colspan", "rowspan", "scope"],
    td: ["colspan", "rowspan"],
  },
  allowedStyles: {
    "*": {
      "text-align": [/^(?:left|right|center)$/],
      "font-weight": [/^(?:bold|normal|[1-9]00)$/],
      "font-style": [/^(?:italic|normal)$/],
    },
  },
  allowedSchemes: ["http", "https", "mailto"],
  allowedSchemesByTag: { img: ["data"] },
  allowProtocolRelative: false,
  transformTags: {
    a: (tagName, attribs) => ({ tagName, attribs: outwardLink(attribs) }),
    // The headings of an output are no headings of the report.
    ...Object.fromEntries(headings.map((tag) => [tag, () => ({ tagName: "strong", attribs: {} })])),
  },
  exclusiveFilter: ({ tag, attribs }) => tag === "img" && !isPictureDataUri(attribs.src ?? ""),
};

/** Only a full address leads anywhere from a file that stands alone. */
function outwardLink({ href = "", title }: Record<string, string>): Record<string, string> {
  if (!/^(?:https?|mailto):/i.test(href)) return {};
  return { href, rel: "noopener noreferrer", target: "_blank", ...(title === undefined ? {} : { title }) };
}
