import ts from "@tslab/typescript-for-tslab";
import { describe, expect, it } from "vitest";
import { cellFaults } from "./cell-faults.js";

/**
 * Tests which cells compile, as plain tslab checks them and as the kernel does.
 *
 * @param what    what the cells are about
 * @param folder  where the cells are taken to lie, for their imports
 * @param cell    a whole cell of the code that matters
 * @param wrong   code that must be one error, and words that must stand in its message
 * @param right   code that must compile
 */
export function expectCells(
  what: string,
  folder: string,
  cell: (code: string) => string,
  wrong: Readonly<Record<string, readonly [code: string, ...words: string[]]>>,
  right: Readonly<Record<string, string>>,
): void {
  const cells = {
    ...Object.fromEntries(Object.entries(wrong).map(([name, [code]]) => [name, cell(code)])),
    ...Object.fromEntries(Object.entries(right).map(([name, code]) => [name, cell(code)])),
  };

  it("these cells are compiled with the TypeScript of tslab", () => {
    expect(ts.version).toBe("5.0.4");
  });

  describe.each([
    ["as plain tslab checks", false],
    ["as the kernel checks, strictly", true],
  ])(`${what} in a cell, %s`, (_, strict) => {
    const faults = cellFaults(folder, cells, strict);

    it.each(Object.entries(wrong))("%s is an error that names both", (name, [, ...words]) => {
      const messages = faults[name]!;
      expect(messages).toHaveLength(1);
      for (const word of words) expect(messages[0]).toContain(word);
    });

    it.each(Object.keys(right))("%s compile", (name) => {
      expect(faults[name]).toEqual([]);
    });
  });
}
