import { spawnSync } from "node:child_process";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { launcherName, watchParent } from "../../../kernel-helpers/notebook/kernel/parent-watch.js";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** The number of a process that is gone. */
const gone = String(spawnSync(process.execPath, ["--version"]).pid);
const alive = String(process.pid);

function timesEnded(environment: NodeJS.ProcessEnv): number {
  const end = vi.fn();
  watchParent(environment, end);
  vi.advanceTimersByTime(1000);
  return end.mock.calls.length;
}

// None of these is the parent of this process, so only the numbers tell, as on Windows.
describe("watchParent(environment, end)", () => {
  it("ends a kernel whose front end is gone, or whose launcher, though the other is there", () => {
    expect(timesEnded({ JPY_PARENT_PID: gone })).toBe(1);
    expect(timesEnded({ [launcherName]: gone })).toBe(1);
    expect(timesEnded({ JPY_PARENT_PID: alive, [launcherName]: gone })).toBe(1);
    expect(timesEnded({ JPY_PARENT_PID: gone, [launcherName]: alive })).toBe(1);
  });
  it("lets it live as long as all who are named are there", () => {
    expect(timesEnded({ JPY_PARENT_PID: alive })).toBe(0);
    expect(timesEnded({ JPY_PARENT_PID: alive, [launcherName]: alive })).toBe(0);
  });
  it("looks at nothing where nobody is named, or a name is no process", () => {
    for (const name of [undefined, "", "0", "1", "x", "-5"]) {
      watchParent({ JPY_PARENT_PID: name }, () => {});
      expect(vi.getTimerCount(), String(name)).toBe(0);
    }
  });
});
