import { describe, expect, it } from "vitest";
import {
  handLiftLimit,
  type LiftPlan,
  type Masses,
  massesOf,
  massesTogether,
  type PlannedLift,
  partsLedger,
  liftPlan as planOf,
  slingPull,
} from "../../kernel-helpers/intake/index.js";
import { degree, pound } from "../../kernel-helpers/quantity/index.js";
import { instrumentFrom, readTable, type Table } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";

const exact = { rel: 1e-12, because: "identity; rounding only" };

const rule = instrumentFrom("rule", { title: "rule", resolution: "1/16 in", repeatability: "0.03 in" });

function tableOf(name: string, ...lines: string[]): Table {
  return readTable(new TextEncoder().encode(lines.join("\n")), {
    name,
    file: `tables/${name}.csv`,
    instruments: { rule },
  });
}

// Two steel plates of one weight, 20 in apart: what they are together can be told without reckoning.
const masses: Masses = massesOf(
  tableOf(
    "pieces",
    "# instrument: rule",
    "part [text],piece [text],shape [text],count [-],across [in],far [in],inside [in],length [in],thick [in],along [in],material [text]",
    "one,plate,cylinder,1,10,-,-,2,-,0,steel",
    "other,plate,cylinder,1,10,-,-,2,-,20,steel",
  ),
);
const header =
  "part [text],sling [text],hitch [text],weighed [lb],within [lb],first [in],second [in],held at [in],over centre [in],hook above [in],sling tag [lb],remark";
const gear = { hookTag: pound(1000) };

function plan(...rows: string[]): LiftPlan {
  return planOf(masses, tableOf("lifts", header, ...rows), gear);
}
const first = (...rows: string[]): PlannedLift => plan(...rows).lifts[0]!;

describe("handLiftLimit", () => {
  it("is the load constant for one person, and for more the published share of their sum", () => {
    // NIOSH 94-110: 23 kg, 51 lb. HSE L23, paragraph 120: two persons two thirds, three a half of the sum of each.
    expectClose(handLiftLimit(1).in("kilogram"), 23, exact);
    expectClose(handLiftLimit(1).in("pound"), 51, { rel: 0.006, because: "51 lb is 23 kg rounded" });
    expectClose(handLiftLimit(2).si / (2 * handLiftLimit(1).si), 2 / 3, exact);
    expectClose(handLiftLimit(3).si / (3 * handLiftLimit(1).si), 1 / 2, exact);
  });
  it("refuses four, who get in each other's way, and none", () => {
    expect(() => handLiftLimit(4)).toThrow(/persons must be 1, 2 or 3, got 4/);
    expect(() => handLiftLimit(0)).toThrow(/got 0/);
  });
});

describe("massesTogether", () => {
  it("adds the masses, their uncertainties in full, and lays the centre of two alike half-way", () => {
    const { mass, centre } = massesTogether(masses, ["one", "Other"]);
    const [a, b] = masses.parts;
    expectClose(mass.value.si, masses.mass.value.si, exact);
    expectClose(mass.standardUncertainty.si, 2 * a!.mass.standardUncertainty.si, exact);
    expect(mass.standardUncertainty.si).toBeGreaterThanOrEqual(masses.mass.standardUncertainty.si);
    expectClose(centre.value.si, (a!.centre.value.si + b!.centre.value.si) / 2, exact);
    expectClose(centre.value.si, masses.centre.value.si, exact);
  });
  it("refuses a part twice, none, and one that there is not", () => {
    expect(() => massesTogether(masses, ["one", "one"])).toThrow(/"one" twice/);
    expect(() => massesTogether(masses, [])).toThrow(/got none/);
    expect(() => massesTogether(masses, ["third"])).toThrow(/"third" is no part/);
  });
});

