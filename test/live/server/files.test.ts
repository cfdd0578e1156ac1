import { existsSync, readdirSync, readFileSync, unlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { sha256 } from "../../../kernel-helpers/live/server/rebuild-files.js";
import { templateFolder } from "../../../kernel-helpers/record/index.js";
import { goodTable, liveRebuild, sheetFile } from "./live-client.js";

const withOutput = (source: string, count: number | null, outputs: unknown[] = []) => {
  const notebook = JSON.parse(sheetFile(source));
  Object.assign(notebook.cells[0], { execution_count: count, outputs });
  return notebook;
};

describe("GET /api/rebuild", () => {
  it("lists sheets with title and state, and tables", async () => {
    const heading = { cell_type: "markdown", id: "top", metadata: {}, source: "# The bore\n" };
    const sheet = JSON.parse(sheetFile("1"));
    sheet.cells.unshift(heading);
    const live = await liveRebuild({
      "tables/survey.csv": goodTable,
      "sheets/01-bore.ipynb": JSON.stringify(sheet),
      "sheets/02-torn.ipynb": "{ torn",
    });
    const { json } = await live.ask("GET", "/api/rebuild");
    expect(json).toMatchObject({
      title: "Pump shaft",
      invented: false,
      notice: "",
      unitSystem: "inch",
      faults: [],
      tables: [{ name: "survey", file: "tables/survey.csv" }],
    });
    expect(json.sheets).toEqual([
      {
        name: "01-bore",
        title: "The bore",
        own: true,
        state: "never run",
        why: expect.stringMatching(/top to bottom/),
      },
      {
        name: "02-torn",
        title: "02-torn",
        own: true,
        state: "failed",
        why: expect.stringMatching(/not JSON/),
      },
    ]);
  });
  it("tells what is wrong with rebuild.json, and lists the rest", async () => {
    const live = await liveRebuild({
      "rebuild.json": '{ "schema": 1, "units": "ell" }',
      "sheets/01.ipynb": sheetFile("1"),
    });
    const { json, status } = await live.ask("GET", "/api/rebuild");
    expect(status).toBe(200);
    expect(json.faults.join()).toMatch(/title/);
    expect(json.sheets).toHaveLength(1);
  });
});

describe("PUT /api/tables/<name>", () => {
  it("saves what was typed, faults and all, over what was loaded", async () => {
    const live = await liveRebuild({ "tables/survey.csv": goodTable });
    const loaded = (await live.ask("GET", "/api/tables/survey")).json;
    expect(loaded).toEqual({
      name: "survey",
      file: "tables/survey.csv",
      text: goodTable,
      sha256: sha256(goodTable),
    });
    const text = "station [in],diameter\n1,2.5O3\n";
    const saved = await live.ask("PUT", "/api/tables/survey", { text, base: loaded.sha256 });
    expect(saved.json).toEqual({ sha256: sha256(text) });
    expect(readFileSync(join(live.directory, "tables", "survey.csv"), "utf8")).toBe(text);
    expect(readdirSync(join(live.directory, "tables"))).toEqual(["survey.csv"]);
  });
  it("answers 409 with what is on disk when that is not what was loaded, and leaves it alone", async () => {
    const live = await liveRebuild({ "tables/survey.csv": goodTable });
    const { sha256: base } = (await live.ask("GET", "/api/tables/survey")).json;
    const other = `${goodTable}4,2.4369\n`;
    writeFileSync(join(live.directory, "tables", "survey.csv"), other);
    const { status, json } = await live.ask("PUT", "/api/tables/survey", { text: "mine", base });
    expect(status).toBe(409);
    expect(json).toMatchObject({ text: other, sha256: sha256(other) });
    expect(readFileSync(join(live.directory, "tables", "survey.csv"), "utf8")).toBe(other);
    // Having seen it, the page may save over it.
    expect((await live.ask("PUT", "/api/tables/survey", { text: "mine", base: json.sha256 })).status).toBe(
      200,
    );
  });
  it("lets one of two pages win, and tells the other", async () => {
    const live = await liveRebuild({ "tables/survey.csv": goodTable });
    const base = sha256(goodTable);
    const answers = await Promise.all(
      ["one", "two", "three"].map((text) => live.ask("PUT", "/api/tables/survey", { text, base })),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409, 409]);
    const now = readFileSync(join(live.directory, "tables", "survey.csv"), "utf8");
    for (const { status, json } of answers) if (status === 409) expect(json.text).toBe(now);
  });
  it("begins a table that is not there, and says 409 where the file has gone", async () => {
    const live = await liveRebuild();
    expect((await live.ask("GET", "/api/tables/bore")).status).toBe(404);
    expect((await live.ask("PUT", "/api/tables/bore", { text: goodTable, base: null })).status).toBe(200);
    expect((await live.ask("PUT", "/api/tables/Bore", { text: "x", base: null })).status).toBe(409);
    unlinkSync(join(live.directory, "tables", "bore.csv"));
    const gone = await live.ask("PUT", "/api/tables/bore", { text: "x", base: sha256(goodTable) });
    expect(gone).toMatchObject({ status: 409, json: { text: null, sha256: null } });
  });
  it("keeps a byte order mark and line ends as they are", async () => {
    const marked = Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from("a [in]\r\n1\r\n")]);
    const live = await liveRebuild({ "tables/t.csv": marked });
    const { text, sha256: base } = (await live.ask("GET", "/api/tables/t")).json;
    expect(text).toBe("a [in]\r\n1\r\n");
    await live.ask("PUT", "/api/tables/t", { text: `${text}2\r\n`, base });
    const after = readFileSync(join(live.directory, "tables", "t.csv"));
    expect(after).toEqual(Buffer.concat([marked, Buffer.from("2\r\n")]));
  });
  it("keeps letters of tables that are not UTF-8", async () => {
    const live = await liveRebuild({
      "tables/ansi.csv": Buffer.from([0x33, 0xb0]), // "3°" in Windows-1252
      "tables/wide.csv": Buffer.from([0xff, 0xfe, 0x33, 0x00, 0xb0, 0x00]), // the same in UTF-16
    });
    for (const name of ["ansi", "wide"]) {
      const { text, sha256: base } = (await live.ask("GET", `/api/tables/${name}`)).json;
      expect(text).toBe("3°");
      await live.ask("PUT", `/api/tables/${name}`, { text, base });
      expect(readFileSync(join(live.directory, "tables", `${name}.csv`), "utf8")).toBe("3°");
    }
  });
});

