import { mkdirSync, renameSync, rmSync, unlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { LiveEvent } from "../../../kernel-helpers/live/server/index.js";
import { sha256 } from "../../../kernel-helpers/live/server/rebuild-files.js";
import { writeOutcome } from "../../../kernel-helpers/record/index.js";
import { codeHash } from "../../../kernel-helpers/record/sheet-code.js";
import { goodTable, liveFolder, liveRebuild, sheetFile } from "./live-client.js";

const files = { "tables/survey.csv": goodTable, "sheets/01-a.ipynb": sheetFile("1") };

function change(kind: string, name: string, hash: string | null) {
  return (e: LiveEvent): boolean =>
    e.type === "file-changed" && e.kind === kind && e.name === name && e.sha256 === hash;
}

describe("GET /api/events", () => {
  it("begins with the name of this run of the server, which another run does not have", async () => {
    const live = await liveRebuild(files);
    const [first] = (await live.listen()).heard;
    await live.server.close();
    const again = await liveFolder(live.directory, { port: live.server.access.port });
    const [second] = (await again.listen()).heard;
    expect(first).toMatchObject({ type: "hello", server: expect.stringMatching(/\w/) });
    expect(second).not.toEqual(first);
  });
  it("tells the same as a stream of server-sent events", async () => {
    const live = await liveRebuild(files);
    const stream = await fetch(`${live.origin}/api/events`, {
      headers: { authorization: `token ${live.server.access.token}` },
    });
    expect(stream.headers.get("content-type")).toBe("text/event-stream");
    const reader = stream.body!.pipeThrough(new TextDecoderStream()).getReader();
    expect((await reader.read()).value).toMatch(/^data: \{"type":"hello",.*\}\n\n$/);
    await live.ask("PUT", "/api/tables/survey", { text: "x", base: sha256(goodTable) });
    expect((await reader.read()).value).toContain(`"sha256":"${sha256("x")}"`);
    await reader.cancel();
  });
  it("tells tables, sheets and rebuild.json that others change, add, rename and remove", async () => {
    const live = await liveRebuild(files);
    const ear = await live.listen();
    const at = (...path: string[]): string => join(live.directory, ...path);
    writeFileSync(at("tables", "survey.csv"), "new");
    await ear.until(change("table", "survey", sha256("new")));
    writeFileSync(at("tables", "bore.csv"), goodTable);
    await ear.until(change("table", "bore", sha256(goodTable)));
    unlinkSync(at("tables", "bore.csv"));
    await ear.until(change("table", "bore", null));
    // As editors save: to another file, then renamed over.
    writeFileSync(at("sheets", "draft"), sheetFile("2"));
    renameSync(at("sheets", "draft"), at("sheets", "01-a.ipynb"));
    await ear.until(change("sheet", "01-a", sha256(sheetFile("2"))));
    writeFileSync(at("rebuild.json"), "{}");
    await ear.until(change("rebuild", "rebuild.json", sha256("{}")));
  });
  it("goes on when a folder is taken away and comes again, or comes for the first time", async () => {
    const live = await liveRebuild({ "tables/survey.csv": goodTable });
    const ear = await live.listen();
    rmSync(join(live.directory, "tables"), { recursive: true });
    await ear.until(change("table", "survey", null));
    mkdirSync(join(live.directory, "tables"));
    writeFileSync(join(live.directory, "tables", "survey.csv"), "again");
    await ear.until(change("table", "survey", sha256("again")));
    mkdirSync(join(live.directory, "sheets"));
    writeFileSync(join(live.directory, "sheets", "01-a.ipynb"), sheetFile("1"));
    await ear.until(change("sheet", "01-a", sha256(sheetFile("1"))));
  });
  it("tells what one page saves to the others at once", async () => {
    const live = await liveRebuild(files);
    const ear = await live.listen();
    const { json } = await live.ask("PUT", "/api/tables/survey", { text: "mine", base: sha256(goodTable) });
    await ear.until(change("table", "survey", json.sha256));
    expect(ear.heard.filter(({ type }) => type === "file-changed")).toHaveLength(1);
  });
  it("tells the states when one changes, and only then", async () => {
    const live = await liveRebuild(files);
    const ear = await live.listen();
    await live.ask("PUT", "/api/tables/survey", { text: "x", base: sha256(goodTable) });
    const code = codeHash([{ cell_type: "code", source: "1" }]);
    writeOutcome(live.directory, { sheet: "01-a", status: "ok", code });
    const event = await ear.until((e) => e.type === "state");
    expect(event).toEqual({ type: "state", sheets: [{ name: "01-a", state: "fresh", why: "" }] });
    expect(ear.heard.filter(({ type }) => type === "state")).toHaveLength(1);
  });
});
