const dark = window.matchMedia("(prefers-color-scheme: dark)");

/** Tells the parts that ask the page itself, and not the system, whether it is light; now and whenever it changes. */
export function followTheme(): void {
  const tell = (): void => {
    document.body.dataset.jpThemeLight = String(!dark.matches);
  };
  tell();
  dark.addEventListener("change", tell);
}