describe("liftPlan", () => {
  it("pulls as two equal legs do where the slings stand alike to both sides of the centre", () => {
    // Centre at 11 in, slings 10 in to either side, hook 10 in above: 45°.
    const { lift, verdict, most } = first("one + other,two along,choker,-,-,1,21,-,-,10,800,");
    expect(verdict).toBe("holds");
    const alike = slingPull(masses.mass.value, degree(45), 2);
    for (const { pull } of lift!.legs)
      expectClose(pull.value.si, alike.si, {
        rel: 1e-9,
        because: "the centre lies half-way but for rounding",
      });
    expect(most.si).toBeGreaterThan(masses.mass.value.si);
  });
  it("leans by the station beside the centre over the height of the slings, at the worst the centre may lie", () => {
    const { lean, verdict } = first("one,one leg,basket,-,-,-,-,2,10,-,800,");
    const { value, standardUncertainty } = masses.parts[0]!.centre;
    const off = Math.abs(2 - value.in("inch")) + 1.6449 * standardUncertainty.in("inch");
    expectClose(Math.tan(lean!.si), off / 10, { rel: 1e-4, because: "1.645 to four digits" });
    expect(verdict).toBe("holds");
  });
  it("does not hold what leans far, turns over, or has its centre outside the slings", () => {
    const leaning = first("one,one leg,basket,-,-,-,-,5,10,-,800,");
    expect(leaning.verdict).toBe("does not hold");
    expect(leaning.against[0]).toMatch(/it may lean 2\d°, more than 10°/);
    const over = first("one,two across,choker,-,-,5,5,1,-2,10,800,");
    expect(over.against).toEqual(["its points lie below the centre of mass: it turns over in the slings"]);
    const tips = first("one,two along,choker,-,-,3,9,-,-,10,800,");
    expect([tips.verdict, tips.lift]).toEqual(["does not hold", undefined]);
    expect(tips.against[0]).toMatch(/lies outside the two slings/);
    // The centre of mass itself, 11 in: on either side is as likely.
    expect(first("one + other,two along,choker,-,-,11,21,-,-,10,800,").verdict).toBe("cannot tell yet");
  });
  it("holds the tags of sling and hook against the most it may weigh", () => {
    const weak = first("one,one leg,basket,100,10,-,-,-,-,-,80,");
    expect(weak.verdict).toBe("does not hold");
    expect(weak.against[0]).toMatch(/a leg may pull 109 lb, and its tag allows 80 lb/);
    expect(first("one,one leg,basket,100,10,-,-,-,-,-,102,").verdict).toBe("cannot tell yet");
    const heavy = first("one,one leg,basket,2000,10,-,-,-,-,-,9000,");
    expect(heavy.against).toEqual(["the hook may carry 2010 lb, and its tag allows 1000 lb"]);
  });
  it("by hand goes up to the limit, and what may weigh more is slung", () => {
    expect(first("cap,one person,-,45,2,-,-,-,-,-,-,").verdict).toBe("holds");
    expect(first("cap,one person,-,50,2,-,-,-,-,-,-,").verdict).toBe("cannot tell yet");
    const heavy = first("cap,one person,-,60,2,-,-,-,-,-,-,");
    expect(heavy.verdict).toBe("does not hold");
    expect(heavy.against[0]).toMatch(/by hand goes at best 50.7 lb: sling it/);
    expect(first("cap,two persons,-,60,2,-,-,-,-,-,-,").verdict).toBe("holds");
  });
  it("trusts a scale before the sizes, within its limits: u = a/√3", () => {
    const { mass, massIs, centre } = first("one,one leg,basket,48,3,-,-,-,-,-,800,");
    expect([massIs, mass.value.in("pound")]).toEqual(["weighed", 48]);
    expectClose(mass.standardUncertainty.in("pound"), 3 / Math.sqrt(3), exact);
    expect(centre).toEqual(masses.parts[0]!.centre);
  });
  it("takes the worst of all as its verdict, and names the parts of the ledger that no row lifts", () => {
    const ledger = partsLedger(
      tableOf(
        "parts",
        "part [text],state [text],comes off after [text],waits for [text],marks [text]",
        "one,in place,-,-,-",
        "Other,in place,-,-,-",
        "key,in place,-,-,-",
      ),
    );
    const table = tableOf(
      "lifts",
      header,
      "one + other,two along,choker,-,-,1,21,-,-,10,800,",
      "cap,one person,-,90,1,-,-,-,-,-,-,",
    );
    const all = planOf(masses, table, { ...gear, ledger });
    expect([all.verdict, all.unsaid]).toEqual(["does not hold", ["key"]]);
  });
  it.each([
    [
      "one,hook,-,-,-,-,-,-,-,-,-,",
      /line 2, column "sling": found "hook", expected one of one leg, two along/,
    ],
    ["one,two along,choker,-,-,1,-,-,-,10,800,", /column "second": found nothing, expected a value/],
    ["one,one person,-,-,-,1,-,-,-,-,-,", /column "first": found 1 in, expected -: one person has none/],
    ["cap,one person,-,-,-,-,-,-,-,-,-,", /column "weighed": found nothing, expected the mass of cap/],
    ["cap,one person,-,9,-,-,-,-,-,-,-,", /column "within": found nothing, expected how far/],
    ["cap,two along,choker,9,1,1,4,-,-,3,800,", /column "sling": found two along, expected one leg: where/],
    ["one,one leg,basket,-,-,-,-,2,-,-,800,", /column "over centre": found nothing, expected a value: both/],
    ["one,one leg,bow,-,-,-,-,-,-,-,800,", /line 2: liftOf: hitch must be/],
    ["one +,one leg,basket,-,-,-,-,-,-,-,800,", /column "part": found "one \+"/],
  ])("stops at %s", (row, message) => {
    expect(() => plan(row)).toThrow(message);
  });
  it("of a metric rebuild gives the limit by hand in kilograms", () => {
    const metric = massesOf(
      tableOf(
        "pieces",
        "part [text],piece [text],shape [text],count [-],across [mm],far [mm],inside [mm],length [mm],thick [mm],along [mm],material [text]",
        "one,plate,cylinder,1,200,-,-,40,-,0,steel",
      ),
    );
    const table = tableOf(
      "lifts",
      header.replaceAll("[lb]", "[kg]").replaceAll("[in]", "[mm]"),
      "one,one person,-,-,-,-,-,-,-,-,-,",
    );
    const { lifts, unitSystem } = planOf(metric, table, gear);
    expect([unitSystem, lifts[0]!.handLimit!.writtenIn]).toEqual(["metric", "kilogram"]);
  });
});
