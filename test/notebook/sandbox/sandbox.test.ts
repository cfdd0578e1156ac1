import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { createServer, type Server } from "node:net";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  runInSandbox,
  SandboxKernel,
  sandboxOffer,
  sandboxSentences,
  usualLimits,
} from "../../../kernel-helpers/notebook/sandbox/index.js";
import {
  bytesOf,
  type Files,
  isForeign,
  makeBag,
  textOf,
} from "../../../kernel-helpers/record/bundle/index.js";
import { packageRoot } from "../../../kernel-helpers/record/index.js";
import { ensureBuilt } from "../../support/built.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { escapeAttempts } from "./escape-attempts.js";

const offer = sandboxOffer();

function sheet(...sources: readonly string[]): string {
  const cells = sources.map((source, i) => ({
    cell_type: "code",
    id: `cell-${i + 1}`,
    metadata: {},
    execution_count: null,
    outputs: [],
    source,
  }));
  return JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells });
}

const rebuildJson = '{ "schema": 1, "title": "T", "units": "inch" }';

function bundleOf(...sources: readonly string[]): { name: string; files: Files } {
  const payload = new Map([
    ["rebuild.json", bytesOf(rebuildJson)],
    ["sheets/01-t.ipynb", bytesOf(sheet(...sources))],
  ]);
  return { name: "t", files: makeBag(payload, []) };
}

beforeAll(() => ensureBuilt(), 180_000);

describe("a cell in the sandbox", () => {
  const outside = temporaryFolder({
    "secret.txt": "secret",
    "secret.json": "{}",
    "secret.mjs": "export {};",
  });
  const folder = temporaryFolder({
    "rebuild.json": rebuildJson,
    "tables/t.csv": "a [in]\n1\n",
    "sheets/01-t.ipynb": sheet("1"),
  });
  const socket = join(outside, "socket");
  let connections = 0;
  const servers: Server[] = [];
  let port = 0;
  let kernel: SandboxKernel;

  const listen = (where: string | number): Promise<Server> =>
    new Promise((resolve) => {
      const server = createServer((peer) => {
        connections += 1;
        peer.destroy();
      });
      servers.push(server);
      if (typeof where === "string") server.listen(where, () => resolve(server));
      else server.listen(where, "127.0.0.1", () => resolve(server));
    });

  beforeAll(async () => {
    port = ((await listen(0)).address() as AddressInfo).port;
    await listen(socket);
    process.env.JOURNALBOX_TEST_SECRET = "secret";
    kernel = await SandboxKernel.start(folder, offer);
  }, 120_000);
  afterAll(async () => {
    await kernel?.close();
    for (const server of servers) server.close();
    delete process.env.JOURNALBOX_TEST_SECRET;
  });

  it("computes as anywhere", async () => {
    const { outputs } = await kernel.execute('import { inch } from "journalbox";\ninch(1).in("mm")', {
      timeout: 60_000,
    });
    const result = outputs.find(({ type }) => type === "execute_result")!;
    expect((result.content.data as Record<string, string>)["text/plain"]).toBe("25.4");
  });

  it("is refused every escape, in clear words, and nothing outside has changed", async () => {
    // One that lies among this program's own packages, which the sandbox may read.
    const modules = join(packageRoot(), "node_modules", "zeromq");
    const found = readdirSync(modules, { recursive: true, encoding: "utf8" }).find((file) =>
      file.endsWith(".node"),
    );
    const addon = join(modules, found ?? "none is there");
    expect(existsSync(addon)).toBe(true);
    const attempts = escapeAttempts({ outside, port, socket, pid: process.pid, addon });
    expect(attempts.length).toBeGreaterThan(50);
    const before = readdirSync(outside).sort();
    const notRefused: string[] = [];
    for (const { what, code, refusal = /the sandbox does not allow/ } of attempts) {
      try {
        await kernel.execute(`const attempt = async () => { ${code} };\nawait attempt();`, {
          timeout: 30_000,
        });
        notRefused.push(`${what}: it went through`);
      } catch (error) {
        const said = error instanceof Error ? error.message : String(error);
        if (!refusal.test(said)) notRefused.push(`${what}: ${said}`);
      }
    }
    expect(notRefused).toEqual([]);
    expect(readdirSync(outside).sort()).toEqual(before);
    expect(readFileSync(join(outside, "secret.txt"), "utf8")).toBe("secret");
    expect(readFileSync(join(folder, "rebuild.json"), "utf8")).toBe(rebuildJson);
    expect(readFileSync(join(folder, "tables", "t.csv"), "utf8")).toBe("a [in]\n1\n");
    expect(readdirSync(join(folder, "out"), { withFileTypes: true }).every((entry) => entry.isFile())).toBe(
      true,
    );
    expect(connections).toBe(0);
  }, 180_000);

  it("sees nothing of the user's environment", async () => {
    const { outputs } = await kernel.execute("console.log(JSON.stringify(process.env))", { timeout: 30_000 });
    const told = outputs.map(({ content }) => String(content.text ?? "")).join("");
    expect(told).not.toContain("secret");
    expect(
      Object.keys(JSON.parse(told))
        .sort()
        .filter(
          (name) =>
            !/^(?:HOME|JOURNALBOX_QUICK_START|LANG|NODE_PATH|NO_COLOR|OLDPWD|PATH|PWD|SHLVL|_)$/.test(name),
        ),
    ).toEqual([]);
  });

  it.runIf(offer.apart)(
    "has no network and no neighbours by the operating system itself, whatever JavaScript says",
    async () => {
      const code =
        'const os = await import("node:os"); console.log(JSON.stringify([os.networkInterfaces(), process.pid]))';
      const { outputs } = await kernel.execute(code, { timeout: 30_000 });
      const [interfaces, pid] = JSON.parse(outputs.map(({ content }) => String(content.text ?? "")).join(""));
      expect(interfaces).toEqual({});
      expect(pid).toBeLessThan(10);
    },
  );
});

