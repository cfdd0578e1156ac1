import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { architectureFaults } from "./support/architecture.js";

const root = join(__dirname, "..", "kernel-helpers");
const sources = new Map(
  readdirSync(root, { recursive: true, encoding: "utf8" })
    .map((path) => path.replaceAll("\\", "/"))
    .filter((path) => path.endsWith(".ts"))
    .sort()
    .map((path) => [path, readFileSync(join(root, path), "utf8")]),
);

it("kernel-helpers keeps to its layers, its pure folders and its size", () => {
  expect(sources.size).toBeGreaterThan(10);
  expect(
    architectureFaults(sources, {
      pureFolders: ["quantity", "statistics", "handbook", "survey", "intake", "joint", "shaft", "bearing"],
      fileReaders: ["survey/read-table-file.ts"],
      dataFiles: [],
      longestFile: 400,
    }),
  ).toEqual([]);
});
