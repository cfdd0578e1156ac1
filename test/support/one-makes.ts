import { mkdirSync, rmSync, statSync } from "node:fs";
import { dirname } from "node:path";
import { setTimeout as pause } from "node:timers/promises";

/** A lock as old as this was left by a run that was killed [ms]. */
const longest = 240_000;

/** What several test files need and one is to make: the first makes it, the others wait until it is there. */
export async function oneMakes(
  lock: string,
  isThere: () => boolean,
  make: () => void | Promise<void>,
): Promise<void> {
  mkdirSync(dirname(lock), { recursive: true });
  while (!isThere()) {
    try {
      mkdirSync(lock);
    } catch {
      await pause(200);
      const age = Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
      if (age > longest) rmSync(lock, { recursive: true, force: true });
      continue;
    }
    try {
      // Another may have made it and let go of the lock since this one looked.
      if (!isThere()) await make();
    } finally {
      rmSync(lock, { recursive: true, force: true });
    }
  }
}
