import type { CompletionInfo } from "tslab/dist/converter.js";
import { charactersFromUnits } from "./offsets.js";

/** How front ends call the kinds of names; a kind left out goes by TypeScript's own name for it. */
const typeNames: Readonly<Record<string, string>> = {
  "local var": "variable",
  let: "variable",
  const: "constant",
  var: "variable",
  parameter: "variable",
  "local function": "function",
  alias: "import",
  getter: "property",
  setter: "property",
  "enum member": "enumMember",
  "primitive type": "type",
};

/**
 * The content of a complete_reply. Front ends that know the extension show beside each name what it is: a
 * function, a property, a constant.
 *
 * @source the metadata `_jupyter_types_experimental`, as JupyterLab and IPython use it: no part of the protocol
 */
export function completion(code: string, found: CompletionInfo): Record<string, unknown> {
  const kinds = new Map(found.original?.entries.map(({ name, kind }) => [name, kind as string]));
  const start = charactersFromUnits(code, found.start);
  const end = charactersFromUnits(code, found.end);
  const typed = found.candidates.map((text) => {
    const kind = kinds.get(text) ?? "";
    return { text, type: typeNames[kind] ?? kind, start, end };
  });
  return {
    status: "ok",
    matches: found.candidates,
    cursor_start: start,
    cursor_end: end,
    metadata: { _jupyter_types_experimental: typed },
  };
}
