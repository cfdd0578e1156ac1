import { describe, expect, it } from "vitest";
import { unifiedThreads } from "../../../kernel-helpers/handbook/threads-unified.js";
import { inch, measured, micrometre, thou } from "../../../kernel-helpers/quantity/index.js";
import {
  finishedJournals,
  type StretchesGiven,
  shaftDrawing,
  stretchesToTurn,
  taperOptions,
  taperWays,
} from "../../../kernel-helpers/shaft/index.js";
import { fitTaper, profileOf, readTable, wearBands } from "../../../kernel-helpers/survey/index.js";
import { expectClose } from "../../support/expect-close.js";

const tableOf = (name: string, rows: readonly string[]) =>
  readTable(new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n")), {
    name,
    file: `${name}.csv`,
  });
const doubts = { readingUncertainty: thou(0.1), stationUncertainty: thou(1) };
/** 2 in, worn by 4 thou from 6 to 10 in. */
const wear = wearBands(
  profileOf(
    tableOf(
      "shaft",
      Array.from({ length: 21 }, (_, z) => `${z},${z >= 6 && z <= 10 ? "1.9960" : "2.0000"}`),
    ),
    doubts,
  ),
  { nominal: inch(2), wornBeyond: thou(1) },
);
/** 1 in in 16: 1.75 in at 0, 2 in at 4. */
const taper = fitTaper(
  profileOf(tableOf("taper", ["0.5,1.78125", "1.5,1.84375", "2.5,1.90625", "3.5,1.96875"]), doubts),
);
const journal = (name: string, from: number, to: number) => ({
  name,
  from: inch(from),
  to: inch(to),
  diameter: measured(inch(1.99), thou(0.2)),
});
const size = unifiedThreads.find(({ name }) => name === "1 1/2-6 UNC")!;
const given: StretchesGiven = {
  wear,
  taper,
  journals: finishedJournals({ journals: [journal("near", 6, 10), journal("far", 14, 18)] }),
  wholeLength: inch(30),
  thread: { size, hand: "left", length: inch(1.5) },
  fillet: inch(0.0625),
  tolerance: "h8",
  roughness: micrometre(1.6),
};

describe("stretchesToTurn({ wear, taper, journals, wholeLength, thread, … })", () => {
  const stretches = stretchesToTurn(given);
  it("goes from the thread over the taper to the end of the shaft, without a gap", () => {
    expect(stretches.map(({ name }) => name)).toEqual("thread taper body near body far body".split(" "));
    expectClose(shaftDrawing({ title: "x", material: "steel", stretches }).length.in("inch"), 30, {
      rel: 1e-9,
      because: "the whole length is given",
    });
  });
  it("begins the taper at its station zero and ends it where it reaches the diameter as made", () => {
    const [, cone] = stretches;
    const read = { rel: 1e-5, because: "readings rounded to 10 µin, and a band of 16 readings" };
    expectClose(cone!.diameter.in("inch"), 1.75, read);
    expectClose(cone!.endDiameter!.in("inch"), 2, read);
    expectClose(cone!.length.in("inch"), 4, { rel: 1e-4, because: "the same, over the taper" });
  });
  it("gives journals their limits and fillets, and the thread its hand", () => {
    expect(stretches[3]).toMatchObject({ tolerance: "h8", fillet: given.fillet });
    expect(stretches[3]!.diameter).toBe(given.journals.journals[0]!.diameter.value);
    expect(stretches[2]).not.toHaveProperty("tolerance");
    expect(stretches[0]!.thread!.name).toBe("1 1/2-6 UNC, left hand");
  });
  it("leaves out a body of no length", () => {
    const journals = finishedJournals({ journals: [journal("near", 6, 10), journal("far", 10, 14)] });
    expect(stretchesToTurn({ ...given, journals }).map(({ name }) => name)).toEqual(
      "thread taper body near far body".split(" "),
    );
  });
  it("names what does not go together", () => {
    expect(() => stretchesToTurn({ ...given, wholeLength: inch(20) })).toThrow(
      /the end of the shaft, 20 in from its thread's end, must not lie before station 18 in; it is at 14\.5/,
    );
    expect(() => stretchesToTurn({ ...given, wholeLength: inch(0) })).toThrow(
      "wholeLength must be a length above 0, got 0 in",
    );
    const shrinking = fitTaper(profileOf(tableOf("taper", ["0,2.25", "1,2.1875", "2,2.125"]), doubts));
    expect(() => stretchesToTurn({ ...given, taper: shrinking })).toThrow(
      "the taper must grow from its station zero",
    );
  });
});

describe("taperOptions(taperWays(input))", () => {
  const lathe = {
    seat: inch(5),
    allowed: thou(1),
    indicatorDivision: thou(0.5),
    indicatorTravel: inch(5),
    attachmentReach: inch(9),
    attachmentDivision: inch(1 / 16),
    compoundTravel: inch(4),
  };
  const ways = taperWays({ taper: measured(1 / 16, 0), ...lathe });
  const options = taperOptions(ways);
  it("breaks a limit where the lathe does not reach or the setting is too coarse, and only there", () => {
    expect(options.map(({ name }) => name)).toEqual(ways.ways.map(({ name }) => name));
    options.forEach(({ breaks }, i) => {
      expect(breaks.length === 0).toBe(ways.ways[i]!.verdict === "good enough");
    });
    const scale = options.find(({ name }) => name === "taper attachment, by its scale")!;
    // A division of 1/16 in per foot: 1.96 · 62.5 thou/√12 · 5/12.
    expect(scale.breaks).toEqual(["the setting alone may leave it wrong by 14.73 thou, 1 thou is allowed"]);
    expect(options.find(({ name }) => name === "compound slide, by indicator")!.breaks).toEqual([
      "its travel is 4 in, along the flank",
    ]);
  });
  it("says errors to a hundredth of a thou", () => {
    // 1.96 · 2 · √2 · 0.5 thou/√12 = 0.8002 thou
    expect(String(options[0]!.figures["taper wrong by, end to end (95 %)"])).toBe("0.8 thou");
  });
});
