import { type Babbitt, babbitts } from "../../handbook/index.js";
import {
  degF,
  footPerMinute,
  type Measured,
  measured,
  type Pressure,
  psi,
  quantityFromSi,
  type Speed,
  type Temperature,
} from "../../quantity/index.js";
import { normalCdf } from "../../statistics/index.js";
import type { BoxDesign, DesignedBox } from "./box-design.js";

/** One thing an alloy is judged by. */
export interface AlloyCriterion {
  readonly name:
    | "strength while warm"
    | "mean pressure"
    | "rubbing"
    | "speed"
    | "oil that stays"
    | "lead"
    | "pouring heat"
    | "scraping";
  /** "unknown": no figure is tabled. */
  readonly outcome: "good" | "against" | "fails" | "unknown";
  /** Why, with its figure. */
  readonly because: string;
  readonly source: string;
}

/** An alloy as these boxes see it. */
export interface JudgedAlloy {
  readonly alloy: Babbitt;
  readonly standing: "first choice" | "would do" | "cannot tell" | "rejected";
  /** Yield of the warm metal over the highest pressure in the film, least of all boxes; undefined where none is known. */
  readonly strength: Measured<number> | undefined;
  /** Chance that it is at least what is demanded [-]. */
  readonly chance: number | undefined;
  readonly criteria: readonly AlloyCriterion[];
}

/** The white metals for a set of boxes, the first choice first. */
export interface AlloyChoice {
  readonly kind: "alloy choice";
  readonly supply: BoxDesign["supply"];
  /** Demanded of yield over highest pressure [-]. */
  readonly demanded: number;
  readonly ranked: readonly JudgedAlloy[];
  /** The alloy that stands first; undefined where none does. */
  readonly best: Babbitt | undefined;
  /** The same as `rebuild.decide` takes it. */
  readonly options: readonly {
    readonly name: string;
    readonly figures: Readonly<Record<string, number | Measured<number> | Pressure | string>>;
    readonly breaks: readonly string[];
  }[];
}

const practice = "common practice, no source";
const handbook = "Machinery's Handbook, characteristics of bearing materials (from memory)";
/** Mean pressure by the base of the metal [psi]. */
const mostPressure = { tin: psi(1500), lead: psi(1200) } as const;
/** Where journal and metal touch [W/m²]: 30 000 psi·ft/min. */
const mostRubbing = psi(30_000).si * footPerMinute(1).si;
const leadBaseSpeed = footPerMinute(1000);
const hotToPour = degF(850);
const hardToScrape = 25;
const tabled = { cold: degF(68), warm: degF(212) } as const;
const sure = 0.95;

/**
 * Which white metal for these boxes: each ASTM B23 alloy that is poured against load, speed, heat, supply of oil, and what
 * its lead, its pouring and its hardness mean to those who work it.
 *
 * Strength: yield at the film's temperature, straight between the standard's 68 and 212 °F, over the highest pressure in
 * the film, at least `demanded` with 95 %. Rejected: what fails a limit. The others stand by how many criteria speak
 * against them, then by strength; each criterion counts one.
 *
 * Valid when: thick linings (3 mm, 1/8 in and more) cast into iron; no shock load.
 *
 * @param design  as `boxDesign` returns it
 * @param options.demanded  of yield over highest pressure, ≥ 1; default 3 (common practice, no source) [-]
 * @param options.alloys  those at hand; default all that are tabled
 * @returns the alloys, the first choice first, each with the reasons
 * @throws RangeError  no alloys, no boxes, or demanded below 1
 * @example
 * const air = { boxSurface: quantity(250, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const box = { name: "far box", diameter: inch(2.5), length: inch(8), speed: rpm(110), oil: oil("ISO VG 100"), ...air };
 * const boxes = [{ ...box, diametralClearance: measured(thou(4), thou(0.3)), load: measured(lbf(800), lbf(60)) }];
 * chooseBabbitt(boxDesign(boxes, runningPrediction(boxes, degF(65)), "drop")).best.number // 2
 * @source ASTM B23-00, tables 1 and X1.1 (strength, composition, heat; as reprinted); each criterion carries its own
 */
