import { join } from "node:path";
import { packageRoot } from "../../record/package-root.js";

let names: ReadonlySet<string> | undefined;

/** What a worksheet may import from the package, as built; nothing where it is not built. */
export function helperNames(): ReadonlySet<string> {
  names ??= new Set(namesBuilt());
  return names;
}

function namesBuilt(): readonly string[] {
  try {
    return Object.keys(require(join(packageRoot(), "dist", "index.js")) as object);
  } catch {
    return []; // what is said of a fault is then a little poorer
  }
}
