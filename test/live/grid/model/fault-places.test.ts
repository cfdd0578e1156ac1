import { describe, expect, it } from "vitest";
import {
  faultsByPlace,
  lineNamed,
  parseCsv,
  placeFaults,
  placeKey,
} from "../../../../kernel-helpers/live/grid/model/index.js";
import { faultsOf } from "../../../support/faults-of.js";

const text = [
  "# temperature: warm",
  "",
  "station [in],diameter [in],remark",
  '1,2.5O3,"light',
  'rust"',
  "# between",
  "2,,",
  "3",
].join("\n");

describe("placeFaults(document, faults)", () => {
  const document = parseCsv(text);
  const placed = placeFaults(document, faultsOf(text));

  it("finds the cell of each fault the table reader reports", () => {
    const cells = placed.map(({ piece, column, isEmpty }) => [
      document.pieces[piece]!.kind,
      piece,
      column,
      isEmpty,
    ]);
    expect(cells).toEqual([
      ["remark", 0, -1, false],
      ["row", 3, 1, false],
      ["row", 5, 1, true],
      ["row", 6, -1, false],
    ]);
  });

  it("says where it is and what to do", () => {
    expect(placed[1]).toMatchObject({ where: "line 4, diameter" });
    expect(placed[1]!.text).toMatch(/^Found "2\.5O3", expected a number \[in\]; .*write 2\.503\.$/);
  });

  it("faultsByPlace finds them by cell", () => {
    expect(faultsByPlace(placed).get(placeKey(3, 1))).toEqual([placed[1]]);
    expect(faultsByPlace(placed).get(placeKey(3, 0))).toBeUndefined();
  });

  it("leaves a fault of the whole file without piece", () => {
    expect(placeFaults(parseCsv(""), faultsOf(""))).toMatchObject([{ piece: -1, where: "the whole file" }]);
  });
});

describe("lineNamed(warning)", () => {
  it("is the first line a warning names", () => {
    expect(lineNamed("Stations out of order: line 12 (3 in), line 14 (2 in).")).toBe(12);
    expect(lineNamed("Line 3: kept, but not understood")).toBe(3);
    expect(lineNamed("Nothing is known here.")).toBeUndefined();
  });
});
