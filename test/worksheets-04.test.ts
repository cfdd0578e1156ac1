import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import { copyOfDemo, runThrough } from "./support/run-demo.js";

const sheets = ["04-shaft-survey", "05-taper"];

/** What the survey notes as still to be measured. */
async function wanted(folder: string): Promise<readonly string[]> {
  await runThrough(folder);
  const { measure } = readSheetRecord(folder, "04-shaft-survey")!.notes as unknown as {
    readonly measure: readonly { readonly what: string }[];
  };
  return measure.map(({ what }) => what);
}

describe("the survey of a shaft that has not been turned between centres yet", () => {
  it("goes through without the indicator's readings, as do salvage and turning, and asks for them", async () => {
    const none = copyOfDemo("demo", sheets);
    rmSync(join(none, "tables", "run-out.csv"));
    expect(await wanted(none)).toContain("run-out between centres");

    const begun = copyOfDemo("demo-metric", [
      "01-intake",
      "02-fastener-removal",
      ...sheets,
      "06-shaft-salvage",
      "07-turning-set-up",
    ]);
    const table = join(begun, "tables", "run-out.csv");
    const lines = readFileSync(table, "utf8").split("\n");
    const header = lines.findIndex((line) => line.startsWith("station ["));
    writeFileSync(table, `${lines.slice(0, header + 1).join("\n")}\n`);
    expect(await wanted(begun)).toContain("run-out between centres");
  }, 120_000);

  it("asks for them no more once they are there", async () => {
    expect(await wanted(copyOfDemo("demo", sheets))).not.toContain("run-out between centres");
  }, 120_000);
});
