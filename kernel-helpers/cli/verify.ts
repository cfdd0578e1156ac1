import { parseArgs } from "node:util";
import type { PlaceCheck } from "./check-place.js";
import { checkPlaces } from "./check-places.js";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

/** journalbox verify: whether bundles and rebuilds are whole. Nothing of them is run. */
export const verifyCommand: Command = {
  summary: "tells whether bundles and rebuilds are whole and unaltered; runs nothing of them",
  usage: `journalbox verify <bundle or folder>... [--json]

Checks a bundle, a ZIP archive or a folder with a bagit.txt: every file that its manifests list is there and
as it was, and none lies beside them. Checks a rebuild's folder against the hashes that its last run left.
Nothing in either is run, and no link is followed in a bundle. A manifest guards against accidents; somebody who
means harm can write manifests too ("journalbox audit" runs the worksheets again and compares).

Of one, every fault is told. Of several there is a line each, with the first fault, and a last line with the
count: journalbox verify archive/*

Exit code: 0 all whole, 1 one is altered or damaged, 2 the call was off or one is neither bundle nor rebuild;
of several the highest.`,

  async run(args) {
    const { places, json } = read(args);
    const checks: PlaceCheck[] = [];
    await checkPlaces(places, (check) => {
      checks.push(check);
      if (!json && places.length > 1) console.log(oneLine(check));
    });
    const [first] = checks;
    if (places.length === 1 && first!.code === 2) throw new UsageError(first!.summary);
    if (json) {
      const data = checks.map((check) => check.data);
      console.log(JSON.stringify(places.length === 1 ? data[0] : data, null, 2));
    } else if (places.length === 1) {
      console.log(first!.summary);
      for (const detail of first!.details) console.log(`  ${detail}`);
    } else console.log(countLine(checks));
    return Math.max(...checks.map(({ code }) => code));
  },
};

function oneLine({ summary, details, faults }: PlaceCheck): string {
  if (faults === 0) return summary;
  const more = faults === 1 ? "" : ` (and ${faults - 1} more)`;
  return `${summary}; ${details[0]!}${more}`;
}

function countLine(checks: readonly PlaceCheck[]): string {
  const count = (code: PlaceCheck["code"]): number => checks.filter((check) => check.code === code).length;
  const others = [
    ...(count(1) > 0 ? [`${count(1)} not`] : []),
    ...(count(2) > 0 ? [`${count(2)} neither bundle nor rebuild`] : []),
  ];
  return [`${count(0)} of ${checks.length} whole`, ...others].join(", ");
}

function read(args: readonly string[]): { readonly places: readonly string[]; readonly json: boolean } {
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: "boolean" } },
    });
    if (positionals.length === 0) throw new Error("name a bundle or a rebuild's folder, or several");
    return { places: positionals, json: values.json === true };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
