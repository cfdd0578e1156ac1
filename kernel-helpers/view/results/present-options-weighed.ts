import { type AnyQuantity, formatNumber, measured } from "../../quantity/index.js";
import type { LimitKept, OptionsWeighed, OptionWeighed } from "../../shaft/index.js";
import type { Block, Presentation, TableBlock, VerdictBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { chanceText } from "./chance-text.js";
import { weighedFigure } from "./weighed-figure.js";

/** More inputs than this are told in a line: they count for next to nothing. */
const shownInputs = 6;

/** Options against limits: the verdict on the choice, one figure, the margins, and what the choice hangs on. */
export function presentOptionsWeighed(weighed: OptionsWeighed): Presentation {
  return Object.freeze<Presentation>({
    title: "The options, weighed",
    blocks: [
      verdict(weighed),
      weighedFigure(weighed),
      margins(weighed),
      flips(weighed),
      ...measure(weighed),
      ...assumptions(weighed),
      {
        type: "text",
        text: `${formatNumber(weighed.draws)} shafts drawn from what is known and how well, seed ${weighed.seed}; every option sees the same shafts.`,
      },
    ],
  });
}

function verdict(weighed: OptionsWeighed): VerdictBlock {
  const { options, chosen, wanted, draws, stands, beyondChoice, flips: all } = weighed;
  const option = options.find(({ name }) => name === chosen)!;
  const holds = option.verdict === "holds";
  const other = beyondChoice.length === 0 ? "limit weighed here" : "other limit weighed here";
  const nearest = all.find(({ moves }) => moves !== undefined);
  return {
    type: "verdict",
    outcome:
      beyondChoice.length > 0 || option.verdict === "does not hold"
        ? "no"
        : holds
          ? "yes"
          : "cannot tell yet",
    text: [
      beyondChoice.length === 0 ? "" : `No option keeps ${listed(beyondChoice)}; `,
      holds
        ? `“${chosen}” keeps every ${other}`
        : option.verdict === "does not hold"
          ? `“${chosen}” does not keep every ${other} with the chance wanted`
          : `whether “${chosen}” keeps every ${other} with the chance wanted cannot be told yet`,
    ].join(""),
    because: [
      beyondChoice.length === 0
        ? ""
        : `${beyondChoice.map((name) => `${name}: ${chanceDrawn(limitOf(option, name))}`).join("; ")}. No choice among these mends that, a new shaft to the old sizes neither: it takes another load, another span, or boxes that allow it.`,
      `All its ${beyondChoice.length === 0 ? "" : "other "}limits hold together with ${chanceDrawn(option)}; ${chanceText(wanted)} is wanted${
        option.verdict === "cannot tell yet"
          ? `, which ${formatNumber(draws)} draws do not tell apart: draw more shafts, or measure`
          : ""
      }.`,
      option.weakest === undefined ? "" : `The nearest to breaking: ${option.weakest}.`,
      nearest === undefined
        ? "No single input, moved by ten of its standard uncertainties, changes that."
        : `The nearest single change: ${nearest.input}, ${movesText(nearest.moves!)}.`,
      holds ? "" : stands === undefined ? "No option keeps them all with that chance." : `“${stands}” would.`,
    ]
      .filter(Boolean)
      .join(" "),
  };
}

function listed(names: readonly string[]): string {
  return names.map((name) => `“${name}”`).join(" nor ");
}

function limitOf({ limits }: OptionWeighed, name: string): LimitKept {
  return limits.find((limit) => limit.name === name)!;
}

/** A chance with twice what the draws leave open, as "95.1 ± 0.4 %". */
function chanceDrawn({ chance, chanceUncertainty }: Pick<LimitKept, "chance" | "chanceUncertainty">): string {
  const text = chanceText(chance);
  const open = 200 * chanceUncertainty;
  return /than/.test(text) || open < 0.05
    ? text
    : text.replace(" %", ` ± ${open.toFixed(open < 1 ? 1 : 0)} %`);
}

function margins({ options, chosen, beyondChoice, draws }: OptionsWeighed): TableBlock {
  const names = [...new Set(options.flatMap(({ limits }) => limits.map(({ name }) => name)))];
  const own = options.find(({ name }) => name === chosen)!;
  return {
    type: "table",
    caption: `Chance that each limit holds; margin ± U (95 %) of “${chosen}”, below 0 it is broken`,
    columns: [
      { title: "limit", align: "left" },
      { title: "margin", align: "right" },
      ...options.map(({ name }) => ({
        title: name === chosen ? `${name} (chosen)` : name,
        align: "right" as const,
      })),
    ],
    rows: [
      ...names.map((limit) => {
        const of = own.limits.find(({ name }) => name === limit);
        return {
          cells: [
            limit,
            of === undefined ? "–" : plusMinus(of.margin),
            ...options.map(({ limits }) => {
              const kept = limits.find(({ name }) => name === limit);
              return kept === undefined ? "–" : shortChance(kept.chance);
            }),
          ],
          ...(beyondChoice.includes(limit) ? { mark: "warn" as const } : {}),
        };
      }),
      {
        cells: [
          beyondChoice.length === 0 ? "all together" : "all but those marked, together",
          "",
          ...options.map((option) => shortChance(option.chance)),
        ],
      },
      {
        cells: [
          `so far as ${formatNumber(draws)} draws tell`,
          "",
          ...options.map(({ chanceUncertainty }) => `± ${formatNumber(200 * chanceUncertainty, 2)} %`),
        ],
      },
    ],
  };
}

/** For a table of many: "> 99.9 %". */
function shortChance(chance: number): string {
  return chanceText(chance).replace("more than", ">").replace("less than", "<");
}

function flips({ flips: all, chosen }: OptionsWeighed): TableBlock {
  const near = all.filter(({ moves }) => moves !== undefined).slice(0, shownInputs);
  const rest = all.length - near.length;
  return {
    type: "table",
    caption: `What alone would change whether “${chosen}” keeps its limits${rest === 0 ? "" : `; the other ${rest} inputs would have to move farther, or by more than ten standard uncertainties`}`,
    columns: [
      { title: "input", align: "left" },
      { title: "reckoned with, ± U (95 %)", align: "right" },
      { title: "changes at", align: "right" },
      { title: "standard uncertainties", align: "right" },
      { title: "limit that changes", align: "left" },
    ],
    rows: near.map((flip) => ({
      cells: [
        flip.input,
        plusMinus(measured(flip.value, flip.standardUncertainty)),
        plain(flip.to!),
        `${Math.abs(flip.moves!).toFixed(1)} ${flip.moves! < 0 ? "down" : "up"}`,
        flip.breaks!,
      ],
      ...(Math.abs(flip.moves!) < 2 ? { mark: "warn" as const } : {}),
    })),
  };
}

function movesText(moves: number): string {
  return `${Math.abs(moves).toFixed(1)} of its standard uncertainties ${moves < 0 ? "down" : "up"}`;
}

function plain(value: AnyQuantity | number): string {
  return typeof value === "number" ? formatNumber(value, 4) : String(value);
}

function measure({ measure: all, options, chosen }: OptionsWeighed): Block[] {
  const { weakest, limits } = options.find(({ name }) => name === chosen)!;
  const worth = all.filter(({ share }) => share >= 0.01).slice(0, shownInputs);
  if (worth.length === 0) return [];
  const now = limits.find(({ name }) => name === weakest)!.chance;
  return [
    {
      type: "table",
      caption: `What to measure to be surer of “${weakest}”, which holds with ${chanceText(now)} now`,
      columns: [
        { title: "input", align: "left" },
        { title: "share of the doubt", align: "right" },
        { title: "holds, were it known to be as reckoned", align: "right" },
      ],
      rows: worth.map(({ input, share, chanceIfKnown }) => ({
        cells: [input, `${Math.round(100 * share)} %`, chanceText(chanceIfKnown)],
      })),
    },
  ];
}

function assumptions({ assumptions: all, options }: OptionsWeighed): Block[] {
  if (all.length === 0) return [];
  return [
    {
      type: "table",
      caption: "Were something else true: the chance that all limits hold",
      columns: [
        { title: "were it so that", align: "left" },
        ...options.map(({ name }) => ({ title: name, align: "right" as const })),
        { title: "option to take", align: "left" },
      ],
      rows: all.map(({ name, options: others, flips: other }) => ({
        cells: [
          name,
          ...others.map(({ chance }) => shortChance(chance)),
          other === undefined ? "cannot tell" : other ? "changes" : "stays",
        ],
        ...(other !== false ? { mark: "warn" as const } : {}),
      })),
    },
  ];
}
