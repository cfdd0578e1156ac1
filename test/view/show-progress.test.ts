import { afterEach, expect, it, vi } from "vitest";
import { showProgress } from "../../kernel-helpers/view/show-progress.js";

afterEach(() => vi.restoreAllMocks());

/** What is written while a piece of work of `of` parts goes on. */
function written(of: number): string[] {
  const told: string[] = [];
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    told.push(String(text));
    return true;
  });
  const progress = showProgress("films");
  for (let done = 1; done <= of; done++) progress(done, of);
  vi.restoreAllMocks();
  return told;
}

it("showProgress(what) rewrites one line at every twentieth, and leaves how many were done", () => {
  const told = written(200);
  expect(told).toHaveLength(20);
  expect(told[0]).toBe("\r10 of 200 films");
  expect(told.at(-1)).toBe("\r200 of 200 films\n");
  expect(told.every((text) => text.startsWith("\r"))).toBe(true);
});

it("writes the same at every run, and tells small pieces part by part", () => {
  expect(written(200)).toEqual(written(200));
  expect(written(3)).toEqual(["\r1 of 3 films", "\r2 of 3 films", "\r3 of 3 films\n"]);
});

it("wants a word for what is counted", () => {
  expect(() => showProgress(" ")).toThrow('showProgress: what must be named, e.g. "films", got ""');
});
