import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import "../notebook/kernel/prepared-start.js";
import { buildTimeout, ensureBuilt } from "../support/built.js";
import { isHere, newBench } from "./jupyter.js";

// What lies under JupyterLab, Notebook and nbconvert alike: Jupyter's own way to start kernels and to talk to them.
const python = "/usr/bin/python3";
const here = isHere([python, "-c", "import jupyter_client"], "the kernel through jupyter_client");

interface Ran {
  readonly reply: {
    readonly status: string;
    readonly execution_count: number;
    readonly user_expressions: unknown;
  };
  readonly told: readonly string[];
}

describe.runIf(here).each(["off", "on"])("jupyter_client, with the prepared start %s", (quickStart) => {
  let said: Record<string, unknown>;
  beforeAll(async () => {
    await ensureBuilt();
    const { sheets, environment } = newBench();
    const { stdout, stderr } = spawnSync(python, [join(__dirname, "talk.py"), sheets], {
      encoding: "utf8",
      env: { ...environment, JOURNALBOX_QUICK_START: quickStart },
      timeout: 180_000,
    });
    if (stdout === "") throw new Error(stderr);
    said = JSON.parse(stdout);
  }, buildTimeout + 240_000);

  it("runs cells; a silent one shows nothing, and one kept out of history is not counted", () => {
    const ran = (name: string): Ran => said[name] as Ran;
    const shown = ["execute_input", "execute_result"];
    expect(ran("plain")).toMatchObject({ reply: { status: "ok", execution_count: 1 }, told: shown });
    expect(ran("silent")).toMatchObject({ reply: { status: "ok", execution_count: 1 }, told: [] });
    expect(ran("not counted")).toMatchObject({ reply: { status: "ok", execution_count: 1 }, told: shown });
    expect(ran("expressions").reply).toMatchObject({
      execution_count: 2,
      user_expressions: { a: { status: "error", ename: "NotSupported" } },
    });
  });
  it("aborts what was sent after a cell that fails, and says so of each", () => {
    expect(said["after an error"]).toEqual(["error", "aborted", "aborted"]);
  });
  it("interrupts an endless loop after an await", () => {
    expect(said.interrupted).toBe("Interrupted");
  });
  it("has no history", () => {
    expect(said.history).toEqual({ status: "ok", history: [] });
  });
  it("restarts with its numbers anew, and leaves no process after restart, shutdown, or being killed", () => {
    expect(said["after restart"]).toBe(1);
    expect(said["gone after restart"]).toBe(true);
    expect(said["gone after shutdown"]).toBe(true);
    expect(said["gone after it was killed"]).toBe(true);
  });
});
