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

/** Measures against one kernel, which is started before and closed after: plain tslab does not end by itself. */
function benchWarm(name: string, start: Start, use: (kernel: KernelClient) => Promise<unknown>): void {
  let kernel: KernelClient | undefined;
  bench(name, async () => void (await use(kernel!)), {
    iterations: 60,
    warmupIterations: 10,
    time: 0,
    warmupTime: 0,
    setup: async () => {
      kernel = await KernelClient.start({ directory, ...start });
    },
    teardown: async () => kernel?.close(),
  });
}

describe("round trip of a trivial cell", () => {
  let n = 0;
  const cell = (kernel: KernelClient): Promise<unknown> => kernel.execute(`${n++} + 1`);
  benchWarm("journalbox", { environment: usual }, cell);
  benchWarm("tslab", { program: tslab }, cell);
});

describe("clean state for the next sheet", () => {
  benchWarm("journalbox", { environment: usual }, (kernel) => kernel.reset({ directory }));
});

// What the first import adds is the difference between two lines: it reads the helpers and their types.
describe("a fresh kernel and two cells", () => {
  const options = { iterations: 6, warmupIterations: 1, time: 0, warmupTime: 0 };
  const twoCells = (second: string, environment: NodeJS.ProcessEnv) => async (): Promise<void> => {
    const kernel = await KernelClient.start({ directory, environment });
    await kernel.execute("1 + 1");
    await kernel.execute(second);
    await kernel.close();
  };
  const helpers = 'import { inch } from "journalbox";';
  bench("the second imports the helpers", twoCells(helpers, usual), options);
  bench("the second is trivial", twoCells("1 + 1", usual), options);
  const set = { ...options, setup: prepare };
  bench("the second imports the helpers, prepared start", twoCells(helpers, quick), set);
  bench("the second is trivial, prepared start", twoCells("1 + 1", quick), set);
});
