/**
 * JSON in one form only: keys sorted, two spaces, no undefined, a newline at the end. The same data give
 * the same bytes, and a git diff of two records shows what changed and nothing else. Arrays and objects
 * that fit on a line of 100 characters stay on one line.
 *
 * @throws TypeError  a value has no place in JSON (NaN, a function, a bigint), named by its path
 * @example canonicalJson({ b: 1, a: [1, 2] }) // "{\n  \"a\": [1, 2],\n  \"b\": 1\n}\n"
 */
export function canonicalJson(value: unknown): string {
  try {
    return `${write(value, 0)}\n`;
  } catch (error) {
    if (error !== faulty) throw error;
    throw new TypeError(`canonicalJson: ${faultIn(value, "") ?? "value has no place in JSON"}`);
  }
}

const lineLength = 100;

/** Thrown where something has no place in JSON; where that is, is looked for afterwards. */
const faulty: unique symbol = Symbol("faulty");

function write(value: unknown, depth: number): string {
  if (isFault(value)) throw faulty;
  if (typeof value === "number") return String(value);
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const isArray = Array.isArray(value);
  const parts = isArray
    ? value.map((item) => write(item, depth + 1))
    : entriesOf(value).map(([key, item]) => `${JSON.stringify(key)}: ${write(item, depth + 1)}`);
  const [open, close] = isArray ? ["[", "]"] : ["{", "}"];
  if (parts.length === 0) return open + close;
  const space = isArray ? "" : " ";
  // The outermost object and arrays always stand open, one entry a line.
  const length = parts.reduce((sum, part) => sum + part.length + 2, 2 * depth + 2 * space.length);
  if (depth > 0 && length <= lineLength && !parts.some((part) => part.includes("\n")))
    return `${open}${space}${parts.join(", ")}${space}${close}`;
  const indent = "  ".repeat(depth + 1);
  return `${open}\n${indent}${parts.join(`,\n${indent}`)}\n${"  ".repeat(depth)}${close}`;
}

/** What was read from a record is in order already, and is not sorted again. */
function entriesOf(value: object): [string, unknown][] {
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  const isSorted = entries.every(([key], i) => i === 0 || entries[i - 1]![0] < key);
  return isSorted ? entries : entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
}

function isFault(value: unknown): boolean {
  switch (typeof value) {
    case "number":
      return !Number.isFinite(value);
    case "string":
    case "boolean":
    case "object":
      return false;
    default:
      return true;
  }
}

/** The first thing that has no place in JSON, with the path that leads to it. */
function faultIn(value: unknown, path: string): string | undefined {
  if (isFault(value)) {
    const what = typeof value === "number" ? `${value}` : `a ${typeof value}, which JSON cannot hold`;
    return `${path || "value"} is ${what}`;
  }
  if (typeof value !== "object" || value === null) return undefined;
  if (Array.isArray(value))
    return value.map((item, i) => faultIn(item, `${path}[${i}]`)).find((fault) => fault !== undefined);
  return entriesOf(value)
    .map(([key, item]) => faultIn(item, `${path}.${key}`))
    .find((fault) => fault !== undefined);
}
