import { createHash } from "node:crypto";
import type {
  Cell,
  MimeBundle,
  Notebook,
  Output,
} from "../../../kernel-helpers/notebook/file/notebook-format.js";
import type { ReportInput } from "../../../kernel-helpers/notebook/report/index.js";
import { blocksMimeType, type Presentation } from "../../../kernel-helpers/view/blocks.js";

/** A small rebuild with everything a report can show; the readings are invented. */
export function sampleInput(): ReportInput {
  return {
    title: "Line shaft of a small grist mill",
    facts: [
      { label: "Machine", value: "Line shaft, two poured boxes, driven pulley 30 in" },
      { label: "Shaft", value: "2 7/16 in nominal, steel, tapered end" },
      { label: "Speed", value: "180 rev/min" },
      { label: "Power", value: "6 hp" },
      { label: "Rotation", value: "clockwise, seen from the pulley" },
      { label: "Unit system", value: "inch" },
    ],
    invented: true,
    sheets: [
      { name: "04-shaft-survey", title: "Shaft survey", notebook: surveyNotebook(), status: "ok" },
      {
        name: "05-taper",
        title: "Taper",
        notebook: taperNotebook(),
        status: "failed",
        failure: "cell readings: RangeError: taperOf: at least three stations are needed, got 2",
      },
    ],
    tables: [table("taper-end", taperCsv), table("shaft-survey", surveyCsv())],
    records: [
      { name: "04-shaft-survey.json", text: '{\n "wear": { "bands": 3 }\n}\n' },
      { name: "05-taper.json", text: "{}\n" },
    ],
    provenance: [
      { label: "journalbox", value: "0.1.0" },
      { label: "Kernel", value: "tslab 1.0.22, TypeScript 5.0.4" },
      { label: "Node", value: "20.20.2" },
      { label: "Sheets SHA-256", value: createHash("sha256").update("sheets").digest("hex") },
    ],
  };
}

/** A notebook with these cells. */
export function notebookOf(cells: readonly Cell[]): Notebook {
  return { cells, metadata: {} };
}

export function markdownCell(source: string, attachments?: Record<string, MimeBundle>): Cell {
  const cell = { cell_type: "markdown", id: "", metadata: {}, source } as const;
  return attachments === undefined ? cell : { ...cell, attachments };
}

export function codeCell(source: string, outputs: readonly Output[]): Cell {
  return { cell_type: "code", id: "", metadata: {}, execution_count: 3, source, outputs };
}

/** An output that offers a value in these forms. */
export function dataOutput(data: MimeBundle): Output {
  return { output_type: "execute_result", execution_count: 3, metadata: {}, data };
}

/** What the kernel sends for a result of ours; the presentation may be anything at all. */
export function presentationOutput(presentation: unknown): Output {
  return dataOutput({
    [blocksMimeType]: presentation,
    "text/html": "<b>the cell's own html</b>",
    "text/plain": "the cell's own text",
  });
}

/** A rebuild with one sheet, which has these cells. */
export function inputOf(...cells: readonly Cell[]): ReportInput {
  const sheets = [{ name: "01-sheet", title: "Sheet", notebook: notebookOf(cells), status: "ok" }] as const;
  return { title: "Rebuild", facts: [], invented: false, sheets, tables: [], records: [], provenance: [] };
}

function surveyNotebook(): Notebook {
  return notebookOf([
    markdownCell(
      "# Shaft survey\n\nWhat shape is the shaft now, and **where** has it worn? See `shaft-survey.csv`.",
    ),
    markdownCell(
      "## Readings\n\nThe diameter at 20 °C follows from the reading $d_t$ and the temperature $t$:\n\n" +
        "$$d_{20} = \\frac{d_t}{1 + \\alpha\\,(t - 20)}$$\n\nwith $\\alpha = 11.5\\times10^{-6}$ per kelvin for steel.\n\n" +
        "| instrument | resolution | repeatability |\n|---|---|---|\n| micrometer 2-3 in | 0.0001 in | 0.00015 in |",
    ),
    codeCell(
      'import { openRebuild, inch, profileOf, wearBands } from "journalbox";\nconst rebuild = openRebuild();',
      [{ output_type: "stream", name: "stdout", text: "demo rebuild: line shaft\n" }],
    ),
    markdownCell("## Wear bands"),
    codeCell(
      'const survey = rebuild.table("shaft-survey");\nconst wear = wearBands(profileOf(survey), { nominal: inch(2.4375) });\nwear // shows itself',
      [presentationOutput(wearPresentation())],
    ),
    markdownCell(
      "### What would change this\n\nA reading at **11.5 in**; more on a [page](https://example.org/a).",
    ),
  ]);
}

function taperNotebook(): Notebook {
  return notebookOf([
    markdownCell("# Taper\n\nWhat taper is it, and how do I cut its mate?"),
    codeCell('const readings = rebuild.table("taper-end");\nconst taper = taperOf(readings);', [
      {
        output_type: "error",
        ename: "RangeError",
        evalue: "taperOf: at least three stations are needed, got 2",
        traceback: [
          "\u001b[31mRangeError: taperOf: at least three stations are needed, got 2\u001b[39m",
          "in cell readings, line 2",
          "> 2 | const taper = taperOf(readings);",
          "    |               ^",
        ],
      },
    ]),
    codeCell("taper", []),
  ]);
}

