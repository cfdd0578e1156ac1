/**
 * Tells the style sheet how much of the page a tablet's keyboard covers (--covered), so that the strip at the
 * lower edge stays above it.
 */
export function keepAboveKeyboard(): void {
  const view = globalThis.visualViewport;
  if (view === null || view === undefined) return;
  const tell = (): void => {
    // Pinched to a larger scale, the view is smaller without a keyboard.
    const covered = view.scale > 1.01 ? 0 : Math.max(0, innerHeight - view.height - view.offsetTop);
    document.documentElement.style.setProperty("--covered", `${Math.round(covered)}px`);
  };
  view.addEventListener("resize", tell);
  view.addEventListener("scroll", tell);
  tell();
}
