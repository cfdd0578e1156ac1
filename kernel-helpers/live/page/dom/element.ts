type Child = Node | string | undefined;

type Attributes = Readonly<Record<string, string | boolean | undefined>>;

/** An element with attributes and children; text is text, never markup. `false` leaves an attribute out. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes))
    if (value !== undefined && value !== false) made.setAttribute(name, value === true ? "" : value);
  made.append(...children.filter((child) => child !== undefined));
  return made;
}

export interface ButtonOptions {
  readonly label: string;
  /** What it does, in a sentence, with its key. */
  readonly hint?: string;
  readonly kind?: "main" | "quiet";
  readonly act: () => void;
}

export function button({ label, hint, kind, act }: ButtonOptions): HTMLButtonElement {
  const made = element("button", { type: "button", title: hint, class: kind && `is-${kind}` }, label);
  made.addEventListener("click", act);
  return made;
}
