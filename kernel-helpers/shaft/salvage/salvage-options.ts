import { formatNumber, type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";
import type { SalvageWay } from "./salvage-ways.js";
import { chanceVerdict, type DrawnChance } from "./weigh-chance.js";
import type { JournalTurned } from "./weigh-shaft.js";
import type { OptionsWeighed } from "./weigh-types.js";

/** One way to save the journals: the shape that a decision takes. */
export interface SalvageOption {
  readonly name: string;
  readonly figures: Readonly<Record<string, Length | Measured<Length> | Measured<number> | number | string>>;
  /** The limits it violates, each in words. */
  readonly breaks: readonly string[];
}

/**
 * The ways to save worn journals as options of a decision: what they cost and need beside what the limits say of them.
 *
 * An option breaks a limit where the chance that it holds is not, by two of its standard uncertainties, above the one
 * wanted; a layer thinner than it may be, and
 * what its row leaves open, count as broken too. So does a journal whose steel is left below the smallest diameter somebody
 * has allowed: a size limit is broken openly, or not at all, whatever the strength says.
 *
 * layer, on RADIUS = (made to − (finished − undercut))/2
 *
 * @param ways      of `salvageWays`
 * @param weighed   the same ways weighed
 * @param journals  as weighed
 * @param asMade    what the journals were made to, on DIAMETER [m]
 * @param smallestAllowed  DIAMETER below which no journal's steel may go, where somebody has set one [m]
 * @returns the options in the table's order
 * @throws RangeError  a way was not weighed
 * @source cost, hours, needs, risks: the user's own table
 */
export function salvageOptions(
  ways: readonly SalvageWay[],
  weighed: OptionsWeighed,
  journals: readonly JournalTurned[],
  asMade: Length,
  smallestAllowed?: Length,
): readonly SalvageOption[] {
  return Object.freeze(
    ways.map((way): SalvageOption => {
      const found = weighed.options.find(({ name }) => name === way.name);
      if (found === undefined)
        throw new RangeError(`salvageOptions: "${way.name}" was not weighed; give both the same ways`);
      const carried = journals.map(({ name, finished }) => ({
        name,
        steel: way.undercut === undefined ? asMade : finished.value.minus(way.undercut),
      }));
      const breaks = found.limits
        .map((limit) => ({ ...limit, verdict: chanceVerdict(limit, weighed.wanted) }))
        .filter(({ verdict }) => verdict !== "holds")
        .map(({ name, chance, verdict }) =>
          verdict === "does not hold"
            ? `${name}: holds with ${percent(chance)} only, ${percent(weighed.wanted)} is wanted`
            : `${name}: holds with ${percent(chance)}, which ${weighed.draws} draws do not tell from the ${percent(weighed.wanted)} wanted`,
        );
      const under = carried.filter(({ steel }) => steel.si < (smallestAllowed?.si ?? 0) * (1 - 1e-12));
      if (under.length > 0)
        breaks.push(
          `smallest diameter allowed, ${smallestAllowed}: ${under.map(({ name, steel }) => `${name} is left with ${steel}`).join(", ")}`,
        );
      if (way.undercut !== undefined && way.undercut.si > 0 && way.leastLayer !== undefined)
        for (const { name, steel } of carried) {
          const layer = quantityFromSi("length", asMade.minus(steel).si / 2, asMade.writtenIn as never);
          if (layer.si < way.leastLayer.si)
            breaks.push(`${name}: a layer of ${layer} on radius is thinner than ${way.leastLayer}`);
        }
      if (way.open !== "") breaks.push(`not settled: ${way.open}`);
      return Object.freeze({
        name: way.name,
        figures: Object.freeze({
          ...Object.fromEntries(carried.map(({ name, steel }) => [`steel that carries, ${name}`, steel])),
          "chance that all limits hold that a choice can keep [%]": inPercent(found),
          "nearest to breaking": found.weakest ?? "-",
          hours: `${formatNumber(way.hours.low.in("hour"), 4)} to ${formatNumber(way.hours.high.in("hour"), 4)}`,
          ...(way.cost === undefined
            ? {}
            : { cost: `${formatNumber(way.cost.low, 6)} to ${formatNumber(way.cost.high, 6)}` }),
          needs: way.needs,
          reversible: way.reversible,
        }),
        breaks: Object.freeze(breaks),
      });
    }),
  );
}

/**
 * What the draws tell of a chance, in per cent: where twice its uncertainty would reach past 0 or 100, the middle of what is
 * left, for no chance is more than certain.
 */
function inPercent({ chance, chanceUncertainty }: DrawnChance): Measured<number> {
  const from = Math.max(0, chance - 2 * chanceUncertainty);
  const to = Math.min(1, chance + 2 * chanceUncertainty);
  return from > 0 && to < 1
    ? measured(100 * chance, 100 * chanceUncertainty)
    : measured(50 * (from + to), 25 * (to - from));
}

function percent(chance: number): string {
  return chance > 0.999
    ? "more than 99.9 %"
    : chance < 0.001
      ? "less than 0.1 %"
      : `${(100 * chance).toFixed(1)} %`;
}
