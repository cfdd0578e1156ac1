export { svgDataUri } from "../../view/svg-data-uri.js";

/**
 * Text as a data: URI in single quotes, e.g. for a download link that works offline. What means something to HTML or to
 * an address is percent-encoded: a fifth smaller than base64 for records, whose many double quotes stand as they are.
 */
export function textDataUri(mediaType: string, text: string): string {
  // A space at the end of an address would be lost.
  const encoded = text.replace(/[%#&'<>\\`]|\p{Cc}| $/gu, (character) =>
    encodeURIComponent(character).replace("'", "%27"),
  );
  return `data:${mediaType};charset=utf-8,${encoded}`;
}

const pictureTypes: readonly string[] = ["image/png", "image/jpeg", "image/gif", "image/webp"];

/** A picture given as base64, as a data: URI; undefined where it is not what it says it is. */
export function pictureDataUri(mediaType: string, base64: string): string | undefined {
  const digits = base64.replace(/\s/g, "");
  if (!pictureTypes.includes(mediaType) || !/^[A-Za-z0-9+/]+={0,2}$/.test(digits)) return undefined;
  return `data:${mediaType};base64,${digits}`;
}

/** Whether an address is a picture that travels inside the page. */
export function isPictureDataUri(address: string): boolean {
  return /^data:image\/(?:png|jpeg|gif|webp|svg\+xml)[;,]/i.test(address);
}
