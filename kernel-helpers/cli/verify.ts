import { parseArgs } from "node:util";
import {
  isBundle,
  leftOutSentences,
  payloadFolder,
  readBundle,
  readLeftOut,
  verifyBag,
} from "../record/bundle/index.js";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

/** journalbox verify: whether a bundle is whole. Nothing of it is run. */
export const verifyCommand: Command = {
  summary: "tells whether a bundle is whole and unaltered; runs nothing of it",
  usage: `journalbox verify <bundle> [--json]

Checks a bundle, a ZIP archive or a folder with a bagit.txt: every file that its manifests list is there and
as it was, and none lies beside them. Nothing in it is run, and no link is followed. A manifest guards against
accidents; somebody who means harm can write manifests too.

Exit code: 0 whole, 1 altered or damaged, 2 the call was off.`,

  async run(args) {
    const { bundle, json } = read(args);
    if (!isBundle(bundle))
      throw new UsageError(`${bundle} is no bundle: neither a .zip nor a folder with a bagit.txt`);
    const { name, files } = readBundle(bundle);
    const check = verifyBag(files);
    const payload = new Map(
      [...files]
        .filter(([path]) => path.startsWith(`${payloadFolder}/`))
        .map(([path, content]) => [path.slice(payloadFolder.length + 1), content]),
    );
    const leftOut = readLeftOut(payload);
    if (json) console.log(JSON.stringify({ name, ...check, ...(leftOut && { leftOut }) }, null, 2));
    else {
      const size = `${check.files} files, ${(check.bytes / 1e6).toFixed(1)} MB`;
      console.log(check.valid ? `${name} is whole: ${size}` : `${name} is not as it was made: ${size}`);
      for (const { file, what } of check.faults) console.log(`  ${file}: ${what}`);
      if (leftOut !== undefined)
        for (const sentence of leftOutSentences(leftOut)) console.log(`  ${sentence}`);
    }
    return check.valid ? 0 : 1;
  },
};

function read(args: readonly string[]): { readonly bundle: string; readonly json: boolean } {
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: "boolean" } },
    });
    if (positionals.length !== 1) throw new Error("name one bundle");
    return { bundle: positionals[0]!, json: values.json === true };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
