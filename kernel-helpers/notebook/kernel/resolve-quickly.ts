import { isBuiltin } from "node:module";
import type * as TypeScript from "@tslab/typescript-for-tslab";

/** Node's own modules lie in no file: they are declared by name, and such a declaration goes before any file. */
const builtIn: TypeScript.ResolvedModuleWithFailedLookupLocations = { resolvedModule: undefined };

type Host = TypeScript.WatchCompilerHostOfFilesAndCompilerOptions<TypeScript.BuilderProgram>;

/**
 * Finds the modules that cells import, without TypeScript's own bookkeeping: it notes and watches each place in which
 * it looked for a module in vain, which takes a quarter of the start of a kernel. Installed packages do not change
 * under a running kernel, so what their files import is looked for once. What cells and files beside the notebook
 * import is looked for each time it is asked, and again for the next cell where it was not found.
 */
export function resolveQuickly(ts: typeof TypeScript, host: Host): void {
  const cache = ts.createModuleResolutionCache(host.getCurrentDirectory(), (name) => name);
  /** Files that import something which was not there. */
  const lacking = new Set<string>();

  host.resolveModuleNameLiterals = (literals, from, redirected, options, file) => {
    const known = isDeclaration.test(from) ? cache : undefined;
    const found = literals.map((literal) => {
      if (isBuiltin(literal.text)) return builtIn;
      const mode = ts.getModeForUsageLocation(file, literal);
      return ts.resolveModuleName(literal.text, from, options, host, known, redirected, mode);
    });
    const isCell = known === undefined;
    if (isCell && found.some((one) => one !== builtIn && one.resolvedModule === undefined)) lacking.add(from);
    else lacking.delete(from);
    return found;
  };
  host.resolveTypeReferenceDirectiveReferences = (references, from, redirected, options, file) =>
    references.map((reference) => {
      const name = typeof reference === "string" ? reference : reference.fileName;
      const mode = ts.getModeForFileReference(reference, file?.impliedNodeFormat);
      return ts.resolveTypeReferenceDirective(name, from, options, host, redirected, undefined, mode);
    });
  host.hasInvalidatedResolutions = (path) => lacking.has(path);
}

/** Declarations of a package; the names of earlier cells are declared in a file that changes with each cell. */
const isDeclaration = /(?<!__prev__)\.d\.[cm]?ts$/;
