/**
 * Makes ready what the compiler wrote, so that the first import of "journalbox" in a worksheet costs little: tables
 * of contents that load what is asked of them, and all types in one file. May be run again.
 *
 *   node kernel-helpers/build/finish-build.mjs
 */
import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { gatherTypes } from "./gather-types.mjs";
import { lateIndexes } from "./late-indexes.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const dist = join(root, "dist");

for (const [file, code] of lateIndexes(join(root, "kernel-helpers"), dist)) writeFileSync(file, code);
writeFileSync(join(dist, "journalbox.d.ts"), gatherTypes(join(dist, "index.d.ts")));
