import { describe, expect, it } from "vitest";
import {
  type RunningFitClass,
  runningFitByThumb,
  standardRunningFit,
} from "../../kernel-helpers/handbook/index.js";
import { inch, mm } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const published = readReference("ansi-b41-rc-clearance");
const classes: readonly RunningFitClass[] = ["RC1", "RC2", "RC3", "RC4", "RC5", "RC6", "RC7", "RC8", "RC9"];

describe("standardRunningFit(nominal, class)", () => {
  it.each(classes)("gives every row of ANSI B4.1 for %s, the upper end of a step belonging to it", (name) => {
    for (const row of published.rows) {
      const [low, high] = ["min", "max"].map((end) =>
        Number(row[published.columns.indexOf(`${name}_${end}`)]),
      );
      const fit = standardRunningFit(inch(Number(row[1])), name);
      expectClose(fit.low.in("thou"), low!, { rel: 1e-9, because: "ANSI B4.1, least clearance" });
      expectClose(fit.high.in("thou"), high!, { rel: 1e-9, because: "ANSI B4.1, most clearance" });
    }
  });
  it("refuses a diameter outside the table", () => {
    expect(() => standardRunningFit(inch(0.4), "RC5")).toThrow("over 0.40 up to 4.73 in, got 0.4 in");
    expect(() => standardRunningFit(inch(5), "RC5")).toThrow("got 5 in");
  });
});

describe("runningFitByThumb(diameter)", () => {
  it("is 3 to 4 thou on 2 in, the DIAMETRAL clearance of the trade", () => {
    const fit = runningFitByThumb(inch(2));
    expectClose(fit.low.in("thou"), 3, { rel: 1e-9, because: "1 thou an inch and 1 thou" });
    expectClose(fit.high.in("thou"), 4, { rel: 1e-9, because: "1.5 thou an inch and 1 thou" });
  });
  it("says the same in either unit", () => {
    expectClose(runningFitByThumb(mm(50.8)).low.si, runningFitByThumb(inch(2)).low.si, {
      rel: 1e-12,
      because: "50.8 mm is 2 in",
    });
  });
  it("refuses a diameter it was not made for", () => {
    expect(() => runningFitByThumb(inch(8))).toThrow(
      "runningFitByThumb: diameter must be from 1 to 6 in, got 8 in",
    );
  });
});
