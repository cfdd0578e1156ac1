import {
  type AnyQuantity,
  formatNumber,
  type Measured,
  measured,
  systemOf,
  type UnitName,
  unitSystem,
} from "../../quantity/index.js";
import type { ComparedFigure, ComparedValue, ShaftsCompared } from "../../shaft/index.js";
import type { Presentation, TableBlock, VerdictBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { comparedFigure, usedOf } from "./compared-figure.js";
import { leastIn, mostIn } from "./joint-text.js";
import { factorNumber } from "./strength-text.js";
import { warningBlocks } from "./warning-blocks.js";

/** A shaft before and after a cut: whether a limit is broken and by what, the limits' figure, every figure by row. */
export function presentShaftsCompared(found: ShaftsCompared): Presentation {
  const units = unitsOf(found);
  return Object.freeze<Presentation>({
    title: "The shaft as made and after the cut",
    blocks: [
      verdict(found, units),
      comparedFigure(found.figures),
      limitTable(found, units),
      otherTable(found, units),
      ...warningBlocks(found.warnings),
    ],
  });
}

type Units = Readonly<Record<"moment" | "force" | "deflection" | "pressure" | "speed", UnitName>>;

function unitsOf({ figures }: ShaftsCompared): Units {
  const written = (figures[0]!.after.value.value as AnyQuantity).writtenIn;
  const system = unitSystem() ?? (written === undefined ? "metric" : systemOf(written));
  return system === "inch"
    ? { moment: "lbfInch", force: "lbf", deflection: "thou", pressure: "psi", speed: "rpm" }
    : {
        moment: "newtonMetre",
        force: "newton",
        deflection: "micrometre",
        pressure: "megapascal",
        speed: "rpm",
      };
}

function valueText({ measure }: ComparedFigure, { value, low, high }: ComparedValue, units: Units): string {
  if (measure === "factor")
    return `${factorNumber(value.value as number)} (${factorNumber(low)} to ${factorNumber(high)})`;
  if (measure === "slope") return `${plainOrMeasured(scaledBy(value as Measured<number>, 1000))} in 1000`;
  if (measure === "share") return `${plainOrMeasured(scaledBy(value as Measured<number>, 100))} %`;
  return plainOrMeasured(value, units[measure]);
}

function scaledBy({ value, standardUncertainty }: Measured<number>, by: number): Measured<number> {
  return measured(value * by, standardUncertainty * by);
}

function plainOrMeasured(value: Measured<AnyQuantity | number>, unit?: UnitName): string {
  return plusMinus(value, unit === undefined ? {} : { unit: unit as never });
}

function limitText({ measure, limit }: ComparedFigure, units: Units): string {
  const words = limit!.side;
  if (measure === "slope") return `${words} ${formatNumber(1000 * (limit!.value as number), 3)} in 1000`;
  if (measure === "share") return `${words} ${formatNumber(100 * (limit!.value as number), 3)} %`;
  if (measure === "factor") return `${words} ${factorNumber(limit!.value as number)}`;
  return words === "at most"
    ? `${words} ${mostIn(limit!.value as AnyQuantity, units[measure], 3)}`
    : `${words} ${leastIn(limit!.value as AnyQuantity, units[measure], 3)}`;
}

/** A change in per cent, with its 95 % where it was reckoned: "+0.16 ± 0.02 %". */
function changeText({ value, standardUncertainty }: ComparedFigure["change"]): string {
  const sign = value < 0 ? "−" : "+";
  const percent = measured(100 * Math.abs(value), 100 * (standardUncertainty ?? 0));
  if (Math.abs(percent.value) < 0.005 && percent.standardUncertainty < 0.005) return "none";
  if (standardUncertainty === undefined || percent.standardUncertainty < 1e-4)
    return `${sign}${formatNumber(percent.value, percent.value < 10 ? 2 : 3)} %`;
  return `${sign}${plusMinus(percent)} %`;
}

/** What is held against a limit, each row to be read by itself. */
function limitTable({ figures }: ShaftsCompared, units: Units): TableBlock {
  return {
    type: "table",
    stacked: true,
    caption:
      "What is limited, ± U (95 %), factors with the ends of their 95 %. The change is sharper than either, because both bear the same load",
    columns: [
      { title: "figure", align: "left" },
      { title: "as made", align: "right" },
      { title: "after the cut", align: "right" },
      { title: "change", align: "right" },
      { title: "limit", align: "right" },
      { title: "after the cut it", align: "left" },
    ],
    rows: figures
      .filter(({ limit }) => limit !== undefined)
      .map((one) => ({
        cells: [
          ...stateCells(one, units),
          limitText(one, units),
          one.after.verdict === "does not hold" && one.before.verdict === "does not hold"
            ? "does not hold, nor did it as made"
            : one.after.verdict!,
        ],
        ...(one.after.verdict === "does not hold"
          ? { mark: "bad" as const }
          : one.after.verdict === "cannot tell yet"
            ? { mark: "warn" as const }
            : {}),
      })),
  };
}

function otherTable({ figures }: ShaftsCompared, units: Units): TableBlock {
  return {
    type: "table",
    stacked: true,
    caption: "What no limit is set for, ± U (95 %)",
    columns: [
      { title: "figure", align: "left" },
      { title: "as made", align: "right" },
      { title: "after the cut", align: "right" },
      { title: "change", align: "right" },
    ],
    rows: figures
      .filter(({ limit }) => limit === undefined)
      .map((one) => ({ cells: stateCells(one, units) })),
  };
}

function stateCells(one: ComparedFigure, units: Units): string[] {
  return [
    one.name,
    valueText(one, one.before, units),
    valueText(one, one.after, units),
    changeText(one.change),
  ];
}

function verdict({ figures, verdict: judged }: ShaftsCompared, units: Units): VerdictBlock {
  const limited = figures.filter(({ limit }) => limit !== undefined);
  const nearest = limited.reduce((a, b) =>
    usedOf(b.limit!, b.after).middle > usedOf(a.limit!, a.after).middle ? b : a,
  );
  const broken = limited.filter(({ after }) => after.verdict === "does not hold");
  const open = limited.filter(({ after }) => after.verdict === "cannot tell yet");
  const each = (list: readonly ComparedFigure[]): string =>
    list
      .map(
        (one) =>
          `${one.name}, ${valueText(one, one.after, units)}, ${limitText(one, units)} (as made ${valueText(one, one.before, units)})`,
      )
      .join("; ");
  const alsoOpen = open.length === 0 ? "" : ` Cannot be told yet: ${each(open)}.`;
  if (judged === "holds")
    return {
      type: "verdict",
      outcome: "yes",
      text: "After the cut the shaft keeps every limit.",
      because: `Nearest to its limit: ${each([nearest])}.`,
    };
  if (judged === "cannot tell yet")
    return {
      type: "verdict",
      outcome: "cannot tell yet",
      text: "Whether the shaft keeps every limit after the cut cannot be told yet.",
      because: `The limit lies within the 95 % of ${each(open)}.`,
    };
  return {
    type: "verdict",
    outcome: "no",
    text:
      judged === "the cut breaks a limit"
        ? "The cut breaks a limit that the shaft kept as made."
        : "A limit is broken, but not by the cut: the shaft broke it as made.",
    because: `Broken: ${each(broken)}.${alsoOpen}`,
  };
}
