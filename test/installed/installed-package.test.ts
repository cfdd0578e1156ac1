import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";
import { ensurePageBuilt } from "../live/page/built-page.js";
import { ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

// The package as npm would publish it, installed by npm in an empty folder elsewhere, as whoever uses it installs it: what
// is missing from "files" or from "dependencies" is missing here. Where npm cannot get the dependencies (no network, and
// not in its cache), a line says so, and those of this folder stand beside the unpacked package instead.
const elsewhere = temporaryFolder();
const installed = join(elsewhere, "node_modules", "journalbox");
const program = join(installed, "dist", "cli", "main.js");
let opened: ChildProcess | undefined;

function must(command: string, args: readonly string[], cwd: string): string {
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    cwd,
    encoding: "utf8",
    maxBuffer: 1e8,
  });
  if (status !== 0)
    throw new Error(`${command} ${args.join(" ")} ended with ${status ?? error}\n${stderr}\n${stdout}`);
  return stdout;
}
const journalbox = (...args: string[]): string => must(process.execPath, [program, ...args], elsewhere);

/** What npm says where it cannot get a package, whatever the package is. */
const noRegistry = /\b(ENOTFOUND|ENOTCACHED|ECONNREFUSED|ECONNRESET|ETIMEDOUT|EAI_AGAIN|ENETUNREACH)\b/;

/** @returns whether npm could get what the package needs */
function installedByNpm(tarball: string): boolean {
  const call = ["install", "--omit=dev", "--prefer-offline", "--no-audit", "--no-fund", tarball];
  const { status, stdout, stderr } = spawnSync("npm", call, {
    cwd: elsewhere,
    encoding: "utf8",
    // Not the settings that npm hands down to the scripts it runs, this test among them.
    env: Object.fromEntries(
      Object.entries(process.env).filter(
        ([name]) => !/^npm_config_(?!cache|registry|userconfig)/i.test(name),
      ),
    ),
    timeout: 240_000,
  });
  if (status === 0) return true;
  if (status !== null && !noRegistry.test(stderr))
    throw new Error(`npm install failed:\n${stderr}\n${stdout}`);
  process.stderr.write("NOT TESTED HERE: npm install of the package, for npm cannot get what it needs\n");
  return false;
}

/** Unpacks the package beside links to what it depends on. */
function installedByHand(tarball: string): void {
  rmSync(join(elsewhere, "node_modules"), { recursive: true, force: true });
  mkdirSync(installed, { recursive: true });
  must("tar", ["-xzf", tarball, "--strip-components=1", "-C", installed], elsewhere);
  const { dependencies } = JSON.parse(readFileSync(join(installed, "package.json"), "utf8")) as {
    readonly dependencies: Readonly<Record<string, string>>;
  };
  for (const name of Object.keys(dependencies)) {
    const link = join(elsewhere, "node_modules", name);
    mkdirSync(dirname(link), { recursive: true });
    symlinkSync(join(packageRoot(), "node_modules", name), link);
  }
}

let byNpm = false;
let packed = { filename: "", size: 0 };

beforeAll(async () => {
  await ensureBuilt();
  await ensurePageBuilt();
  // Scripts are left out: the package is built already.
  const told = must(
    "npm",
    ["pack", "--ignore-scripts", "--json", "--offline", "--pack-destination", elsewhere],
    packageRoot(),
  );
  [packed] = JSON.parse(told) as [typeof packed];
  const tarball = join(elsewhere, packed.filename);
  byNpm = installedByNpm(tarball);
  if (!byNpm) installedByHand(tarball);
}, 480_000);
afterAll(() => void opened?.kill("SIGINT"));