/** One block of every kind. */
export function wearPresentation(): Presentation {
  const stations = Array.from({ length: 49 }, (_, index) => index / 2);
  const worn = (x: number): number => (x > 6 && x < 11 ? 0.0043 : x > 17 && x < 20 ? 0.0018 : 0.0002);
  const diameters = stations.map((x, index) => 2.4375 - worn(x) + 0.0001 * Math.sin(7.3 * index));
  return {
    title: "Wear bands of shaft-survey",
    blocks: [
      {
        type: "verdict",
        outcome: "no",
        text: "not within limits",
        because: "Band B is 0.0043 in under; the limit is 0.002 in (probability above 99.9 %).",
      },
      {
        type: "facts",
        facts: [
          { label: "Nominal diameter", value: "2.4375 in" },
          {
            label: "Least diameter",
            value: "2.4332 ± 0.0002 in (95 %)",
            note: "mean of 10 readings, band B",
          },
          { label: "Reading noise", value: "0.00015 in" },
        ],
      },
      {
        type: "drawing",
        alt: "Section of the box: shaft in the middle, white metal round it, a dimension across",
        caption: "Section through the box.",
        drawing: {
          width: 420,
          height: 260,
          shapes: [
            {
              type: "polygon",
              points: [
                [60, 40],
                [300, 40],
                [300, 220],
                [60, 220],
              ],
              pen: "outline",
              fill: "iron",
            },
            { type: "circle", centre: [180, 130], radius: 72, pen: "outline", fill: "white metal" },
            { type: "circle", centre: [180, 130], radius: 56, pen: "outline", fill: "metal" },
            { type: "line", from: [50, 130], to: [310, 130], pen: "centre" },
            {
              type: "polyline",
              points: [
                [170, 40],
                [180, 62],
                [190, 40],
              ],
              pen: "hidden",
            },
            { type: "arc", centre: [180, 130], radius: 34, from: 30, to: 300, pen: "force", head: true },
            { type: "arrow", from: [340, 60], to: [246, 106], pen: "warn" },
            { type: "dimension", from: [124, 186], to: [236, 186], offset: 52, text: "2 7/16 in" },
            { type: "text", at: [344, 58], text: "do not cut a groove here", size: "small", ink: "warn" },
          ],
        },
      },
      {
        type: "figure",
        alt: "Diameter along the shaft: full size but for two worn bands, from 6 to 11 in and from 17 to 20 in",
        caption: "Diameter along the shaft; bars are the 95 % uncertainty of a reading.",
        figure: {
          data: [
            {
              type: "scatter",
              mode: "markers",
              name: "readings",
              x: stations,
              y: diameters,
              error_y: { type: "constant", value: 0.0003, thickness: 1, width: 2 },
              marker: { size: 5 },
            },
            {
              type: "scatter",
              mode: "lines",
              name: "bands",
              x: stations,
              y: stations.map((x) => 2.4375 - worn(x)),
              line: { shape: "hv" },
            },
          ],
          layout: {
            title: { text: "Diameter along the shaft" },
            width: 720,
            height: 400,
            xaxis: { title: { text: "station [in]" } },
            yaxis: { title: { text: "diameter [in]" }, tickformat: ".4f" },
            shapes: [
              {
                type: "line",
                xref: "paper",
                x0: 0,
                x1: 1,
                y0: 2.4375,
                y1: 2.4375,
                line: { dash: "dot", width: 1 },
              },
            ],
          },
        },
      },
      {
        type: "table",
        caption: "Wear bands",
        columns: [
          { title: "band", align: "left" },
          { title: "from", unit: "in", align: "right" },
          { title: "to", unit: "in", align: "right" },
          { title: "diameter", unit: "in", align: "right" },
          { title: "remark", align: "left" },
        ],
        rows: [
          { cells: ["A", "0.0", "6.0", "2.4373 ± 0.0001", "as made"] },
          { cells: ["B", "6.5", "10.5", "2.4332 ± 0.0002", "worn under limit"], mark: "bad" },
          { cells: ["C", "17.5", "19.5", "2.4357 ± 0.0002", "worn, near limit"], mark: "warn" },
        ],
      },
      {
        type: "warning",
        text: "Row 23 differs from its neighbours by ten times the reading noise; it is shown and not used.",
      },
      {
        type: "caution",
        title: "Edges of the worn band are sharp",
        points: ["Break them before the hand slides along the shaft.", "Wear no gloves at the lathe."],
      },
    ],
  };
}

const taperCsv =
  '# instrument: micrometer\nstation [in],diameter [in],remark\n0,2.4375,\n1,2.3750,"by the nut, rusty"\n';

function surveyCsv(): string {
  const rows = Array.from(
    { length: 49 },
    (_, index) => `${index / 2},${(2.4375 - 0.0001 * (index % 7)).toFixed(4)},`,
  );
  return `# instrument: micrometer 2-3 in, 0.0001 in\n# temperature: 66 degF\nstation [in],diameter [in],remark\n${rows.join("\n")}\n`;
}

export function table(name: string, text: string): ReportInput["tables"][number] {
  return { name, file: `${name}.csv`, text, sha256: createHash("sha256").update(text).digest("hex") };
}
