import { mkdtempSync, realpathSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type AuditOptions, auditRebuild } from "../notebook/audit/audit-rebuild.js";
import {
  requireSandbox,
  requireWhole,
  SandboxKernel,
  sandboxOffer,
  sandboxSentences,
  unpackBundle,
} from "../notebook/sandbox/index.js";
import {
  filesToShare,
  leftOutSentences,
  readBundle,
  readLeftOut,
  refuseLinks,
} from "../record/bundle/index.js";
import type { Audit } from "../view/results/audit-types.js";
import type { ForeignRebuild } from "./foreign-rebuild.js";

/** How to audit a rebuild of somebody else. */
export interface ForeignAudit extends Pick<AuditOptions, "rerun" | "explain" | "only" | "onProgress"> {
  /** The explicit word: without it nothing of the rebuild is run. */
  readonly runTheirCode: boolean;
  readonly openNetwork: boolean;
}

/**
 * Audits a bundle, unpacked for that into a temporary folder, or a folder unpacked from one. Hashes are compared in any
 * case; the sheets are run again on the explicit word only, in a sandbox. What was done is told on the error output.
 */
export async function auditForeign(
  { path, packed }: ForeignRebuild,
  { runTheirCode, openNetwork, rerun = true, explain = false, only, onProgress }: ForeignAudit,
): Promise<Audit> {
  const runs = rerun && runTheirCode;
  const offer = runs ? sandboxOffer() : undefined;
  if (offer !== undefined) requireSandbox(offer, openNetwork);
  console.error(`${path} is somebody else's rebuild.`);
  if (offer !== undefined)
    console.error(`Its sheets are run again in a sandbox:\n${listed(sandboxSentences(offer))}`);
  else
    console.error("Nothing of it is run, hashes only are compared; --run-their-code runs it in a sandbox.");
  const temporary = packed ? realpathSync(mkdtempSync(join(tmpdir(), "journalbox-bundle-"))) : undefined;
  try {
    if (temporary !== undefined) {
      const bundle = readBundle(path);
      requireWhole(bundle);
      unpackBundle(bundle, temporary);
    }
    const directory = temporary ?? path;
    refuseLinks(directory);
    const leftOut = readLeftOut(filesToShare(directory));
    if (leftOut !== undefined)
      console.error(`Whoever shared it left something out:\n${listed(leftOutSentences(leftOut))}`);
    return await auditRebuild({
      directory,
      rerun: runs,
      explain: runs && explain,
      ...(only !== undefined && { only }),
      ...(leftOut && { leftOut }),
      ...(onProgress && { onProgress }),
      ...(offer && { startKernel: (folder: string) => SandboxKernel.start(folder, offer) }),
    });
  } finally {
    if (temporary !== undefined) rmSync(temporary, { recursive: true, force: true });
  }
}

function listed(sentences: readonly string[]): string {
  return sentences.map((sentence) => `  ${sentence}`).join("\n");
}
