import { existsSync, readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { KernelClient } from "../../../kernel-helpers/notebook/client/kernel-client.js";
import { kernelProgram } from "../../../kernel-helpers/notebook/client/kernel-process.js";
import {
  quickStartFile,
  readyQuickStart,
} from "../../../kernel-helpers/notebook/kernel/quick-start/quick-start-file.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { prepareAsBuilt } from "./prepared-start.js";

// In a cache folder of its own: prepared-start.ts sets these names, for this process only.
const environment = process.env;
const folder = temporaryFolder();

/** The plain text of a cell's result, in a kernel of its own. */
async function resultOf(code: string, program?: readonly string[]): Promise<unknown> {
  const kernel = await KernelClient.start({ directory: folder, environment, ...(program && { program }) });
  try {
    const result = (await kernel.execute(code)).outputs.find(({ type }) => type === "execute_result");
    return (result?.content.data as Record<string, unknown> | undefined)?.["text/plain"];
  } finally {
    await kernel.close();
  }
}

/** True in a kernel that did not load its program as Node usually does. */
const isQuick =
  'import { inch } from "journalbox";\ninch(2).in("mm") === 50.8 && process.mainModule === undefined';
/** The command of the kernelspec: it looks for a prepared start by itself. */
const asJupyterDoes = [kernelProgram()];

describe("prepareQuickStart(environment)", () => {
  it("writes one file to the cache folder, drops one of an older version, and leaves nothing else", async () => {
    const file = quickStartFile(environment);
    const cache = dirname(file);
    expect(readdirSync(cache).map((name) => join(cache, name))).toEqual([file]);
    const old = join(cache, "kernel-0123456789abcdef.blob");
    writeFileSync(old, "old");
    utimesSync(old, 1, 1);
    expect(await prepareAsBuilt()).toBe(file);
    expect(readdirSync(cache).map((name) => join(cache, name))).toEqual([file]);
    expect(statSync(file).size).toBeLessThan(80e6);
    expect(readyQuickStart(environment)).toBe(file);
    expect(readyQuickStart({ ...environment, JOURNALBOX_QUICK_START: "off" })).toBeUndefined();
  }, 120_000);
});

describe("a kernel from a prepared start", () => {
  it("runs cells, finds the helpers, and sees its own folder", async () => {
    expect(await resultOf(isQuick)).toBe("true");
    expect(await resultOf(isQuick, asJupyterDoes)).toBe("true");
    expect(await resultOf("process.cwd()")).toBe(`'${folder}'`);
    expect(await resultOf("process.execArgv")).toBe("[]");
  });
  it("checks types, stops loops, and ends with the exit code of its cell", async () => {
    for (const program of [undefined, asJupyterDoes]) {
      const kernel = await KernelClient.start({
        directory: folder,
        environment,
        ...(program && { program }),
      });
      try {
        await expect(kernel.execute('const n: number = "2";')).rejects.toMatchObject({
          ename: "TypeCheckError",
        });
        const endless = kernel.execute("await null; for (;;) {}");
        await new Promise((next) => setTimeout(next, 300));
        kernel.interrupt();
        await expect(endless).rejects.toMatchObject({ ename: "Interrupted" });
        await expect(kernel.execute("process.exit(3);")).rejects.toMatchObject({ exitCode: 3 });
      } finally {
        await kernel.close();
      }
    }
  });
  it.runIf(process.platform === "linux")(
    "ends when its launcher is killed, also in a loop",
    async () => {
      const kernel = await KernelClient.start({ directory: folder, environment, program: asJupyterDoes });
      try {
        const { outputs } = await kernel.execute("process.pid");
        const pid = String((outputs.at(-1)!.content.data as Record<string, unknown>)["text/plain"]);
        expect(pid).not.toBe(String(kernel.pid));
        // Elsewhere only this name tells it: it stands in the kernel's surroundings as they were at its start.
        expect(readFileSync(`/proc/${pid}/environ`, "utf8").split("\0")).toContain(
          `JOURNALBOX_LAUNCHER_PID=${kernel.pid}`,
        );
        const endless = kernel.execute("for (;;) {}");
        endless.catch(() => {});
        await pause(300);
        process.kill(kernel.pid!, "SIGKILL");
        await expect(endless).rejects.toMatchObject({ signal: "SIGKILL" });
        while (existsSync(`/proc/${pid}`)) await pause(50);
      } finally {
        await kernel.close();
      }
    },
    20_000,
  );
  it.each([
    ["our own client", undefined],
    ["the kernelspec's command", asJupyterDoes],
  ])("is the usual kernel where the prepared start is broken, with %s", async (_, program) => {
    const file = quickStartFile(environment);
    writeFileSync(file, "broken");
    expect(await resultOf("process.mainModule === undefined", program)).toBe("false");
    expect(existsSync(file)).toBe(false);
  });
});
