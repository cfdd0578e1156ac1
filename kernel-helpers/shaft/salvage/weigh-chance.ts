import { type AnyQuantity, type KindName, measured, quantityFromSi } from "../../quantity/index.js";
import { type Drawn, marginOf } from "./weigh-draws.js";
import type { LimitKept, OptionWeighed, PlainNumbers, WeighedLimit, WeighedVerdict } from "./weigh-types.js";

/** A share of draws, with what so many draws leave open. */
export interface DrawnChance {
  readonly chance: number;
  readonly chanceUncertainty: number;
}

/**
 * The share of draws that keep a limit, with its standard uncertainty.
 *
 * P = k/n, u = √(p(1 − p)/(n + 4)) with p = (k + 2)/(n + 4), so that all of n draws are not taken for certainty.
 *
 * Valid when: draws are independent. It says nothing of what the draws were made from.
 *
 * @param kept   draws in which it holds, 0 to draws [-]
 * @param draws  more than 0 [-]
 * @returns share and standard uncertainty [-]
 * @example drawnChance(9510, 10_000).chanceUncertainty.toFixed(4) // "0.0022"
 * @source A. Agresti & B. A. Coull, Approximate is better than "exact" for interval estimation of binomial proportions,
 * The American Statistician 52 (1998) 119-126 (from memory)
 */
export function drawnChance(kept: number, draws: number): DrawnChance {
  const p = (kept + 2) / (draws + 4);
  return { chance: kept / draws, chanceUncertainty: Math.sqrt((p * (1 - p)) / (draws + 4)) };
}

/** A chance against the one wanted: told apart from it, or not, by two of its standard uncertainties. */
export function chanceVerdict({ chance, chanceUncertainty }: DrawnChance, wanted: number): WeighedVerdict {
  if (chance - 2 * chanceUncertainty >= wanted) return "holds";
  return chance + 2 * chanceUncertainty < wanted ? "does not hold" : "cannot tell yet";
}

/** The limits that every option has and none keeps with the chance wanted: no choice among them mends these. */
export function beyondChoice(
  limits: readonly WeighedLimit[],
  { margins, draws }: Drawn,
  wanted: number,
): readonly string[] {
  if (margins.length < 2) return [];
  return limits
    .filter((_, l) =>
      margins.every((rows) => {
        const drawn = rows[l];
        return drawn !== undefined && chanceVerdict(shareKept([drawn], draws), wanted) === "does not hold";
      }),
    )
    .map(({ name }) => name);
}

/** One option against its limits, those beyond the choice told but not counted together with the others. */
export function weighedOption(
  limits: readonly WeighedLimit[],
  estimates: PlainNumbers,
  { margins, draws }: Drawn,
  option: { readonly name: string; readonly at: number },
  { wanted, beyond }: { readonly wanted: number; readonly beyond: readonly string[] },
): OptionWeighed {
  const rows = margins[option.at]!;
  const kept = limits.flatMap((limit, l): LimitKept[] => {
    const drawn = rows[l];
    if (drawn === undefined) return [];
    const { mean, deviation } = spreadOf(drawn);
    const shown = (si: number): AnyQuantity | number =>
      limit.kind === "number"
        ? si
        : (quantityFromSi(limit.kind as KindName, si, limit.unit as never) as AnyQuantity);
    return [
      Object.freeze({
        name: limit.name,
        margin: measured(shown(marginOf(limit, estimates, option.name)!), shown(deviation)),
        ...shareKept([drawn], draws),
        inDeviations:
          deviation === 0
            ? mean >= 0
              ? Number.POSITIVE_INFINITY
              : Number.NEGATIVE_INFINITY
            : mean / deviation,
      }),
    ];
  });
  const counted = kept.filter(({ name }) => !beyond.includes(name));
  const weakest = counted.reduce<LimitKept | undefined>(
    (worst, next) =>
      worst === undefined ||
      next.chance < worst.chance ||
      (next.chance === worst.chance && next.inDeviations < worst.inDeviations)
        ? next
        : worst,
    undefined,
  );
  const all = rows.filter((drawn, l) => drawn !== undefined && !beyond.includes(limits[l]!.name));
  const together = shareKept(all as readonly Float64Array[], draws);
  return Object.freeze({
    name: option.name,
    ...together,
    verdict: chanceVerdict(together, wanted),
    limits: Object.freeze(kept),
    weakest: weakest?.name,
  });
}

/** The share of draws in which all margins are 0 or above; of no margin at all, 1 for sure. */
function shareKept(margins: readonly Float64Array[], draws: number): DrawnChance {
  if (margins.length === 0) return { chance: 1, chanceUncertainty: 0 };
  let kept = 0;
  for (let row = 0; row < draws; row++) if (margins.every((margin) => margin[row]! >= 0)) kept++;
  return drawnChance(kept, draws);
}

/** Mean and standard deviation (n − 1). */
export function spreadOf(values: Float64Array): { readonly mean: number; readonly deviation: number } {
  let mean = 0;
  let squares = 0;
  values.forEach((value, i) => {
    const off = value - mean;
    mean += off / (i + 1);
    squares += off * (value - mean);
  });
  return { mean, deviation: Math.sqrt(squares / (values.length - 1)) };
}
