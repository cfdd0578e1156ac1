import { join } from "node:path";
import { beforeAll } from "vitest";
import { packageRoot } from "../../../kernel-helpers/record/package-root.js";
import { buildTimeout, ensureBuilt } from "../../support/built.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

// Gives the tests that are imported after this a prepared start of their own, in a cache folder of its own.
process.env.XDG_CACHE_HOME = temporaryFolder();
process.env.LOCALAPPDATA = process.env.XDG_CACHE_HOME;
process.env.JOURNALBOX_QUICK_START = "on";

/** As built, for a snapshot is written by built programs. */
export async function prepareAsBuilt(environment: NodeJS.ProcessEnv = process.env): Promise<string> {
  await ensureBuilt();
  const file = join(packageRoot(), "dist/notebook/kernel/quick-start/prepare-quick-start.js");
  const built: typeof import("../../../kernel-helpers/notebook/kernel/quick-start/prepare-quick-start.js") =
    await import(file);
  return built.prepareQuickStart(environment);
}

beforeAll(async () => {
  await prepareAsBuilt();
}, buildTimeout + 60_000);
