import { KernelClient } from "../../kernel-helpers/notebook/client/kernel-client.js";
import type { RunningKernel } from "../../kernel-helpers/notebook/client/running-kernel.js";
import { ensureBuilt } from "./built.js";

/** A kernel for several runs, one after the other: each begins in a clean state, as each sheet of a run does. */
export interface KeptKernel {
  /** For `runRebuild`, which then does not end the kernel. */
  readonly startKernel: () => Promise<RunningKernel>;
  readonly close: () => Promise<void>;
}

/** A kernel that is started when the first run asks for it and ended by `close`, not with the run. */
export function keptKernel(directory: string): KeptKernel {
  let started: Promise<KernelClient> | undefined;
  return {
    async startKernel() {
      await ensureBuilt();
      started ??= KernelClient.start({ directory, tooltips: false });
      const kernel = await started;
      return {
        execute: (code, options) => kernel.execute(code, options),
        reset: (sheet) => kernel.reset(sheet),
        close: async () => {},
      };
    },
    async close() {
      await (await started)?.close();
    },
  };
}
