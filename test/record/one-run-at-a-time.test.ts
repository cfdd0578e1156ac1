import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import {
  oneRunAtATime,
  type RunUnderWay,
  runFile,
  waitText,
} from "../../kernel-helpers/record/one-run-at-a-time.js";
import { temporaryFolder } from "../support/temporary-folder.js";

/** A folder in which somebody's run is under way, or was broken off. */
function folderWith(run: RunUnderWay | string): string {
  return temporaryFolder({ [runFile]: typeof run === "string" ? run : JSON.stringify(run) });
}

const endedProcess = (): number => spawnSync(process.execPath, ["-e", ""]).pid;

describe("oneRunAtATime", () => {
  it("lets runs of a rebuild follow each other, also within one process", async () => {
    const folder = temporaryFolder();
    const steps: string[] = [];
    const waits: RunUnderWay[] = [];
    const work = (name: string) => async () => {
      steps.push(`${name} begins`);
      await pause(250);
      steps.push(`${name} ends`);
      return name;
    };
    const ends = await Promise.all(
      ["a", "b", "c"].map((name) => oneRunAtATime(folder, work(name), (other) => waits.push(other))),
    );
    expect(ends).toEqual(["a", "b", "c"]);
    for (let i = 0; i < steps.length; i += 2) expect(steps[i + 1]).toBe(steps[i]!.replace("begins", "ends"));
    expect(waits.map((other) => other.process)).toEqual([process.pid, process.pid]);
    expect(existsSync(join(folder, runFile))).toBe(false);
  });

  it("lets runs of different rebuilds go on side by side", async () => {
    const both = [temporaryFolder(), temporaryFolder()];
    let under = 0;
    const meet = async (): Promise<void> => {
      under += 1;
      while (under < 2) await pause(5);
    };
    await expect(Promise.all(both.map((folder) => oneRunAtATime(folder, meet)))).resolves.toHaveLength(2);
  });

  it("makes way for the next when the work throws", async () => {
    const folder = temporaryFolder();
    const fails = oneRunAtATime(folder, () => Promise.reject(new Error("no belt")));
    await expect(fails).rejects.toThrow("no belt");
    await expect(oneRunAtATime(folder, async () => "next")).resolves.toBe("next");
  });

  it("does not wait for a run that was killed, nor for one from before the machine was started", async () => {
    const machine = hostname();
    const killed = folderWith({ process: endedProcess(), machine, since: Date.now() });
    const before = folderWith({ process: process.ppid, machine, since: 0 });
    const sameNumber = folderWith({ process: process.pid, machine, since: Date.now() });
    for (const folder of [killed, before, sameNumber])
      await expect(
        oneRunAtATime(
          folder,
          async () => "run",
          () => expect.unreachable("waited"),
        ),
      ).resolves.toBe("run");
  });

  it("waits for a run that is alive, and for one on another machine, and says how to go on", async () => {
    const here: RunUnderWay = { process: process.ppid, machine: hostname(), since: Date.now() };
    const elsewhere: RunUnderWay = { process: endedProcess(), machine: "lathe-shed", since: Date.now() };
    for (const other of [here, elsewhere]) {
      const folder = folderWith(other);
      const said: string[] = [];
      const turn = oneRunAtATime(
        folder,
        async () => said.push("run"),
        (run) => said.push(waitText(run)),
      );
      await pause(350);
      expect(said).toHaveLength(1);
      expect(JSON.parse(readFileSync(join(folder, runFile), "utf8"))).toEqual(other);
      spawnSync(process.execPath, ["-e", "fs.rmSync(process.argv[1])", join(folder, runFile)]);
      await turn;
      expect(said).toEqual([expect.stringContaining(`process ${other.process}`), "run"]);
    }
    expect(waitText(elsewhere)).toContain(`on lathe-shed; if it is not, remove ${runFile}`);
    expect(waitText(here)).not.toContain("remove");
  });

  it("does not wait for ever for a file that holds nothing legible", async () => {
    for (const text of ["", "{", '{"process":0}', '{"process":"7","machine":"x","since":1}'])
      await expect(oneRunAtATime(folderWith(text), async () => "run")).resolves.toBe("run");
  }, 30_000);

  it("begins at once where the folder cannot be written", async () => {
    // A file where the folder should be: nothing can be written there by anybody.
    const folder = temporaryFolder({ out: "no folder" });
    await expect(oneRunAtATime(folder, async () => "run")).resolves.toBe("run");
    expect(readFileSync(join(folder, "out"), "utf8")).toBe("no folder");
  });
});
