import { describe, expect, it } from "vitest";
import { cellIds } from "../../../kernel-helpers/notebook/file/cell-ids.js";
import type { Cell } from "../../../kernel-helpers/notebook/file/notebook-format.js";

function text(source: string, id = ""): Cell {
  return Object.freeze({ cell_type: "markdown", id, metadata: {}, source });
}

describe("cellIds(cells)", () => {
  it("keeps valid ids", () => {
    expect(cellIds([text("a", "8f3c21"), text("b", "inputs")])).toEqual(["8f3c21", "inputs"]);
  });
  it("calls a cell after the first words of its text", () => {
    expect(cellIds([text("# What taper is it, really?\n")])).toEqual(["what-taper-is-it"]);
    expect(cellIds([text("## Größe")])).toEqual(["gro-e"]);
    expect(cellIds([text("***")])).toEqual(["text"]);
  });
  it("adds a number where two would be called alike", () => {
    expect(cellIds([text("# Wear"), text("wear!"), text("Wear", "wear-2")])).toEqual([
      "wear",
      "wear-3",
      "wear-2",
    ]);
  });
  it("keeps the first of two equal ids", () => {
    expect(cellIds([text("a", "x"), text("b", "x")])).toEqual(["x", "b"]);
  });
});
