import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { kernelProgram } from "../../kernel-helpers/notebook/client/kernel-process.js";
import { writeNotebook } from "../../kernel-helpers/notebook/file/notebook-file.js";
import {
  installKernelspec,
  readRegistration,
  removeKernelspec,
  whereKernelspec,
} from "../../kernel-helpers/notebook/kernelspec.js";
import { buildTimeout, ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

beforeAll(ensureBuilt, buildTimeout);

describe("installKernelspec(options), whereKernelspec(options) and removeKernelspec(options)", () => {
  const prefix = temporaryFolder();
  const folder = join(prefix, "share", "jupyter", "kernels", "journalbox");
  it("register this Node and this installation, twice without harm", () => {
    expect(installKernelspec({ prefix })).toBe(folder);
    expect(installKernelspec({ prefix })).toBe(whereKernelspec({ prefix }));
    expect(JSON.parse(readFileSync(join(folder, "kernel.json"), "utf8"))).toMatchObject({
      argv: [process.execPath, kernelProgram(), "--config-path", "{connection_file}"],
      display_name: "Journalbox (TypeScript)",
      language: "typescript",
      interrupt_mode: "message",
    });
    expect(readRegistration({ prefix })).toEqual({
      folder,
      node: process.execPath,
      kernel: kernelProgram(),
      isThisOne: true,
      faults: [],
    });
  });
  it("say what is no longer there, once project or Node.js were moved", () => {
    const file = join(folder, "kernel.json");
    const spec = JSON.parse(readFileSync(file, "utf8"));
    writeFileSync(file, JSON.stringify({ ...spec, argv: ["/old/node", "/old/main.js", "--config-path"] }));
    expect(readRegistration({ prefix })).toMatchObject({
      isThisOne: false,
      faults: [
        "Node.js is no longer there: /old/node. It was moved or removed.",
        expect.stringMatching(/^the kernel is no longer there: \/old\/main\.js\./),
      ],
    });
    writeFileSync(file, "no kernelspec");
    expect(readRegistration({ prefix })?.faults).toHaveLength(2);
    installKernelspec({ prefix });
    expect(readRegistration({ prefix })?.isThisOne).toBe(true);
  });
  it("take it back, and say whether there was anything", () => {
    expect(removeKernelspec({ prefix })).toBe(true);
    expect(existsSync(folder)).toBe(false);
    expect(removeKernelspec({ prefix })).toBe(false);
    expect(readRegistration({ prefix })).toBeUndefined();
  });
  it("use Jupyter's data folder where no prefix is given", () => {
    const { JUPYTER_DATA_DIR } = process.env;
    process.env.JUPYTER_DATA_DIR = prefix;
    try {
      expect(whereKernelspec()).toBe(join(prefix, "kernels", "journalbox"));
    } finally {
      if (JUPYTER_DATA_DIR === undefined) delete process.env.JUPYTER_DATA_DIR;
      else process.env.JUPYTER_DATA_DIR = JUPYTER_DATA_DIR;
    }
  });
});

// Where Jupyter itself is installed, it must find and run the kernel.
const hasJupyter = spawnSync("jupyter", ["nbconvert", "--version"]).status === 0;
describe.runIf(hasJupyter)("jupyter nbconvert --execute", () => {
  const folder = temporaryFolder();
  const run = (name: string, source: string): { status: number | null; told: string } => {
    installKernelspec({ prefix: folder });
    const cell = {
      cell_type: "code",
      id: "only",
      metadata: {},
      source,
      outputs: [],
      execution_count: null,
    } as const;
    writeNotebook(join(folder, name), { metadata: {}, cells: [cell] });
    const { status, stderr } = spawnSync(
      "jupyter",
      ["nbconvert", "--to", "notebook", "--inplace", "--execute", name],
      {
        cwd: folder,
        encoding: "utf8",
        env: { ...process.env, JUPYTER_PATH: join(folder, "share", "jupyter") },
      },
    );
    return { status, told: stderr };
  };
  it("runs a sheet through the registered kernel", () => {
    const { status, told } = run(
      "good.ipynb",
      'import * as journalbox from "journalbox";\ntypeof journalbox',
    );
    expect(status, told).toBe(0);
    expect(readFileSync(join(folder, "good.ipynb"), "utf8")).toContain("'object'");
  });
  it("stops with the cell's line and an excerpt", () => {
    const { status, told } = run("bad.ipynb", 'const a = 1;\nthrow new RangeError("too large");');
    expect(status).not.toBe(0);
    expect(told).toContain('> 2 | throw new RangeError("too large");');
    expect(told).toContain("RangeError: too large");
  });
});
