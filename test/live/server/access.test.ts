import { symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { isToken } from "../../../kernel-helpers/live/server/access.js";
import { bodyLimits } from "../../../kernel-helpers/live/server/body.js";
import { Tickets } from "../../../kernel-helpers/live/server/tickets.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { goodTable, type Live, liveRebuild, openSocket, rawRequest, sheetFile } from "./live-client.js";

const files = { "tables/survey.csv": goodTable, "sheets/01-a.ipynb": sheetFile("1 + 1") };

/** A request in raw lines; headers are added to or, where undefined, taken from those of a page. */
function lines(
  { server, origin }: Live,
  first: string,
  headers: Readonly<Record<string, string | undefined>> = {},
  body = "",
): string {
  const { port, token } = server.access;
  const all: Record<string, string | undefined> = {
    Host: `127.0.0.1:${port}`,
    Origin: origin,
    Cookie: `journalbox-${port}=${token}`,
    "X-Journalbox": "1",
    Connection: "close",
    ...headers,
  };
  const told = Object.entries(all).flatMap(([name, value]) =>
    value === undefined ? [] : [`${name}: ${value}`],
  );
  return [`${first} HTTP/1.1`, ...told, "", body].join("\r\n");
}

async function statusOf(
  live: Live,
  ...request: Parameters<typeof lines> extends [Live, ...infer R] ? R : never
) {
  const answer = await rawRequest(live.server.access.port, lines(live, ...request));
  return Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1]);
}

describe("the server's address", () => {
  it("is on 127.0.0.1 and nowhere else", async () => {
    const live = await liveRebuild(files);
    const { port } = live.server.access;
    // The rest of 127.0.0.0/8 is this machine too on Linux; elsewhere there is nothing. Neither is answered.
    await expect(rawRequest(port, lines(live, "GET /"), "127.0.0.2")).rejects.toThrow();
    await expect(rawRequest(port, lines(live, "GET /"), "::1")).rejects.toThrow();
  });
  it("holds the token, lets the browser in by a cookie scripts cannot read, and forgets the token", async () => {
    const live = await liveRebuild(files);
    const { port, token } = live.server.access;
    expect(live.server.address).toBe(`http://127.0.0.1:${port}/?token=${token}`);
    const first = await fetch(live.server.address, { redirect: "manual" });
    expect(first.status).toBe(303);
    expect(first.headers.get("location")).toBe("/");
    const cookie = first.headers.get("set-cookie")!;
    expect(cookie).toBe(`journalbox-${port}=${token}; HttpOnly; SameSite=Strict; Path=/`);
    const again = await fetch(`${live.origin}/api/rebuild`, { headers: { cookie: cookie.split(";")[0]! } });
    expect(again.status).toBe(200);
  });
  it("may hold a ticket instead, which lets in once and is then worth nothing", async () => {
    const live = await liveRebuild(files);
    const { port, token } = live.server.access;
    const address = live.server.addressWithTicket();
    expect(address).not.toContain(token);
    const first = await fetch(address, { redirect: "manual" });
    expect(first.status).toBe(303);
    expect(first.headers.get("set-cookie")).toContain(token);
    expect((await fetch(address, { redirect: "manual" })).status).toBe(403);
    // The browser that was let in may load the address again.
    const headers = { cookie: `journalbox-${port}=${token}` };
    expect((await fetch(address, { redirect: "manual", headers })).status).toBe(303);
    expect((await fetch(`${live.origin}/?ticket=`, { redirect: "manual" })).status).toBe(403);
  });
  it("Tickets.use(ticket) knows no ticket after five minutes", () => {
    let now = 0;
    const tickets = new Tickets(() => now);
    const [early, late] = [tickets.issue(), tickets.issue()];
    now = 300_000;
    expect(tickets.use(early)).toBe(true);
    now += 1;
    expect(tickets.use(late)).toBe(false);
  });
  it("holds another token each time", async () => {
    const [one, other] = [await liveRebuild(), await liveRebuild()];
    expect(one.server.access.token).not.toBe(other.server.access.token);
    expect(one.server.access.token).toMatch(/^[\w-]{43}$/);
  });
});

