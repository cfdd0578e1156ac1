import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { serialize } from "node:v8";

/** What a peer program printed, and whose it was. */
export interface PeerRun {
  readonly name: string;
  readonly words: readonly string[];
}

/**
 * Runs a Python program in every Python there is that has the modules: the first one found, and Debian's own where
 * that is another.
 *
 * @param modules  what it must have, e.g. "numpy"
 * @param program  prints one line
 * @returns a run for each; none, and a line on the output that says so, where no Python has the modules
 */
export function runPython(modules: readonly string[], program: string): readonly PeerRun[] {
  const about = `import sys, ${modules.join(", ")}; print(sys.executable, *[m.__version__ for m in (${modules.join(", ")},)])`;
  const found = new Map<string, PeerRun>();
  for (const command of ["python3", "/usr/bin/python3"]) {
    const told = spawnSync(command, ["-c", about], { encoding: "utf8" });
    if (told.status !== 0) continue;
    const [executable, ...versions] = told.stdout.trim().split(" ");
    const name = modules.map((module, i) => `${module} ${versions[i]}`).join(", ");
    if (found.has(executable!)) continue;
    const words = printed(command, ["-c", program]);
    if (words !== undefined) found.set(executable!, { name, words });
  }
  if (found.size === 0) say(`not compared with ${modules.join(" and ")}, which no Python has here`);
  return [...found.values()];
}

/** Runs an R program that needs a package; none, and a line that says so, where R or the package is missing. */
export function runR(needed: string, program: string): readonly PeerRun[] {
  const version = printed("Rscript", ["-e", `cat(as.character(packageVersion("${needed}")))`]);
  const words = version && printed("Rscript", ["-"], `suppressMessages(library(${needed})); ${program}`);
  if (words !== undefined) return [{ name: `R ${needed} ${version![0]}`, words }];
  say(`not compared with R ${needed}, which is not installed here`);
  return [];
}

/** Milliseconds of some runs, after one to warm up. */
export interface Timing {
  readonly best: number;
  readonly median: number;
  /** Median of what processors spent, of all threads: other work on the machine lengthens it less than the clock's. */
  readonly processor: number;
}

/** Times some runs, after one to warm up. */
export function timed(runs: number, run: () => unknown): Timing {
  run();
  const times: number[] = [];
  const processor: number[] = [];
  for (let k = 0; k < runs; k++) {
    const before = process.cpuUsage();
    const start = performance.now();
    run();
    times.push(performance.now() - start);
    const { user, system } = process.cpuUsage(before);
    processor.push((user + system) / 1000);
  }
  const middle = (list: readonly number[]): number =>
    list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)]!;
  return { best: Math.min(...times), median: middle(times), processor: middle(processor) };
}

/**
 * Milliseconds that the first call of a helper as built takes in a process of its own, the helpers loaded: the engine
 * has compiled nothing yet. Median of five processes.
 *
 * @param helper  its name
 * @param given  what it is given: plain data
 */
export function firstCall(helper: string, given: readonly unknown[]): number {
  const program = `
const helper = require(${JSON.stringify(join(__dirname, "..", "..", "dist", "index.js"))})[${JSON.stringify(helper)}];
const given = require("node:v8").deserialize(require("node:fs").readFileSync(0));
const start = performance.now();
helper(...given);
console.log(performance.now() - start);
`;
  const input = serialize(given);
  const times = Array.from({ length: 5 }, () => {
    const words = printed(process.execPath, ["-e", program], input);
    if (words === undefined) throw new Error(`firstCall: ${helper} failed in a process of its own`);
    return Number(words[0]);
  });
  return times.sort((a, b) => a - b)[2]!;
}

/** A line of its own among what the benches print. */
export function say(text: string): void {
  process.stdout.write(`${text}\n`);
}

function printed(
  command: string,
  args: readonly string[],
  input: string | Buffer = "",
): readonly string[] | undefined {
  const run = spawnSync(command, args, { encoding: "utf8", input });
  return run.status === 0 ? run.stdout.trim().split(/\s+/) : undefined;
}
