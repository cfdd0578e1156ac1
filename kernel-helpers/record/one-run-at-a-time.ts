import { randomBytes } from "node:crypto";
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { hostname, uptime } from "node:os";
import { dirname, join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { canonicalJson } from "./canonical-json.js";

/** Within a rebuild: there while a run goes on. */
export const runFile = "out/state/run-under-way.json";

/** Who runs the sheets of a rebuild at the moment. */
export interface RunUnderWay {
  /** Its number on its machine. */
  readonly process: number;
  readonly machine: string;
  /** When it began [ms since 1970]. */
  readonly since: number;
}

const betweenLooks = 100;
/** So many looks long a file may be illegible because it is just being written. */
const looksAtIllegible = 20;

/** The files by which runs of this process keep others waiting. */
const held = new Set<string>();

/**
 * Does some work on a rebuild's results while no other run does: two runs that write the same records in turn would
 * leave parts of both. A run that was killed keeps nobody on its machine waiting. Where nothing can be written into
 * the folder the work begins at once; it says so itself when it comes to write.
 *
 * @param onWait  called once where there is another run to wait for
 * @throws what the work throws
 */
export async function oneRunAtATime<T>(
  directory: string,
  work: () => Promise<T>,
  onWait: (other: RunUnderWay) => void = () => {},
): Promise<T> {
  const path = join(directory, runFile);
  let told = false;
  let illegible = 0;
  for (;;) {
    const begun = begin(path);
    if (begun !== "taken") return workAndEnd(path, begun, work);
    const text = textOf(path);
    const other = text === undefined ? undefined : underWay(text);
    illegible = text !== undefined && other === undefined ? illegible + 1 : 0;
    if (text !== undefined && (other === undefined ? illegible > looksAtIllegible : isOver(other, path))) {
      clear(path, text);
      continue;
    }
    if (other !== undefined && !told) {
      told = true;
      onWait(other);
    }
    await pause(betweenLooks);
  }
}

/** Whom a run waits for, as a sentence. */
export function waitText(other: RunUnderWay): string {
  const elsewhere =
    other.machine === hostname()
      ? ""
      : ` on ${other.machine}; if it is not, remove ${runFile} in the rebuild`;
  return `Another run of this rebuild is under way (process ${other.process}${elsewhere}); waiting for its end.`;
}

type Begun = "begun" | "unwritable";

function begin(path: string): Begun | "taken" {
  if (held.has(path)) return "taken";
  try {
    mkdirSync(dirname(path), { recursive: true });
    const mine: RunUnderWay = { process: process.pid, machine: hostname(), since: Date.now() };
    writeFileSync(path, canonicalJson(mine), { flag: "wx" });
    held.add(path);
    return "begun";
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EEXIST" ? "taken" : "unwritable";
  }
}

async function workAndEnd<T>(path: string, begun: Begun, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } finally {
    if (begun === "begun") {
      rmSync(path, { force: true });
      held.delete(path);
    }
  }
}

function textOf(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return undefined;
  }
}

function underWay(text: string): RunUnderWay | undefined {
  try {
    const other: RunUnderWay = JSON.parse(text);
    const legible =
      Number.isSafeInteger(other.process) &&
      other.process > 0 &&
      typeof other.machine === "string" &&
      typeof other.since === "number";
    return legible ? other : undefined;
  } catch {
    return undefined;
  }
}

/** Whether a run of this machine did not come to remove its file: killed, or ended by the machine's own end. */
function isOver({ process: number, machine, since }: RunUnderWay, path: string): boolean {
  if (machine !== hostname()) return false;
  if (number === process.pid) return !held.has(path);
  return since < Date.now() - uptime() * 1000 || !isAlive(number);
}

function isAlive(number: number): boolean {
  try {
    process.kill(number, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** Removes what a run left that is over, but not what another one has put there in the meantime. */
function clear(path: string, text: string): void {
  const aside = `${path}.${randomBytes(6).toString("hex")}.tmp`;
  try {
    renameSync(path, aside);
    if (textOf(aside) === text) rmSync(aside, { force: true });
    else renameSync(aside, path);
  } catch {
    // Somebody else has removed it first.
  }
}
