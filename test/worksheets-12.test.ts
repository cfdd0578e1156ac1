import { cpSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { runRebuild } from "../kernel-helpers/notebook/run-rebuild.js";
import { templateFolder } from "../kernel-helpers/record/find-sheets.js";
import { ensureBuilt } from "./support/built.js";
import { temporaryFolder } from "./support/temporary-folder.js";

beforeAll(() => ensureBuilt(), 120_000);

describe.each(["demo", "demo-metric"])("the handover of %s", (demo) => {
  it("is run last, and holds the reading the shaft survey wants next and the cautions shown on the way", async () => {
    const folder = temporaryFolder();
    for (const part of ["rebuild.json", "tables"])
      cpSync(join(templateFolder(), demo, part), join(folder, part), { recursive: true });
    // Its name would set it first: it is run last all the same.
    for (const sheet of ["04-shaft-survey.ipynb", "12-handover.ipynb"])
      cpSync(join(templateFolder(), sheet), join(folder, "sheets", sheet.replace("12-", "00-")));
    const { results } = await runRebuild({ directory: folder });
    expect(results.map(({ sheet, status }) => [sheet, status])).toEqual([
      ["04-shaft-survey", "ok"],
      ["00-handover", "ok"],
    ]);
    const shown = readFileSync(join(folder, "out", "00-handover.ipynb"), "utf8");
    expect(shown).toMatch(/to find where band \d ends and band \d begins/);
    expect(shown).toMatch(/A shaft on supports rolls and falls \(04-shaft-survey\)/);
    expect(shown).toMatch(/all on record stands on the files as they are/);
  }, 120_000);
});
