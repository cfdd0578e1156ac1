import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { packageRoot } from "../../../kernel-helpers/record/index.js";

const root = packageRoot();
const lock = join(root, "dist", ".building-page");
/** What is bundled, besides packages. */
const sources = ["live/page", "live/grid", "live/build-page.mjs", "view", "notebook/report"];

/** Makes sure that the page is built and not older than its sources. One test file builds, the others wait. */
export async function ensurePageBuilt(): Promise<void> {
  const newest = Math.max(...sources.map((path) => newestIn(join(root, "kernel-helpers", path))));
  while (builtAt() < newest) {
    mkdirSync(join(root, "dist"), { recursive: true });
    try {
      mkdirSync(lock);
    } catch {
      await pause(200);
      dropIfOld();
      continue;
    }
    try {
      const build = join(root, "kernel-helpers", "live", "build-page.mjs");
      const { status, stderr } = spawnSync(process.execPath, [build], { encoding: "utf8" });
      if (status !== 0) throw new Error(`the page was not built:\n${stderr}`);
    } finally {
      rmSync(lock, { recursive: true, force: true });
    }
  }
}

function builtAt(): number {
  const needs = join(root, "dist", "live", "page", "page.json");
  return statSync(needs, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}

function newestIn(path: string): number {
  if (!statSync(path).isDirectory()) return statSync(path).mtimeMs;
  const files = readdirSync(path, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Math.max(0, ...files.map(({ parentPath, name }) => statSync(join(parentPath, name)).mtimeMs));
}

/** A lock as old as this was left by a run that was killed. */
function dropIfOld(): void {
  const made = statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now();
  if (Date.now() - made > 60_000) rmSync(lock, { recursive: true, force: true });
}
