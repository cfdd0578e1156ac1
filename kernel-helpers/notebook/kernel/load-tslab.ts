import { type CellTypeScript, prepareTypeScript } from "./cell-typescript.js";
import { type QuickTypes, readTypesQuickly, type Unread } from "./quick-types.js";
import { resolveImports } from "./resolve-imports.js";

/** The parts of tslab the kernel stands on, and the TypeScript under them. */
export interface Tslab extends CellTypeScript, QuickTypes {
  readonly createConverter: typeof import("tslab/dist/converter.js").createConverter;
  readonly createExecutor: typeof import("tslab/dist/executor.js").createExecutor;
  readonly getCodeMetadata: typeof import("tslab/dist/metadata.js").getCodeMetadata;
  /** tslab's own `display` writes through what is set here. */
  readonly setDisplayWriter: (write: DisplayWriter) => void;
}

/** Shows a MIME bundle; `update` replaces the one shown before under the same display id. */
export type DisplayWriter = (
  display: { data: Record<string, unknown>; metadata: Record<string, unknown>; transient?: unknown },
  update: boolean,
) => void;

/** Loads tslab after its TypeScript has been prepared; the order matters, hence `require` and not `import`. */
export function loadTslab(unread: Unread = "of Node's types"): Tslab {
  const prepared = prepareTypeScript();
  resolveImports(prepared.ts);
  const quickTypes = readTypesQuickly(prepared.ts.sys, unread);
  const converter: typeof import("tslab/dist/converter.js") = require("tslab/dist/converter.js");
  const executor: typeof import("tslab/dist/executor.js") = require("tslab/dist/executor.js");
  const metadata: typeof import("tslab/dist/metadata.js") = require("tslab/dist/metadata.js");
  return {
    ...prepared,
    ...quickTypes,
    createConverter: converter.createConverter,
    createExecutor: executor.createExecutor,
    getCodeMetadata: metadata.getCodeMetadata,
    setDisplayWriter: (write) => {
      require("tslab/dist/jupyter.js").lastWriteDisplayData = write;
    },
  };
}
