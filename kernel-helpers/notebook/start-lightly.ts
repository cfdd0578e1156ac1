import * as nodeModule from "node:module";
import { setFlagsFromString } from "node:v8";

/** A function is optimized once so much of its code has been run: nine times what V8 takes by itself [bytes]. */
const budget = 600_000;

/** V8 has known this flag as far back as Node 20; on one not tried yet it is left alone. */
const newestTried = 14;

/**
 * Spares this process work that pays only in a long life. Most of what a compiler, a plotting library or a command
 * runs, it runs a few times: V8 would optimize it on other threads for a third of all the time spent. What computes
 * for more than some milliseconds is optimized as before. Node from 22.1 on also keeps compiled modules for the next
 * start.
 */
export function startLightly(): void {
  if (Number.parseInt(process.versions.v8, 10) <= newestTried)
    setFlagsFromString(`--interrupt-budget=${budget}`);
  const { enableCompileCache } = nodeModule as { enableCompileCache?: () => unknown };
  enableCompileCache?.();
}
