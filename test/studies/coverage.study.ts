import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { coverageRows } from "./coverage.js";
import { studyPage } from "./study-page.js";
import { asWished } from "./study-table.js";

it("stated intervals hold the truth as often as they say; writes README.md", () => {
  const rows = coverageRows(2500);
  writeFileSync(join(__dirname, "README.md"), studyPage(rows));
  expect(rows.filter((row) => !asWished(row))).toEqual([]);
});
