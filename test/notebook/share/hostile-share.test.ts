import { mkdirSync, readdirSync, renameSync, writeFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { shareRebuild } from "../../../kernel-helpers/notebook/share/index.js";
import { verifyBag } from "../../../kernel-helpers/record/bundle/index.js";
import { blocksMimeType } from "../../../kernel-helpers/view/blocks.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { hasBrowser, inBrowser } from "../report/browser.js";
import { hostileHtml } from "../report/hostile-input.js";

/** A rebuild folder by somebody who means harm: in every file, name and field that takes a text. */
function hostileFolder(address: string): string {
  const all = `"></script></style></title>-->${hostileHtml(address).join("\n")}`;
  const line = all.replace(/\s+/g, " ");
  const quoted = `"${line.replaceAll('"', '""')}"`;
  const output = (data: Readonly<Record<string, unknown>>): unknown => ({
    output_type: "display_data",
    data,
    metadata: {},
  });
  const notebook = JSON.stringify({
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells: [
      { cell_type: "markdown", id: "m", metadata: {}, source: `# ${line}\n\n${all}\n\n[x](javascript:1)` },
      {
        cell_type: "code",
        id: "c",
        metadata: {},
        execution_count: 1,
        source: all,
        outputs: [
          output({ "text/html": all, "text/plain": all }),
          output({ "text/markdown": all }),
          output({ "image/svg+xml": `<svg xmlns="http://www.w3.org/2000/svg">${all}</svg>` }),
          output({ [blocksMimeType]: { blocks: [{ type: "text", text: all }] }, "text/html": all }),
          { output_type: "stream", name: "stdout", text: all },
          { output_type: "error", ename: all, evalue: all, traceback: [all] },
        ],
      },
    ],
  });
  // What a file system takes for a name: no slash.
  const name = "01-<img src=x onerror=document.documentElement.setAttribute('data-ran',1)>";
  const files: Readonly<Record<string, string>> = {
    "rebuild.json": JSON.stringify({
      schema: 1,
      title: all,
      units: "inch",
      machine: { [all]: all, secret: "a word that is not shared" },
      words: { [all]: all },
      private: { machine: ["secret"], columns: ["price"] },
    }),
    "tables/t.csv": `# ${line}\n# who: ${line}\nstation [in], price [-], remark\n1, 12345, ${quoted}\n`,
    [`sheets/${name}.ipynb`]: notebook,
    [`out/${name}.ipynb`]: notebook,
    [`record/${name}.json`]: JSON.stringify({ schema: 2, published: { [all]: all }, inputs: { [all]: all } }),
  };
  const folder = temporaryFolder();
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

describe("shareRebuild(a rebuild that means harm)", () => {
  const asked: string[] = [];
  let server: Server;
  let address = "";

  beforeAll(async () => {
    server = createServer(({ url = "" }, response) => {
      asked.push(url);
      response.end();
    });
    await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  });
  afterAll(() => server.close());

  it("refuses file names that would be something else on another machine", async () => {
    // The name above holds "<" and ">", which Windows does not take.
    await expect(shareRebuild({ directory: hostileFolder(address), today: "2026-05-04" })).rejects.toThrow(
      /makeBag: each path must stay inside the bag/,
    );
  });

  it.runIf(hasBrowser)("makes a report in which nothing runs and nothing is asked for", async () => {
    const folder = hostileFolder(address);
    const { report, bag, notices } = await shareRebuild({ directory: renamed(folder), today: "2026-05-04" });
    expect(verifyBag(bag).valid).toBe(true);
    expect(notices.join("\n")).toMatch(/the machine fact "secret"[\s\S]*the column "price"/);
    expect(report).not.toContain("a word that is not shared");
    asked.length = 0;
    await inBrowser(report, async (page) => {
      expect(await page.evaluate("document.querySelector('h1') !== null")).toBe(true);
      expect(await page.evaluate("document.documentElement.hasAttribute('data-ran')")).toBe(false);
      expect(page.asked.filter((url) => !/^(?:file|data):/.test(url))).toEqual([]);
    });
    expect(asked).toEqual([]);
  });
});

/** The same folder with a sheet name that every machine takes. */
function renamed(folder: string): string {
  for (const part of ["sheets", "out", "record"])
    for (const file of readdirSync(join(folder, part)))
      renameSync(join(folder, part, file), join(folder, part, file.replace(/^01-.*>/, "01-a & b 'c'")));
  return folder;
}
