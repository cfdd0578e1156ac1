import { boldWidths, regularWidths, unitsPerEm } from "./arial-widths.js";

const zeroWidthSpace = 0x200b;
const firstWideCharacter = 0x2e80;

/**
 * Width of a line of text in Arial or a font of the same metrics, as a browser without kerning sets it.
 * Characters outside the table: accents that combine take no room, East Asian ones a full em, others 0.6 em.
 *
 * @param text a single line
 * @param size font size [px]
 * @param bold set in the bold face
 * @returns the sum of the advance widths [px]
 * @example textWidth("Taper", 12, false) // 31.35
 * @source advance widths of Liberation Sans, see arial-widths.ts
 */
export function textWidth(text: string, size: number, bold: boolean): number {
  const widths = bold ? boldWidths : regularWidths;
  let units = 0;
  for (const character of text) {
    const code = character.codePointAt(0)!;
    units += widths.get(code) ?? widthOfUnknown(code);
  }
  return (units * size) / unitsPerEm;
}

function widthOfUnknown(code: number): number {
  const combining = code >= 0x300 && code < 0x370;
  if (code === zeroWidthSpace || combining) return 0;
  return code > firstWideCharacter ? unitsPerEm : 0.6 * unitsPerEm;
}
