import { parse } from "csv-parse/sync";
import { bench, describe } from "vitest";
import { readTable } from "../../kernel-helpers/survey/read-table.js";

// A long survey: 50 000 stations at two angles, a remark here and there.
const rows = Array.from({ length: 100_000 }, (_, i) => {
  const [station, angle] = [(i >> 1) / 100, (i % 2) * 90];
  const diameter = (2.4375 - 0.003 * Math.sin(i / 1000) ** 2).toFixed(4);
  return `${station.toFixed(2)},${angle},${diameter},${i % 50 === 0 ? "light rust" : ""}`;
});
const text = `# temperature: 54 ± 2 degF\nstation [in],angle [deg],diameter [in],remark\n${rows.join("\n")}\n`;
const bytes = new TextEncoder().encode(text);

describe("a table of 100 000 rows", () => {
  bench("read and validated: readTable", () => {
    readTable(bytes, { name: "survey", file: "survey.csv" });
  });
  bench("split into cells only: csv-parse 7.0.3", () => {
    parse(bytes, { comment: "#" });
  });
});
