import { KernelClient } from "../client/kernel-client.js";

/** A kernel on its way. */
export interface StartedKernel {
  readonly kernel: Promise<KernelClient>;
  /** Resolves when its process runs: from then on both have work to do. */
  readonly spawned: Promise<void>;
}

/** Starts a kernel for a run, which asks for no tooltips. To be handed to the run, which closes it. */
export function startRunKernel(directory: string): StartedKernel {
  let onSpawned = (): void => {};
  const spawned = new Promise<void>((resolve) => {
    onSpawned = resolve;
  });
  const kernel = KernelClient.start({ directory, tooltips: false, onSpawned });
  kernel.catch(onSpawned); // why it could not be started, the run says
  return { kernel, spawned };
}
