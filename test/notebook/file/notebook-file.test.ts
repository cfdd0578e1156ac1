import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readNotebook, writeNotebook } from "../../../kernel-helpers/notebook/file/notebook-file.js";
import type { Cell, Notebook, Output } from "../../../kernel-helpers/notebook/file/notebook-format.js";
import { notebookJson } from "../../../kernel-helpers/notebook/file/notebook-json.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

const folder = temporaryFolder();
const path = join(folder, "sheet.ipynb");

// Any notebook at all: texts of any letters and line breaks, any MIME types, any metadata.
const anyText = fc.string({
  unit: fc.constantFrom("a", "Ø", "″", "😀", "\n", "\r", "\u2028", '"', "\\", " "),
});
const metadata = fc.dictionary(
  fc.constantFrom("a", "9", "10", "trusted", "collapsed", "execution", "name_"),
  fc.jsonValue(),
);
const data = fc.dictionary(fc.constantFrom("text/plain", "text/html", "image/png", "image/svg+xml"), anyText);
const json = fc.jsonValue().map((value) => ({ "application/vnd.plotly.v1+json": value }));
const output: fc.Arbitrary<Output> = fc.oneof(
  fc.record({
    output_type: fc.constant("stream" as const),
    name: fc.constantFrom("stdout", "stderr"),
    text: anyText,
  }),
  fc.record({
    output_type: fc.constant("display_data" as const),
    data: fc.oneof(data, json),
    metadata: fc.constant({}),
  }),
  fc.record({
    output_type: fc.constant("error" as const),
    ename: anyText,
    evalue: anyText,
    traceback: fc.array(anyText),
  }),
);
const id = fc.constantFrom("", "inputs", "check-1", "not valid", "8f3c21");
const cell: fc.Arbitrary<Cell> = fc.oneof(
  fc.record({
    cell_type: fc.constantFrom("markdown" as const, "raw" as const),
    id,
    metadata,
    source: anyText,
  }),
  fc.record({
    cell_type: fc.constant("code" as const),
    id,
    metadata,
    source: anyText,
    outputs: fc.array(output, { maxLength: 3 }),
    execution_count: fc.option(fc.nat()),
  }),
);
const notebook: fc.Arbitrary<Notebook> = fc.record({ metadata, cells: fc.array(cell, { maxLength: 4 }) });

const example: Notebook = {
  metadata: {
    kernelspec: { name: "tslab", display_name: "TypeScript", language: "typescript" },
    orig_nbformat: 4,
  },
  cells: [
    { cell_type: "markdown", id: "", metadata: { trusted: true }, source: "# Wear bands\nØ 2 7/16 ″" },
    {
      cell_type: "code",
      id: "fit",
      metadata: { collapsed: false, tags: ["keep"], execution: { "iopub.status.busy": "2020-01-01" } },
      source: "fit(readings)",
      outputs: [
        { output_type: "stream", name: "stdout", text: "a\n" },
        { output_type: "stream", name: "stdout", text: "b" },
        {
          output_type: "display_data",
          data: { "application/x+json": ["a", "b"], "image/png": "AA\nBB" },
          metadata: {},
        },
      ],
      execution_count: 3,
    },
  ],
};

describe("writeNotebook(path, notebook)", () => {
  it("writes sorted keys, one space of indent, lines as lists, all letters as they are, a newline at the end", () => {
    writeNotebook(path, example);
    const text = readFileSync(path, "utf8");
    expect(text).toContain('   "source": [\n    "# Wear bands\\n",\n    "Ø 2 7/16 ″"\n   ]\n');
    expect(
      text.startsWith('{\n "cells": [\n  {\n   "cell_type": "markdown",\n   "id": "wear-bands-2-7",'),
    ).toBe(true);
    expect(text.endsWith(' "nbformat": 4,\n "nbformat_minor": 5\n}\n')).toBe(true);
  });
  it("drops what front ends leave behind, and keeps the rest", () => {
    const [, fit] = readNotebook(path).cells;
    expect(fit?.metadata).toEqual({ tags: ["keep"] });
    expect(readFileSync(path, "utf8")).not.toMatch(/orig_nbformat|trusted|2020-01-01/);
  });
  it("joins the pieces of a stream, and leaves JSON and pictures whole", () => {
    const fit = JSON.parse(readFileSync(path, "utf8")).cells[1];
    expect(fit.outputs[0].text).toEqual(["a\n", "b"]);
    expect(fit.outputs[1].data).toEqual({ "application/x+json": ["a", "b"], "image/png": "AA\nBB" });
  });
  it("names this package's kernel, without its version", () => {
    expect(readNotebook(path).metadata).toEqual({
      kernelspec: { display_name: "Journalbox (TypeScript)", language: "typescript", name: "journalbox" },
      language_info: {
        file_extension: ".ts",
        mimetype: "text/typescript",
        name: "typescript",
        pygments_lexer: "typescript",
      },
    });
  });
  it("writes the same bytes again after reading them, whatever the notebook", () => {
    fc.assert(
      fc.property(notebook, (any) => {
        writeNotebook(path, any);
        const once = readFileSync(path, "utf8");
        writeNotebook(path, readNotebook(path));
        expect(readFileSync(path, "utf8")).toBe(once);
      }),
      { seed: 20_08, numRuns: 150 },
    );
  });
  it("loses no text, whatever the notebook", () => {
    fc.assert(
      fc.property(notebook, (any) => {
        writeNotebook(path, any);
        expect(readNotebook(path).cells.map(({ source }) => source)).toEqual(
          any.cells.map(({ source }) => source),
        );
      }),
      { seed: 20_08, numRuns: 100 },
    );
  });
  it("writes nothing where the notebook would not be valid", () => {
    writeNotebook(path, example);
    const before = readFileSync(path, "utf8");
    const tags = ["twice", "twice"];
    const bad: Notebook = {
      metadata: {},
      cells: [{ cell_type: "raw", id: "r", metadata: { tags }, source: "" }],
    };
    expect(() => writeNotebook(path, bad)).toThrow(/sheet\.ipynb: cell 1 \(r\): tags must be/);
    expect(readFileSync(path, "utf8")).toBe(before);
  });
});

describe("readNotebook(path)", () => {
  it("says which file is no JSON", () => {
    writeFileSync(path, '{ "cells": [');
    expect(() => readNotebook(path)).toThrow(/sheet\.ipynb: not a notebook, for it is not JSON/);
  });
  it("refuses a notebook in another language", () => {
    const python = { kernelspec: { name: "python3", display_name: "Python 3", language: "python" } };
    writeFileSync(path, JSON.stringify({ cells: [], metadata: python, nbformat: 4, nbformat_minor: 5 }));
    expect(() => readNotebook(path)).toThrow(/worksheets are written in TypeScript, this is in python/);
  });
});

// Where Jupyter's own library is installed (Debian package python3-nbformat), it must write the very same bytes.
const python = "/usr/bin/python3";
const hasNbformat = spawnSync(python, ["-c", "import nbformat"]).status === 0;
describe.runIf(hasNbformat)("notebookJson(notebook) and Jupyter's nbformat", () => {
  it("write the same bytes, and find them valid", () => {
    const text = notebookJson(example);
    const program =
      "import sys, nbformat; nb = nbformat.reads(sys.stdin.read(), 4); nbformat.validate(nb); sys.stdout.write(nbformat.writes(nb) + '\\n')";
    const { stdout, stderr } = spawnSync(python, ["-c", program], { input: text, encoding: "utf8" });
    expect(stdout, stderr).toBe(text);
  });
});