describe("a request without the right token", () => {
  it("is turned away, in every form", async () => {
    const live = await liveRebuild(files);
    const { token, port } = live.server.access;
    const name = `journalbox-${port}`;
    const wrong = `${token.slice(0, -1)}${token.endsWith("A") ? "B" : "A"}`;
    for (const headers of [
      { Cookie: undefined },
      { Cookie: `${name}=` },
      { Cookie: `${name}=${wrong}` },
      { Cookie: `${name}=${token.slice(0, 20)}` },
      { Cookie: `${name}=${token}x` },
      { Cookie: `other=${token}` },
      { Cookie: undefined, Authorization: `token ${wrong}` },
      { Cookie: undefined, Authorization: `Bearer ${token}` },
      // A wrong token beside a right cookie is no slip of a page.
      { Authorization: `token ${wrong}` },
    ])
      for (const path of ["/", "/api/rebuild", "/static/main.js", "/api/events", "/nowhere"])
        expect(await statusOf(live, `GET ${path}`, headers), JSON.stringify(headers)).toBe(403);
    expect(await statusOf(live, `GET /?token=${wrong}`, { Cookie: undefined })).toBe(403);
    // The token in the address opens pages, and nothing else.
    expect(await statusOf(live, `GET /api/rebuild?token=${token}`, { Cookie: undefined })).toBe(403);
    expect(await statusOf(live, "GET /api/rebuild")).toBe(200);
  });
  it("isToken(given, access) takes the token and nothing near it", () => {
    const access = { token: "abc", port: 1 };
    expect(isToken("abc", access)).toBe(true);
    for (const near of ["", "ab", "abcd", "abC", "abc\0"]) expect(isToken(near, access)).toBe(false);
  });
});

describe("a request in the name of another host or origin", () => {
  it("is turned away even with the token: DNS rebinding", async () => {
    const live = await liveRebuild(files);
    const { port } = live.server.access;
    for (const host of [
      "rebound.example",
      `rebound.example:${port}`,
      "127.0.0.1",
      `127.0.0.1:${port + 1}`,
      `localhost:${port}`,
    ])
      for (const path of ["/", "/api/rebuild", "/api/kernels"])
        expect(await statusOf(live, `GET ${path}`, { Host: host }), host).toBe(403);
    expect(await statusOf(live, "GET /", { Host: undefined })).toBe(400);
    expect(await statusOf(live, "GET http://rebound.example/api/rebuild")).toBe(400);
    for (const start of ["//", "/\\"])
      expect(await statusOf(live, `GET ${start}rebound.example/?token=${live.server.access.token}`)).toBe(
        400,
      );
  });
  it("is turned away when a page of another origin asks, of this machine too", async () => {
    const live = await liveRebuild(files);
    const { port } = live.server.access;
    for (const origin of [
      "http://other.example",
      "null",
      `http://127.0.0.1:${port + 1}`,
      `https://127.0.0.1:${port}`,
      `http://localhost:${port}`,
    ])
      expect(await statusOf(live, "GET /api/rebuild", { Origin: origin }), origin).toBe(403);
    for (const site of ["cross-site", "same-site"])
      expect(
        await statusOf(live, "GET /api/tables/survey", { Origin: undefined, "Sec-Fetch-Site": site }),
      ).toBe(403);
    // Following a link to a page is not asking for data.
    const link = { Origin: undefined, "Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate" };
    expect(await statusOf(live, "GET /nowhere", link)).toBe(404);
  });
  it("changes nothing without an Origin and the page's own header", async () => {
    const live = await liveRebuild(files);
    const change = [
      ["POST", "/api/run"],
      ["POST", "/api/sessions"],
      ["PUT", "/api/tables/survey"],
      ["DELETE", "/api/run"],
    ];
    for (const [method, path] of change)
      for (const headers of [
        { Origin: undefined },
        { "X-Journalbox": undefined },
        { "X-Journalbox": "0" },
        { Origin: "http://other.example" },
      ])
        expect(await statusOf(live, `${method} ${path}`, headers), `${method} ${path}`).toBe(403);
    expect((await live.ask("GET", "/api/tables/survey")).json.text).toBe(goodTable);
    expect((await live.ask("GET", "/api/kernels")).json).toEqual([]);
  });
  it("gets no WebSocket", async () => {
    const live = await liveRebuild(files);
    const { port } = live.server.access;
    const tries: Readonly<Record<string, string>>[] = [
      { origin: "http://other.example" },
      { origin: "null" },
      { host: `rebound.example:${port}` },
      { authorization: "token wrong" },
    ];
    for (const path of ["/api/events", "/api/events/subscribe", "/api/kernels/x/channels"])
      for (const headers of tries) expect(await handshake(live, path, headers), path).toBe(403);
    expect(await handshake(live, "/api/kernels/x/channels", {})).toBe(404);
    expect(await handshake(live, "/api/events", {})).toBe(101);
    const bare = lines(live, "GET /api/events", {
      Origin: undefined,
      Connection: "Upgrade",
      Upgrade: "websocket",
      "Sec-WebSocket-Key": "dGhlIHNhbXBsZSBub25jZQ==",
      "Sec-WebSocket-Version": "13",
    });
    expect(await rawRequest(port, bare)).toMatch(/^HTTP\/1\.1 403/);
  });
});