export function chooseBabbitt(
  design: BoxDesign,
  {
    demanded = 3,
    alloys = babbitts,
  }: { readonly demanded?: number; readonly alloys?: readonly Babbitt[] } = {},
): AlloyChoice {
  if (!(demanded >= 1)) throw new RangeError(`chooseBabbitt: demanded must be 1 or more, got ${demanded}`);
  if (alloys.length === 0) throw new RangeError("chooseBabbitt: at least one alloy is needed, got none");
  if (design.boxes.length === 0) throw new RangeError("chooseBabbitt: at least one box is needed, got none");
  const order = { "first choice": 0, "would do": 0, "cannot tell": 1, rejected: 2 } as const;
  const against = ({ criteria }: JudgedAlloy): number =>
    criteria.filter(({ outcome }) => outcome === "against").length;
  const sorted = alloys
    .map((alloy) => judged(alloy, design, demanded))
    .sort(
      (a, b) =>
        order[a.standing] - order[b.standing] ||
        against(a) - against(b) ||
        (b.strength?.value ?? 0) - (a.strength?.value ?? 0),
    );
  const ranked = sorted.map((one, i) =>
    i === 0 && one.standing === "would do"
      ? Object.freeze({ ...one, standing: "first choice" as const })
      : one,
  );
  const first = ranked[0]!;
  return Object.freeze({
    kind: "alloy choice",
    supply: design.supply,
    demanded,
    ranked: Object.freeze(ranked),
    best: first.standing === "first choice" ? first.alloy : undefined,
    options: Object.freeze(ranked.map(optionOf)),
  });
}

function judged(alloy: Babbitt, design: BoxDesign, demanded: number): JudgedAlloy {
  const warm = design.boxes.map((box) => warmStrength(alloy, box));
  const known = warm.filter((one) => one !== undefined);
  const least =
    known.length < warm.length
      ? undefined
      : known.reduce((a, b) => (b.factor.value < a.factor.value ? b : a));
  const chance =
    least === undefined
      ? undefined
      : normalCdf((least.factor.value - demanded) / least.factor.standardUncertainty);
  const criteria = [
    strengthOf(alloy, design, least, chance, demanded),
    pressureOf(alloy, design),
    rubbingOf(design),
    speedOf(alloy, design),
    stayingOilOf(alloy, design),
    leadOf(alloy),
    heatOf(alloy),
    scrapingOf(alloy),
  ];
  const standing = criteria.some(({ outcome }) => outcome === "fails")
    ? "rejected"
    : criteria.some(({ outcome }) => outcome === "unknown")
      ? "cannot tell"
      : "would do";
  return Object.freeze({
    alloy,
    standing,
    strength: least?.factor,
    chance,
    criteria: Object.freeze(criteria.map((one) => Object.freeze(one))),
  });
}

/** Yield at the film's temperature over the highest pressure in it. */
function warmStrength(
  { yieldCold, yieldWarm }: Babbitt,
  { filmTemperature, temperatureUncertainty, highestPressure, name }: DesignedBox,
): { readonly box: string; readonly yield: Pressure; readonly factor: Measured<number> } | undefined {
  if (yieldCold === undefined || yieldWarm === undefined) return undefined;
  const { cold, warm } = tabled;
  if (filmTemperature.kelvin > warm.kelvin) return undefined;
  const slope = (yieldWarm.si - yieldCold.si) / (warm.kelvin - cold.kelvin);
  // Below 68 °F it is stronger still: reckoned as at 68 °F.
  const si = yieldCold.si + slope * Math.max(0, filmTemperature.kelvin - cold.kelvin);
  const factor = si / highestPressure.value.si;
  const share = Math.hypot(
    (slope * temperatureUncertainty.si) / si,
    highestPressure.standardUncertainty.si / highestPressure.value.si,
  );
  return {
    box: name,
    yield: quantityFromSi("pressure", si, yieldCold.writtenIn as "psi"),
    factor: measured(factor, factor * share),
  };
}

