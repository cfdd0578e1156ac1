import { afterEach, describe, expect, it } from "vitest";
import {
  hangOf,
  liftOf,
  liftPlan,
  massesOf,
  partsLedger,
  raisedEnergy,
  springEnergy,
  storedEnergies,
  supportLoads,
  tippingOf,
} from "../../../kernel-helpers/intake/index.js";
import {
  foot,
  inch,
  type Length,
  lbf,
  type Mass,
  type Measured,
  measured,
  pound,
  setUnitSystem,
} from "../../../kernel-helpers/quantity/index.js";
import { instrumentFrom, readTable, type Table } from "../../../kernel-helpers/survey/index.js";
import type { Block, Presentation } from "../../../kernel-helpers/view/blocks.js";
import { drawingSize } from "../../../kernel-helpers/view/drawing/drawing-svg.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderHtml } from "../../../kernel-helpers/view/render-html.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";

const rule = instrumentFrom("rule", { title: "rule", resolution: "1/16 in", repeatability: "0.03 in" });
function tableOf(name: string, ...lines: string[]): Table {
  const options = { name, file: `tables/${name}.csv`, instruments: { rule } };
  return readTable(new TextEncoder().encode(lines.join("\n")), options);
}
const pieceHeader =
  "part [text],piece [text],shape [text],count [-],across [in],far [in],inside [in],length [in],thick [in],along [in],material [text]";
const rows = [
  "wheel,rim,ring,1,30,-,28.5,6,-,1,grey iron class 20",
  "wheel,hub,ring,1,5,-,2,4,-,2,grey iron class 20",
  "shaft,round,cylinder,1,2,-,-,60,-,0,steel",
];
const masses = massesOf(tableOf("pieces", "# instrument: rule", pieceHeader, ...rows));
const liftHeader =
  "part [text],sling [text],hitch [text],weighed [lb],within [lb],first [in],second [in],held at [in],over centre [in],hook above [in],sling tag [lb],remark";
const slung = "wheel,two across,choker,-,-,13,13,4,7.5,24,800,round two arms";
const tips = "shaft,two along,choker,-,-,2,9,-,-,10,800,";
const carried = "cap,one person,-,14,1,-,-,-,-,-,-,by its ends";
const gear = { hookTag: pound(1000) };
const plan = liftPlan(masses, tableOf("lifts", liftHeader, slung, carried), gear);
const wrong = liftPlan(masses, tableOf("lifts", liftHeader, slung, tips), gear);
const of = (value: number, u: number): Measured<Mass> => measured(pound(value), pound(u));
const at = (value: number, u: number): Measured<Length> => measured(inch(value), inch(u));

const shown = (value: unknown): Presentation => present(value)!;
const all = <T extends Block["type"]>(value: unknown, type: T): readonly Extract<Block, { type: T }>[] =>
  shown(value).blocks.filter((block): block is Extract<Block, { type: T }> => block.type === type);
const text = (value: unknown): string => renderText(shown(value)).replace(/\s+/g, " ");

afterEach(() => setUnitSystem(undefined));

describe("present(masses)", () => {
  it("gives every part and all together with ± U, centre and inertia, and what each is put together from", () => {
    const [parts, pieces] = all(masses, "table");
    expect(parts!.rows.map(({ cells }) => cells[0])).toEqual(["wheel", "shaft", "all together"]);
    for (const { cells } of parts!.rows) {
      expect(cells[1]).toMatch(/^\d+(\.\d+)? ± [\d.]+ lb$/);
      expect(cells[2]).toMatch(/ ± [\d.]+ in$/);
      expect(cells[3]).toMatch(/ ± [\d.]+ lb·in²$/);
    }
    expect(pieces!.rows.map(({ cells }) => cells[0])).toEqual(["wheel: rim", "wheel: hub", "shaft: round"]);
  });
  it("follows the unit system, and warns where no instrument is named", () => {
    setUnitSystem("metric");
    expect(all(masses, "table")[0]!.rows[0]!.cells[1]).toMatch(/ kg$/);
    expect(all(masses, "warning")).toEqual([]);
    const exact = massesOf(tableOf("pieces", pieceHeader, ...rows));
    expect(all(exact, "warning")[0]!.text).toMatch(/these sizes count as exact/);
  });
});

