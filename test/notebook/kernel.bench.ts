import { mkdtempSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bench, describe } from "vitest";
import { KernelClient } from "../../kernel-helpers/notebook/client/kernel-client.js";

// From the start of the process to the first result, and down again, over the same client.
// Peer: tslab 1.0.22 as it comes, in the same run.
const directory = mkdtempSync(join(tmpdir(), "journalbox-bench-"));
process.once("exit", () => rmSync(directory, { recursive: true, force: true }));
const tslab = createRequire(__filename).resolve("tslab/bin/tslab");
const options = { iterations: 8, warmupIterations: 1, time: 0, warmupTime: 0 };

async function firstResult(program?: readonly string[]): Promise<void> {
  const kernel = await KernelClient.start({ directory, ...(program && { program }) });
  await kernel.execute("1 + 1");
  await kernel.close();
}

describe("kernel start to first result", () => {
  bench("journalbox", () => firstResult(), options);
  bench("tslab", () => firstResult([tslab, "kernel"]), options);
});

// One kernel for all of these; it ends with this process, which it watches.
let started: Promise<KernelClient> | undefined;
const warm = (): Promise<KernelClient> => {
  started ??= KernelClient.start({ directory });
  return started;
};

describe("warm kernel", () => {
  const short = { iterations: 20, warmupIterations: 2, time: 0, warmupTime: 0 };
  bench("one small cell", async () => void (await (await warm()).execute("1 + 1")), short);
  bench("clean state for the next sheet", async () => (await warm()).reset({ directory }), short);
});
