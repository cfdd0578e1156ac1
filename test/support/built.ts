import { type SpawnSyncReturns, spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { join } from "node:path";
import { newestIn } from "./newest-in.js";
import { oneMakes } from "./one-makes.js";

const root = join(__dirname, "..", "..");
/** What a build writes last. */
const built = join(root, "dist", "journalbox.d.ts");

/** A build may take this long on a busy machine [ms]. */
export const buildTimeout = 120_000;

/** Makes sure that dist/ is there and not older than the sources: a kernel runs from there. One test file builds, the others wait. */
export async function ensureBuilt(): Promise<void> {
  const newest = newestIn(join(root, "kernel-helpers"));
  await oneMakes(
    join(root, "dist", ".building"),
    () => existsSync(built) && statSync(built).mtimeMs >= newest,
    () => {
      const compiler = join(root, "node_modules", "typescript", "bin", "tsc");
      const run = node([compiler, "-p", join(root, "tsconfig.build.json")]);
      if (run.status !== 0 && !existsSync(built)) throw new Error(`the build failed:\n${run.stdout}`);
      const finish = node([join(root, "kernel-helpers", "build", "finish-build.mjs")]);
      if (finish.status !== 0) throw new Error(`the build failed:\n${finish.stderr}`);
    },
  );
}

function node(args: readonly string[]): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, args, { encoding: "utf8" });
}
