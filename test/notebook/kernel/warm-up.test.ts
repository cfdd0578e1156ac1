import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { WarmUp } from "../../../kernel-helpers/notebook/kernel/warm-up.js";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function warmUp(isFree: () => boolean = () => true, steps = 3): { done: number[]; warm: WarmUp } {
  const done: number[] = [];
  const all = function* (): Generator<void> {
    for (let step = 1; step <= steps; step += 1) {
      done.push(step);
      yield;
    }
  };
  return { done, warm: new WarmUp(all(), isFree) };
}

describe("new WarmUp(steps, isFree).postpone()", () => {
  it("does nothing before somebody has asked something, and all of it when it is quiet after that", () => {
    const { done, warm } = warmUp();
    vi.advanceTimersByTime(10_000);
    expect(done).toEqual([]);
    warm.postpone();
    vi.advanceTimersByTime(99);
    expect(done).toEqual([]);
    vi.advanceTimersByTime(900);
    expect(done).toEqual([1, 2, 3]);
    expect(vi.getTimerCount()).toBe(0);
  });
  it("waits anew at each request, and goes on where it was", () => {
    const { done, warm } = warmUp();
    warm.postpone();
    vi.advanceTimersByTime(100);
    expect(done).toEqual([1]);
    for (let request = 0; request < 5; request += 1) {
      warm.postpone();
      vi.advanceTimersByTime(90);
    }
    expect(done).toEqual([1]);
    vi.advanceTimersByTime(100);
    expect(done).toEqual([1, 2, 3]);
  });
  it("lets a running cell be", () => {
    let isFree = false;
    const { done, warm } = warmUp(() => isFree);
    warm.postpone();
    vi.advanceTimersByTime(1000);
    expect(done).toEqual([]);
    isFree = true;
    vi.advanceTimersByTime(1000);
    expect(done).toEqual([1, 2, 3]);
  });
  it("ends at a step that fails, and says nothing", () => {
    const failing = function* (): Generator<void> {
      yield;
      throw new Error("not there");
    };
    const warm = new WarmUp(failing(), () => true);
    warm.postpone();
    vi.advanceTimersByTime(1000);
    expect(vi.getTimerCount()).toBe(0);
  });
});
