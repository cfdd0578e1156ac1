import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { downloadScript } from "../../../kernel-helpers/notebook/report/download-script.js";
import { buildReport } from "../../../kernel-helpers/notebook/report/index.js";
import { pageScript } from "../../../kernel-helpers/notebook/report/page-script.js";
import { hasBrowser, inBrowser } from "./browser.js";
import { hostileHtml, hostileInput } from "./hostile-input.js";
import { parsePage } from "./parse-page.js";

describe("buildReport(a rebuild that means harm)", () => {
  const asked: string[] = [];
  let server: Server;
  let address = "";
  let report = "";

  beforeAll(async () => {
    server = createServer(({ url = "" }, response) => {
      asked.push(url);
      response.end();
    });
    await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    report = await buildReport(hostileInput(address));
  });
  afterAll(() => server.close());

  it("holds no element that runs, loads or sends, but its own script and data", () => {
    const page = parsePage(report);
    const names = new Set([...page.querySelectorAll("*")].map((element) => element.localName));
    for (const name of [
      "iframe",
      "object",
      "embed",
      "base",
      "form",
      "video",
      "audio",
      "button",
      "svg",
      "noscript",
    ])
      expect(names.has(name), name).toBe(false);
    expect([...page.querySelectorAll("link")]).toEqual([]);
    expect([...page.querySelectorAll("meta")].map((meta) => meta.getAttribute("http-equiv"))).not.toContain(
      "refresh",
    );
    const types = [...page.querySelectorAll("script")].map((script) => script.getAttribute("type"));
    const run = [...page.querySelectorAll("script:not([type])")].map(({ textContent }) => textContent);
    expect(run).toEqual([downloadScript, pageScript]);
    expect(new Set(types)).toEqual(new Set(["application/json", "text/plain", null]));
    expect([...page.querySelectorAll("style")]).toHaveLength(1);
    expect([...page.querySelectorAll("input")].map((input) => input.id)).toEqual(["with-code"]);
  });

  it("holds no attribute that runs, and no address but full links to click and data inside the page", () => {
    for (const element of parsePage(report).querySelectorAll("*")) {
      for (const { name, value } of element.attributes) {
        expect(name, element.outerHTML.slice(0, 200)).not.toMatch(
          /^on|^(?:srcset|srcdoc|action|formaction|background|ping)$/,
        );
        if (name === "src" || name === "xlink:href") expect(value).toMatch(/^data:image\//);
        if (name === "style") expect(value).not.toMatch(/url|expression|position|@/i);
        if (name !== "href") continue;
        if (element.hasAttribute("download")) expect(value).toMatch(/^data:(?:text|application)\//);
        else
          expect(value).toMatch(/^(?:#(?:sheet-1|contents|readings|files|provenance)$|https?:\/\/|mailto:)/);
      }
    }
  });

  it("gives every link that leaves the page no opener and no referrer", () => {
    const links = [...parsePage(report).querySelectorAll("a")].filter((a) =>
      /^http/.test(a.getAttribute("href") ?? ""),
    );
    expect(links.length).toBeGreaterThan(0);
    for (const link of links) expect(link.getAttribute("rel")).toBe("noopener noreferrer");
  });

  it("gives ids to nothing but its own parts", () => {
    const ids = [...parsePage(report).querySelectorAll("[id]")].map(({ id }) => id);
    expect(ids).toEqual([
      ...["contents", "contents-title", "with-code", "sheet-1", "sheet-1-title"],
      ...[
        "readings",
        "readings-title",
        "files",
        "files-title",
        "provenance",
        "provenance-title",
        "plotly-library",
      ],
    ]);
  });

  it("leaves no prototype changed", () => {
    expect(Object.hasOwn(Object.prototype, "polluted")).toBe(false);
  });

  it.runIf(hasBrowser)(
    "runs nothing and asks nothing in a browser, which does both in a careless page",
    async () => {
      asked.length = 0;
      await inBrowser(report, async (page) => {
        await page.until('document.querySelector(".is-live .main-svg") !== null');
        expect(await page.evaluate("document.documentElement.outerHTML.slice(0, 16)")).toBe(
          '<html lang="en">',
        );
        const scriptLinks = `[...document.querySelectorAll("a")].filter(({ attributes }) =>
        [...attributes].some(({ value }) => /^\\s*javascript:/i.test(value))).length`;
        expect(await page.evaluate(scriptLinks)).toBe(0);
        expect(page.asked.filter((url) => !/^(?:file|data):/.test(url))).toEqual([]);
      });
      expect(asked).toEqual([]);

      const staying = hostileHtml(address).filter((piece) => !piece.includes("refresh"));
      await inBrowser(`<!DOCTYPE html><html><body>${staying.join("\n")}</body></html>`, async (page) => {
        await page.until('document.documentElement.hasAttribute("data-ran")');
        expect(page.asked).toContain(`${address}/picture.png`);
      });
      expect(asked).toContain("/picture.png");
    },
  );
});