describe("POST /api/tables/<name>/check", () => {
  it("names each fault by line and column, and writes nothing", async () => {
    const live = await liveRebuild({ "tables/survey.csv": goodTable });
    const text = "station [in],diameter\n1,2.5O3\n";
    const { json } = await live.ask("POST", "/api/tables/survey/check", { text });
    expect(json.faults[0]).toMatchObject({
      line: 1,
      columnNumber: 2,
      column: "diameter",
      expected: expect.stringMatching(/unit/),
    });
    expect(Object.keys(json.faults[0]).sort()).toEqual([
      "column",
      "columnNumber",
      "expected",
      "found",
      "line",
      "mend",
    ]);
    expect((await live.ask("POST", "/api/tables/survey/check", { text: goodTable })).json).toEqual({
      faults: [],
      warnings: [],
    });
    expect((await live.ask("GET", "/api/tables/survey")).json.text).toBe(goodTable);
  });
  it("knows the instruments of rebuild.json, and says where it cannot be read", async () => {
    const gauge = '{ "title": "gauge", "resolution": "0.001 in", "repeatability": "0.001 in" }';
    const live = await liveRebuild({
      "rebuild.json": `{ "schema": 1, "title": "T", "units": "inch", "instruments": { "gauge": ${gauge} } }`,
    });
    const ask = async (text: string) => (await live.ask("POST", "/api/tables/t/check", { text })).json;
    expect((await ask(`# instrument: gauge\n${goodTable}`)).faults).toEqual([]);
    expect((await ask(`# instrument: gouge\n${goodTable}`)).faults).toHaveLength(1);
    writeFileSync(join(live.directory, "rebuild.json"), "{");
    expect((await ask(goodTable)).warnings.join()).toMatch(/rebuild\.json/);
  });
});

