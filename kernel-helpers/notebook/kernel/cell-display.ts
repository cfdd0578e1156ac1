import { isJsonType } from "../file/notebook-format.js";
import type { DisplayWriter } from "./load-tslab.js";

type Bundle = Record<string, unknown>;

/** JSON that tslab's own `display` was given as text becomes JSON again, as the protocol wants it. */
export function withJsonParsed(display: Parameters<DisplayWriter>[0]): Bundle {
  const data = Object.fromEntries(
    Object.entries(display.data).map(([type, value]) => [type, isJsonType(type) ? parsed(value) : value]),
  );
  return { ...display, data, transient: display.transient ?? {} };
}

function parsed(value: unknown): unknown {
  if (typeof value !== "string") return value;
  try {
    return JSON.parse(value);
  } catch {
    return value; // a text that only claims to be JSON is shown as it is
  }
}
