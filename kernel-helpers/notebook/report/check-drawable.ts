import type { Figure } from "../../view/blocks.js";
import { isPictureDataUri } from "./data-uri.js";

/** Drawing takes about a second for each 300 000 characters of a figure. */
const mostCharacters = 3_000_000;

/**
 * Refuses a figure from a notebook that would keep the drawing waiting for ever: one with pictures that lie
 * outside it, or one of enormous size.
 *
 * @throws RangeError  the figure is not to be drawn
 */
export function checkDrawable(figure: Figure): void {
  const text = JSON.stringify(figure, (key, value) => {
    // In plotly every address of a picture, also in a template, has this name.
    if (key === "source" && !(typeof value === "string" && isPictureDataUri(value)))
      throw new RangeError(`figure: a picture must lie inside it as a data: address, got ${value}`);
    return value;
  });
  if (text.length > mostCharacters)
    throw new RangeError(
      `figure: its JSON must have at most ${mostCharacters} characters, got ${text.length}`,
    );
}