describe("PUT /api/sheets/<name>", () => {
  it("saves in canonical form without outputs, over what was loaded", async () => {
    const live = await liveRebuild({ "sheets/01-a.ipynb": sheetFile("1 + 1") });
    const loaded = (await live.ask("GET", "/api/sheets/01-a")).json;
    expect(loaded).toMatchObject({ name: "01-a", own: true });
    const output = { output_type: "stream", name: "stdout", text: "4\n" };
    const notebook = withOutput("2 + 2", 7, [output]);
    const saved = await live.ask("PUT", "/api/sheets/01-a", { notebook, base: loaded.sha256 });
    const bytes = readFileSync(join(live.directory, "sheets", "01-a.ipynb"));
    expect(saved).toMatchObject({ status: 200, json: { sha256: sha256(bytes) } });
    expect(JSON.parse(bytes.toString()).cells[0]).toMatchObject({
      execution_count: null,
      outputs: [],
      source: ["2 + 2"],
    });
    const again = (await live.ask("GET", "/api/sheets/01-a")).json;
    const second = await live.ask("PUT", "/api/sheets/01-a", {
      notebook: again.notebook,
      base: again.sha256,
    });
    expect(second.json.sha256).toBe(again.sha256);
  });
  it("answers 409 with the notebook on disk, even one that is torn", async () => {
    const live = await liveRebuild({ "sheets/01-a.ipynb": sheetFile("1") });
    const { notebook, sha256: base } = (await live.ask("GET", "/api/sheets/01-a")).json;
    writeFileSync(join(live.directory, "sheets", "01-a.ipynb"), sheetFile("2"));
    const conflict = await live.ask("PUT", "/api/sheets/01-a", { notebook, base });
    expect(conflict).toMatchObject({ status: 409, json: { sha256: sha256(sheetFile("2")) } });
    expect(conflict.json.notebook.cells[0].source).toEqual(["2"]);
    writeFileSync(join(live.directory, "sheets", "01-a.ipynb"), "torn");
    const torn = await live.ask("PUT", "/api/sheets/01-a", { notebook, base });
    expect(torn).toMatchObject({
      status: 409,
      json: { notebook: null, text: "torn", sha256: sha256("torn") },
    });
    expect((await live.ask("GET", "/api/sheets/01-a")).status).toBe(422);
    expect((await live.ask("PUT", "/api/sheets/01-a", { notebook, base: sha256("torn") })).status).toBe(200);
  });
  it("refuses what is no notebook, and says what is wrong with it", async () => {
    const live = await liveRebuild({ "sheets/01-a.ipynb": sheetFile("1") });
    const { sha256: base } = (await live.ask("GET", "/api/sheets/01-a")).json;
    const { status, json } = await live.ask("PUT", "/api/sheets/01-a", { notebook: { cells: [] }, base });
    expect(status).toBe(400);
    expect(json.message).toMatch(/^01-a\.ipynb: nbformat must be 4/);
    expect(readFileSync(join(live.directory, "sheets", "01-a.ipynb"), "utf8")).toBe(sheetFile("1"));
  });
  it("copies the templates into the rebuild on the first save, and never writes them", async () => {
    const live = await liveRebuild();
    const templates = readdirSync(templateFolder()).filter((file) => file.endsWith(".ipynb"));
    const before = templates.map((file) => sha256(readFileSync(join(templateFolder(), file))));
    const name = templates[0]!.replace(".ipynb", "");
    const { notebook, sha256: base, own } = (await live.ask("GET", `/api/sheets/${name}`)).json;
    expect(own).toBe(false);
    expect(existsSync(join(live.directory, "sheets"))).toBe(false);
    notebook.cells.push({ cell_type: "markdown", id: "mine", metadata: {}, source: "My remark" });
    expect((await live.ask("PUT", `/api/sheets/${name}`, { notebook, base })).status).toBe(200);
    expect(readdirSync(join(live.directory, "sheets")).sort()).toEqual(templates.sort());
    const sheets = (await live.ask("GET", "/api/rebuild")).json.sheets as { own: boolean }[];
    expect(sheets.map((sheet) => sheet.own)).toEqual(templates.map(() => true));
    expect(readFileSync(join(live.directory, "sheets", templates[0]!), "utf8")).toContain("My remark");
    expect(templates.map((file) => sha256(readFileSync(join(templateFolder(), file))))).toEqual(before);
    // The other page, which still shows the template, is told.
    expect((await live.ask("PUT", `/api/sheets/${name}`, { notebook, base })).status).toBe(409);
  });
  it("begins a sheet that is not there, under a name a file may have", async () => {
    const live = await liveRebuild({ "sheets/01-a.ipynb": sheetFile("1") });
    const notebook = JSON.parse(sheetFile("1"));
    expect((await live.ask("PUT", "/api/sheets/02-b", { notebook, base: null })).status).toBe(200);
    expect((await live.ask("PUT", "/api/sheets/02-B", { notebook, base: null })).status).toBe(409);
    expect((await live.ask("PUT", "/api/sheets/con", { notebook, base: null })).status).toBe(404);
    expect((await live.ask("PUT", "/api/sheets/03-gone", { notebook, base: sha256("") })).json).toMatchObject(
      {
        sha256: null,
        notebook: null,
      },
    );
    expect(readdirSync(join(live.directory, "sheets")).sort()).toEqual(["01-a.ipynb", "02-b.ipynb"]);
  });
});

