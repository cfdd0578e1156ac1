import { mkdtempSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bench, describe } from "vitest";
import { KernelClient } from "../../kernel-helpers/notebook/client/kernel-client.js";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";

// Over one client, in one run. Peer: tslab 1.0.22 as it comes.
const directory = mkdtempSync(join(tmpdir(), "journalbox-bench-"));
process.once("exit", () => rmSync(directory, { recursive: true, force: true }));
const tslab = [createRequire(__filename).resolve("tslab/bin/tslab"), "kernel"];
const usual = { ...process.env, JOURNALBOX_QUICK_START: "off" };
const quick = { ...process.env, XDG_CACHE_HOME: directory, LOCALAPPDATA: directory };
let prepared: Promise<unknown> | undefined;

/** As built: a snapshot is written by built programs. */
async function prepare(): Promise<void> {
  const file = join(packageRoot(), "dist/notebook/kernel/quick-start/prepare-quick-start.js");
  const built: typeof import("../../kernel-helpers/notebook/kernel/quick-start/prepare-quick-start.js") =
    await import(file);
  prepared ??= built.prepareQuickStart(quick);
  await prepared;
}

interface Start {
  readonly environment?: NodeJS.ProcessEnv;
  readonly program?: readonly string[];
}

async function firstResult(start: Start): Promise<void> {
  const kernel = await KernelClient.start({ directory, ...start });
  await kernel.execute("1 + 1");
  await kernel.close();
}

describe("kernel start to first result, and down again", () => {
  const options = { iterations: 8, warmupIterations: 1, time: 0, warmupTime: 0 };
  bench("journalbox from a prepared start", () => firstResult({ environment: quick }), {
    ...options,
    setup: prepare,
  });
  bench("journalbox", () => firstResult({ environment: usual }), options);
  bench("tslab", () => firstResult({ program: tslab }), options);
});

// One kernel of each for all that follows; they end with this process, which they watch.
const kernels = new Map<Start, Promise<KernelClient>>();
const ours: Start = { environment: usual };
const theirs: Start = { program: tslab };
const warm = (start: Start): Promise<KernelClient> => {
  const kernel = kernels.get(start) ?? KernelClient.start({ directory, ...start });
  kernels.set(start, kernel);
  return kernel;
};

describe("round trip of a trivial cell", () => {
  const options = { iterations: 60, warmupIterations: 10, time: 0, warmupTime: 0 };
  bench("journalbox", async () => void (await (await warm(ours)).execute("1 + 1")), options);
  bench("tslab", async () => void (await (await warm(theirs)).execute("1 + 1")), options);
});

describe("clean state for the next sheet", () => {
  const options = { iterations: 20, warmupIterations: 2, time: 0, warmupTime: 0 };
  bench("journalbox", async () => (await warm(ours)).reset({ directory }), options);
});

// The first import reads the helpers and their types: what it adds is the difference to the line below it.
describe("first import of the helpers in a fresh kernel", () => {
  const options = { iterations: 6, warmupIterations: 1, time: 0, warmupTime: 0 };
  let kernel: KernelClient | undefined;
  const fresh =
    (environment: NodeJS.ProcessEnv) =>
    async (): Promise<void> => {
      await kernel?.close();
      await prepare();
      kernel = await KernelClient.start({ directory, environment });
      await kernel.execute("1 + 1");
    };
  const first = (code: string, environment: NodeJS.ProcessEnv): void =>
    bench(
      `${code} ${environment === quick ? "(prepared start)" : ""}`,
      async () => {
        const start = performance.now();
        await kernel?.execute(code);
        firstTimes.push(`${code}: ${(performance.now() - start).toFixed(0)} ms`);
      },
      { ...options, setup: fresh(environment) },
    );
  const firstTimes: string[] = [];
  first('import { inch } from "journalbox";', usual);
  first('import { inch } from "journalbox";', quick);
  first('import { join } from "node:path";', usual);
});
