import { type Bundle, refuseLinks, verifyBag } from "../../record/bundle/index.js";
import { type RebuildRun, type RunRebuildOptions, runRebuild } from "../run-rebuild.js";
import { SandboxKernel, type SandboxLimits, usualLimits } from "./sandbox-kernel.js";
import { type SandboxOffer, sandboxOffer } from "./sandbox-offer.js";
import { unpackBundle } from "./unpack-bundle.js";

export interface SandboxRunOptions
  extends Pick<RunRebuildOptions, "onStart" | "onProgress" | "onWait" | "cellTimeout"> {
  /** A bundle, read by `readBundle`; not given where its rebuild lies unpacked in the folder. */
  readonly bundle?: Bundle;
  /** Where the rebuild is run. A bundle is unpacked there: then it must be empty or not be there. */
  readonly folder: string;
  /** Set by whoever was told that the network stays open here, and wants the code run all the same. */
  readonly openNetwork?: boolean;
  /** What the machine offers; looked up where not given. */
  readonly offer?: SandboxOffer;
  readonly limits?: SandboxLimits;
}

/**
 * Runs all worksheets of somebody else's rebuild in the strictest sandbox this machine offers. The code reads its
 * folder, writes results there, and can do nothing else; what comes of it is in the folder, as after any run.
 *
 * @throws RangeError  the bundle is not whole, the folder is not empty or holds links, or no sandbox can be given: Node
 *   has no permission model, or the network stays open and nobody has said that it may
 */
export async function runInSandbox(options: SandboxRunOptions): Promise<RebuildRun> {
  const { bundle, folder, limits = usualLimits } = options;
  const offer = options.offer ?? sandboxOffer();
  requireSandbox(offer, options.openNetwork === true);
  if (bundle !== undefined) {
    requireWhole(bundle);
    unpackBundle(bundle, folder);
  }
  refuseLinks(folder);
  const { onStart, onProgress, onWait, cellTimeout } = options;
  return runRebuild({
    directory: folder,
    startKernel: () => SandboxKernel.start(folder, offer, limits),
    ...(onStart && { onStart }),
    ...(onProgress && { onProgress }),
    ...(onWait && { onWait }),
    ...(cellTimeout !== undefined && { cellTimeout }),
  });
}

/**
 * Refuses to go on where no sandbox can be given.
 *
 * @throws RangeError  Node has no permission model, or the network stays open and nobody has said that it may
 */
export function requireSandbox(offer: SandboxOffer, openNetwork: boolean): void {
  if (offer.permission === undefined)
    throw new RangeError(
      "requireSandbox: Node must have a permission model (version 20 or newer), got one without",
    );
  if (offer.network === "open" && !openNetwork)
    throw new RangeError(
      "requireSandbox: the network must be closed to foreign code, and cannot be on this machine (Linux with user namespaces, or Node 25, can); --network-may-stay-open runs it all the same",
    );
}

/**
 * Refuses a bundle that is not as it was made.
 *
 * @throws RangeError  the message names the first file at fault
 */
export function requireWhole({ files }: Bundle): void {
  const { faults } = verifyBag(files);
  const [first] = faults;
  if (first !== undefined)
    throw new RangeError(
      `requireWhole: the bundle must be whole, got one that is not: ${first.file}: ${first.what}`,
    );
}
