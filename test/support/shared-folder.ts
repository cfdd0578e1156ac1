import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    /** A folder for what test files make once and share; it goes with the run of the tests. */
    sharedFolder: string;
  }
}

/** Runs before all test files, and what it returns after them. */
export default function makeSharedFolder({ provide }: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), "journalbox-tests-"));
  provide("sharedFolder", folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
