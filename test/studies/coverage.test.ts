import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { expectClose } from "../support/expect-close.js";
import { coverageRows } from "./coverage.js";
import { type StudyRow, shareInterval, shareOf } from "./study-row.js";
import { asWished } from "./study-table.js";

const surveys = 200;
const rows = coverageRows(surveys);

/** How far a share in the wished range may fall outside it by chance, 3 standard deviations. */
function slack({ wished, trials }: StudyRow): { least: number; most: number } {
  const by = (share: number): number => 3 * Math.sqrt((share * (1 - share)) / trials);
  const [least, most] = wished ?? [0, 1];
  return { least: least - by(least), most: most + by(most) };
}

describe("simulated surveys of known shafts", () => {
  it.each(rows.map((row) => [row.shaft, row.promise, row] as const))("%s: %s", (_shaft, _promise, row) => {
    const { least, most } = slack(row);
    expect(row.trials).toBeGreaterThanOrEqual(surveys / 2);
    expect(shareOf(row)).toBeGreaterThanOrEqual(least);
    expect(shareOf(row)).toBeLessThanOrEqual(most);
  });

  it.each([["worn band's depth"], ["taper"], ["edge"]])(
    "hold the true %s in the stated interval neither too seldom nor too often, all rows together",
    (of) => {
      const intervals = rows.filter(
        ({ promise, wished }) => promise.includes(`95 % interval of the ${of}`) && wished !== undefined,
      );
      const sum = (what: (row: StudyRow) => number): number =>
        intervals.reduce((all, row) => all + what(row), 0);
      expect(sum(({ trials }) => trials)).toBeGreaterThanOrEqual(900);
      const share = sum(({ kept }) => kept) / sum(({ trials }) => trials);
      expect(share).toBeGreaterThanOrEqual(0.93);
      expect(share).toBeLessThanOrEqual(0.97);
    },
  );

  it("are the ones README.md tells of, at least 2000 a row", () => {
    const table = readFileSync(join(__dirname, "README.md"), "utf8")
      .split("\n")
      .filter((line) => /^\| (?!shaft |---)/.test(line))
      .map((line) => line.split("|").map((cell) => cell.trim()));
    expect(table.map(([, shaft, promise]) => [shaft, promise])).toEqual(
      rows.map(({ shaft, promise }) => [shaft, promise]),
    );
    for (const [, , , trials] of table)
      expect(Number(trials!.match(/\d+$|\d+(?= surveys)/)![0])).toBeGreaterThanOrEqual(2000);
  });
});

describe("shareInterval(kept, trials)", () => {
  it("gives Wilson's interval", () => {
    // 81 of 263: 0.2553 to 0.3662, R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, method 3 (from memory).
    const [low, high] = shareInterval(81, 263);
    expectClose(low, 0.2553, { abs: 5e-5, because: "4 printed decimals" });
    expectClose(high, 0.3662, { abs: 5e-5, because: "4 printed decimals" });
  });

  it("solves (p − π)² = z² π (1 − π)/n at both ends", () => {
    for (const end of shareInterval(485, 500))
      expectClose((0.97 - end) ** 2, (1.959963984540054 ** 2 * end * (1 - end)) / 500, {
        rel: 1e-9,
        because: "rounding only",
      });
  });

  it("stays between 0 and 1 where all or none went well", () => {
    expect(shareInterval(20, 20)[1]).toBeLessThanOrEqual(1);
    expect(shareInterval(0, 20)[0]).toBeGreaterThanOrEqual(0);
  });
});

describe("asWished(row)", () => {
  it("judges the share found by the range wished for", () => {
    const row = {
      shaft: "",
      promise: "",
      wished: [0.93, 0.97],
      stated: undefined,
      trials: 100,
      surveys: 100,
    } as const;
    expect([90, 93, 95, 97, 99].map((kept) => asWished({ ...row, kept }))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    expect(asWished({ ...row, kept: 10, wished: undefined })).toBe(true);
  });
});
