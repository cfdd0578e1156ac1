import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { checkNotebook } from "../../../kernel-helpers/notebook/file/check-notebook.js";

const code = { cell_type: "code", id: "a", metadata: {}, source: [], outputs: [], execution_count: null };
const text = { cell_type: "markdown", id: "b", metadata: {}, source: ["# One\n", "two"] };

function notebook(...cells: unknown[]): Record<string, unknown> {
  return { cells, metadata: {}, nbformat: 4, nbformat_minor: 5 };
}

function withOutput(output: unknown): Record<string, unknown> {
  return notebook({ ...code, outputs: [output] });
}

/** Faulty notebooks, with what must be said of each. */
const faulty: readonly (readonly [name: string, file: unknown, message: RegExp])[] = [
  ["no object", [], /^f: an object was expected/],
  ["format 3", { ...notebook(), nbformat: 3 }, /^f: nbformat must be 4, got 3; open and save it in Jupyter/],
  ["no cells", { metadata: {}, nbformat: 4, nbformat_minor: 5 }, /^f: cells must be a list/],
  ["no metadata", { cells: [], nbformat: 4, nbformat_minor: 5 }, /^f: metadata is missing/],
  ["unknown field", { ...notebook(), worksheets: [] }, /^f: worksheets is no field of format 4\.5 here/],
  ["no id", notebook({ ...text, id: undefined }), /^f: cell 1: id is missing/],
  [
    "bad id",
    notebook({ ...text, id: "wear bands" }),
    /^f: cell 1 \(wear bands\): id must be 1 to 64 .*"wear bands"/,
  ],
  ["same id twice", notebook(text, code, text), /^f: cells 1 and 3 have the same id, b/],
  [
    "unknown cell",
    notebook({ ...text, cell_type: "heading" }),
    /cell_type must be code, markdown or raw, got heading/,
  ],
  [
    "source of numbers",
    notebook({ ...text, source: [1] }),
    /^f: cell 1 \(b\): source must be a text or a list of texts/,
  ],
  ["outputs of text", notebook({ ...text, outputs: [] }), /^f: cell 1 \(b\): outputs is no field/],
  [
    "code without count",
    notebook({ ...code, execution_count: undefined }),
    /execution_count must be a whole number/,
  ],
  [
    "broken count",
    notebook({ ...code, execution_count: 1.5 }),
    /execution_count must be a whole number from 0, got 1\.5/,
  ],
  [
    "tag with comma",
    notebook({ ...text, metadata: { tags: ["a,b"] } }),
    /tags must be a list of different texts/,
  ],
  [
    "unknown output",
    withOutput({ output_type: "pyout" }),
    /cell 1 \(a\), output 1: output_type must be .* got pyout/,
  ],
  [
    "stream without text",
    withOutput({ output_type: "stream", name: "stdout" }),
    /output 1: text must be a text/,
  ],
  [
    "text/plain of JSON",
    withOutput({ output_type: "display_data", data: { "text/plain": {} }, metadata: {} }),
    /text\/plain must be a text/,
  ],
  [
    "display without metadata",
    withOutput({ output_type: "display_data", data: {} }),
    /output 1: metadata is missing/,
  ],
  [
    "traceback of numbers",
    withOutput({ output_type: "error", ename: "E", evalue: "", traceback: [1] }),
    /traceback must be a list of texts/,
  ],
];

const good: readonly (readonly [name: string, file: unknown])[] = [
  ["text and code", notebook(text, code)],
  [
    "JSON data of any shape",
    withOutput({
      output_type: "display_data",
      data: { "application/x+json": [1, { a: null }] },
      metadata: {},
    }),
  ],
  ["attachments", notebook({ ...text, attachments: { "a.png": { "image/png": "AAAA" } } })],
  ["a source in one string", notebook({ ...text, source: "one\ntwo" })],
];

describe("checkNotebook(value, fileName)", () => {
  it.each(good)("accepts %s", (_, file) => {
    expect(checkNotebook(file, "f").cells.length).toBeGreaterThan(0);
  });
  it("gives each text as one string, and leaves JSON as it is", () => {
    const data = { "text/html": ["<b>\n", "x</b>"], "application/x+json": ["a", "b"] };
    const { cells } = checkNotebook(
      notebook(text, { ...code, outputs: [{ output_type: "display_data", data, metadata: {} }] }),
      "f",
    );
    expect(cells[0]?.source).toBe("# One\ntwo");
    expect(cells[1]).toMatchObject({
      outputs: [{ data: { "text/html": "<b>\nx</b>", "application/x+json": ["a", "b"] } }],
    });
  });
  it("accepts a notebook of format 4.4, whose cells have no ids", () => {
    const { id: _, ...noId } = text;
    expect(checkNotebook({ ...notebook(noId), nbformat_minor: 4 }, "f").cells[0]?.id).toBe("");
  });
  it.each(faulty)("rejects %s, naming the file and the place", (_, file, message) => {
    expect(() => checkNotebook(JSON.parse(JSON.stringify(file)), "f")).toThrow(message);
  });
});

// Where Jupyter's own validator is installed (Debian package python3-nbformat), both must agree on all of the above.
const python = "/usr/bin/python3";
const hasNbformat = spawnSync(python, ["-c", "import nbformat"]).status === 0;
describe.runIf(hasNbformat)("checkNotebook(value, fileName) and Jupyter's nbformat", () => {
  it("agree on what is a notebook of format 4.5", () => {
    const files = [...good.map(([, file]) => file), ...faulty.slice(2).map(([, file]) => file)];
    const program = [
      "import json, sys, nbformat",
      "from nbformat.validator import iter_validate",
      "for nb in json.load(sys.stdin):",
      "    ids = [c.get('id') for c in nb.get('cells', [])]",
      "    print(not list(iter_validate(nb, version=4, version_minor=5)) and len(ids) == len(set(ids)))",
    ].join("\n");
    const { stdout, stderr } = spawnSync(python, ["-c", program], {
      input: JSON.stringify(files),
      encoding: "utf8",
    });
    const theirs = stdout
      .trim()
      .split("\n")
      .map((line) => line === "True");
    const ours = files.map((file) => {
      try {
        return checkNotebook(JSON.parse(JSON.stringify(file)), "f") !== undefined;
      } catch {
        return false;
      }
    });
    expect(theirs, stderr).toEqual(ours);
  });
});
