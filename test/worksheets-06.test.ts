import { cpSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { runRebuild } from "../kernel-helpers/notebook/run-rebuild.js";
import { failureText } from "../kernel-helpers/notebook/runner/failure-text.js";
import { inch, type Length, mm } from "../kernel-helpers/quantity/index.js";
import { templateFolder } from "../kernel-helpers/record/find-sheets.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type { CleanUp } from "../kernel-helpers/shaft/index.js";
import { ensureBuilt } from "./support/built.js";
import { temporaryFolder } from "./support/temporary-folder.js";

const sheets = ["04-shaft-survey", "06-shaft-salvage"];
const demos: readonly (readonly [demo: string, finished: Length])[] = [
  ["demo", inch(2.425)],
  ["demo-metric", mm(59.7)],
];

describe.each(demos)("06-shaft-salvage on %s", (demo, finished) => {
  let folder: string;
  beforeAll(async () => {
    await ensureBuilt();
    folder = temporaryFolder();
    for (const part of ["rebuild.json", "tables"])
      cpSync(join(templateFolder(), demo, part), join(folder, part), { recursive: true });
    mkdirSync(join(folder, "sheets"));
    for (const sheet of sheets)
      cpSync(join(templateFolder(), `${sheet}.ipynb`), join(folder, "sheets", `${sheet}.ipynb`));
    const { results } = await runRebuild({ directory: folder });
    const failed = results.filter(({ status }) => status === "failed");
    if (failed.length > 0) throw new Error(failed.map(failureText).join("\n"));
  }, 240_000);

  it("plans on a cylinder between the bounds, and the journal is turned below it", () => {
    const record = readSheetRecord(folder, "06-shaft-salvage")!;
    const { least, most, plan } = publishedValue(record, "left") as CleanUp;
    expect(plan.value.si).toBeGreaterThanOrEqual(least.value.si);
    expect(plan.value.si).toBeLessThanOrEqual(most.value.si);
    expect(finished.si).toBeLessThan(plan.value.si - 2 * plan.standardUncertainty.si);
  });
  it("leaves a decision in the record, taken against a limit with a reason of its own", () => {
    const text = JSON.stringify(readSheetRecord(folder, "06-shaft-salvage"));
    expect(text).toMatch(/"choice":"turn undersize"/);
    expect(text).toMatch(/"override":"The limit is the maker's/);
  });
});
