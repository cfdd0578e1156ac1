import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bench, describe } from "vitest";
import { auditRebuild } from "../../../kernel-helpers/notebook/audit/audit-rebuild.js";
import { runRebuild } from "../../../kernel-helpers/notebook/run-rebuild.js";
import { templateFolder, verifyRebuild } from "../../../kernel-helpers/record/index.js";

// The audit of the whole demo runs every sheet again; it should take at most 1.3 times a run of the demo. Comparing the
// hashes of a thousand rebuilds should take less than ten seconds: ten milliseconds each, records and outputs included.
const folder = mkdtempSync(join(tmpdir(), "journalbox-bench-"));
process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
for (const part of ["rebuild.json", "tables"])
  cpSync(join(templateFolder(), "demo", part), join(folder, part), { recursive: true });

describe("the whole demo", async () => {
  await runRebuild({ directory: folder });
  const options = { iterations: 3, warmupIterations: 0, time: 0, warmupTime: 0 };
  bench("a run", async () => void (await runRebuild({ directory: folder })), options);
  bench("an audit", async () => void (await auditRebuild({ directory: folder })), options);
});

// sha256sum, a program in C, reads the same files and compares the same hashes; verifyRebuild also looks at what the
// records say of each other and of the kept copies.
describe("the hashes of the demo as run", () => {
  const options = { iterations: 50, time: 500 };
  bench(
    "verifyRebuild(directory)",
    () => {
      if (verifyRebuild(folder).findings.length > 0) throw new Error("something was found");
    },
    options,
  );
  bench(
    "sha256sum -c",
    () => void execFileSync("sha256sum", ["--quiet", "-c", "record/manifest-sha256.txt"], { cwd: folder }),
    options,
  );
});
