import { afterEach, describe, expect, it } from "vitest";
import { deltaC, inch, measured, setUnitSystem, thou } from "../../../kernel-helpers/quantity/index.js";
import { present, renderText } from "../../../kernel-helpers/view/index.js";
import type { ShownDecision } from "../../../kernel-helpers/view/results/present-decision.js";

afterEach(() => setUnitSystem(undefined));

const options = (diameter: number, breaks: readonly string[] = []): ShownDecision["options"] => [
  { name: "turn down", figures: { diameter: measured(inch(diameter), thou(0.2)), hours: 4 }, breaks },
  { name: "sleeve", figures: { diameter: inch(2.4375), cost: "a week" }, breaks: ["the keyway is too near"] },
];

const decision = (change: Partial<ShownDecision> = {}): ShownDecision => ({
  kind: "decision",
  name: "shaft",
  question: "What becomes of the journal?",
  options: options(2.431),
  limits: { "smallest diameter allowed": inch(2.43) },
  choice: "turn down",
  reason: "it cleans up above the limit",
  by: "AB",
  on: "2026-05-04",
  withdrawn: false,
  superseded: [],
  ...change,
});

const textOf = (value: unknown): string => renderText(present(value)!);

describe("present(decision)", () => {
  it("gives a difference of temperatures in degrees: its name says that it is one", () => {
    const warm = { name: "heat", figures: { "hub over shaft": deltaC(86.6) }, breaks: [] };
    expect(textOf(decision({ options: [warm], choice: "heat" }))).toMatch(/hub over shaft\s+86\.6 °C$/m);
  });
  it("sets the options side by side, with what each breaks, the choice, the reason, who and when", () => {
    const text = textOf(decision());
    expect(text).toMatch(/turn down \(chosen\)\s+sleeve/);
    expect(text).toMatch(/diameter\s+2\.43100 ± 0\.00039 in\s+2\.4375 in/);
    expect(text).toMatch(/cost\s+–\s+a week/);
    expect(text).toMatch(/limits broken\s+none\s+1/);
    expect(text).toContain("“sleeve” breaks: the keyway is too near.");
    expect(text).toMatch(/reason\s+it cleans up above the limit/);
    expect(text).toMatch(/decided\s+AB, 2026-05-04/);
    expect(text).toMatch(/limit: smallest diameter allowed\s+2\.43 in/);
    expect(text).not.toMatch(/moved|superseded/);
  });
  it("tells which figures have moved since, by how much against their uncertainty", () => {
    const text = textOf(decision({ now: { options: options(2.4309), limits: decision().limits } }));
    expect(text).toMatch(/moved since 2026-05-04/);
    expect(text).toMatch(
      /turn down\s+figure: diameter[\s\S]*now: 2\.43090 ± 0\.00039 in\s+moved by: −0\.1 thou, 0\.5 times its standard uncertainty/,
    );
    expect(text).not.toMatch(/Decide anew/);
  });
  it("warns where the choice has come to break a limit, or is no option any more", () => {
    const broken = { options: options(2.4299, ["below 2.43 in"]), limits: decision().limits };
    expect(textOf(decision({ now: broken }))).toMatch(/has come to break a limit:\s+below 2\.43 in/);
    const gone = { options: options(2.431).slice(1), limits: decision().limits };
    expect(textOf(decision({ now: gone }))).toMatch(/“turn down” is no option any more/);
  });
  it("shows the overriding reason, and what was superseded", () => {
    const text = textOf(decision({ override: "light load", superseded: [decision({ choice: "sleeve" })] }));
    expect(text).toMatch(/against the limit because\s+light load/);
    expect(text).toMatch(/superseded[\s\S]*2026-05-04\s+AB\s+sleeve/);
  });
});

describe("present(noted)", () => {
  it("lists what was noted, without the columns in which nothing stands", () => {
    const text = textOf({
      kind: "noted",
      sheet: "06",
      file: "record/06.json",
      open: [{ what: "which way does the nut turn?" }],
      parts: [{ what: "key", size: inch(0.5), count: 2 }],
      measure: [],
    });
    expect(text).toMatch(/which way does the nut turn\?/);
    expect(text).toMatch(/what\s+how many\s+size\s*\n[\s\S]*key\s+2\s+0\.5 in/);
    expect(text).not.toMatch(/waits for|Still to be measured/);
  });
});
