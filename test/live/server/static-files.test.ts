import type { IncomingMessage } from "node:http";
import { basename } from "node:path";
import { gunzipSync, gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import type { Answer } from "../../../kernel-helpers/live/server/router.js";
import { staticRoutes } from "../../../kernel-helpers/live/server/static-files.js";
import { plotlyFile } from "../../../kernel-helpers/view/plotly-file.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { liveRebuild } from "./live-client.js";

const script = "document.title = 'Größe'";
const folder = temporaryFolder({
  "main-ABC.js.gz": gzipSync(script),
  "chunks/part-DEF.js.gz": gzipSync("1"),
  "assets/font-GHI.woff2": "wOF2",
  "page.json": "{}",
});

function get(rest: string, acceptEncoding?: string): Answer {
  const { handle } = staticRoutes(folder).find(({ path }) => path === "/static/*")!;
  const request = { headers: { "accept-encoding": acceptEncoding } } as unknown as IncomingMessage;
  return handle({ params: { rest }, request, body: async () => ({}) }) as Answer;
}

describe("GET /static/<file>", () => {
  it("sends a text as it was packed, to be kept for good, for its name tells its content", () => {
    const { content, type, headers } = get("main-ABC.js", "gzip, deflate, br");
    expect(gunzipSync(content as Buffer).toString()).toBe(script);
    expect(type).toBe("text/javascript; charset=utf-8");
    expect(headers).toEqual({
      "Cache-Control": "private, max-age=31536000, immutable",
      "Content-Encoding": "gzip",
      Vary: "Accept-Encoding",
    });
    expect(gunzipSync(get("chunks/part-DEF.js", "GZIP;q=0.5").content as Buffer).toString()).toBe("1");
  });
  it("unpacks it for who does not take it packed", () => {
    for (const told of [undefined, "", "identity", "br", "gzip;q=0", "gzip; q=0.0", "notgzip"]) {
      const { content, headers } = get("main-ABC.js", told);
      expect(String(content), told).toBe(script);
      expect(headers).not.toHaveProperty("Content-Encoding");
    }
  });
  it("sends a font as it is", () => {
    const { content, type, headers } = get("assets/font-GHI.woff2", "gzip");
    expect(String(content)).toBe("wOF2");
    expect(type).toBe("font/woff2");
    expect(headers).not.toHaveProperty("Content-Encoding");
  });
  it("has nothing else", () => {
    for (const rest of ["main-XYZ.js", "page.json", "main-ABC.js.gz", "chunks", "assets", "..", "../x.js"])
      expect(() => get(rest, "gzip"), rest).toThrow(expect.objectContaining({ status: 404 }));
  });
});

describe("GET /static/plotly/<file>", () => {
  it("sends the library once; asked again with its mark, says that nothing has changed", async () => {
    const live = await liveRebuild();
    const path = `/static/plotly/${basename(plotlyFile())}`;
    const first = await live.ask("GET", path);
    expect(first.status).toBe(200);
    expect(first.text).toContain("plotly");
    expect(first.headers.get("cache-control")).toBe("no-cache");
    const again = await live.ask("GET", path, undefined, { "if-none-match": first.headers.get("etag")! });
    expect([again.status, again.text]).toEqual([304, ""]);
    expect((await live.ask("GET", "/static/plotly/other.js")).status).toBe(404);
  });
});
