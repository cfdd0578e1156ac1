import {
  formatLimit,
  formatNumber,
  type Length,
  quantityFromSi,
  roundToLimit,
} from "../../quantity/index.js";
import type { DeepestCut } from "../../shaft/index.js";
import type { Fact, Presentation, VerdictBlock } from "../blocks.js";
import { chanceText } from "./chance-text.js";
import { type ShownUnits, shownUnits, sizeMeasured, sizeText, systemOfLength } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** How far a place may be turned down. */
export function presentDeepestCut(found: DeepestCut): Presentation {
  const units = shownUnits(systemOfLength(found.diameter.value));
  const { smallest, sure, risk, demanded, governing, diameter } = found;
  const facts: Fact[] = [
    {
      label: "diameter now",
      value:
        diameter.standardUncertainty.si === 0
          ? sizeText(diameter.value, units)
          : sizeMeasured(diameter, units),
    },
  ];
  if (smallest !== undefined)
    facts.push({
      label: "smallest diameter",
      value: sizeMeasured(smallest, units),
      note: `95 %; there the factor is ${formatNumber(demanded, 3)}, as likely above as below; ${governing} decides`,
    });
  if (sure !== undefined)
    facts.push(
      {
        label: "smallest diameter, sure",
        value: limitText(roundedUp(found, units), "at least", units),
        note: `chance to be below the factor ${formatNumber(demanded, 3)} there: ${chanceText(risk)}`,
      },
      {
        label: "may be turned off",
        value: limitText(diameter.value.minus(roundedUp(found, units)), "at most", units),
        note: "on diameter; moment and torque as they are",
      },
    );
  return Object.freeze<Presentation>({
    title: `The deepest cut at ${found.name}`,
    blocks: [verdict(found, units), { type: "facts", facts }, ...warningBlocks(found.warnings)],
  });
}

/**
 * The sure diameter taken up to as few digits, three at least, as give away no more than a twentieth of the cut: its own
 * uncertainty is hundreds of times what a micrometer shows.
 */
function roundedUp({ sure, cut }: DeepestCut, { size }: ShownUnits): Length {
  const [exact, room] = [sure!.in(size), cut.in(size)];
  const digits = [3, 4, 5, 6].find((n) => roundToLimit(exact, n, "at least") - exact <= room / 20) ?? 7;
  return quantityFromSi("length", (roundToLimit(exact, digits, "at least") * sure!.si) / exact, size);
}

/** To five digits, of which the last are zeros. */
function limitText(limit: Length, side: "at most" | "at least", { size, sizeSymbol }: ShownUnits): string {
  return `${formatLimit(limit.in(size), 5, side)} ${sizeSymbol}`;
}

function verdict(found: DeepestCut, units: ShownUnits): VerdictBlock {
  const { name, ended, demanded, risk, governing } = found;
  const factor = formatNumber(demanded, 3);
  switch (ended) {
    case "found":
      return {
        type: "verdict",
        outcome: "yes",
        text: `${name} may be turned down to ${limitText(roundedUp(found, units), "at least", units)}.`,
        because: `There the chance that its factor is below ${factor} is ${chanceText(risk)}; below that it grows fast. ${governing === "fatigue" ? "Fatigue" : "Yielding"} decides.`,
      };
    case "too small already":
      return {
        type: "verdict",
        outcome: "no",
        text: `${name} may not be turned down: it is too small for the factor ${factor} as it is.`,
        because: `${governing === "fatigue" ? "Fatigue" : "Yielding"} decides. Less load, a stronger steel that is proved, or a milder feature.`,
      };
    case "too small already to be sure":
      return {
        type: "verdict",
        outcome: "cannot tell yet",
        text: `Whether ${name} may be turned down cannot be told yet.`,
        because: `It has the factor ${factor} more likely than not, but not with a chance of ${chanceText(1 - risk)}. See where the doubt comes from in its strength.`,
      };
    default:
      return {
        type: "verdict",
        outcome: "yes",
        text: `Strength sets no limit to a cut at ${name}.`,
        because: `The factor stays above ${factor} down to where the published figures end (a quarter of the diameter, or a step too sharp for them). Stiffness, the key and the bearing decide first.`,
      };
  }
}
