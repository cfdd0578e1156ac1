/** A remark line in parts; put together they give the line again. */
export interface RemarkParts {
  /** Spaces, # and spaces. */
  readonly before: string;
  /** What stands before the colon; "" for a remark without one. */
  readonly label: string;
  /** The colon with the spaces round it. */
  readonly between: string;
  readonly value: string;
  /** Spaces at the end. */
  readonly after: string;
}

/**
 * Takes `# key: value` apart as the table reader does: the colon of a clock time or an address begins no value.
 *
 * @example remarkParts("# temperature: 54 ± 2 degF").value // "54 ± 2 degF"
 */
export function remarkParts(line: string): RemarkParts {
  const [, before, text, after] = /^(\s*#\s*)(.*?)(\s*)$/s.exec(line)!;
  const match =
    /^([^:]*[^:\s])(\s*:\s+)(.*)$/s.exec(text!) ??
    /^([^:]*[^:\s])(\s*:)()$/.exec(text!) ??
    /^([\p{L}\s]*\p{L})(\s*:(?!\/\/))(.*)$/su.exec(text!);
  return match === null
    ? { before: before!, label: "", between: "", value: text!, after: after! }
    : { before: before!, label: match[1]!, between: match[2]!, value: match[3]!, after: after! };
}

/**
 * The line with another label or value, the rest as written.
 *
 * @example withRemarkParts("# part: shaft", { value: "spindle" }) // "# part: spindle"
 */
export function withRemarkParts(
  line: string,
  change: { readonly label?: string; readonly value?: string },
): string {
  const parts = remarkParts(line);
  const label = (change.label ?? parts.label).replace(/[:\r\n]/g, " ").trim();
  const value = (change.value ?? parts.value).replace(/[\r\n]+/g, " ").trim();
  const before = /\s$/.test(parts.before) ? parts.before : `${parts.before} `;
  // A colon needs a space behind it where a value follows.
  const between = parts.between === "" ? ":" : parts.between;
  const colon = /\s$/.test(between) || value === "" ? between : `${between} `;
  return label === "" ? before + value + parts.after : before + label + colon + value + parts.after;
}

/** What stands behind the # of a remark line. */
export function remarkText(line: string): string {
  const { label, between, value } = remarkParts(line);
  return label + between + value;
}

/** The line with another text behind its #. */
export function withRemarkText(line: string, text: string): string {
  const { before, after } = remarkParts(line);
  return (/\s$/.test(before) ? before : `${before} `) + text.replace(/[\r\n]+/g, " ").trim() + after;
}
