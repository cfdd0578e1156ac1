import { spawn } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { constants, setPriority, tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { type KnownTypes, knownTypes } from "./known-types.js";
import { compilerFile, quickStartFile } from "./quick-start-file.js";

/** What the process that writes the snapshot is given. */
export interface SnapshotInput extends KnownTypes {
  readonly compiler: string;
}

/** A prepared start that nobody has renewed for so long is one of an older version [ms]. */
const tooOld = 30 * 24 * 3600 * 1000;
/** One that was not finished in so long was broken off [ms]. */
const brokenOff = 3600 * 1000;

/**
 * Prepares the start of kernels: a picture of the memory of a process that has its compiler loaded and all types
 * read, in the user's cache folder (about 50 MB). A kernel that starts from it is there in half the time. Takes a few
 * seconds, in processes of its own; where Node cannot do it, nothing is left behind.
 *
 * @returns the file written
 * @throws Error it could not be prepared; kernels start as before
 */
export async function prepareQuickStart(environment: NodeJS.ProcessEnv = process.env): Promise<string> {
  const file = quickStartFile(environment);
  mkdirSync(dirname(file), { recursive: true });
  dropOld(dirname(file));
  const folder = mkdtempSync(join(tmpdir(), "journalbox-quick-start-"));
  try {
    const input = join(folder, "input.json");
    await run([join(__dirname, "write-snapshot-input.js"), input], environment);
    const blob = `${file}.${process.pid}`;
    const entry = join(folder, "entry.js");
    // Node gives the writer of a snapshot no module of its own to fill.
    writeFileSync(
      entry,
      `const exports = {};\n${readFileSync(join(__dirname, "snapshot-entry.js"), "utf8")}`,
    );
    await run(["--snapshot-blob", blob, "--build-snapshot", entry], {
      ...environment,
      JOURNALBOX_SNAPSHOT_INPUT: input,
    });
    await tryOut(blob, folder, environment);
    renameSync(blob, file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
    for (const left of readdirSync(dirname(file)).filter((name) => name.endsWith(`.blob.${process.pid}`)))
      rmSync(join(dirname(file), left), { force: true });
  }
  return file;
}

/** Writes what the snapshot is made from: a process of its own, for the compiler stays loaded in it. */
export function writeSnapshotInput(file: string): void {
  const input: SnapshotInput = { ...knownTypes(), compiler: compilerFile() };
  writeFileSync(file, JSON.stringify(input));
}

/** A snapshot that cannot run a program is of no use. */
async function tryOut(blob: string, folder: string, environment: NodeJS.ProcessEnv): Promise<void> {
  const program = join(folder, "try.js");
  const load = `const ts = require(${JSON.stringify(compilerFile())});`;
  writeFileSync(
    program,
    `${load}\nif (process.cwd() !== __dirname || !ts.version || !new Error().stack) process.exit(1);`,
  );
  await run(["--snapshot-blob", blob, program], environment, folder);
}

function run(args: readonly string[], environment: NodeJS.ProcessEnv, directory?: string): Promise<void> {
  const child = spawn(process.execPath, args, {
    env: environment,
    cwd: directory,
    stdio: ["ignore", "ignore", "pipe"],
  });
  // It saves time later, and takes none from whoever works now.
  try {
    if (child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_BELOW_NORMAL);
  } catch {
    // It is over already, or may not be slowed.
  }
  const stop = (): void => void child.kill();
  process.once("exit", stop);
  child.once("close", () => process.removeListener("exit", stop));
  let said = "";
  child.stderr.on("data", (bytes: Buffer) => {
    said += bytes.toString("utf8");
  });
  return new Promise((done, failed) => {
    child.once("error", failed);
    child.once("close", (code) => {
      if (code === 0) done();
      else failed(new Error(`prepareQuickStart: Node must be able to write a snapshot, got ${said.trim()}`));
    });
  });
}

function dropOld(folder: string): void {
  for (const name of readdirSync(folder).filter((each) => /^kernel-.*\.blob/.test(each))) {
    const path = join(folder, name);
    const age = Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    if (age > (name.endsWith(".blob") ? tooOld : brokenOff)) rmSync(path, { force: true });
  }
}
