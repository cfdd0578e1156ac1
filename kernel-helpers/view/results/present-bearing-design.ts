import type { AlloyChoice, BoxDesign, ClearanceChoice, JudgedAlloy } from "../../bearing/index.js";
import { formatFixed, formatNumber } from "../../quantity/index.js";
import type { Block, FigureBlock, Presentation } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { alarm, pencil, seriesLook } from "../palette.js";
import { inUnit, jointUnits, permittedText } from "./joint-text.js";
import { percentText } from "./percent-text.js";
import { plotText } from "./plot-text.js";

const footPoundMinute = 6894.757293168361 * (0.3048 / 60);

/** What the boxes ask of their metal, side by side. */
export function presentBoxDesign({ boxes, supply }: BoxDesign): Presentation {
  const units = jointUnits(boxes[0]!.diameter);
  const inch = units.system === "inch";
  const pressure = inch ? "psi" : "megapascal";
  return Object.freeze<Presentation>({
    title: "What the boxes ask of their metal",
    blocks: [
      {
        type: "table",
        caption: `Oil by ${supply}. ± U (95 %); the pressure in the film and its heat are foretold`,
        columns: [
          { title: "", align: "left" },
          ...boxes.map(({ name }) => ({ title: name, align: "right" as const })),
        ],
        rows: (
          [
            ["load", ({ load }) => plusMinus(load, { unit: inch ? "lbf" : "newton" })],
            [
              "journal, diameter × length",
              (box) => `${inUnit(box.diameter, units.size, 5)} × ${inUnit(box.length, units.size, 4)}`,
            ],
            ["length over diameter", (box) => formatNumber(box.lengthOverDiameter, 3)],
            ["pressure, mean", (box) => plusMinus(box.pressure, { unit: pressure })],
            ["pressure, highest in the film", (box) => plusMinus(box.highestPressure, { unit: pressure })],
            [
              "speed of the journal's surface",
              (box) => inUnit(box.speed, inch ? "footPerMinute" : "metrePerSecond", 3),
            ],
            [
              "pressure × speed",
              (box) =>
                inch
                  ? `${formatNumber(box.pressureTimesSpeed / footPoundMinute, 3)} psi·ft/min`
                  : `${formatNumber(box.pressureTimesSpeed / 1e6, 3)} MPa·m/s`,
            ],
            [
              "film at",
              (box) => {
                const u = box.temperatureUncertainty.in(inch ? "deltaF" : "deltaC");
                return `${formatFixed(box.filmTemperature.in(inch ? "degF" : "degC"), 0)} ± ${formatFixed(1.96 * u, 0)} ${inch ? "°F" : "°C"}`;
              },
            ],
            ["film", ({ film, shortOfOil }) => (shortOfOil ? `${film}, short of oil` : film)],
          ] as readonly (readonly [string, (box: BoxDesign["boxes"][number]) => string])[]
        ).map(([label, of]) => ({ cells: [label, ...boxes.map(of)] })),
        stacked: true,
      },
    ],
  });
}

/** The white metals, the first choice first, each with what speaks for and against it. */
export function presentAlloyChoice({ ranked, best, demanded }: AlloyChoice): Presentation {
  const sources = [
    ...new Set(ranked.flatMap(({ criteria }) => criteria.map(({ name, source }) => `${name}: ${source}`))),
  ];
  return Object.freeze<Presentation>({
    title: "Which white metal",
    blocks: [
      {
        type: "verdict",
        outcome: best === undefined ? "no" : "yes",
        text: best === undefined ? "none of these alloys will do" : best.name,
        because:
          best === undefined
            ? `${reasons(ranked[0]!, ["fails", "unknown"])}.`
            : `${strengthText(ranked[0]!)}. ${against(ranked[0]!) === 0 ? "Nothing speaks against it" : `Against it: ${reasons(ranked[0]!, ["against"])}`}.`,
      },
      {
        type: "table",
        caption: `Ranked by how many reasons speak against each, then by strength: yield of the warm metal over the highest pressure in the film, at least ${formatNumber(demanded)}. Tin costs several times what lead costs`,
        columns: [
          { title: "alloy", align: "left" },
          { title: "base", align: "left" },
          { title: "standing", align: "left" },
          { title: "strength", align: "right" },
          { title: "against it", align: "left" },
        ],
        stacked: true,
        rows: ranked.map((one) => ({
          cells: [
            one.alloy.name,
            one.alloy.base,
            one.standing,
            one.strength === undefined ? "not known" : plusMinus(one.strength),
            reasons(one, ["fails", "unknown", "against"]) || "nothing",
          ],
          ...(one.standing === "rejected" ? { mark: "bad" as const } : {}),
          ...(one.standing === "cannot tell" ? { mark: "warn" as const } : {}),
        })),
      },
      {
        type: "table",
        caption: `Each criterion, ${ranked[0]!.alloy.name}`,
        columns: [
          { title: "criterion", align: "left" },
          { title: "outcome", align: "left" },
          { title: "because", align: "left" },
          { title: "source", align: "left" },
        ],
        stacked: true,
        rows: ranked[0]!.criteria.map(({ name, outcome, because, source }) => ({
          cells: [name, outcome, because, source],
        })),
        showRows: Math.min(8, sources.length),
      },
    ],
  });
}

