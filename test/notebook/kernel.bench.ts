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
// Vitest's configuration switches the prepared start off: here it is on.
const quick = {
  ...process.env,
  JOURNALBOX_QUICK_START: "on",
  XDG_CACHE_HOME: directory,
  LOCALAPPDATA: directory,
};
let prepared: Promise<unknown> | undefined;

/** As built: a snapshot is written by built programs. */
async function prepare(): Promise<void> {
  const file = join(packageRoot(), "dist/notebook/kernel/quick-start/prepare-quick-start.js");
  const built: typeof import("../../kernel-helpers/notebook/kernel/quick-start/prepare-quick-start.js") =
    await import(file);
  prepared ??= built.prepareQuickStart(quick);
  await prepared;
  const kernel = await KernelClient.start({ directory, environment: quick });
  const { outputs } = await kernel.execute("process.mainModule === undefined").finally(() => kernel.close());
  if (!JSON.stringify(outputs).includes('"true"'))
    throw new Error("this kernel did not start from the prepared start");
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

/** Ended by force, for how a kernel ends is not asked here. */
async function ready(start: Start): Promise<void> {
  const kernel = await KernelClient.start({ directory, ...start });
  process.kill(kernel.pid!, "SIGKILL");
  await kernel.close();
}

describe.each([
  ["kernel ready", ready],
  ["kernel start to first result, and down again", firstResult],
])("%s", (_, use) => {
  const options = { iterations: 8, warmupIterations: 1, time: 0, warmupTime: 0 };
  bench("journalbox from a prepared start", () => use({ environment: quick }), {
    ...options,
    setup: prepare,
  });
  bench("journalbox", () => use({ environment: usual }), options);
  bench("tslab", () => use({ program: tslab }), options);
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

// What the first import adds is the difference between two lines: it reads the helpers and their types. At once: as
// soon as the kernel has answered. At leisure: a second later, as where somebody reads before running the first cell.
const startsOf = {
  "a prepared start": { environment: quick, setup: prepare },
  "the usual start": { environment: usual, setup: async () => {} },
};
describe.each([
  ["at once", 0],
  ["at leisure", 1000],
])("a fresh kernel and two cells, %s", (_, pause) => {
  const options = { iterations: 6, warmupIterations: 1, time: 0, warmupTime: 0 };
  for (const [name, { environment, setup }] of Object.entries(startsOf))
    for (const [what, second] of [
      ["imports the helpers", 'import { inch } from "journalbox";'],
      ["is trivial", "1 + 1"],
    ])
      bench(
        `${name}: the second ${what}`,
        async () => {
          const kernel = await KernelClient.start({ directory, environment });
          await new Promise((r) => setTimeout(r, pause));
          await kernel.execute("1 + 1");
          await kernel.execute(second!);
          process.kill(kernel.pid!, "SIGKILL");
          await kernel.close();
        },
        { ...options, setup },
      );
});
