import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { downloadLink } from "../../../kernel-helpers/notebook/report/download-link.js";
import { buildReport } from "../../../kernel-helpers/notebook/report/index.js";
import { hasBrowser, inBrowser } from "./browser.js";
import { parsePage } from "./parse-page.js";
import { inputOf } from "./sample-input.js";

const long = `{\n${Array.from({ length: 400 }, (_, row) => `  "Ø ${row}": { "inch": ${row / 7} },`).join("\n")}\n}\n`;

function linkOf(file: string, text: string): Element {
  return parsePage(downloadLink(file, "application/json", text)).querySelector("a")!;
}

describe("downloadLink(file, mediaType, text)", () => {
  it("packs a long text to the letter, says so in the name, and saves at least half", () => {
    const link = linkOf("05-taper.json", long);
    const [head, base64] = link.getAttribute("href")!.split(",");
    expect(head).toBe("data:application/gzip;base64");
    expect(gunzipSync(Buffer.from(base64!, "base64")).toString("utf8")).toBe(long);
    expect(base64!.length).toBeLessThan(long.length / 2); // measured: 0.37, for these are all different
    expect(link.getAttribute("download")).toBe("05-taper.json.gz");
    expect(link.textContent).toBe("05-taper.json");
  });

  it("names neither the machine it was made on nor the time", () => {
    const bytes = Buffer.from(linkOf("a.json", long).getAttribute("href")!.split(",")[1]!, "base64");
    expect([...bytes.subarray(4, 8), bytes[9]]).toEqual([0, 0, 0, 0, 255]); // RFC 1952, 2.3.1: MTIME, OS unknown
  });

  it("leaves a short text as it is, to be read without unpacking", () => {
    const link = linkOf("05-taper.json", "{}\n");
    expect(link.getAttribute("href")).toBe("data:application/json;charset=utf-8,{}%0A");
    expect(link.getAttribute("download")).toBe("05-taper.json");
    expect(link.hasAttribute("data-type")).toBe(false);
  });
});

describe.runIf(hasBrowser)("a packed file in a report, in a browser", () => {
  it("is handed over unpacked when it is clicked, twice too, and nothing is asked of the network", async () => {
    const report = await buildReport({ ...inputOf(), records: [{ name: "05-taper.json", text: long }] });
    await inBrowser(report, async ({ asked, evaluate, takenAway }) => {
      await evaluate('document.querySelector("a[data-type]").click()');
      expect(await takenAway("05-taper.json")).toBe(long);
      await evaluate('document.querySelector("a[data-type]").click()');
      expect(await takenAway("05-taper.json")).toBe(long);
      expect(asked.filter((url) => !/^(?:file|data|blob):/.test(url))).toEqual([]);
    });
  });
});
