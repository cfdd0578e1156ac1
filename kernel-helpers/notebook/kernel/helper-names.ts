import { readFileSync } from "node:fs";
import { join } from "node:path";
import { packageRoot } from "../../record/package-root.js";

let names: ReadonlySet<string> | undefined;

/** What a worksheet may import from the package, as built; nothing where it is not built. */
export function helperNames(): ReadonlySet<string> {
  names ??= new Set(namesBuilt());
  return names;
}

let between: ReadonlySet<string> | undefined;

/** Types that only other types name; a cell's compiled types may have to, no worksheet does. See `gather-types.mjs`. */
export function namesBetweenTypes(): ReadonlySet<string> {
  between ??= new Set(lastTypesExported());
  return between;
}

function lastTypesExported(): readonly string[] {
  try {
    const types = readFileSync(join(packageRoot(), "dist", "journalbox.d.ts"), "utf8");
    const list = types.slice(types.lastIndexOf("\nexport type {"));
    return list.match(/\w+(?=\s*[,}])/g) ?? [];
  } catch {
    return [];
  }
}

function namesBuilt(): readonly string[] {
  try {
    return Object.keys(require(join(packageRoot(), "dist", "index.js")) as object);
  } catch {
    return []; // what is said of a fault is then a little poorer
  }
}
