import { cpSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { bundleName, shareRebuild } from "../../../kernel-helpers/notebook/share/index.js";
import { type Files, textOf, verifyBag } from "../../../kernel-helpers/record/bundle/index.js";
import { demoFolder } from "../../../kernel-helpers/record/index.js";
import { copyOfDemoRun } from "../../support/run-demo.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { bagFaults } from "../../support/validate-bag.js";

interface Entity {
  readonly "@id": string;
  readonly "@type": unknown;
  readonly [field: string]: unknown;
}

function crateOf(bag: Files): readonly Entity[] {
  return JSON.parse(textOf(bag.get("data/ro-crate-metadata.json")!))["@graph"];
}

const today = "2026-05-04";
let folder: string;

beforeAll(async () => {
  folder = await copyOfDemoRun("demo");
}, 240_000);

describe("shareRebuild(a rebuild that has been run)", () => {
  it("gives the report of the run itself, to the byte", async () => {
    const { report } = await shareRebuild({ directory: folder, today });
    expect(report === readFileSync(join(folder, "out", "report.html"), "utf8")).toBe(true);
  });

  // Measured: 2.39 MB with twelve sheets, of it plotly.js 0.67, pictures 0.44, the data of live figures 0.23, files to take away 0.19.
  it("keeps the report of the whole demo under 3 MB", async () => {
    expect(Buffer.byteLength((await shareRebuild({ directory: folder, today })).report)).toBeLessThan(3e6);
  });

  it("gives a valid bag, the same bytes each time", async () => {
    const first = await shareRebuild({ directory: folder, today });
    const second = await shareRebuild({ directory: folder, today: "2030-01-01", date: first.date });
    expect(verifyBag(first.bag)).toMatchObject({ valid: true, faults: [] });
    const unpacked = temporaryFolder();
    for (const [path, content] of first.bag) {
      mkdirSync(dirname(join(unpacked, path)), { recursive: true });
      writeFileSync(join(unpacked, path), content);
    }
    expect(bagFaults(unpacked)).toEqual([]);
    expect([...second.bag.keys()]).toEqual([...first.bag.keys()]);
    for (const [path, content] of first.bag)
      expect(Buffer.from(second.bag.get(path)!).equals(content), path).toBe(true);
  });

  // RO-Crate 1.1: descriptor and root as the specification demands them; each reference leads to something.
  it("describes itself as RO-Crate 1.1 demands", async () => {
    const { bag } = await shareRebuild({ directory: folder, today });
    const graph = crateOf(bag);
    const byId = new Map(graph.map((entity) => [entity["@id"], entity]));
    expect(byId.size).toBe(graph.length);
    expect(byId.get("ro-crate-metadata.json")).toMatchObject({
      "@type": "CreativeWork",
      about: { "@id": "./" },
      conformsTo: { "@id": "https://w3id.org/ro/crate/1.1" },
    });
    const root = byId.get("./")!;
    expect(root["@type"]).toBe("Dataset");
    for (const field of ["name", "description", "license"]) expect(root[field]).toMatch(/\w/);
    expect(root.datePublished).toMatch(/^\d{4}-\d\d-\d\d$/);
    const parts = (root.hasPart as { "@id": string }[]).map((part) => part["@id"]);
    const payload = [...bag.keys()].filter((path) => path.startsWith("data/")).map((path) => path.slice(5));
    expect(parts.map(decodeURIComponent).sort()).toEqual(
      payload.filter((path) => path !== "ro-crate-metadata.json").sort(),
    );
    const referred = JSON.stringify(graph).matchAll(/\{"@id":"([^"]+)"\}/g);
    for (const [, id] of referred)
      expect(byId.has(id!) || id === "https://w3id.org/ro/crate/1.1", id).toBe(true);
  });

  it("holds the worksheets it was run with, and nothing that is only noted on this machine", async () => {
    const { bag } = await shareRebuild({ directory: folder, today });
    const paths = [...bag.keys()];
    expect(paths).toContain("data/sheets/04-shaft-survey.ipynb");
    expect(paths.filter((path) => path.includes("state"))).toEqual([]);
    expect([...bag.values()].some((content) => textOf(content).includes(folder))).toBe(false);
  });

  it("says in report and bag what was left out, and does not show it", async () => {
    const { bag, report, notices } = await shareRebuild({ directory: folder, today, without: ["remark"] });
    expect(notices.join("\n")).toMatch(/Left out of tables\/shaft-survey\.csv: the column "remark"/);
    expect(textOf(bag.get("bag-info.txt")!)).toContain(notices[0]);
    expect(report).toContain("Of this copy");
    expect(report).not.toContain("ridge felt with the nail");
    expect(verifyBag(bag).valid).toBe(true);
    for (const [path, content] of bag)
      if (!path.includes("/sheets/")) expect(textOf(content), path).not.toContain("ridge felt with the nail");
  });

  it("takes the list of rebuild.json as well", async () => {
    const copy = temporaryFolder();
    cpSync(folder, copy, { recursive: true });
    const facts = JSON.parse(readFileSync(join(copy, "rebuild.json"), "utf8"));
    writeFileSync(
      join(copy, "rebuild.json"),
      JSON.stringify({ ...facts, private: { machine: ["rotation"], columns: ["remark"] } }),
    );
    const { report, notices, notFresh } = await shareRebuild({ directory: copy, today });
    expect(report).not.toContain("clockwise, seen from the driven pulley");
    expect(notices.join("\n")).toMatch(/the machine fact "rotation"/);
    // The list itself is a change of rebuild.json since the run: that too is said.
    expect(notFresh.map(({ name }) => name)).toContain("04-shaft-survey");
    expect(notices.join("\n")).toMatch(/04-shaft-survey is not what its files give now.*rebuild\.json/s);
  });

  it("refuses a rebuild that has not been run, and a link among its files", async () => {
    const copy = temporaryFolder();
    cpSync(demoFolder(), copy, { recursive: true, filter: (path) => !/[/\\](?:out|record)$/.test(path) });
    await expect(shareRebuild({ directory: copy, today })).rejects.toThrow(
      /must have been run, got none of 01-intake/,
    );
    mkdirSync(join(copy, "tables", "more"));
    symlinkSync("/etc/hosts", join(copy, "tables", "more", "hosts.csv"));
    await expect(shareRebuild({ directory: copy, today })).rejects.toThrow(
      /a link or a device: tables\/more/,
    );
  });
});

describe("bundleName(title)", () => {
  it("is a plain name on every machine", () => {
    expect(bundleName("../../<b>Räder</b> №2")).toBe("b-rader-b-2");
    expect(bundleName("水車")).toBe("rebuild");
    expect(bundleName("x".repeat(300))).toHaveLength(60);
  });
});
