import { blocksMimeType } from "../../view/blocks.js";
import { owesPictures, withPictures } from "../../view/owed-pictures.js";
import type { Painter } from "../../view/picture/painter.js";
import type { MimeBundle, Output } from "../file/notebook-format.js";
import { checkPresentation } from "../report/check-presentation.js";

/**
 * An output with the pictures in it that the kernel left to be drawn here; any other as it is.
 *
 * @throws Error  a picture cannot be drawn
 */
export async function completeOutput(output: Output, painter: Painter): Promise<Output> {
  if (output.output_type !== "execute_result" && output.output_type !== "display_data") return output;
  if (!owesPictures(output.data)) return output;
  // What a cell sends need not be what our own view wrote.
  const presentation = checkPresentation(output.data[blocksMimeType]);
  if (presentation === undefined)
    throw new TypeError("completeOutput: the blocks must be those of a presentation, got something else");
  const figures = presentation.blocks.filter((block) => block.type === "figure");
  const { data, metadata } = await withPictures(
    { data: output.data, metadata: output.metadata },
    figures,
    painter,
  );
  return { ...output, data: data as MimeBundle, metadata: metadata as typeof output.metadata };
}
