import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { degC, inch, measured, setUnitSystem, thou } from "../../kernel-helpers/quantity/index.js";
import type { DecisionRequest } from "../../kernel-helpers/record/decision-types.js";
import { openRebuild, type Rebuild } from "../../kernel-helpers/record/open-rebuild.js";
import { resetSession } from "../../kernel-helpers/record/session.js";
import { temporaryFolder } from "../support/temporary-folder.js";

afterEach(() => {
  resetSession();
  setUnitSystem(undefined);
});

const rebuildFolder = (): string =>
  temporaryFolder({ "rebuild.json": '{ "schema": 1, "title": "Test shaft", "units": "inch" }' });

/** A run of a sheet from clean state. */
function run(folder: string, sheet = "06"): Rebuild {
  resetSession();
  return openRebuild({ folder, sheet });
}

const recordText = (folder: string, sheet = "06"): string =>
  readFileSync(join(folder, "record", `${sheet}.json`), "utf8");

function request(change: Partial<DecisionRequest> = {}, smallest = 2.431): DecisionRequest {
  return {
    name: "shaft",
    question: "What becomes of the journal?",
    options: [
      {
        name: "turn down",
        figures: { diameter: measured(inch(smallest), thou(0.2)), "poured at": degC(20), "hours of work": 4 },
        breaks: smallest < 2.43 ? ["the smallest diameter allowed, 2.43 in"] : [],
      },
      {
        name: "sleeve",
        figures: { diameter: inch(2.4375), cost: "a week" },
        breaks: ["the keyway is too near"],
      },
    ],
    choice: "turn down",
    reason: "it cleans up above the limit",
    by: "AB",
    on: "2026-05-04",
    ...change,
  };
}

describe("rebuild.decide(request)", () => {
  it("gives the decision with its figures and writes it into the sheet's record", () => {
    const folder = rebuildFolder();
    const decision = run(folder).decide(request());
    expect(decision).toMatchObject({ kind: "decision", name: "shaft", sheet: "06", file: "record/06.json" });
    expect(decision).toMatchObject({ choice: "turn down", by: "AB", withdrawn: false, superseded: [] });
    expect(decision.now).toBeUndefined();
    expect(Object.isFrozen(decision)).toBe(true);
    const figures = decision.options[0]!.figures;
    expect(Object.keys(figures)).toEqual(["diameter", "poured at", "hours of work"]);
    expect(figures.diameter).toMatchObject({ kind: "measured", value: { si: inch(2.431).si } });
    const kept = JSON.parse(recordText(folder)).decisions.shaft;
    expect(kept.basis.inputs["rebuild.json"]).toMatch(/^[0-9a-f]{64}$/);
    expect(kept.options[0].figures[0]).toEqual({
      figure: "diameter",
      value: {
        kind: "measured",
        value: { inch: 2.431 },
        standardUncertainty: { thou: 0.2 },
        degreesOfFreedom: { number: "Infinity" },
      },
    });
  });

  it("changes no byte of the record when the same decision is run again", () => {
    const folder = rebuildFolder();
    run(folder).decide(request());
    const before = recordText(folder);
    run(folder).decide(request());
    expect(recordText(folder)).toBe(before);
  });

  it("keeps the figures of the day it was made, and puts what they are now beside them", () => {
    const folder = rebuildFolder();
    run(folder).decide(request());
    const before = recordText(folder);
    const moved = run(folder).decide(request({}, 2.4305));
    expect(moved.options[0]!.figures.diameter).toMatchObject({ value: { si: inch(2.431).si } });
    expect(moved.now!.options[0]!.figures.diameter).toMatchObject({ value: { si: inch(2.4305).si } });
    expect(moved.superseded).toEqual([]);
    run(folder).decide(request());
    expect(recordText(folder)).toBe(before);
  });

  it("supersedes the one before when choice, reason or date is another, and keeps it with its figures", () => {
    const folder = rebuildFolder();
    run(folder).decide(request());
    const later = run(folder).decide(
      request({ choice: "sleeve", override: "the keyway is moved", on: "2026-06-01" }, 2.4305),
    );
    expect(later.choice).toBe("sleeve");
    expect(later.superseded).toMatchObject([{ choice: "turn down", on: "2026-05-04", by: "AB" }]);
    expect(later.superseded[0]!.options[0]!.figures.diameter).toMatchObject({
      value: { si: inch(2.431).si },
    });
  });

  it("leaves the same record however often a sheet that decides twice is run", () => {
    const folder = rebuildFolder();
    const twice = (): string[] => {
      const rebuild = run(folder);
      const shown = [
        rebuild.decide(request({ reason: "first thought" })),
        rebuild.decide(request({ reason: "second thought", on: "2026-05-05" })),
      ];
      return [...shown.map((decision) => JSON.stringify(decision)), recordText(folder)];
    };
    const first = twice();
    expect(twice()).toEqual(first);
    expect(JSON.parse(first[2]!).decisions.shaft).toMatchObject({
      reason: "second thought",
      superseded: [{ reason: "first thought" }],
    });
  });

  it("refuses an option that violates a limit unless a reason of its own is given for that", () => {
    const folder = rebuildFolder();
    expect(() => run(folder).decide(request({}, 2.428))).toThrow(
      /decide: "turn down" breaks a limit \(the smallest diameter allowed, 2\.43 in\).*override/,
    );
    expect(JSON.parse(recordText(folder)).refused.shaft).toMatchObject({ choice: "turn down" });
    expect(JSON.parse(recordText(folder)).decisions).toBeUndefined();
    const forced = run(folder).decide(request({ override: "light load only" }, 2.428));
    expect(forced.override).toBe("light load only");
    expect(JSON.parse(recordText(folder)).refused).toBeUndefined();
  });

  it("keeps what was decided when a later run refuses it", () => {
    const folder = rebuildFolder();
    run(folder).decide(request());
    expect(() => run(folder).decide(request({}, 2.428))).toThrow(/breaks a limit/);
    const kept = JSON.parse(recordText(folder));
    expect(kept.decisions.shaft).toMatchObject({ choice: "turn down", on: "2026-05-04" });
    expect(kept.refused.shaft.why).toMatch(/smallest diameter/);
  });

  it.each([
    [{ choice: "weld" }, /choice must be one of the options, "turn down", "sleeve", got "weld"/],
    [{ reason: " " }, /reason must say something, got " "/],
    [{ question: undefined as never }, /question must say something, got nothing/],
    [{ by: "A long name of a person" }, /by must be the initials/],
    [{ on: "4 May" }, /on must be the day.*got "4 May"/],
    [{ on: "2026-02-30" }, /on must be the day.*got "2026-02-30"/],
    [{ options: [] }, /options must list at least one/],
    [{ options: [request().options[0]!, request().options[0]!] }, /a name of its own, got "turn down" twice/],
    [
      { options: [{ name: "turn down", figures: { d: Number.NaN }, breaks: [] }] },
      /figures of "turn down" must be .* got NaN for "d"/,
    ],
    [
      { options: [{ name: "turn down", figures: {}, breaks: "no" as never }] },
      /breaks of "turn down" must list/,
    ],
    [{ override: "" }, /override must say something/],
  ] as const)("says what is wrong with %j", (change, message) => {
    expect(() => run(rebuildFolder()).decide(request(change as Partial<DecisionRequest>))).toThrow(message);
  });

  it("refuses a name another sheet has decided under", () => {
    const folder = rebuildFolder();
    run(folder).decide(request());
    expect(() => run(folder, "07").decide(request())).toThrow(/"shaft" is already decided by sheet 06/);
  });
});

