// Running the worksheets of somebody else: nothing of them is trusted.
export { requireSandbox, requireWhole, runInSandbox, type SandboxRunOptions } from "./run-in-sandbox.js";
export { SandboxKernel, type SandboxLimits, usualLimits } from "./sandbox-kernel.js";
export { type SandboxOffer, sandboxOffer, sandboxSentences } from "./sandbox-offer.js";
export { unpackBundle } from "./unpack-bundle.js";
