import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, onTestFinished } from "vitest";

/**
 * A folder of its own, far from the package, with the files given (path inside the folder, then content).
 * Made inside a test it is removed after that test, else after the whole test file.
 */
export function temporaryFolder(files: Readonly<Record<string, string | Uint8Array>> = {}): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "journalbox-test-")));
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  const remove = (): void => rmSync(folder, { recursive: true, force: true });
  try {
    onTestFinished(remove);
  } catch {
    afterAll(remove); // not inside a test
  }
  return folder;
}