describe("present(lift plan)", () => {
  it("answers in one line, names the heaviest, and keeps slings and hands apart", () => {
    const [verdict] = all(plan, "verdict");
    expect(verdict).toMatchObject({ outcome: "yes", text: "Every part is held, lifted slowly." });
    expect(verdict!.because).toMatch(/^The heaviest, wheel, weighs at most \d+ lb\.$/);
    const [slings, hands] = all(plan, "table");
    expect(slings!.caption).toMatch(/The hook's tag: 1000 lb$/);
    expect(slings!.rows[0]!.cells.slice(3, 4)).toEqual(["two across, choker, 62°"]);
    expect(hands!.rows[0]!.cells).toEqual([
      "cap",
      "14.0 ± 1.1 lb",
      "one person, by its ends",
      "yes, up to 50.7 lb",
    ]);
  });
  it("says of what does not hold why, first and in the table, and does not draw slings that cannot hold", () => {
    const [verdict] = all(wrong, "verdict");
    expect(verdict).toMatchObject({ outcome: "no", text: "Do not lift so: shaft." });
    expect(verdict!.because).toMatch(/^Shaft: its centre of mass lies outside the two slings/);
    expect(all(wrong, "table")[0]!.rows.map(({ mark }) => mark)).toEqual([undefined, "bad"]);
    expect(all(wrong, "drawing")[0]!.alt).toMatch(/^wheel: /);
    expect(all(wrong, "drawing")[0]!.alt).not.toMatch(/shaft/);
  });
  it("draws each load within a telephone's width, its centre of mass under the hook, legs at their angles", () => {
    const { drawing, alt } = all(plan, "drawing")[0]!;
    const size = drawingSize(drawing);
    expect(size.width).toBeLessThanOrEqual(360);
    expect(size.height).toBeLessThanOrEqual(drawing.height);
    const circles = drawing.shapes.flatMap((shape) => (shape.type === "circle" ? [shape.centre] : []));
    expect(circles[0]![0]).toBe(circles[1]![0]);
    const legs = drawing.shapes.flatMap((shape) =>
      shape.type === "line" && shape.pen === "force" ? [shape] : [],
    );
    const angles = legs.map(({ from, to }) =>
      Math.round((Math.atan2(to[1] - from[1], Math.abs(to[0] - from[0])) * 180) / Math.PI),
    );
    expect(angles).toEqual([62, 62]);
    expect(alt).toMatch(/left leg at 62° pulls/);
  });
  it("names parts of the ledger that nobody lifts, and warns of the choker", () => {
    const ledger = partsLedger(
      tableOf(
        "parts",
        "part [text],state [text],comes off after [text],waits for [text],marks [text]",
        "key,in place,-,-,-",
      ),
    );
    const table = tableOf("lifts", liftHeader, slung);
    const warnings = all(liftPlan(masses, table, { ...gear, ledger }), "warning").map((one) => one.text);
    expect(warnings[0]).toBe("Nobody has said how these are lifted: key. Add a row for each.");
    expect(warnings[1]).toMatch(/choker closed to less than 120°/);
  });
});

describe("present(lift)", () => {
  const points = { left: inch(20), right: inch(20), hookAbove: inch(10) };
  const tags = { hitch: "basket", slingTag: pound(800), hookTag: pound(1000) } as const;
  it("says do not lift it so where the legs are flat, in the pen of warnings, and that it holds otherwise", () => {
    const flat = liftOf({ what: "wheel", mass: of(100, 2), points, ...tags });
    expect(all(flat, "verdict")[0]).toMatchObject({ outcome: "no", text: "Do not lift it so." });
    const pens = (lift: unknown): readonly string[] =>
      all(lift, "drawing")[0]!.drawing.shapes.flatMap((shape) => (shape.type === "arrow" ? [shape.pen] : []));
    expect(pens(flat)).toEqual(["warn"]);
    const straight = liftOf({ what: "wheel", mass: of(100, 2), ...tags });
    expect(all(straight, "verdict")[0]).toMatchObject({ outcome: "yes" });
    expect(pens(straight)).toEqual(["force"]);
  });
});

describe("present(hang), present(tipping), present(support loads)", () => {
  it("says that it turns over, or how far it leans", () => {
    expect(all(hangOf(inch(1), inch(-3)), "verdict")[0]).toMatchObject({ outcome: "no" });
    expect(all(hangOf(inch(1), inch(10)), "verdict")[0]!.text).toBe("It leans 5.7° and hangs so.");
  });
  it("warns of what one person can push over, and only of that", () => {
    const stood = { edge: inch(3), height: inch(15), pushedAt: inch(30) };
    expect(text(tippingOf({ mass: pound(180), ...stood }))).toMatch(
      /11°.*18 lbf.*One person can push it over/,
    );
    expect(all(tippingOf({ mass: pound(2000), ...stood }), "warning")).toEqual([]);
  });
  it("gives both loads with ± U, and says when the shaft tips", () => {
    const rests = supportLoads("shaft", { mass: of(90, 2), centre: at(20, 0.5) }, [inch(0), inch(40)]);
    expect(all(rests, "verdict")[0]!.text).toBe("It rests on both supports.");
    expect(all(rests, "facts")[0]!.facts.map(({ value }) => value)).toEqual([
      expect.stringMatching(/^carries 45\.0 ± [\d.]+ lb$/),
      expect.stringMatching(/^carries 45\.0 ± [\d.]+ lb$/),
    ]);
    const over = supportLoads("shaft", { mass: of(90, 2), centre: at(45, 0.5) }, [inch(0), inch(40)]);
    expect(all(over, "verdict")[0]).toMatchObject({ outcome: "no" });
  });
});

describe("present(stored energies)", () => {
  const energies = storedEnergies([
    springEnergy("tight belt", "belt", measured(lbf(120), lbf(20)), inch(1)),
    raisedEnergy("wheel in its sling", of(180, 5), foot(4)),
  ]);
  it("puts the largest first, each with ± U and the fall of a sledge, and a caution for each kind", () => {
    const [table] = all(energies, "table");
    expect(table!.rows.map(({ cells }) => cells[0])).toEqual(["wheel in its sling", "belt"]);
    // 180 lb × 4 ft = 720 lbf·ft: as a sledge of 10 lb from 72 ft.
    expect(table!.rows[0]!.cells.slice(3)).toEqual(["720 ± 39 lbf·ft", "a sledge of 10 lb falling 72 ft"]);
    expect(all(energies, "caution").map(({ title }) => title)).toEqual([
      "Raised mass: before a hand goes near",
      "Tight belt: before a hand goes near",
    ]);
    expect(text(energies)).toMatch(/Local codes, .* licensed practice come before/);
  });
});

describe("present(parts ledger)", () => {
  const ledger = partsLedger(
    tableOf(
      "parts",
      "part [text],state [text],comes off after [text],waits for [text],marks [text],remark",
      "nut,in place,-,-,-,hand first",
      "wheel,in place,nut,-,arm 1 at the key,-",
      "shell,in place,wheel,shaft,number 1,-",
      "shaft,removed,-,-,keyway up,-",
    ),
  );
  it("says what may come off next, and for each part what it waits for, off and back on", () => {
    const { facts } = all(ledger, "facts")[0]!;
    expect(facts[0]).toMatchObject({ label: "may come off next", value: "nut" });
    const waits = new Map(all(ledger, "table")[0]!.rows.map(({ cells }) => [cells[0]!.slice(3), cells[2]]));
    expect(waits.get("wheel")).toBe("off after nut");
    expect(waits.get("shell")).toBe("off after wheel; back when shaft is ready");
    expect(waits.get("nut")).toBe("");
  });
  it("draws the order no wider than a telephone, and its table stands row by row there", () => {
    expect(drawingSize(all(ledger, "drawing")[0]!.drawing).width).toBeLessThanOrEqual(362);
    const html = renderHtml(shown(ledger), { picture: () => "", withStyle: false });
    expect(html).toMatch(/jb-stack/);
    expect(html).toMatch(/arm 1 at the key/);
  });
});
