/**
 * JSON in one form only: keys sorted, two spaces, no undefined, a newline at the end. The same data give
 * the same bytes, and a git diff of two records shows what changed and nothing else. Arrays and objects
 * that fit on a line of 100 characters stay on one line.
 *
 * @throws TypeError  a value has no place in JSON (NaN, a function, a bigint), named by its path
 * @example canonicalJson({ b: 1, a: [1, 2] }) // "{\n  \"a\": [1, 2],\n  \"b\": 1\n}\n"
 */
export function canonicalJson(value: unknown): string {
  return `${write(value, "", 0)}\n`;
}

const lineLength = 100;

function write(value: unknown, path: string, depth: number): string {
  if (value === null || typeof value === "boolean" || typeof value === "string") return JSON.stringify(value);
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new TypeError(`canonicalJson: ${path || "value"} is ${value}`);
    return JSON.stringify(value);
  }
  if (typeof value !== "object")
    throw new TypeError(`canonicalJson: ${path || "value"} is a ${typeof value}, which JSON cannot hold`);
  const isArray = Array.isArray(value);
  const parts = isArray
    ? value.map((item, i) => write(item, `${path}[${i}]`, depth + 1))
    : Object.entries(value)
        .filter(([, item]) => item !== undefined)
        .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
        .map(([key, item]) => `${JSON.stringify(key)}: ${write(item, `${path}.${key}`, depth + 1)}`);
  const [open, close] = isArray ? ["[", "]"] : ["{", "}"];
  if (parts.length === 0) return open + close;
  const space = isArray ? "" : " ";
  const oneLine = `${open}${space}${parts.join(", ")}${space}${close}`;
  // The outermost object and arrays always stand open, one entry a line.
  if (depth > 0 && oneLine.length + 2 * depth <= lineLength && !oneLine.includes("\n")) return oneLine;
  const indent = "  ".repeat(depth + 1);
  return `${open}\n${parts.map((part) => indent + part).join(",\n")}\n${"  ".repeat(depth)}${close}`;
}
