import { join, sep } from "node:path";
import { packageRoot } from "../../record/package-root.js";

/**
 * Remembers the state of the process, to be restored before each sheet: globals, environment, and modules
 * loaded from the sheet's folder. Changes to built-in prototypes are not undone.
 */
export function rememberState(): { readonly restore: (folder: string) => void } {
  const globals = Object.getOwnPropertyDescriptors(globalThis) as PropertyDescriptorMap;
  const environment = { ...process.env };
  return {
    restore: (folder) => {
      restoreGlobals(globals);
      for (const name of Object.keys(process.env)) if (!(name in environment)) delete process.env[name];
      Object.assign(process.env, environment);
      forgetModules(folder);
    },
  };
}

function restoreGlobals(remembered: PropertyDescriptorMap): void {
  for (const key of Reflect.ownKeys(globalThis)) {
    if (!Object.hasOwn(remembered, key)) Reflect.deleteProperty(globalThis, key);
  }
  for (const key of Reflect.ownKeys(remembered)) {
    const before = remembered[key as string]!;
    const now = Object.getOwnPropertyDescriptor(globalThis, key);
    const same = now !== undefined && now.value === before.value && now.get === before.get;
    if (!same && (now?.configurable ?? true)) Object.defineProperty(globalThis, key, before);
  }
}

/** Drops modules that lie in the folder; installed packages and this package itself stay. */
function forgetModules(folder: string): void {
  const own = join(packageRoot(), "dist") + sep;
  for (const file of Object.keys(require.cache)) {
    const installed = file.includes(`${sep}node_modules${sep}`) || file.startsWith(own);
    if (file.startsWith(folder + sep) && !installed) delete require.cache[file];
  }
}
