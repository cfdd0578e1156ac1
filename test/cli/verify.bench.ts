import { execFileSync } from "node:child_process";
import { cpSync, linkSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { bench, describe } from "vitest";
import { runRebuild } from "../../kernel-helpers/notebook/run-rebuild.js";
import {
  filesOfRebuild,
  manifestFile,
  packageRoot,
  tagManifestFile,
  templateFolder,
} from "../../kernel-helpers/record/index.js";

// `journalbox verify` of a thousand rebuilds, each the whole demo as run with its records and outputs (12 MB), should take
// less than ten seconds. They are one rebuild under a thousand names (hard links), so that it is not the disk that is
// measured: the files are in the machine's memory. sha256sum, a program in C, reads the same bytes on as many processes.
// Measured: 8.2 s on two idle cores; 15 to 16 s on two that others used too, where sha256sum took 49 to 59.
const many = 1000;
const folder = mkdtempSync(join(tmpdir(), "journalbox-bench-"));
process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
const first = join(folder, "first");
for (const part of ["rebuild.json", "tables"])
  cpSync(join(templateFolder(), "demo", part), join(first, part), { recursive: true });

describe(`the hashes of ${many} rebuilds`, async () => {
  await runRebuild({ directory: first });
  const files = [...filesOfRebuild(first), manifestFile, tagManifestFile];
  const places = Array.from({ length: many }, (_, i) => join(folder, String(i)));
  for (const place of places)
    for (const file of files) {
      mkdirSync(dirname(join(place, file)), { recursive: true });
      linkSync(join(first, file), join(place, file));
    }
  const options = { iterations: 3, warmupIterations: 0, time: 0, warmupTime: 0 };
  const program = join(packageRoot(), "dist", "cli", "main.js");
  bench(
    "journalbox verify",
    () => void execFileSync(process.execPath, [program, "verify", ...places], { stdio: "ignore" }),
    options,
  );
  const check = `printf '%s\\n' ${folder}/[0-9]* | xargs -P ${availableParallelism()} -I{} sh -c 'cd {} && sha256sum --quiet -c ${manifestFile}'`;
  bench("sha256sum -c", () => void execFileSync("sh", ["-c", check], { stdio: "ignore" }), options);
});
