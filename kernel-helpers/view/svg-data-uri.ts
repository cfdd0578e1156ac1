/**
 * An SVG document as a data: URI for the src of an img, in double quotes, where browsers run no script and fetch nothing.
 * Percent-encoded: a third smaller than base64, and greater still once the page is zipped.
 */
export function svgDataUri(svg: string): string {
  return `data:image/svg+xml;charset=utf-8,${svg.replace(/[%#<>"&\\`\s]/g, percent)}`;
}

/** A space reads well as it is, and browsers keep it; every other character that means something does not. */
function percent(character: string): string {
  return character === " " ? character : encodeURIComponent(character);
}
