import { blocksMimeType, type FigureBlock } from "../../view/blocks.js";
import { escapeHtml } from "../../view/escape.js";
import type { Painter } from "../../view/picture/painter.js";
import { renderHtml } from "../../view/render-html.js";
import type { ErrorOutput, MimeBundle, Output } from "../file/notebook-format.js";
import { checkPresentation } from "./check-presentation.js";
import { cleanHtml, isBlankHtml } from "./clean-html.js";
import { pictureDataUri, svgDataUri } from "./data-uri.js";
import { figurePictures } from "./figure-picture.js";
import { highlightCode } from "./highlight-code.js";
import type { Outline } from "./outline.js";
import { renderFormula, renderMarkdown } from "./render-markdown.js";
import { terminalText } from "./terminal-text.js";

/** What an output is rendered for. */
export interface OutputPlace {
  readonly outline: Outline;
  readonly painter: Painter;
}

/** One output of a cell as HTML; empty where it shows nothing. */
export async function renderOutput(output: Output, place: OutputPlace): Promise<string> {
  switch (output.output_type) {
    case "stream":
      return output.text.trim() === ""
        ? ""
        : pre(output.name === "stderr" ? "stream stderr" : "stream", terminalText(output.text));
    case "error":
      return errorHtml(output);
    case "display_data":
    case "execute_result":
      return dataHtml(output.data, place);
  }
}

function errorHtml({ ename, evalue, traceback }: ErrorOutput): string {
  const told = traceback.join("\n");
  // The traceback of our own kernel begins with the message.
  const title = evalue !== "" && told.includes(evalue) ? "" : terminalText(`${ename}: ${evalue}`);
  const details = told === "" ? "" : pre("traceback", terminalText(told));
  return `<div class="error" role="note"><p><strong>Stopped here.</strong> ${title}</p>${details}</div>`;
}

type Form = (given: unknown, place: OutputPlace) => Promise<string | undefined> | string | undefined;

const plain: readonly [mediaType: string, form: Form] = [
  "text/plain",
  asText((text) => pre("plain", terminalText(text))),
];

/** The forms of our own results. Their HTML and pictures are made anew: what the cell made of them is not used. */
const ownForms: readonly (typeof plain)[] = [[blocksMimeType, presentationHtml], plain];

/** The forms of all other values: the first that a value has, and that is what it says it is, is shown. */
const otherForms: readonly (typeof plain)[] = [
  ["text/html", asText(foreignHtml)],
  ["image/svg+xml", asText((svg) => `<img src="${svgDataUri(svg)}" alt="Picture made by this cell">`)],
  ["image/png", asText((base64) => pictureHtml("image/png", base64))],
  ["image/jpeg", asText((base64) => pictureHtml("image/jpeg", base64))],
  ["text/markdown", asText((text, { outline }) => renderMarkdown(text, { outline }))],
  ["text/latex", asText(renderFormula)],
  ["application/json", (value) => pre("json", highlightCode(JSON.stringify(value, null, 1), "json"))],
  plain,
];

async function dataHtml(data: MimeBundle, place: OutputPlace): Promise<string> {
  const forms = Object.hasOwn(data, blocksMimeType) ? ownForms : otherForms;
  for (const [mediaType, form] of forms) {
    const html = Object.hasOwn(data, mediaType) ? await form(data[mediaType], place) : undefined;
    if (html !== undefined) return `<div class="output">${html}</div>`;
  }
  const offered = Object.keys(data).sort().join(", ") || "nothing";
  return `<p class="left-out">[an output that this report cannot show: ${escapeHtml(offered)}]</p>`;
}

/** The blocks as text or as JSON: some kernels and editors store the one, some the other. */
async function presentationHtml(
  given: unknown,
  { outline, painter }: OutputPlace,
): Promise<string | undefined> {
  const presentation = checkPresentation(typeof given === "string" ? parsed(given) : given);
  if (presentation === undefined) return undefined;
  const pictures = await figurePictures(presentation, painter);
  const picture = (block: FigureBlock): string => pictures.get(block)!;
  return renderHtml(presentation, { picture, withStyle: false, headingLevel: outline.below });
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined; // no JSON, so no presentation
  }
}

function foreignHtml(html: string): string | undefined {
  const clean = cleanHtml(html);
  return isBlankHtml(clean) ? undefined : `<div class="foreign scroll">${clean}</div>`;
}

function pictureHtml(mediaType: string, base64: string): string | undefined {
  const uri = pictureDataUri(mediaType, base64);
  return uri === undefined ? undefined : `<img src="${uri}" alt="Picture made by this cell">`;
}

function asText(form: (text: string, place: OutputPlace) => string | undefined): Form {
  return (given, place) => (typeof given === "string" ? form(given, place) : undefined);
}

function pre(name: string, html: string): string {
  return `<pre class="${name}" tabindex="0">${html}</pre>`;
}
