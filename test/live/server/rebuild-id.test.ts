import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { rebuildId } from "../../../kernel-helpers/live/server/rebuild-id.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { liveFolder, liveRebuild, rebuildJson } from "./live-client.js";

describe("rebuildId(directory)", () => {
  it("is the same for one folder, by whatever way one comes to it, and another for another", () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, "mill"));
    mkdirSync(join(folder, "pump"));
    symlinkSync(join(folder, "mill"), join(folder, "link"), "junction");
    expect(rebuildId(join(folder, "link"))).toBe(rebuildId(join(folder, "mill")));
    expect(rebuildId(join(folder, "pump"))).not.toBe(rebuildId(join(folder, "mill")));
  });
});

describe("GET /api/rebuild and the pages", () => {
  it("tell the id, which outlives a new title and a new server", async () => {
    const live = await liveRebuild({ "tables/survey.csv": "" });
    const { id } = (await live.ask("GET", "/api/rebuild")).json;
    expect(id).toBe(rebuildId(live.directory));
    writeFileSync(join(live.directory, "rebuild.json"), rebuildJson.replace("Pump", "Mill"));
    const later = await liveFolder(live.directory);
    expect((await later.ask("GET", "/api/rebuild")).json).toMatchObject({ id, title: "Mill shaft" });
    expect((await later.ask("GET", "/table/survey")).text).toContain(`data-rebuild="${id}"`);
  });
});
