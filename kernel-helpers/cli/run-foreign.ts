import { relative, resolve } from "node:path";
import { parseArgs } from "node:util";
import { failureText } from "../notebook/runner/failure-text.js";
import { runInSandbox, sandboxOffer, sandboxSentences } from "../notebook/sandbox/index.js";
import {
  type Bundle,
  type Files,
  filesToShare,
  readBundle,
  textOf,
  verifyBag,
} from "../record/bundle/index.js";
import { waitText } from "../record/one-run-at-a-time.js";
import type { ForeignRebuild } from "./foreign-rebuild.js";
import { ProgressLine } from "./progress-line.js";
import { UsageError } from "./usage-error.js";

/** `journalbox run` on a rebuild of somebody else: tells what would run, and runs it in a sandbox on the explicit word. */
export async function runForeign(foreign: ForeignRebuild, args: readonly string[]): Promise<number> {
  const { word, to, openNetwork } = read(args);
  const bundle = foreign.packed ? readBundle(foreign.path) : undefined;
  const offer = sandboxOffer();
  tellWhat(foreign, bundle);
  console.log(
    `\nThe sandbox of this machine:\n${sandboxSentences(offer)
      .map((each) => `  ${each}`)
      .join("\n")}\n`,
  );
  if (!word) {
    console.log("Nothing was run. To run it, say --run-their-code.");
    return 2;
  }
  const folder = bundle === undefined ? foreign.path : resolve(to ?? `${bundle.name}-run`);
  const progress = new ProgressLine();
  const { results, report } = await runInSandbox({
    ...(bundle && { bundle }),
    folder,
    openNetwork,
    offer,
    onWait: (other) => console.log(`  ${waitText(other)}`),
    onProgress: (event) => progress.tell(event),
  });
  progress.clear();
  for (const result of results) if (result.status === "failed") console.error(`\n${failureText(result)}`);
  console.log(
    `\n  record    ${relative(process.cwd(), folder) || "."}/record\n  report    ${relative(process.cwd(), report)}`,
  );
  return results.every(({ status }) => status === "ok") ? 0 : 1;
}

function tellWhat({ path }: ForeignRebuild, bundle: Bundle | undefined): void {
  const check = bundle && verifyBag(bundle.files);
  const whole =
    check === undefined
      ? ""
      : check.valid
        ? "; it is whole"
        : "; it is NOT as it was made, and will not be run";
  console.log(`${path} is somebody else's rebuild${whole}. Its worksheets are programs:`);
  const files: Files = bundle?.files ?? filesToShare(path);
  for (const [file, content] of [...files].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const name = /^(?:data\/)?sheets\/(.+\.ipynb)$/.exec(file)?.[1];
    if (name !== undefined) console.log(`  ${name}  ${codeCells(content)}`);
  }
}

function codeCells(notebook: Uint8Array): string {
  try {
    const cells: readonly { readonly cell_type?: unknown }[] = JSON.parse(textOf(notebook)).cells;
    return `${cells.filter(({ cell_type }) => cell_type === "code").length} code cells`;
  } catch {
    return "cannot be read";
  }
}

function read(args: readonly string[]): {
  readonly word: boolean;
  readonly to: string | undefined;
  readonly openNetwork: boolean;
} {
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        "run-their-code": { type: "boolean" },
        "network-may-stay-open": { type: "boolean" },
        to: { type: "string" },
        all: { type: "boolean" },
      },
    });
    if (positionals.length > 1) throw new Error(`one bundle at the most, got ${positionals.join(" ")}`);
    const { to } = values;
    return {
      word: values["run-their-code"] === true,
      to,
      openNetwork: values["network-may-stay-open"] === true,
    };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
