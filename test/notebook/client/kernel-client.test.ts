import { spawn } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CellTimeoutError, KernelDiedError } from "../../../kernel-helpers/notebook/client/client-errors.js";
import { KernelClient } from "../../../kernel-helpers/notebook/client/kernel-client.js";
import { kernelProgram } from "../../../kernel-helpers/notebook/client/kernel-process.js";
import { packageRoot } from "../../../kernel-helpers/record/package-root.js";
import { buildTimeout, ensureBuilt } from "../../support/built.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

const folder = temporaryFolder();
const { TMPDIR } = process.env;
beforeAll(async () => {
  await ensureBuilt();
  process.env.TMPDIR = folder; // connection files are written here, to be counted
}, buildTimeout);
afterAll(() => {
  if (TMPDIR === undefined) delete process.env.TMPDIR;
  else process.env.TMPDIR = TMPDIR;
});

/** Takes years, and looks at no flag. */
const withoutLoop = "const f = (n: number): number => (n < 2 ? 1 : f(n - 1) + f(n - 2)); f(90);";

/** Runs something with a kernel of its own. */
async function withKernel(use: (kernel: KernelClient) => Promise<void>): Promise<number> {
  const kernel = await KernelClient.start({ directory: folder });
  try {
    await use(kernel);
  } finally {
    await kernel.close();
  }
  if (kernel.pid === undefined) throw new Error("the kernel had no process");
  return kernel.pid;
}

function isAlive(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

async function untilDead(pid: number, milliseconds: number): Promise<boolean> {
  for (const end = Date.now() + milliseconds; Date.now() < end; ) {
    if (!isAlive(pid)) return true;
    await new Promise((next) => setTimeout(next, 50));
  }
  return false;
}

describe("KernelClient.execute(code, options)", () => {
  it("tells that the kernel died, how, and loses no more", async () => {
    await withKernel(async (kernel) => {
      const dead = kernel.execute("process.exit(3);");
      await expect(dead).rejects.toThrow(KernelDiedError);
      await expect(dead).rejects.toMatchObject({ exitCode: 3, signal: null });
      await expect(kernel.execute("1")).rejects.toThrow(/the kernel ended with exit code 3/);
    });
  });
  it("interrupts a cell that takes too long; code without a loop after an await can only be ended with its kernel", async () => {
    await withKernel(async (kernel) => {
      await kernel.execute("1"); // the first cell takes longer, whatever is in it
      const waiting = kernel.execute("await new Promise((r) => setTimeout(r, 60_000));", { timeout: 500 });
      await expect(waiting).rejects.toThrow("the cell took longer than 0.5 s: it was interrupted");
      expect((await kernel.execute("1 + 1")).outputs).toHaveLength(2);
      const looping = kernel.execute("await null; for (;;) {}", { timeout: 500 });
      await expect(looping).rejects.toThrow("the cell took longer than 0.5 s: it was interrupted");
      const endless = kernel.execute(`await null; ${withoutLoop}`, { timeout: 500, interruptTimeout: 500 });
      await expect(endless).rejects.toThrow(CellTimeoutError);
      await expect(endless).rejects.toMatchObject({ kernelLives: false });
      await expect(kernel.execute("1")).rejects.toThrow(KernelDiedError);
    });
  });
});

describe("KernelClient.close()", () => {
  it("leaves no process and no file, also when called twice", async () => {
    const pid = await withKernel(async (kernel) => {
      await kernel.execute("1");
      expect(readdirSync(folder).filter((name) => name.startsWith("journalbox-kernel-"))).toEqual([]);
      void kernel.close();
    });
    expect(isAlive(pid)).toBe(false);
    expect(readdirSync(folder)).toEqual([]);
  });
  it("ends a kernel that does not listen", async () => {
    const pid = await withKernel(async (kernel) => {
      kernel.execute(`await null; ${withoutLoop}`).catch(() => undefined);
      await new Promise((next) => setTimeout(next, 200));
    });
    expect(isAlive(pid)).toBe(false);
  });
});

describe("KernelClient.start(options)", () => {
  it("says why a kernel did not start, and leaves nothing behind", async () => {
    const program = ["-e", "console.error('no such thing'); process.exit(9)", "--"];
    const start = KernelClient.start({ directory: folder, program });
    await expect(start).rejects.toThrow("the kernel ended with exit code 9: no such thing");
    expect(readdirSync(folder)).toEqual([]);
  });
  it("tries again where a port was taken meanwhile", async () => {
    // Ends as a kernel without ports does, the first time; then becomes the kernel.
    const mark = JSON.stringify(join(temporaryFolder(), "tried"));
    const first = `const fs = require("fs"); if (!fs.existsSync(${mark})) { fs.writeFileSync(${mark}, ""); process.exit(98); }`;
    const program = ["-e", `${first} require(${JSON.stringify(kernelProgram())})`, "--"];
    const kernel = await KernelClient.start({ directory: folder, program });
    expect((await kernel.execute("1")).executionCount).toBe(1);
    await kernel.close();
  });
  it("gives up on a program that never answers, and ends it", async () => {
    const program = ["-e", "setInterval(() => {}, 1000)", "--"];
    const start = KernelClient.start({ directory: folder, program, startTimeout: 500 });
    await expect(start).rejects.toThrow("the kernel did not answer within 0.5 s");
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe("a kernel whose client was killed", () => {
  it.each(["", "k.execute('await null; for (;;) {}').catch(() => {}); "])(
    "ends by itself %j",
    async (busy) => {
      const client = join(packageRoot(), "dist", "notebook", "client", "kernel-client.js");
      const program = `require(${JSON.stringify(client)}).KernelClient.start({ directory: ${JSON.stringify(folder)} }).then((k) => { ${busy}setTimeout(() => console.log(k.pid), 300); })`;
      const starter = spawn(process.execPath, ["-e", program], { stdio: ["ignore", "pipe", "inherit"] });
      const pid = await new Promise<number>((told) =>
        starter.stdout.once("data", (text) => told(Number(text))),
      );
      expect(isAlive(pid)).toBe(true);
      starter.kill("SIGKILL");
      expect(await untilDead(pid, 10_000)).toBe(true);
    },
  );
});