function strengthOf(
  alloy: Babbitt,
  design: BoxDesign,
  least: ReturnType<typeof warmStrength>,
  chance: number | undefined,
  demanded: number,
): AlloyCriterion {
  const source = `${alloy.source}; at least ${demanded}: ${practice}`;
  const name = "strength while warm";
  if (least === undefined || chance === undefined) {
    const hot = design.boxes.find(({ filmTemperature }) => filmTemperature.kelvin > tabled.warm.kelvin);
    return hot !== undefined
      ? {
          name,
          outcome: "fails",
          because: `the film of ${hot.name} is at ${hot.filmTemperature}; no strength is tabled above ${tabled.warm}`,
          source,
        }
      : { name, outcome: "unknown", because: "no strength is tabled", source };
  }
  const { value } = least.factor;
  const because = `it yields at ${value.toPrecision(2)} times the highest pressure in the film of ${least.box}`;
  return {
    name,
    outcome: chance >= sure ? "good" : chance >= 0.5 ? "against" : "fails",
    because:
      chance >= sure
        ? because
        : `${because}: at least ${demanded} in ${Math.round(100 * chance)} % of the cases`,
    source,
  };
}

function pressureOf({ base }: Babbitt, { boxes }: BoxDesign): AlloyCriterion {
  const most = mostPressure[base];
  const highest = boxes.reduce((a, b) => (b.pressure.value.si > a.pressure.value.si ? b : a));
  const share = highest.pressure.value.si / most.si;
  return {
    name: "mean pressure",
    outcome: share > 1 ? "fails" : "good",
    because: `${highest.name} presses with ${percent(share)} of what a ${base} base carries`,
    source: handbook,
  };
}

/** Oil that comes now and then, or no whole film: journal and metal touch. */
function rubbingOf({ boxes, supply }: BoxDesign): AlloyCriterion {
  const seldom = ["hand", "drop", "wick"].includes(supply);
  const rubbing = boxes.filter(({ film }) => seldom || film !== "full film");
  const name = "rubbing";
  if (rubbing.length === 0)
    return { name, outcome: "good", because: `a full film, and oil by ${supply}`, source: practice };
  const share = Math.max(...rubbing.map(({ pressureTimesSpeed }) => pressureTimesSpeed)) / mostRubbing;
  const why = seldom
    ? `oil by ${supply} may fail`
    : `no full film in ${rubbing.map((box) => box.name).join(" and ")}`;
  return {
    name,
    outcome: share > 1 ? "fails" : "good",
    because: `${why}; pressure times speed is ${percent(share)} of what rubbing white metal stands`,
    source: practice,
  };
}

function speedOf({ base }: Babbitt, { boxes }: BoxDesign): AlloyCriterion {
  const fastest = boxes.reduce((a, b) => (b.speed.si > a.speed.si ? b : a));
  const fast = base === "lead" && fastest.speed.si > leadBaseSpeed.si;
  return {
    name: "speed",
    outcome: fast ? "against" : "good",
    because: fast
      ? `${spoken(fastest.speed)} in ${fastest.name} is fast for a lead base, up to 1000 ft/min (5 m/s)`
      : `${spoken(fastest.speed)} is slow enough`,
    source: practice,
  };
}

function stayingOilOf({ base }: Babbitt, { supply }: BoxDesign): AlloyCriterion {
  const stays = supply === "ring" || supply === "bath" || supply === "forced";
  const sour = base === "lead" && stays;
  return {
    name: "oil that stays",
    outcome: sour ? "against" : "good",
    because: sour
      ? `oil by ${supply} stays in use, turns sour with age, and its acids eat lead`
      : base === "tin"
        ? "tin is hardly attacked by old oil"
        : "spent oil runs off",
    source: practice,
  };
}