describe("rebuild.decision(name)", () => {
  it("gives a later sheet what was decided, and remembers that it was taken over", () => {
    const folder = rebuildFolder();
    run(folder).decide(request());
    const rebuild = run(folder, "07");
    expect(rebuild.decision("shaft").choice).toBe("turn down");
    rebuild.publish({ x: 1 });
    expect(Object.keys(JSON.parse(recordText(folder, "07")).recalled)).toEqual(["06: decision shaft"]);
    expect(() => rebuild.decision("bearing")).toThrow(
      /nothing is decided under "bearing".*decided are shaft/,
    );
  });
});

describe("rebuild.note(notes)", () => {
  it("keeps open items, parts and readings in the record, each once", () => {
    const folder = rebuildFolder();
    const rebuild = run(folder);
    const noted = rebuild.note({
      open: ["which way does the nut turn?"],
      parts: [{ what: "key", size: inch(0.5), count: 2 }],
      measure: [{ what: "bore of the hub", where: inch(3), why: "not read yet" }],
    });
    expect(noted).toMatchObject({
      kind: "noted",
      sheet: "06",
      open: [{ what: "which way does the nut turn?" }],
    });
    const before = recordText(folder);
    rebuild.note({ open: ["which way does the nut turn?"] });
    expect(recordText(folder)).toBe(before);
    expect(JSON.parse(before).notes.parts).toEqual([{ what: "key", size: { inch: 0.5 }, count: 2 }]);
  });
  it("says which entry says nothing or has a part that is not known", () => {
    const rebuild = run(rebuildFolder());
    expect(() => rebuild.note({ open: [""] })).toThrow(/each entry of open must say what/);
    expect(() => rebuild.note({ parts: [{ what: "key", price: 3 } as never] })).toThrow(
      /an entry of parts has what, count, size, for, got "price"/,
    );
    expect(() => rebuild.note({ wishes: [] } as never)).toThrow(
      /the lists are open, parts, measure, got "wishes"/,
    );
  });
});
