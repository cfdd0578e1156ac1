import { describe, expect, it } from "vitest";
import type { RunGives } from "../../../kernel-helpers/notebook/audit/judge-decision.js";
import { type RunOn, type Worker, whatCarries } from "../../../kernel-helpers/notebook/audit/what-carries.js";
import type { CarryingReadings } from "../../../kernel-helpers/view/results/audit-types.js";

const table = (...rows: string[]): ReadonlyMap<string, string> =>
  new Map([
    ["tables/t.csv", `station [in], diameter [in]\n${rows.join("\n")}\n`],
    ["tables/apart.csv", "depth [in]\n0.5\n0.6\n"],
    ["rebuild.json", "{}"],
  ]);
const diameters = (files: ReadonlyMap<string, string>): number[] =>
  files
    .get("tables/t.csv")!
    .trim()
    .split("\n")
    .slice(1)
    .map((row) => Number(row.split(",")[1]));
const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

/** Decides on a figure of the diameters, which must not be below a limit. */
const decides =
  (figure: (values: readonly number[]) => number, limit: number): RunOn =>
  async (files) => {
    const value = figure(diameters(files));
    const breaks = value < limit ? ["too small"] : [];
    const grounds = { options: [{ name: "keep", figures: { value }, breaks }], limits: {} };
    return { choice: "keep", grounds, ...(breaks.length > 0 && { refused: "too small" }) } as RunGives;
  };

const files = table("1, 2.4309", "2, 2.4311", "3, 2.4312", "4, 2.4308");
async function carried(runOn: RunOn, confirm?: RunOn, workers = 1): Promise<CarryingReadings> {
  const worker: Worker = { runOn, ...(confirm && { confirm }) };
  return whatCarries({
    files,
    read: new Set(["tables/t.csv", "rebuild.json"]),
    gives: await runOn(files),
    workers: Array.from({ length: workers }, () => worker),
    cells: "",
  });
}

describe("whatCarries(input)", () => {
  it("finds the step at which a mean of four crosses the limit: four times as far as the mean has room", async () => {
    // Room of 0.00101 in for the mean is 0.00404 in for one reading: 40 steps leave it above, 41 do not.
    const { overturning, readings, apart, moving } = await carried(decides(mean, 2.42999));
    expect([readings, apart, moving]).toEqual([10, 2, 4]);
    expect(overturning).toHaveLength(4);
    expect(overturning[0]).toMatchObject({ line: 2, column: "diameter", flipsBelow: "2.4268" });
    expect(overturning[0]).not.toHaveProperty("flipsAbove");
  });

  it("says that nothing overturns it where the limit is out of reach", async () => {
    // 100 steps of one of four move the mean by 0.0025 in.
    expect((await carried(decides(mean, 2.4284))).overturning).toEqual([]);
    expect((await carried(decides(mean, 2.4286))).overturning).toHaveLength(4);
  });

  it("tries nearer steps where a reading far off is set aside, and so finds a flip that undoes itself further out", async () => {
    const withoutSlips = (values: readonly number[]): number =>
      mean(values.filter((value) => Math.abs(value - 2.431) < 0.0015));
    const { overturning } = await carried(decides(withoutSlips, 2.4308));
    expect(overturning).toHaveLength(4);
    // Room of 0.0002 in for the mean: 8 steps of one reading touch the limit, 9 cross it.
    expect(overturning[0]!.flipsBelow).toBe("2.4300");
  });

  it("asks no nearer step of a figure that answers in proportion", async () => {
    let runs = 0;
    const keep = decides(mean, 2.4);
    await carried(async (moved) => {
      runs += 1;
      return keep(moved);
    });
    expect(runs).toBe(1 + 2 * 8);
  });

  it("does not take a run that stops for one that overturns", async () => {
    const stops: RunOn = async (moved) =>
      diameters(moved).some((value) => value < 2.43) ? { failure: "no" } : decides(mean, 2.4)(moved);
    const { overturning, moving } = await carried(stops);
    expect(overturning).toEqual([]);
    expect(moving).toBe(4);
  });

  it("tells a step only where the whole run confirms it, and searches again with the whole where it does not", async () => {
    const room = 0.0015;
    const whole: RunOn = async (moved) =>
      mean(diameters(moved)) < 2.431 - room ? decides(mean, 2.431)(moved) : decides(mean, 0)(moved);
    const { overturning } = await carried(decides(mean, 2.4305), whole);
    // By the whole: 60 steps of one reading are the mean's 0.0015 in, 61 cross it.
    expect(overturning.map(({ flipsBelow }) => flipsBelow)).toEqual(["2.4248", "2.4250", "2.4251", "2.4247"]);
  });

  it("finds the same with three workers as with one", async () => {
    const one = await carried(decides(mean, 2.42999));
    expect(await carried(decides(mean, 2.42999), undefined, 3)).toEqual(one);
  });
});