describe("the package, installed elsewhere", () => {
  it("brings nothing of a run, and no test", () => {
    for (const part of ["test", "kernel-helpers/index.ts", "worksheets/demo/record", "worksheets/demo/out"])
      expect(existsSync(join(installed, part)), part).toBe(false);
  });

  it("is a file of less than 4 MB, and brings no tool of development", ({ skip }) => {
    expect(packed.size).toBeLessThan(4_000_000); // 3.6 MB, as DEVELOPERS.md says
    if (!byNpm) skip("npm could not install it");
    const brought = readdirSync(join(elsewhere, "node_modules"));
    const { devDependencies } = JSON.parse(readFileSync(join(packageRoot(), "package.json"), "utf8")) as {
      readonly devDependencies: Readonly<Record<string, string>>;
    };
    const tools = Object.keys(devDependencies).map((name) => name.split("/")[0]!);
    // A scope that a dependency has too.
    const shared = ["@types"];
    expect(brought.filter((name) => tools.includes(name) && !shared.includes(name))).toEqual([]);
  });

  it("makes a rebuild with tables and worksheets", () => {
    journalbox("new", "mine", "--units", "inch", "--title", "Line shaft", "--sheets", "04");
    expect(readdirSync(join(elsewhere, "mine", "sheets"))).toEqual(["04-shaft-survey.ipynb"]);
    expect(readdirSync(join(elsewhere, "mine", "tables"))).toContain("shaft-survey.csv");
  });

  it("checks, runs and audits a rebuild, with pictures and report", () => {
    mkdirSync(join(elsewhere, "demo", "sheets"), { recursive: true });
    for (const part of ["rebuild.json", "tables"])
      cpSync(join(installed, "worksheets", "demo", part), join(elsewhere, "demo", part), { recursive: true });
    for (const sheet of ["04-shaft-survey", "06-shaft-salvage"])
      cpSync(
        join(installed, "worksheets", `${sheet}.ipynb`),
        join(elsewhere, "demo", "sheets", `${sheet}.ipynb`),
      );
    journalbox("check", "demo");
    expect(journalbox("run", "demo")).toMatch(/04-shaft-survey +ok/);
    expect(readFileSync(join(elsewhere, "demo", "out", "report.html"), "utf8")).toMatch(/<svg|image\/svg/);
    expect(journalbox("audit", "demo")).toMatch(/decisions +1 stands/);
    journalbox("share", "demo");
    const [bundle] = readdirSync(join(elsewhere, "demo", "out", "share")).filter((name) =>
      name.endsWith(".zip"),
    );
    expect(journalbox("verify", join("demo", "out", "share", bundle!))).toMatch(/is whole/);
  });

  it("draws a picture in its own fonts", () => {
    const module = JSON.stringify(join(installed, "dist", "view", "picture", "draw-png.js"));
    const figure = { data: [], layout: { width: 300, height: 200, title: { text: "Shaft" } } };
    const code = `require(${module}).drawPng(${JSON.stringify(figure)}, { scale: 1 }).then((png) => console.log(Buffer.from(png).toString("latin1", 1, 4)))`;
    expect(must(process.execPath, ["-e", code], elsewhere).trim()).toBe("PNG");
  });

  it("opens the live page with all that the page asks for", async () => {
    opened = spawn(process.execPath, [program, "open", "demo", "--no-browser"], { cwd: elsewhere });
    const address = await new Promise<string>((resolve, reject) => {
      let said = "";
      opened!.stdout!.setEncoding("utf8").on("data", (part: string) => {
        said += part;
        const found = /http:\/\/\S+/.exec(said);
        if (found !== null) resolve(found[0]);
      });
      opened!.once("exit", (code) => reject(new Error(`open ended with ${code}: ${said}`)));
    });
    const entry = await fetch(address, { redirect: "manual" });
    const headers = { cookie: entry.headers.get("set-cookie")!.split(";")[0]! };
    const page = await (await fetch(new URL("/", address), { headers })).text();
    const asked = [...page.matchAll(/(?:src|href)="([^"#:]+)"/g)].map(([, path]) => path!);
    expect(asked.some((path) => path.endsWith(".js"))).toBe(true);
    for (const path of asked)
      expect((await fetch(new URL(path, address), { headers })).status, path).toBe(200);
  });
});
