import {
  type Angle,
  type AnyQuantity,
  inFraction,
  type Length,
  type Temperature,
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
    readonly words: Readonly<Record<string, string>>;
  };
}

/** What a sheet handed on. */
export interface ShownPublication {
  readonly kind: "published";
  readonly sheet: string;
  readonly names: readonly string[];
  readonly file: string;
}

/** The machine, the sizes that worksheets ask for by name, and the tables there are. */
export function presentRebuild({ title, notice, tables, facts }: ShownRebuild): Presentation {
  const blocks: Block[] = [];
  if (notice !== "") blocks.push({ type: "warning", text: notice });
  if (facts.invented)
    blocks.push({ type: "text", text: "A demonstration: the machine and its readings are invented." });
  const dimensions: Fact[] = Object.entries(facts.dimensions).map(([label, length]) => ({
    label,
    value: sizeText(length),
  }));
  const angles: Fact[] = Object.entries(facts.angles).map(([label, angle]) => ({
    label,
    value: angle.toString(),
  }));
  const quantities: Fact[] = Object.entries(facts.quantities).map(([label, value]) => ({
    label,
    value: value.toString(),
  }));
  const words: Fact[] = Object.entries(facts.words).map(([label, value]) => ({ label, value }));
  const known: Fact[] = [...facts.machine, ...dimensions, ...angles, ...quantities, ...words];
  if (known.length > 0) blocks.push({ type: "facts", facts: known });
  blocks.push({
    type: "text",
    text: tables.length === 0 ? "There are no tables yet." : `Tables of readings: ${tables.join(", ")}.`,
  });
  return Object.freeze<Presentation>({ title, blocks });
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