function strengthText({ strength }: JudgedAlloy): string {
  return strength === undefined
    ? "Its warm strength is not known"
    : `Warm, it yields at ${plusMinus(strength)} (95 %) times the highest pressure in the film`;
}

function against({ criteria }: JudgedAlloy): number {
  return criteria.filter(({ outcome }) => outcome === "against").length;
}

function reasons({ criteria }: JudgedAlloy, outcomes: readonly string[]): string {
  return criteria
    .filter(({ outcome }) => outcomes.includes(outcome))
    .map(({ because, outcome }) => (outcome === "fails" ? `fails: ${because}` : because))
    .join("; ");
}

const answers = {
  fits: { outcome: "yes", text: "will do" },
  "does not fit": { outcome: "no", text: "will not do" },
  "cannot tell yet": { outcome: "cannot tell yet", text: "may not do" },
} as const;

/** Rules and film side by side, with the clearance intended. */
export function presentClearanceChoice(choice: ClearanceChoice): Presentation {
  const { intended, ranges, verdict, because } = choice;
  const { small } = jointUnits(intended.value);
  const blocks: Block[] = [
    {
      type: "verdict",
      outcome: answers[verdict].outcome,
      text: `${formatMeasured(intended, { unit: small })} of DIAMETRAL clearance ${answers[verdict].text}`,
      because: `${because}.${outsideText(choice)}`,
    },
    rangeFigure(choice),
    {
      type: "table",
      caption: "DIAMETRAL clearance: bore less journal",
      columns: [
        { title: "by", align: "left" },
        { title: "from … to", align: "right" },
        { title: "chance that the intended one lies within", align: "right" },
        { title: "ends there, because", align: "left" },
        { title: "source", align: "left" },
      ],
      rows: ranges.map(({ name, low, high, chance, lowBecause, highBecause, source }) => ({
        cells: [
          name,
          permittedText({ low, high }, small, 3),
          percentText(chance),
          name === choice.film?.name
            ? `tighter, ${lowBecause ?? "no end was found"}; slacker, ${highBecause ?? "no end was found"}`
            : "",
          source,
        ],
        ...(chance < 0.5 ? { mark: "warn" as const } : {}),
      })),
    },
  ];
  return Object.freeze<Presentation>({ title: "Clearance, three ways", blocks });
}

function outsideText({ ranges, film }: ClearanceChoice): string {
  const outside = ranges.filter((range) => range !== film && range.chance < 0.5).map(({ name }) => name);
  return outside.length === 0 ? "" : ` It lies outside ${outside.join(" and ")}: say why before going on.`;
}

function rangeFigure({ ranges, intended }: ClearanceChoice): FigureBlock {
  const units = jointUnits(intended.value);
  const symbol = units.system === "inch" ? "thou" : "µm";
  const on = ({ si }: { readonly si: number }): number =>
    Number((si / (units.system === "inch" ? 25.4e-6 : 1e-6)).toPrecision(6));
  const reach = 1.96 * on(intended.standardUncertainty);
  return {
    type: "figure",
    alt: `Ranges of diametral clearance by ${ranges.map(({ name }) => name).join(", ")}, and the intended one with its uncertainty.`,
    caption: "The upright band is the intended clearance as it may come out (95 %).",
    figure: {
      data: ranges.map(({ name, low, high }, i) => ({
        type: "scatter",
        mode: "lines+markers",
        name: plotText(name),
        x: [on(low), on(high)],
        y: [plotText(name), plotText(name)],
        line: { color: seriesLook(i).color, width: 8 },
        marker: { color: seriesLook(i).color, size: 12, symbol: "line-ns-open" },
        showlegend: false,
        hovertemplate: `${plotText(name)}: %{x:.3~g} ${symbol}<extra></extra>`,
      })),
      layout: {
        title: { text: "Clearance, three ways" },
        width: 720,
        height: 120 + 44 * ranges.length,
        margin: { l: 130, r: 24, t: 56, b: 52 },
        xaxis: { title: { text: `diametral clearance [${symbol}]` }, rangemode: "tozero" },
        yaxis: { autorange: "reversed" },
        shapes: [
          {
            type: "rect",
            yref: "paper",
            layer: "below",
            x0: on(intended.value) - reach,
            x1: on(intended.value) + reach,
            y0: 0,
            y1: 1,
            fillcolor: pencil,
            opacity: 0.2,
            line: { width: 0 },
          },
          {
            type: "line",
            yref: "paper",
            x0: on(intended.value),
            x1: on(intended.value),
            y0: 0,
            y1: 1,
            line: { color: alarm, width: 1.5 },
          },
        ],
      },
    },
  };
}
