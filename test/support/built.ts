import { type SpawnSyncReturns, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";

const root = join(__dirname, "..", "..");
/** What a build writes last. */
const built = join(root, "dist", "journalbox.d.ts");
const lock = join(root, "dist", ".building");

/** A build may take this long on a busy machine [ms]. */
export const buildTimeout = 120_000;

/** Makes sure that dist/ is there and not older than the sources: a kernel runs from there. One test file builds, the others wait. */
export async function ensureBuilt(): Promise<void> {
  const newest = newestIn(join(root, "kernel-helpers"));
  while (!existsSync(built) || statSync(built).mtimeMs < newest) {
    mkdirSync(join(root, "dist"), { recursive: true });
    try {
      mkdirSync(lock);
    } catch {
      await pause(200);
      dropIfOld(lock);
      continue;
    }
    try {
      const compiler = join(root, "node_modules", "typescript", "bin", "tsc");
      const run = node([compiler, "-p", join(root, "tsconfig.build.json")]);
      if (run.status !== 0 && !existsSync(built)) throw new Error(`the build failed:\n${run.stdout}`);
      const finish = node([join(root, "kernel-helpers", "build", "finish-build.mjs")]);
      if (finish.status !== 0) throw new Error(`the build failed:\n${finish.stderr}`);
    } finally {
      rmSync(lock, { recursive: true, force: true });
    }
  }
}

function node(args: readonly string[]): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, args, { encoding: "utf8" });
}

/** A lock as old as this was left by a run that was killed. */
function dropIfOld(path: string): void {
  const age = Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
  if (age > buildTimeout) rmSync(path, { recursive: true, force: true });
}

function newestIn(folder: string): number {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return Math.max(...files.map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs));
}
