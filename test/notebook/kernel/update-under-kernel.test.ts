import { appendFileSync, cpSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { KernelClient } from "../../../kernel-helpers/notebook/client/kernel-client.js";
import { packageRoot } from "../../../kernel-helpers/record/package-root.js";
import { buildTimeout, ensureBuilt } from "../../support/built.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

// An installation of its own, to be updated while a kernel runs from it.
const installation = temporaryFolder();
const packageFile = join(installation, "package.json");
const version = (): string => JSON.parse(readFileSync(packageFile, "utf8")).version;
beforeAll(async () => {
  await ensureBuilt();
  for (const part of ["package.json", "dist"])
    cpSync(join(packageRoot(), part), join(installation, part), { recursive: true });
  symlinkSync(join(packageRoot(), "node_modules"), join(installation, "node_modules"));
}, buildTimeout);

/** What a cell shows that is no result of its own. */
async function notesUnder(kernel: KernelClient, code: string): Promise<string[]> {
  const { outputs } = await kernel.execute(code);
  return outputs
    .filter(({ type }) => type === "display_data")
    .map(({ content }) => (content.data as Record<string, string>)["text/plain"]!);
}

describe("a kernel whose installation is updated", () => {
  it("says so under a cell, once, names both versions, and computes as before", async () => {
    const program = [join(installation, "dist", "notebook", "kernel", "main.js")];
    const kernel = await KernelClient.start({ directory: temporaryFolder(), program });
    try {
      expect(await notesUnder(kernel, 'import { inch } from "journalbox";\ninch(2).in("mm")')).toEqual([]);
      const before = version();
      appendFileSync(join(installation, "dist", "quantity", "make.js"), "\nthrow new Error('newer');\n");
      writeFileSync(packageFile, readFileSync(packageFile, "utf8").replace(before, "99.0.0"));
      const told: string[] = [];
      await expect
        .poll(async () => told.push(...(await notesUnder(kernel, "1"))), { interval: 500, timeout: 30_000 })
        .toBe(1);
      expect(told[0]).toContain(`updated from ${before} to 99.0.0`);
      expect(told[0]).toMatch(/restart\s+the\s+kernel/);
      await new Promise((r) => setTimeout(r, 2500)); // after which it looks again
      for (const code of ["1", "inch(3)", "2"]) expect(await notesUnder(kernel, code)).toEqual([]);
      const { outputs } = await kernel.execute('inch(2).in("mm")');
      expect(outputs.at(-1)?.content.data).toEqual({ "text/plain": "50.8" });
    } finally {
      await kernel.close();
    }
  });
});
