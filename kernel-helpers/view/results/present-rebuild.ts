import {
  type Angle,
  type AnyQuantity,
  formatNumber,
  inFraction,
  isTemperature,
  type Length,
  shownUnit,
  type Temperature,
  unitNamed,
} from "../../quantity/index.js";
import type { Block, Fact, Presentation } from "../blocks.js";

/** What is shown of an open rebuild: its facts, not where on this computer it lies. */
export interface ShownRebuild {
  readonly kind: "rebuild";
  readonly title: string;
  /** Why another rebuild than the sheet's own was opened; else "". */
  readonly notice: string;
  readonly tables: readonly string[];
  readonly facts: {
    readonly invented: boolean;
    readonly machine: readonly { readonly label: string; readonly value: string }[];
    readonly dimensions: Readonly<Record<string, Length>>;
    readonly angles: Readonly<Record<string, Angle>>;
    readonly quantities: Readonly<Record<string, AnyQuantity | Temperature>>;
    readonly numbers: Readonly<Record<string, { readonly value: number; readonly because: string }>>;
    readonly words: Readonly<Record<string, string>>;
    /** Half the width of the limits, by section and name: "quantities.driven pulley mass". */
    readonly limits: Readonly<Record<string, AnyQuantity>>;
  };
}

/** What a sheet handed on. */
export interface ShownPublication {
  readonly kind: "published";
  readonly sheet: string;
  readonly names: readonly string[];
  readonly file: string;
}

/** So many named facts are shown at once; a longer list is folded. */
const mostAtOnce = 12;

/** The machine, how much is known of it, the facts that worksheets ask for by name (folded), and the tables there are. */
export function presentRebuild({ title, notice, tables, facts }: ShownRebuild): Presentation {
  const blocks: Block[] = [];
  if (notice !== "") blocks.push({ type: "warning", text: notice });
  if (facts.invented)
    blocks.push({ type: "text", text: "A demonstration: the machine and its readings are invented." });
  if (facts.machine.length > 0) blocks.push({ type: "facts", facts: facts.machine });
  const named = namedFacts(facts);
  if (named.length > 0)
    blocks.push({
      type: "table",
      caption: `Facts that worksheets ask for by name, as rebuild.json gives them: ${counts(facts)}.`,
      columns: [
        { title: "name", align: "left" },
        { title: "value", align: "left" },
      ],
      rows: named.map(({ label, value }) => ({ cells: [label, value] })),
      showRows: named.length > mostAtOnce ? 0 : named.length,
    });
  blocks.push({
    type: "text",
    text: tables.length === 0 ? "There are no tables yet." : `Tables of readings: ${tables.join(", ")}.`,
  });
  return Object.freeze<Presentation>({ title, blocks });
}

function namedFacts({
  dimensions,
  angles,
  quantities,
  numbers,
  words,
  limits,
}: ShownRebuild["facts"]): Fact[] {
  const within = (section: string, label: string, value: AnyQuantity, plain: string): Fact => {
    const limit = limits[`${section}.${label}`];
    return { label, value: limit === undefined ? plain : withLimits(value, limit) };
  };
  return [
    ...Object.entries(dimensions).map(([label, size]) =>
      within("dimensions", label, size as AnyQuantity, sizeText(size)),
    ),
    ...Object.entries(angles).map(([label, angle]) => ({ label, value: angle.toString() })),
    ...Object.entries(quantities).map(([label, value]) =>
      isTemperature(value)
        ? { label, value: value.toString() }
        : within("quantities", label, value, value.toString()),
    ),
    ...Object.entries(numbers).map(([label, { value, because }]) => ({
      label,
      value: `${value}: ${because}`,
    })),
    ...Object.entries(words).map(([label, value]) => ({ label, value })),
  ];
}

/** "2 dimensions, 1 angle": what there is, in the order it is listed in. */
function counts({ dimensions, angles, quantities, numbers, words }: ShownRebuild["facts"]): string {
  const said = (many: Readonly<Record<string, unknown>>, one: string, more: string): string => {
    const count = Object.keys(many).length;
    return count === 0 ? "" : `${count} ${count === 1 ? one : more}`;
  };
  return [
    said(dimensions, "dimension", "dimensions"),
    said(angles, "angle", "angles"),
    said(quantities, "quantity", "quantities"),
    said(numbers, "number", "numbers"),
    said(words, "word", "words"),
  ]
    .filter((text) => text !== "")
    .join(", ");
}

/** "180 ± 10 lb": value and limits in the unit the value is shown in. */
function withLimits(value: AnyQuantity, limit: AnyQuantity): string {
  const unit = shownUnit(value.dimension, value.writtenIn);
  if (unit === undefined) return `${value} ± ${limit}`;
  const { si, symbol } = unitNamed(unit);
  return `${formatNumber(value.si / si)} ± ${formatNumber(limit.si / si)} ${symbol}`;
}

/** Which names were handed on, and where they are kept. */
export function presentPublication({ sheet, names, file }: ShownPublication): Presentation {
  return Object.freeze<Presentation>({
    title: `Handed on: ${names.join(", ")}`,
    blocks: [
      {
        type: "text",
        text: `Later sheets take ${names.length === 1 ? "it" : "them"} over from ${sheet} by name; kept in ${file}.`,
      },
    ],
  });
}

/** Inch sizes that are a fraction are said as one too. */
function sizeText(length: Length): string {
  const text = (length as AnyQuantity).toString();
  if (length.writtenIn !== "inch") return text;
  const fraction = inFraction(length);
  return /[+−].*thou/.test(fraction) || !fraction.includes("/") ? text : `${fraction} (${text})`;
}