function handshake(live: Live, path: string, headers: Readonly<Record<string, string>>): Promise<number> {
  return new Promise((resolve, reject) => {
    const socket = openSocket(live, path, headers);
    socket.on("open", () => {
      socket.terminate();
      resolve(101);
    });
    socket.on("unexpected-response", (_, { statusCode }) => resolve(statusCode ?? 0));
    socket.on("error", reject);
  });
}

describe("every answer", () => {
  it("carries the policy that keeps foreign scripts, frames and readers out", async () => {
    const live = await liveRebuild(files);
    const { port } = live.server.access;
    for (const path of ["/", "/api/rebuild", "/nowhere", "/static/nothing.js"]) {
      const { headers } = await live.ask("GET", path);
      expect(headers.get("content-security-policy"), path).toBe(
        `default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self' data:; connect-src 'self' ws://127.0.0.1:${port}; frame-ancestors 'none'; base-uri 'none'; form-action 'none'; object-src 'none'`,
      );
      expect(headers.get("x-content-type-options")).toBe("nosniff");
      expect(headers.get("cross-origin-resource-policy")).toBe("same-origin");
      expect(headers.get("referrer-policy")).toBe("no-referrer");
      expect(headers.get("access-control-allow-origin")).toBeNull();
    }
    expect(await rawRequest(port, lines(live, "GET /", { Cookie: undefined }))).toMatch(
      /Content-Security-Policy: /,
    );
  });
  it("of the report stands outside the server's origin", async () => {
    const live = await liveRebuild({ ...files, "out/report.html": "<p>report" });
    const { text, headers } = await live.ask("GET", "/report");
    expect(text).toBe("<p>report");
    const policy = headers.get("content-security-policy")!;
    expect(policy).toMatch(/^sandbox /);
    expect(policy).not.toContain("allow-same-origin");
  });
  it("says nothing of the token, nor does the log", async () => {
    const live = await liveRebuild(files);
    const { token } = live.server.access;
    const logged = vi.spyOn(console, "error").mockImplementation(() => {});
    onTestFinished(() => logged.mockRestore());
    writeFileSync(join(live.directory, "tables", "broken.csv"), "");
    symlinkSync("loop.csv", join(live.directory, "tables", "loop.csv"));
    const { status } = await live.ask("GET", `/api/tables/loop?token=${token}&secret=1`);
    expect(status).toBe(500);
    expect(logged).toHaveBeenCalledOnce();
    expect(String(logged.mock.calls)).not.toContain(token);
    expect(String(logged.mock.calls)).not.toContain("secret");
    for (const path of ["/", "/sheet/01-a", "/api/rebuild", "/nowhere"])
      expect((await live.ask("GET", path)).text).not.toContain(token);
  });
});