describe("SandboxKernel, limits", () => {
  const start = (limits = usualLimits): Promise<SandboxKernel> =>
    SandboxKernel.start(temporaryFolder(), offer, limits);

  it("ends an endless loop, also one that never waits", async () => {
    const kernel = await start();
    await expect(kernel.execute("for (;;) {}", { timeout: 1500 })).rejects.toThrow(
      /took longer than 1\.5 s.*ended/,
    );
    await kernel.close();
  });

  it("ends what takes too much memory, on the heap or beside it", async () => {
    const limits = { ...usualLimits, memory: 600e6 };
    for (const hog of [
      "const kept: Buffer[] = []; for (;;) kept.push(Buffer.alloc(20e6, 1))",
      "const kept: number[][] = []; for (;;) kept.push(new Array(1e6).fill(kept.length + 0.5))",
    ]) {
      const kernel = await start(limits);
      await expect(kernel.execute(hog, { timeout: 60_000 })).rejects.toThrow(/memory|heap/i);
      await kernel.close();
    }
  });

  it("ends what shows too much", async () => {
    const kernel = await start({ ...usualLimits, output: 1e6 });
    const flood =
      'for (;;) { console.log("x".repeat(100000)); await new Promise((go) => setTimeout(go, 5)); }';
    await expect(kernel.execute(flood, { timeout: 30_000 })).rejects.toThrow(/a cell showed more than 1 MB/);
    await kernel.close();
  });

  it("tells when the code has ended its own process", async () => {
    const kernel = await start();
    await expect(kernel.execute("process.exit(3)", { timeout: 30_000 })).rejects.toThrow(/the kernel ended/);
    await kernel.close();
  });

  it("takes forged messages as data", async () => {
    const kernel = await start();
    const forged = `const send: any = (process as any).send.bind(process);
for (const id of [-1, "x", null, { toString: 1 }]) send({ id, type: "reply", content: { status: "ok" } });
for (const junk of [null, 1, "x", [], { id: 1 }, { type: "stream" }, { id: 1, type: 5, content: 5 }]) send(junk);`;
    await kernel.execute(forged, { timeout: 30_000 });
    const { outputs } = await kernel.execute("1 + 1", { timeout: 30_000 });
    expect(JSON.stringify(outputs)).toContain('"2"');
    await kernel.close();
  });

  it("is not to be had without a permission model", async () => {
    const none = { ...offer, permission: undefined };
    await expect(SandboxKernel.start(temporaryFolder(), none)).rejects.toThrow(/permission model/);
    expect(sandboxSentences(none).join()).toMatch(/nothing can be kept/);
  });
});