function leadOf({ lead }: Babbitt): AlloyCriterion {
  const harmful = lead[1] > 1;
  return {
    name: "lead",
    outcome: harmful ? "against" : "good",
    because: harmful
      ? `${lead[0]} to ${lead[1]} % lead: fume, dross and scrapings poison`
      : `at most ${lead[1]} % lead`,
    source: "ASTM B23-00, table 1 (as reprinted)",
  };
}

function heatOf({ pouring }: Babbitt): AlloyCriterion {
  const hot = pouring.kelvin > hotToPour.kelvin;
  return {
    name: "pouring heat",
    outcome: hot ? "against" : "good",
    because: `poured at ${wholeDegrees(pouring)}${hot ? ": more dross, more shrinkage, hotter iron" : ""}`,
    source: `ASTM B23-00, table X1.1 (as reprinted); hot above ${wholeDegrees(hotToPour)}: ${practice}`,
  };
}

/** A hot metal's temperature as a thermometer tells it, in whole degrees of the reader's scale. */
function wholeDegrees(temperature: Temperature): string {
  return String(temperature).replace(/[\d.]+/, (reading) => Number(reading).toFixed(0));
}

function scrapingOf({ brinell }: Babbitt): AlloyCriterion {
  const hard = brinell > hardToScrape;
  return {
    name: "scraping",
    outcome: hard ? "against" : "good",
    because: `Brinell ${brinell}: ${hard ? "hard to scrape, slow to bed in" : "scrapes and beds in"}`,
    source: `hardness: from memory; hard above ${hardToScrape}: ${practice}`,
  };
}

function optionOf({ alloy, strength, criteria }: JudgedAlloy): AlloyChoice["options"][number] {
  const said = (outcome: AlloyCriterion["outcome"]): string[] =>
    criteria.filter((one) => one.outcome === outcome).map(({ name, because }) => `${name}: ${because}`);
  const against = criteria.filter(({ outcome }) => outcome === "against").map(({ name }) => name);
  return Object.freeze({
    name: alloy.name,
    figures: Object.freeze({
      ...(strength === undefined ? {} : { "yield over highest pressure": strength }),
      "against it": against.length === 0 ? "nothing" : against.join(", "),
    }),
    breaks: Object.freeze([...said("fails"), ...said("unknown")]),
  });
}

/** A speed in the unit it was written in, to two digits. */
function spoken(speed: Speed): string {
  const [number, symbol] =
    speed.writtenIn === "footPerMinute"
      ? [speed.in("footPerMinute"), "ft/min"]
      : [speed.in("metrePerSecond"), "m/s"];
  return `${Number(number.toPrecision(2))} ${symbol}`;
}

function percent(share: number): string {
  return `${(100 * share).toPrecision(2)} %`;
}

/**
 * The alloy of a choice by its name, for what is poured.
 *
 * @param choice  as `chooseBabbitt` returns it
 * @param name  e.g. "ASTM B23 alloy 2", in any case
 * @returns the alloy
 * @throws RangeError  it is not among those judged; the message lists them
 * @example
 * const air = { boxSurface: quantity(250, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const box = { name: "far box", diameter: inch(2.5), length: inch(8), speed: rpm(110), oil: oil("ISO VG 100"), ...air };
 * const boxes = [{ ...box, diametralClearance: measured(thou(4), thou(0.3)), load: measured(lbf(800), lbf(60)) }];
 * const choice = chooseBabbitt(boxDesign(boxes, runningPrediction(boxes, degF(65)), "drop"));
 * alloyChosen(choice, "ASTM B23 alloy 2").brinell // 24.5
 * @source none: a look-up
 */
export function alloyChosen({ ranked }: AlloyChoice, name: string): Babbitt {
  const found = ranked.find(({ alloy }) => alloy.name.toLowerCase() === name.trim().toLowerCase());
  if (found === undefined)
    throw new RangeError(
      `alloyChosen: must be one of ${ranked.map(({ alloy }) => `"${alloy.name}"`).join(", ")}, got "${name}"`,
    );
  return found.alloy;
}
