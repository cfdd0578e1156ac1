import { writeSnapshotInput } from "./prepare-quick-start.js";

/** The program that writes what a snapshot is made from: `write-snapshot-input.js FILE`. */
writeSnapshotInput(process.argv[2]!);
process.exit(0);