describe("runInSandbox(options)", () => {
  it("runs the sheets of a bundle, and leaves results and a mark in the folder", async () => {
    const folder = join(temporaryFolder(), "run");
    const bundle = bundleOf(
      'import { inch, openRebuild } from "journalbox";\nconst rebuild = openRebuild();',
      "rebuild.publish({ wear: inch(0.25) })",
    );
    const { results } = await runInSandbox({ bundle, folder, offer, openNetwork: true });
    expect(results.map(({ status, error }) => [status, error?.message])).toEqual([["ok", undefined]]);
    expect(readFileSync(join(folder, "record", "01-t.json"), "utf8")).toContain('{ "inch": 0.25 }');
    expect(existsSync(join(folder, "out", "report.html"))).toBe(true);
    expect(isForeign(folder)).toBe(true);
    const again = await runInSandbox({ folder, offer, openNetwork: true });
    expect(again.results.map(({ status }) => status)).toEqual(["ok"]);
  });

  it("gives the next sheet a sandbox too, when one has ended its own", async () => {
    const folder = join(temporaryFolder(), "run");
    const payload = new Map([
      ["rebuild.json", bytesOf(rebuildJson)],
      ["sheets/01-a.ipynb", bytesOf(sheet("process.exit(1)"))],
      [
        "sheets/02-b.ipynb",
        bytesOf(sheet('await import("node:child_process").then((c) => c.execSync("id"))')),
      ],
    ]);
    const bundle = { name: "t", files: makeBag(payload, []) };
    const { results } = await runInSandbox({ bundle, folder, offer, openNetwork: true });
    expect(results.map(({ error }) => error?.message)).toEqual([
      expect.stringMatching(/the kernel ended/),
      expect.stringMatching(/the sandbox does not allow/),
    ]);
  });

  it("runs nothing of a bundle that is not whole, or where the network stays open", async () => {
    const folder = join(temporaryFolder(), "run");
    const { name, files } = bundleOf("1");
    const altered = new Map([...files, ["data/sheets/01-t.ipynb", bytesOf(sheet("2"))] as const]);
    await expect(
      runInSandbox({ bundle: { name, files: altered }, folder, offer, openNetwork: true }),
    ).rejects.toThrow(/must be whole.*01-t\.ipynb: it was altered/);
    const open = { ...offer, network: "open", apart: false } as const;
    await expect(runInSandbox({ bundle: { name, files }, folder, offer: open })).rejects.toThrow(
      /the network must be closed/,
    );
    const none = { ...offer, permission: undefined };
    await expect(runInSandbox({ bundle: { name, files }, folder, offer: none })).rejects.toThrow(
      /permission model/,
    );
    expect(existsSync(folder)).toBe(false);
  });

  it("writes over nothing, and follows no link that lies in a folder", async () => {
    const full = temporaryFolder({ "mine.txt": "mine" });
    await expect(
      runInSandbox({ bundle: bundleOf("1"), folder: full, offer, openNetwork: true }),
    ).rejects.toThrow(/must be empty/);
    expect(readdirSync(full)).toEqual(["mine.txt"]);
    const linked = temporaryFolder({ "rebuild.json": rebuildJson, "sheets/01-t.ipynb": sheet("1") });
    mkdirSync(join(linked, "tables"));
    symlinkSync("/etc/passwd", join(linked, "tables", "t.csv"));
    await expect(runInSandbox({ folder: linked, offer, openNetwork: true })).rejects.toThrow(
      /a link or a device: .*t\.csv/,
    );
  });
});

describe("isForeign(directory)", () => {
  it("takes a bag and what was unpacked from one for somebody else's, and any other folder for one's own", () => {
    const bag = temporaryFolder({ "bagit.txt": "", "data/rebuild.json": rebuildJson });
    expect(isForeign(join(bag, "data"))).toBe(true);
    expect(isForeign(temporaryFolder({ "rebuild.json": rebuildJson }))).toBe(false);
    const marked = temporaryFolder({ "rebuild.json": rebuildJson });
    writeFileSync(join(marked, "from-somebody-else.txt"), textOf(bytesOf("")));
    expect(isForeign(marked)).toBe(true);
  });
});
