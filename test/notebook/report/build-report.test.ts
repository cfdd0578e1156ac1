import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { buildReport } from "../../../kernel-helpers/notebook/report/index.js";
import { readPlotly } from "../../../kernel-helpers/view/plotly-file.js";
import { hasBrowser, inBrowser } from "./browser.js";
import { parsePage } from "./parse-page.js";
import {
  codeCell,
  dataOutput,
  inputOf,
  markdownCell,
  presentationOutput,
  sampleInput,
  wearPresentation,
} from "./sample-input.js";

const input = sampleInput();
const report = buildReport(input);
const page = report.then(parsePage);

function textsOf(parent: ParentNode, selector: string): string[] {
  return [...parent.querySelectorAll(selector)].map((element) => (element.textContent ?? "").trim());
}

function textsOfScripts(parent: ParentNode): string[] {
  return [...parent.querySelectorAll("script:not([type])")].map((script) => script.textContent ?? "");
}

describe("buildReport(input)", () => {
  it("gives the same bytes for the same input", async () => {
    expect((await buildReport(sampleInput())) === (await report)).toBe(true);
  });

  it("gives the same bytes whatever the order of tables and records", async () => {
    const turned = { ...input, tables: [...input.tables].reverse(), records: [...input.records].reverse() };
    expect((await buildReport(turned)) === (await report)).toBe(true);
  });

  it("leaves its input as it was", async () => {
    expect(input).toEqual(sampleInput());
  });

  it("stays under 1.3 MB with one figure, a formula and plotly.js inside", async () => {
    expect(Buffer.byteLength(await report)).toBeLessThan(1.3e6); // measured: 1.11 MB
  });

  it("shows title, facts and provenance, and says that the readings are invented", async () => {
    expect(textsOf(await page, "h1")).toEqual([input.title]);
    expect(textsOf(await page, ".head dt")).toEqual(input.facts.map(({ label }) => label));
    expect(textsOf(await page, ".head dd")).toEqual(input.facts.map(({ value }) => value));
    expect(textsOf(await page, "footer dd")).toEqual(input.provenance.map(({ value }) => value));
    expect(textsOf(await page, ".banner")).toEqual(["Invented readings, for demonstration"]);
    expect(textsOf(parsePage(await buildReport(inputOf())), ".banner")).toEqual([]);
  });

  it("lists every sheet with how it went, and leads to it", async () => {
    const entries = [...(await page).querySelectorAll("nav ol li")];
    expect(entries.map((entry) => textsOf(entry, ".stamp"))).toEqual([["ran through"], ["stopped"]]);
    for (const [index, link] of entries.map((entry) => entry.querySelector("a")!).entries()) {
      const section = (await page).querySelector(link.getAttribute("href")!)!;
      expect(textsOf(section, "h2")).toEqual([input.sheets[index]!.title]);
    }
    expect(textsOf(await page, ".outcome")).toEqual(["1 of 2 worksheets stopped."]);
    expect(textsOf(await page, ".failure pre")).toEqual([input.sheets[1]!.failure]);
  });

  it("skips no level of headings", async () => {
    const levels = [...(await page).querySelectorAll("h1,h2,h3,h4,h5,h6")].map(({ localName }) =>
      Number(localName[1]),
    );
    expect(levels[0]).toBe(1);
    for (const [index, level] of levels.entries())
      expect(level).toBeLessThanOrEqual((levels[index - 1] ?? 0) + 1);
  });

  it("shows our results drawn anew, not the cell's own HTML", async () => {
    const text = (await page).body.textContent ?? "";
    expect(text).toContain("Band B is 0.0043 in under");
    expect(text).not.toContain("the cell's own");
  });

  it("shows the text of a result whose blocks have the wrong shape", async () => {
    const wrong = codeCell("x", [presentationOutput({ title: 1, blocks: [] })]);
    expect(textsOf(parsePage(await buildReport(inputOf(wrong))), ".output")).toEqual(["the cell's own text"]);
  });

  it("takes blocks stored as a text, as plain kernels do", async () => {
    const stored = codeCell("x", [presentationOutput(JSON.stringify({ title: "Stored", blocks: [] }))]);
    expect(textsOf(parsePage(await buildReport(inputOf(stored))), ".output")).toEqual(["Stored"]);
  });

  it("shows of any other value the first form that holds what it says", async () => {
    const shown = async (data: Record<string, unknown>): Promise<string> =>
      parsePage(await buildReport(inputOf(codeCell("x", [dataOutput(data)])))).querySelector(".output")!
        .innerHTML;
    const plain = { "text/plain": "plain" };
    expect(await shown({ ...plain, "image/png": "iVBORw0KGgo=", "text/html": "<b>bold</b>" })).toContain(
      "<b>bold</b>",
    );
    expect(
      await shown({ ...plain, "text/html": "<script>1</script>", "image/png": "iVBORw0KGgo=" }),
    ).toContain('src="data:image/png;base64,iVBORw0KGgo="');
    expect(await shown({ ...plain, "image/svg+xml": "<svg/>" })).toContain(
      'src="data:image/svg+xml;charset=utf-8,%3Csvg/%3E"',
    );
    expect(await shown({ ...plain, "image/png": "no base64!" })).toContain("plain");
    expect(await shown({ ...plain, "text/markdown": "*leaning*" })).toContain("<em>leaning</em>");
    expect(await shown({ ...plain, "text/latex": "$x^2$" })).toContain('class="katex');
    expect(await shown({ ...plain, "application/vnd.unknown": {} })).toContain("plain");
  });

  it("keeps the code of a failed cell in sight, with what was wrong", async () => {
    const failed = (await page).querySelector(".cell.failed")!;
    expect(textsOf(failed, ".code")[0]).toContain("taperOf(readings)");
    expect(textsOf(failed, ".error")[0]).toContain("at least three stations are needed, got 2");
  });

  it("draws each figure as a picture with a text for those who cannot see it", async () => {
    const picture = (await page).querySelector("figure .paper img")!;
    expect(picture.getAttribute("src")).toMatch(/^data:image\/svg\+xml/);
    expect(picture.getAttribute("alt")).toContain("two worn bands");
  });

  it("says of a figure that cannot be drawn what it would have shown, and why", async () => {
    const figure = { data: [{ type: "scatter3d" }], layout: { width: 400, height: 300 } };
    const presentation = { title: "t", blocks: [{ type: "figure", figure, alt: "a hill" }] };
    const html = await buildReport(inputOf(codeCell("x", [presentationOutput(presentation)])));
    expect(textsOf(parsePage(html), ".left-out")[0]).toMatch(/figure not drawn: a hill\. .*scatter3d/);
  });

  it("holds readings, worksheets and records to take away, to the letter", async () => {
    const files = new Map<string, string>();
    for (const link of (await page).querySelectorAll("a[download]")) {
      const href = link.getAttribute("href")!;
      expect(href).toMatch(/^data:[a-z0-9+/-]+;charset=utf-8,/);
      files.set(link.getAttribute("download")!, await (await fetch(href)).text());
    }
    expect([...files.keys()]).toEqual([
      ...["shaft-survey.csv", "taper-end.csv", "04-shaft-survey.ipynb", "05-taper.ipynb"],
      ...["04-shaft-survey.json", "05-taper.json"],
    ]);
    for (const { file, text } of input.tables) expect(files.get(file)).toBe(text);
    for (const { name, text } of input.records) expect(files.get(name)).toBe(text);
    const notebook = JSON.parse(files.get("05-taper.ipynb")!);
    expect(notebook).toMatchObject({ nbformat: 4, nbformat_minor: 5 });
    expect(notebook.cells.map(({ cell_type }: { cell_type: string }) => cell_type)).toEqual([
      "markdown",
      "code",
      "code",
    ]);
    expect(notebook.cells[1]).toMatchObject({ outputs: [], execution_count: null });
  });

  it("says so where the hash of a table is not that of the copy in the page", async () => {
    const [table] = input.tables;
    const other = { ...table!, sha256: createHash("sha256").update(table!.text, "utf16le").digest("hex") };
    const html = await buildReport({ ...inputOf(), tables: [other] });
    expect(textsOf(parsePage(html), ".readings .remark")[0]).toMatch(/hash is that of the file as stored/);
    expect(textsOf(await page, ".readings .remark")).toEqual([]);
  });

  it("brings the fonts of mathematics only where there is mathematics", async () => {
    expect((await report).includes("@font-face")).toBe(true);
    expect((await report).includes("url(fonts/")).toBe(false);
    const without = await buildReport(inputOf(markdownCell("costs $5 and $6")));
    expect(without.includes("@font-face")).toBe(false);
  });

  it("brings plotly.js and its own script only where there is a figure", async () => {
    const without = parsePage(await buildReport(inputOf(markdownCell("no figure"))));
    expect([...without.querySelectorAll("script")]).toEqual([]);
    expect(
      without.querySelector("meta[http-equiv=Content-Security-Policy]")!.getAttribute("content"),
    ).toContain("script-src 'none'");
  });

  it("shows a sheet whose file could not be read, and offers no file of it", async () => {
    const sheet = { name: "09-bad", title: "Bad", status: "failed", failure: "not JSON" } as const;
    const html = parsePage(await buildReport({ ...inputOf(), sheets: [sheet] }));
    expect(textsOf(html, ".failure pre")).toEqual(["not JSON"]);
    expect([...html.querySelectorAll("a[download]")]).toEqual([]);
  });

  it.runIf(hasBrowser)("comes alive in a browser without asking for anything", async () => {
    await inBrowser(await report, async ({ asked, evaluate, until }) => {
      await until('document.querySelectorAll(".is-live .main-svg").length > 0');
      expect(await evaluate('getComputedStyle(document.querySelector(".is-live img")).display')).toBe("none");
      const size = await evaluate(
        'document.querySelector(".is-live .main-svg").getBoundingClientRect().width',
      );
      expect(size).toBe(720);
      const buttons = '[...document.querySelectorAll(".modebar-btn")].map((button) => button.dataset.title)';
      expect(await evaluate(buttons), "no upload among them").toEqual([
        ...["Download plot as a PNG", "Zoom", "Pan", "Reset axes"],
      ]);
      const png = await evaluate(
        'Plotly.toImage(document.querySelector(".live")).then((url) => url.slice(0, 22))',
      );
      expect(png).toBe("data:image/png;base64,");
      expect(asked.filter((url) => !/^(?:file|data|blob):/.test(url))).toEqual([]);
    });
  });

  it.runIf(hasBrowser)(
    "moves labels in and leaves out those that would lie on others, on a narrow screen",
    async () => {
      const label = (text: string, x: number, y: number): object => ({
        ...{ text, x, y, xanchor: "left", yanchor: "bottom", showarrow: false },
      });
      const annotations = [label("worn", 2, 1), label("as made", 2.2, 1), label("far to the right", 3.9, 2)];
      const figure = {
        data: [{ type: "scatter", mode: "markers", x: [1, 3.4], y: [1, 2], marker: { size: 14 } }],
        layout: { width: 720, height: 300, xaxis: { range: [0, 4] }, yaxis: { range: [0, 3] }, annotations },
      };
      const presentation = { title: "Shaft", blocks: [{ type: "figure" as const, figure, alt: "labels" }] };
      const html = await buildReport(inputOf(codeCell("x", [presentationOutput(presentation)])));
      await inBrowser(html, async ({ evaluate, until }) => {
        await until('document.querySelectorAll(".is-live .annotation").length === 3');
        const look = `[...document.querySelectorAll(".annotation")].map(({ style }) => style.visibility + style.transform)`;
        expect(await evaluate(look)).toEqual(["", "", ""]);
        await evaluate(`(async () => {
        const live = document.querySelector(".live");
        live.style.width = live.parentElement.style.width = "300px";
        await Plotly.Plots.resize(live);
      })()`);
        await until(`${look}[1].startsWith("hidden")`);
        const [first, , moved] = (await evaluate(look)) as string[];
        expect(first).toBe("");
        const [x, y] = /^translate\((-[\d.]+)px, (-[\d.]+)px\)$/.exec(moved!)!.slice(1).map(Number);
        expect(x).toBeLessThan(-20); // into the figure
        expect(y).toBeLessThan(-5); // and over the mark that stands there
      });
    },
  );

  it("allows by name exactly the scripts it brings: its own, and plotly.js once unpacked", async () => {
    const policy = (await page)
      .querySelector("meta[http-equiv=Content-Security-Policy]")!
      .getAttribute("content")!;
    const [own] = textsOfScripts(await page);
    const hashes = [own!, readPlotly()].map((text) =>
      createHash("sha256").update(text, "utf8").digest("base64"),
    );
    const allowed = /script-src ([^;]*)/.exec(policy)![1]!.split(" ");
    expect(allowed).toEqual(hashes.map((hash) => `'sha256-${hash}'`));
  });

  it.runIf(hasBrowser)("has the browser stop any other script and any picture from elsewhere", async () => {
    await inBrowser(await report, async ({ evaluate }) => {
      const stopped = (act: string): Promise<unknown> =>
        evaluate(`new Promise((resolve) => {
          const told = ({ effectiveDirective }) => resolve(effectiveDirective);
          document.addEventListener("securitypolicyviolation", told, { once: true });
          ${act}
        })`);
      const script = 'Object.assign(document.createElement("script"), { textContent: "window.ran = true" })';
      expect(await stopped(`document.head.append(${script})`)).toBe("script-src-elem");
      expect(await evaluate("window.ran === undefined")).toBe(true);
      expect(await stopped('new Image().src = "https://example.org/a.png"')).toBe("img-src");
      expect(await stopped('fetch("https://example.org/").catch(() => 0)')).toBe("connect-src");
    });
  });

  it.runIf(hasBrowser)("hides the code by a switch, but not that of a failed cell", async () => {
    await inBrowser(await report, async ({ evaluate }) => {
      const visible = '[...document.querySelectorAll(".code")].map((code) => code.checkVisibility())';
      expect(await evaluate(visible)).toEqual([true, true, true, true]);
      await evaluate('document.querySelector("label[for=with-code]").click()');
      expect(await evaluate(visible)).toEqual([false, false, true, false]);
    });
  });
});

describe("buildReport(input) with one of every block", () => {
  it("shows them all", async () => {
    const html = await buildReport(inputOf(codeCell("wear", [presentationOutput(wearPresentation())])));
    const output = parsePage(html).querySelector(".output")!;
    for (const part of [
      ".jb-verdict",
      "dl",
      "figure:not(.jb-drawing)",
      ".jb-drawing",
      "table",
      ".jb-warning",
      ".jb-caution",
    ])
      expect(output.querySelectorAll(part).length, part).toBe(1);
  });
});
