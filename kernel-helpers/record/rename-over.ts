import { renameSync } from "node:fs";

const tries = 20;
const between = 25;

/**
 * Renames a file over another one. Windows refuses that while somebody else has the other open, a virus scanner or an
 * indexer for some milliseconds: there it is tried again for half a second.
 *
 * @param rename  how it is done, and on which platform; for tests
 * @throws what the last try threw
 * @source that these refusals pass by themselves: common practice, no source
 */
export function renameOver(
  from: string,
  to: string,
  options: { readonly rename?: typeof renameSync; readonly platform?: string } = {},
): void {
  const { rename = renameSync, platform = process.platform } = options;
  for (let left = tries; ; left -= 1)
    try {
      rename(from, to);
      return;
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code ?? "";
      const passing = platform === "win32" && ["EPERM", "EACCES", "EBUSY"].includes(code);
      if (!passing || left === 1) throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, between);
    }
}
