/**
 * Unpacks a packed file of the page when its link is clicked, and hands over the plain file. The address is made in the
 * page and kept, so that a second click takes it again. Where the browser cannot unpack, the packed file is handed over.
 */
export const downloadScript: string = `"use strict";
(() => {
  if (!window.DecompressionStream) return;
  for (const link of document.querySelectorAll("a[download][data-type]"))
    link.addEventListener("click", async (click) => {
      click.preventDefault();
      const bytes = Uint8Array.from(atob(link.href.split(",")[1]), (character) => character.charCodeAt(0));
      const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
      const plain = new Blob([await new Response(stream).arrayBuffer()], { type: link.dataset.type });
      link.href = URL.createObjectURL(plain);
      link.download = link.download.replace(/\\.gz$/, "");
      link.click();
    }, { once: true });
})();
`;
