import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { beforeAll, describe, expect, it } from "vitest";
import { KernelRoom } from "../../../kernel-helpers/live/server/kernels/kernel-room.js";
import { kernelSubprotocol } from "../../../kernel-helpers/live/server/kernels/websocket-frame.js";
import { buildTimeout, ensureBuilt } from "../../support/built.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { goodTable, KernelPage, type Live, liveRebuild, openSocket, sheetFile } from "./live-client.js";

beforeAll(() => ensureBuilt(), buildTimeout);

const open = 'import { openRebuild } from "journalbox";\nconst rebuild = openRebuild();';
const read = 'const table = rebuild.table("survey");\ntable.rowCount';
const publish = "rebuild.publish({ rows: 3 });";
const files = { "tables/survey.csv": goodTable, "sheets/01-a.ipynb": sheetFile(open, read) };

/** The process of a sheet's kernel, as the kernel itself names it. */
async function processOf(page: KernelPage): Promise<number> {
  const id = page.send("process.pid");
  const { content } = await page.until(
    (m) => m.parent.msg_id === id && m.header.msg_type === "execute_result",
  );
  return Number((content.data as Record<string, string>)["text/plain"]);
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

async function untilGone(pid: number): Promise<void> {
  while (isAlive(pid)) await pause(20);
}

/** The executed notebook, as a page would send it. */
function executed(...code: readonly string[]): unknown {
  const notebook = JSON.parse(sheetFile(...code));
  for (const [i, cell] of notebook.cells.entries()) cell.execution_count = i + 1;
  return notebook;
}

async function stateOf(live: Live, name: string): Promise<unknown> {
  const { sheets } = (await live.ask("GET", "/api/rebuild")).json;
  const { state, why } = sheets.find((sheet: { name: string }) => sheet.name === name);
  return { state, why };
}

describe("the kernel of a sheet", () => {
  it("runs in the rebuild under the sheet's name, and speaks Jupyter's protocol", async () => {
    const live = await liveRebuild(files);
    const page = await KernelPage.open(live, "01-a");
    expect(page.socket.protocol).toBe(kernelSubprotocol);
    expect(await page.run(open)).toMatchObject({ status: "ok", execution_count: 1 });
    const id = page.send(read);
    const result = await page.until((m) => m.parent.msg_id === id && m.header.msg_type === "execute_result");
    expect(result.content.data).toMatchObject({ "text/plain": "3" });
    expect(result.channel).toBe("iopub");
    expect(await page.run(publish)).toMatchObject({ status: "ok" });
    expect(JSON.parse(readFileSync(join(live.directory, "record", "01-a.json"), "utf8")).sheet).toBe("01-a");
    const { json } = await live.ask("GET", `/api/kernels/${page.id}`);
    expect(json).toMatchObject({ id: page.id, name: "journalbox", connections: 1 });
  });
  it("is one, however many pages show the sheet: all hear the outputs, the one that asked hears the reply", async () => {
    const live = await liveRebuild(files);
    const one = await KernelPage.open(live, "01-a");
    const other = await KernelPage.open(live, "01-a");
    expect(other.id).toBe(one.id);
    expect((await live.ask("GET", "/api/sessions")).json).toHaveLength(1);
    const id = one.send("6 * 7");
    await one.until((m) => m.parent.msg_id === id && m.header.msg_type === "execute_reply");
    await other.until((m) => m.parent.msg_id === id && m.content.execution_state === "idle");
    expect(other.heard.map((m) => m.header.msg_type)).toContain("execute_result");
    expect(other.heard.map((m) => m.header.msg_type)).not.toContain("execute_reply");
  });
  it("is another for another sheet", async () => {
    const live = await liveRebuild({ ...files, "sheets/02-b.ipynb": sheetFile("1") });
    const [a, b] = [await KernelPage.open(live, "01-a"), await KernelPage.open(live, "02-b")];
    await a.run("const only = 1");
    expect(await b.run("only")).toMatchObject({ status: "error" });
    expect((await live.ask("POST", "/api/sessions", { path: "sheets/09-none.ipynb" })).status).toBe(404);
  });
  it("is interrupted, and lives on", async () => {
    const live = await liveRebuild(files);
    const page = await KernelPage.open(live, "01-a");
    await page.run("const kept = 5");
    const id = page.send("for (;;) {}");
    await pause(300); // in the loop by then, from which nothing more is heard
    expect((await live.ask("POST", `/api/kernels/${page.id}/interrupt`)).status).toBe(204);
    const { content } = await page.until(
      (m) => m.parent.msg_id === id && m.header.msg_type === "execute_reply",
    );
    expect(content.status).toBe("error");
    expect(await page.run("kept")).toMatchObject({ status: "ok" });
  });
  it("is started anew in the same place: names are gone, pages stay connected", async () => {
    const live = await liveRebuild(files, { warmKernel: true });
    const page = await KernelPage.open(live, "01-a");
    await page.run("const lost = 1");
    const before = await processOf(page);
    const { status, json } = await live.ask("POST", `/api/kernels/${page.id}/restart`);
    expect([status, json.id]).toEqual([200, page.id]);
    expect(isAlive(before)).toBe(false);
    expect(await page.run("lost")).toMatchObject({ status: "error" });
    expect(await processOf(page)).not.toBe(before);
  });
  it("is told to be dead when it dies, to the page that talks with it and to all others, and is revived", async () => {
    const live = await liveRebuild(files);
    const ear = await live.listen();
    const page = await KernelPage.open(live, "01-a");
    process.kill(await processOf(page), "SIGKILL");
    const dead = await page.until((m) => m.content.execution_state === "dead");
    expect(dead).toMatchObject({ channel: "iopub", header: { msg_type: "status" } });
    const event = await ear.until((e) => e.type === "kernel" && e.state === "dead");
    expect(event).toMatchObject({ sheet: "01-a", id: page.id, why: expect.stringMatching(/SIGKILL/) });
    expect((await live.ask("GET", `/api/kernels/${page.id}`)).json.execution_state).toBe("dead");
    const again = await KernelPage.open(live, "01-a");
    expect(again.id).toBe(page.id);
    expect(await again.run("1")).toMatchObject({ status: "ok" });
  });
  it("ends when it is told to, and every one ends with the server", async () => {
    const live = await liveRebuild({ ...files, "sheets/02-b.ipynb": sheetFile("1") }, { warmKernel: true });
    const [a, b] = [await KernelPage.open(live, "01-a"), await KernelPage.open(live, "02-b")];
    const [pidA, pidB] = [await processOf(a), await processOf(b)];
    expect((await live.ask("DELETE", `/api/sessions/${a.id}`)).status).toBe(204);
    await untilGone(pidA);
    expect((await live.ask("GET", "/api/kernels")).json.map(({ id }: { id: string }) => id)).toEqual([b.id]);
    await live.server.close();
    expect(isAlive(pidB)).toBe(false);
  });
  it("is not harmed by frames that are no messages: the page that sent them is shown out", async () => {
    const live = await liveRebuild(files);
    const page = await KernelPage.open(live, "01-a");
    for (const rubbish of [Buffer.from("rubbish"), Buffer.alloc(64, 255), "text"]) {
      const socket = openSocket(live, `/api/kernels/${page.id}/channels`);
      const code = new Promise((closed) => socket.once("close", closed));
      socket.once("open", () => socket.send(rubbish));
      expect([1003, 1007]).toContain(await code);
    }
    expect(await page.run("1")).toMatchObject({ status: "ok" });
  });
  it("ends when no page has shown the sheet for so long; the next page gets another", async () => {
    const live = await liveRebuild(files, { kernelPatience: 150 });
    const events = await live.listen();
    const page = await KernelPage.open(live, "01-a");
    const pid = await processOf(page);
    page.socket.close();
    await untilGone(pid);
    await events.until((event) => event.type === "kernel" && event.state === "ended");
    expect((await live.ask("GET", "/api/sessions")).json).toEqual([]);
    const next = await KernelPage.open(live, "01-a");
    expect(next.id).not.toBe(page.id);
    expect(await next.run("1")).toMatchObject({ status: "ok" });
  });
  it("is kept as long as a page shows the sheet, and until what runs in it has ended", async () => {
    const live = await liveRebuild(files, { kernelPatience: 100 });
    const page = await KernelPage.open(live, "01-a");
    const pid = await processOf(page);
    await page.run("await new Promise((r) => setTimeout(r, 600));");
    expect(isAlive(pid)).toBe(true);
    page.send(
      'import { writeFileSync } from "node:fs";\nwriteFileSync("begun", ""); await new Promise((r) => setTimeout(r, 900)); writeFileSync("done", "");',
    );
    while (!existsSync(join(live.directory, "begun"))) await pause(10);
    page.socket.close();
    await untilGone(pid);
    expect(existsSync(join(live.directory, "done"))).toBe(true);
  });
  it("leaves no process when the server ends while a spare is still starting", async () => {
    const untilChildren = async (count: number): Promise<void> => {
      while (process.getActiveResourcesInfo().filter((name) => name === "ProcessWrap").length !== count)
        await pause(1);
    };
    await untilChildren(0);
    const room = new KernelRoom({
      directory: temporaryFolder(),
      warm: true,
      tell: () => {},
      patience: 60_000,
    });
    await untilChildren(1);
    await room.close();
    await untilChildren(0);
  });
});

describe("PUT /api/outputs/<name> after a run from the page", () => {
  it("makes the sheet fresh when its cells were run from first to last, stale when its table changes", async () => {
    const live = await liveRebuild(files);
    const page = await KernelPage.open(live, "01-a");
    await page.run(open, "c1");
    const notebook = executed(open, read);
    expect((await live.ask("PUT", "/api/outputs/01-a", { notebook })).json).toMatchObject({
      state: "never run",
    });
    await page.run(read, "c2");
    expect((await live.ask("PUT", "/api/outputs/01-a", { notebook })).json).toEqual({
      state: "fresh",
      why: "",
    });
    writeFileSync(join(live.directory, "tables", "survey.csv"), `${goodTable}4,2.4370\n`);
    expect(await stateOf(live, "01-a")).toEqual({
      state: "stale",
      why: expect.stringMatching(/^Since the last run tables\/survey\.csv has changed \(line \d/),
    });
    // Reading the table again by itself is not a run of the sheet; running all of it is.
    await page.run(read, "c2");
    expect((await live.ask("PUT", "/api/outputs/01-a", { notebook })).json.state).toBe("stale");
    await page.run(open, "c1");
    await page.run(read, "c2");
    expect((await live.ask("PUT", "/api/outputs/01-a", { notebook })).json.state).toBe("fresh");
  });
  it("tells the cell that failed", async () => {
    const code = ["1 + 1", 'throw new RangeError("too deep")'];
    const live = await liveRebuild({ "sheets/01-a.ipynb": sheetFile(...code) });
    const page = await KernelPage.open(live, "01-a");
    for (const [i, each] of code.entries()) await page.run(each, `c${i + 1}`);
    const { json } = await live.ask("PUT", "/api/outputs/01-a", { notebook: executed(...code) });
    expect(json).toEqual({ state: "failed", why: "Cell 2 (c2): RangeError: too deep." });
  });
  it("says nothing of a sheet whose saved code is another, or in a kernel that ran other code", async () => {
    const live = await liveRebuild({ "sheets/01-a.ipynb": sheetFile("1") });
    const page = await KernelPage.open(live, "01-a");
    await page.run("2", "c1");
    const put = async (source: string) =>
      (await live.ask("PUT", "/api/outputs/01-a", { notebook: executed(source) })).json.state;
    expect(await put("2")).toBe("never run");
    await page.run("1", "c1");
    expect(await put("1")).toBe("never run"); // what "2" left behind is still there
    await live.ask("POST", `/api/kernels/${page.id}/restart`);
    await page.run("1", "c1");
    expect(await put("1")).toBe("fresh");
  });
  it("says so when a cell was run again by itself on other readings", async () => {
    const live = await liveRebuild(files);
    const page = await KernelPage.open(live, "01-a");
    const [notebook, path] = [executed(open, read), join(live.directory, "tables", "survey.csv")];
    await page.run(open, "c1");
    await page.run(read, "c2");
    await live.ask("PUT", "/api/outputs/01-a", { notebook });
    await page.run(open, "c1");
    expect((await live.ask("PUT", "/api/outputs/01-a", { notebook })).json.state).toBe("fresh"); // the same inputs
    writeFileSync(path, `${goodTable}4,2.4370\n`);
    await page.run(read, "c2");
    await page.run(open, "c1");
    await live.ask("PUT", "/api/outputs/01-a", { notebook });
    writeFileSync(path, goodTable);
    expect(await stateOf(live, "01-a")).toMatchObject({
      state: "stale",
      why: expect.stringMatching(/by themselves/),
    });
  });
});