describe("a path that leads out of the rebuild", () => {
  it("leads nowhere, however it is written", async () => {
    const secret = "top secret";
    const folder = temporaryFolder({ "secret.csv": secret, "secret.ipynb": sheetFile(`"${secret}"`) });
    const live = await liveRebuild(files);
    symlinkSync(join(folder, "secret.csv"), join(live.directory, "tables", "link.csv"));
    symlinkSync(folder, join(live.directory, "tables", "folder.csv"));
    symlinkSync(join(folder, "secret.ipynb"), join(live.directory, "sheets", "09-link.ipynb"));
    const up = "../".repeat(10);
    const names = [
      `${up}${folder}/secret`,
      `..%2f..%2f..%2f${encodeURIComponent(folder)}%2fsecret`,
      encodeURIComponent(`${folder}/secret`),
      `%2e%2e/%2e%2e${folder}/secret`,
      `..%5c..%5csecret`,
      `..%252f..%252fsecret`,
      "%00",
      "survey%00.csv",
      "link",
      "folder",
      "C:%5csecret",
      "survey::$DATA",
      "%c0%ae%c0%ae%c0%afsecret",
      "CON",
      "nul.csv",
      "COM1",
      "lpt%C2%B9",
      ".hidden",
      "trailing.",
      "trailing%20",
      "",
      ".",
      "..",
      "%",
    ];
    for (const base of ["/api/tables/", "/api/sheets/", "/api/outputs/", "/static/", "/table/", "/sheet/"])
      for (const name of names) {
        const answer = await rawRequest(live.server.access.port, lines(live, `GET ${base}${name}`));
        expect(answer, `${base}${name}`).toMatch(/^HTTP\/1\.1 (400|403|404) /);
        expect(answer).not.toContain(secret);
      }
    for (const name of names) {
      const body = JSON.stringify({ text: "x", base: null });
      const headers = { "Content-Type": "application/json", "Content-Length": String(body.length) };
      const answer = await rawRequest(
        live.server.access.port,
        lines(live, `PUT /api/tables/${name}`, headers, body),
      );
      expect(answer, name).toMatch(/^HTTP\/1\.1 (400|403|404) /);
    }
    const sheets = (await live.ask("GET", "/api/rebuild")).json.sheets;
    expect(JSON.stringify(sheets)).not.toContain(secret);
    expect((await live.ask("GET", "/api/sheets/09-link")).status).toBe(403);
  });
  it("leads nowhere through a folder that is a link", async () => {
    const elsewhere = temporaryFolder({ "survey.csv": "secret" });
    const live = await liveRebuild({ "sheets/01-a.ipynb": sheetFile("1") });
    symlinkSync(elsewhere, join(live.directory, "tables"));
    expect((await live.ask("GET", "/api/tables/survey")).status).toBe(403);
    expect((await live.ask("PUT", "/api/tables/new", { text: "x", base: null })).status).toBe(403);
  });
});

describe("a body that is too large, or none", () => {
  it("is turned away by what it says of itself, and by what comes", async () => {
    const live = await liveRebuild(files);
    const { port } = live.server.access;
    const json = { "Content-Type": "application/json" };
    const said = lines(live, "POST /api/run", { ...json, "Content-Length": String(bodyLimits.small + 1) });
    expect(await rawRequest(port, said)).toMatch(/^HTTP\/1\.1 413 /);
    const chunk = "x".repeat(bodyLimits.small + 1);
    const chunked = `${chunk.length.toString(16)}\r\n${chunk}\r\n`;
    const came = lines(live, "POST /api/run", { ...json, "Transfer-Encoding": "chunked" }, chunked);
    expect(await rawRequest(port, came)).toMatch(/^HTTP\/1\.1 413 /);
  });
  it("is turned away where it is no JSON object", async () => {
    const live = await liveRebuild(files);
    for (const body of ["[1]", "null", "{", "\u00ff"]) {
      const headers = { "Content-Type": "application/json", "Content-Length": String(body.length) };
      const answer = await rawRequest(live.server.access.port, lines(live, "POST /api/run", headers, body));
      expect(answer, body).toMatch(/^HTTP\/1\.1 400 /);
    }
    const form = { "Content-Type": "application/x-www-form-urlencoded", "Content-Length": "3" };
    expect(await rawRequest(live.server.access.port, lines(live, "POST /api/run", form, "a=b"))).toMatch(
      / 415 /,
    );
  });
});
