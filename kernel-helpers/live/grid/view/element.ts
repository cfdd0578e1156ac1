type Value = string | number | boolean | undefined | ((event: never) => void);

/**
 * An element with its attributes and children. `true` is an attribute without value, `false` and undefined none;
 * a function is a listener for the event its key names ("click"). Text is always text, never markup.
 */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, Value>> = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === "function") made.addEventListener(key, value as (event: Event) => void);
    else if (value === true) made.setAttribute(key, "");
    else if (value !== undefined && value !== false) made.setAttribute(key, String(value));
  }
  made.append(...children);
  return made;
}

/** A button with a word on it, and the keys that do the same. */
export function button(
  text: string,
  onClick: () => void,
  attributes: Readonly<Record<string, Value>> = {},
): HTMLButtonElement {
  return element("button", { type: "button", click: onClick, ...attributes }, text);
}

/** Sets an attribute where it is not so already, and takes it away for undefined. */
export function setAttribute(on: Element, name: string, value: string | undefined): void {
  if (value === undefined) on.removeAttribute(name);
  else if (on.getAttribute(name) !== value) on.setAttribute(name, value);
}