describe("GET and PUT /api/outputs/<name>", () => {
  it("keep the executed notebook in out/, as long as its code is that of the sheet", async () => {
    const live = await liveRebuild({ "sheets/01-a.ipynb": sheetFile("1 + 1") });
    expect((await live.ask("GET", "/api/outputs/01-a")).status).toBe(404);
    const output = { output_type: "stream", name: "stdout", text: "2\n" };
    const put = await live.ask("PUT", "/api/outputs/01-a", { notebook: withOutput("1 + 1", 1, [output]) });
    // No kernel of this server has run it.
    expect(put.json).toMatchObject({ state: "never run" });
    const { json } = await live.ask("GET", "/api/outputs/01-a");
    expect(json.notebook.cells[0].outputs).toEqual([{ ...output, text: ["2\n"] }]);
    expect(readFileSync(join(live.directory, "sheets", "01-a.ipynb"), "utf8")).toBe(sheetFile("1 + 1"));
    writeFileSync(join(live.directory, "sheets", "01-a.ipynb"), sheetFile("1 + 2"));
    expect((await live.ask("GET", "/api/outputs/01-a")).status).toBe(404);
  });
});

describe("what is not there, or asked in the wrong way", () => {
  it("is said to be", async () => {
    const live = await liveRebuild();
    expect((await live.ask("GET", "/api/nothing")).status).toBe(404);
    expect((await live.ask("DELETE", "/api/rebuild")).status).toBe(405);
    expect((await live.ask("GET", "/api/sheets/nothing")).json.message).toMatch(/no worksheet "nothing"/);
    expect((await live.ask("POST", "/api/run", { sheets: ["nothing"] })).status).toBe(404);
    expect((await live.ask("POST", "/api/run", { sheets: [] })).status).toBe(400);
    const page = await live.ask("GET", "/sheet/nothing", undefined, { accept: "text/html" });
    expect(page.status).toBe(404);
    expect(page.text).toMatch(/no worksheet &quot;nothing&quot;/);
  });
});
