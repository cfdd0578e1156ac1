import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { beforeAll, describe, expect, it, onTestFinished, vi } from "vitest";
import { openerFor } from "../../kernel-helpers/cli/open-browser.js";
import { prepareLater } from "../../kernel-helpers/cli/prepare-later.js";
import { quickStartFile } from "../../kernel-helpers/notebook/kernel/quick-start/quick-start-file.js";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";
import { buildTimeout, ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

beforeAll(() => ensureBuilt(), buildTimeout);

const rebuild = { "rebuild.json": '{ "schema": 1, "title": "Broken", "units": "inch" }' };

function journalboxOpen(
  args: readonly string[],
  cwd: string,
  environment: NodeJS.ProcessEnv = {},
): ChildProcess {
  const program = join(packageRoot(), "dist", "cli", "main.js");
  const child = spawn(process.execPath, [program, "open", ...args], {
    cwd,
    env: { ...process.env, NO_COLOR: "1", NODE_OPTIONS: "", CI: "1", ...environment },
    stdio: ["ignore", "pipe", "pipe"],
  });
  onTestFinished(() => {
    child.kill("SIGKILL");
  });
  return child;
}

/** Resolves with what was printed when the address is among it. */
function untilOpen(child: ChildProcess): Promise<{ out: string; address: string }> {
  return new Promise((resolve, reject) => {
    let out = "";
    child.stdout!.setEncoding("utf8").on("data", (part) => {
      out += part;
      const address = /http:\/\/127\.0\.0\.1:\d+\/\?token=\S+/.exec(out)?.[0];
      if (address !== undefined && /Ctrl-C/.test(out)) resolve({ out, address });
    });
    child.once("exit", (code) => reject(new Error(`ended with ${code}: ${out}`)));
  });
}

function ended(child: ChildProcess): Promise<number | null> {
  return new Promise((resolve) => child.once("exit", resolve));
}

describe("journalbox open", () => {
  it("prints an address that lets in, serves the rebuild, and ends on Ctrl-C with exit code 0", async () => {
    const folder = temporaryFolder(rebuild);
    const child = journalboxOpen(["--no-browser"], folder);
    const { address } = await untilOpen(child);
    const first = await fetch(address, { redirect: "manual" });
    const cookie = first.headers.get("set-cookie")!.split(";")[0]!;
    const api = new URL("/api/rebuild", address);
    const { title, notice } = await (await fetch(api, { headers: { cookie } })).json();
    expect([title, notice]).toEqual(["Broken", ""]);
    const end = ended(child);
    child.kill("SIGINT");
    expect(await end).toBe(0);
    await expect(fetch(address)).rejects.toThrow();
  });
  it("opens the demo where there is no rebuild, and says so; a folder that is named must be one", async () => {
    const nowhere = temporaryFolder();
    const child = journalboxOpen([], nowhere);
    const { address } = await untilOpen(child);
    const cookie = (await fetch(address, { redirect: "manual" })).headers.get("set-cookie")!.split(";")[0]!;
    const { invented, notice } = await (
      await fetch(new URL("/api/rebuild", address), { headers: { cookie } })
    ).json();
    expect(invented).toBe(true);
    expect(notice).toMatch(/demo rebuild/);
    const named = journalboxOpen([nowhere], nowhere);
    expect(await ended(named)).toBe(2);
  });
  it("takes a port, and says where it is taken or none", async () => {
    const folder = temporaryFolder(rebuild);
    const { address } = await untilOpen(journalboxOpen(["--no-browser"], folder));
    const { port } = new URL(address);
    const second = journalboxOpen(["--port", port], folder);
    let told = "";
    second.stderr!.setEncoding("utf8").on("data", (part) => {
      told += part;
    });
    expect(await ended(second)).toBe(1);
    expect(told).toContain(`port ${port} is taken`);
    for (const wrong of ["0", "70000", "x", "80.5"])
      expect(await ended(journalboxOpen(["--port", wrong], folder))).toBe(2);
  });
});

describe.runIf(process.platform === "linux")("journalbox open, killed", () => {
  it("leaves no kernel", async () => {
    const child = journalboxOpen(["--no-browser"], temporaryFolder(rebuild));
    await untilOpen(child);
    // One is started before any page asks for it.
    const kernels = await until(
      () => childrenOf(child.pid!),
      ({ length }) => length > 0,
    );
    child.kill("SIGKILL");
    await until(
      () => kernels.filter(isAlive),
      ({ length }) => length === 0,
    );
  });
});

describe("prepareLater(prepare)", () => {
  it("prepares once, twenty seconds later, and takes a failure for no harm", async () => {
    vi.useFakeTimers();
    onTestFinished(() => void vi.useRealTimers());
    vi.stubEnv("XDG_CACHE_HOME", temporaryFolder());
    vi.stubEnv("LOCALAPPDATA", process.env.XDG_CACHE_HOME);
    vi.stubEnv("HOME", process.env.XDG_CACHE_HOME);
    vi.stubEnv("JOURNALBOX_QUICK_START", "on");
    onTestFinished(() => void vi.unstubAllEnvs());
    const prepare = vi.fn(() => Promise.reject(new Error("no room")));
    prepareLater(prepare);
    await vi.advanceTimersByTimeAsync(19_999);
    expect(prepare).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(prepare).toHaveBeenCalledOnce();
    vi.stubEnv("JOURNALBOX_QUICK_START", "off");
    prepareLater(prepare);
    expect(vi.getTimerCount()).toBe(0);
  });
  it("is what journalbox open does: some time later there is a prepared start", async () => {
    const cache = temporaryFolder();
    const environment = { XDG_CACHE_HOME: cache, LOCALAPPDATA: cache, JOURNALBOX_QUICK_START: "on" };
    const child = journalboxOpen(["--no-browser"], temporaryFolder(rebuild), { ...environment, HOME: cache });
    await untilOpen(child);
    const file = quickStartFile({ ...process.env, ...environment });
    await until(() => existsSync(file), Boolean, 200_000);
    expect(statSync(file).size).toBeGreaterThan(1e6);
  }, 240_000); // it has the lowest claim on the processor
});

/** Looks again and again until what is seen will do. */
async function until<T>(look: () => T, fits: (seen: T) => boolean, patience = 30_000): Promise<T> {
  for (const end = Date.now() + patience; ; await pause(50)) {
    const seen = look();
    if (fits(seen)) return seen;
    if (Date.now() > end) throw new Error(`after ${patience / 1000} s there still is ${String(seen)}`);
  }
}

/** @source proc(5): /proc/pid/task/tid/children */
function childrenOf(pid: number): readonly number[] {
  return readFileSync(`/proc/${pid}/task/${pid}/children`, "utf8")
    .trim()
    .split(" ")
    .filter(Boolean)
    .map(Number);
}

function isAlive(pid: number): boolean {
  return existsSync(`/proc/${pid}`) && !/^State:\s*Z/m.test(readFileSync(`/proc/${pid}/status`, "utf8"));
}

describe("openerFor(platform, environment, address)", () => {
  const address = "http://127.0.0.1:8470/?token=a-b_c";
  it("is the platform's own", () => {
    expect(openerFor("darwin", {}, address)).toEqual({ command: "open", args: [address] });
    expect(openerFor("win32", {}, address)?.args.at(-1)).toBe(address);
    expect(openerFor("linux", { DISPLAY: ":0" }, address)).toEqual({ command: "xdg-open", args: [address] });
    expect(openerFor("linux", { WAYLAND_DISPLAY: "wayland-0" }, address)?.command).toBe("xdg-open");
  });
  it("is none where nobody looks", () => {
    expect(openerFor("linux", {}, address)).toBeUndefined();
    for (const environment of [{ CI: "true" }, { SSH_CONNECTION: "10.0.0.1 1 10.0.0.2 22" }])
      for (const platform of ["darwin", "win32", "linux"] as const)
        expect(openerFor(platform, { ...environment, DISPLAY: ":0" }, address)).toBeUndefined();
  });
});
