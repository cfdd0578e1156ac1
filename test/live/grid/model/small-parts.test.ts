import { describe, expect, it } from "vitest";
import {
  emptyForm,
  parseCsv,
  readDraft,
  starterHeaders,
  visibleRange,
  writeDraft,
} from "../../../../kernel-helpers/live/grid/model/index.js";
import { faultsOf } from "../../../support/faults-of.js";

describe("visibleRange(count, top, height, rowHeight)", () => {
  it("draws a table of ordinary length whole", () => {
    expect(visibleRange(300, 5000, 600, 48)).toEqual({ start: 0, end: 300 });
  });

  it("draws of a long one what is looked at, and some more", () => {
    const { start, end } = visibleRange(100_000, 48_000, 480, 48);
    expect(start).toBeLessThan(1000);
    expect(end).toBeGreaterThan(1010);
    expect(end - start).toBeLessThan(100);
  });

  it("ends where the table ends", () => {
    expect(visibleRange(1000, 1e9, 480, 48)).toEqual({ start: 1000, end: 1000 });
    expect(visibleRange(1000, 960 * 48, 40 * 48, 48).end).toBe(1000);
  });
});

describe("readDraft(writeDraft(draft))", () => {
  it("is the draft", () => {
    const draft = { text: "\uFEFFa,b\r\n", base: "12ab", at: 5 };
    expect(readDraft(writeDraft(draft))).toEqual(draft);
  });

  it.each([null, "", "{", "null", "{}", '{"text":1,"base":"","at":0}'])("is undefined for %j", (stored) => {
    expect(readDraft(stored)).toBeUndefined();
  });
});

describe("emptyForm(document)", () => {
  const form = emptyForm(
    parseCsv(
      "# part: shaft\n# temperature: 54 degF\n# washed\nstation [in],diameter [in],remark\n1,2.4373,rust\n2,-,\n",
    ),
  );

  it("keeps the stations and leaves the readings to be written", () => {
    expect(form.rows.slice(0, 3)).toEqual([
      ["1", "", ""],
      ["2", "", ""],
      ["", "", ""],
    ]);
    expect(form.rows).toHaveLength(24);
  });

  it("keeps what stays the same, and asks for temperature, who and when", () => {
    expect(form.remarks).toEqual([
      { label: "part", value: "shaft" },
      { label: "temperature", value: "" },
      { label: "who", value: "" },
      { label: "when", value: "" },
    ]);
  });
});

describe("starterHeaders(unitSystem)", () => {
  it.each(["inch", "metric", undefined] as const)(
    "gives headers the table reader takes (%s)",
    (unitSystem) => {
      for (const { headers } of starterHeaders(unitSystem)) {
        const [fault, ...others] = faultsOf(headers.join(","));
        expect(others).toEqual([]);
        expect(fault!.found).toBe("a header and no rows");
      }
    },
  );
});
