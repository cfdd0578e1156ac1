import { type StandardTaper, standardTapers } from "../handbook/index.js";
import { formatFixed, formatNumber, inThou, quantityFromSi, type UnitSystem } from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";
import type { TaperFit } from "./profile-types.js";
import type { TaperIdentity, TaperMatch } from "./taper-setting-types.js";

/** Readings may reach so far beyond a standard's own ends, as a share of its diameter. */
const beyondTheEnds = 0.05;
/** More names than this are counted instead of named. */
const mostNamed = 4;
/** Tapers closer than this are one and the same ratio under two names [-]. */
const sameRatio = 1e-12;

/**
 * Which standard tapers a measured one may be.
 *
 * Each standard agrees when |C − C₀| ≤ k·u(C), k for 95 %, two-sided, with the fit's degrees of freedom. Standards
 * lie close together (Morse 1 and 2, 0.599 and 0.600 in per foot), so several often agree; all are listed, nearest
 * first, and none is chosen. Where a standard has a size of its own, sizeFits says whether the diameters read lie
 * within its ends, 5 % given away: a taper may have a standard's slope and another's diameter.
 *
 * The sign of the taper does not count: it says only from which end the stations are counted.
 *
 * Valid when: the taper as made had a standard ratio; a worn or bowed taper may agree with none, or by chance with
 * another.
 *
 * @param fit  a fitted taper [-]
 * @param options.candidates  the standards to compare with; default all of the handbook [-]
 * @returns every candidate with difference [-], difference in standard uncertainties [-] and misfit over the measured
 * length, on diameter; and one sentence
 * @throws RangeError  there is no candidate
 * @example
 * const bytes = new TextEncoder().encode("station [in],diameter [in]\n0,0.7800\n1,0.8302\n2,0.8804\n3,0.9306");
 * const survey = readTable(bytes, { name: "taper-survey", file: "taper-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(1) });
 * identifyTaper(fitTaper(profile)).matches.filter(({ agrees }) => agrees).map(({ name }) => name) // ["Morse 3"]
 * @source coverage factor: JCGM 100:2008 (GUM), G.3; standards: each match names its own
 */
export function identifyTaper(
  fit: TaperFit,
  options: { readonly candidates?: readonly StandardTaper[] } = {},
): TaperIdentity {
  const { candidates = standardTapers } = options;
  if (candidates.length === 0) throw new RangeError("identifyTaper: at least 1 candidate is needed, got 0");
  const { value, standardUncertainty: u, degreesOfFreedom } = fit.taper;
  const limit = coverageFactor(0.95, degreesOfFreedom) * u;
  const unit = fit.profile.unitSystem === "inch" ? "inch" : "mm";
  const matches = candidates
    .map((standard): TaperMatch => {
      const difference = Math.abs(value) - standard.taper;
      return Object.freeze({
        name: standard.name,
        taper: standard.taper,
        difference,
        differenceInU: difference / u,
        misfit: quantityFromSi("length", difference * fit.length.si, unit),
        agrees: Math.abs(difference) <= limit,
        sizeFits: sizeFits(fit, standard),
        source: standard.source,
      });
    })
    .sort((a, b) => Math.abs(a.difference) - Math.abs(b.difference));
  return Object.freeze({
    kind: "taper identity",
    matches: Object.freeze(matches),
    text: sentence(fit, matches),
  });
}

function sizeFits(fit: TaperFit, { smallEnd, largeEnd }: StandardTaper): boolean | undefined {
  if (smallEnd === undefined || largeEnd === undefined) return undefined;
  return (
    fit.smallEnd.diameter.value.si >= smallEnd.si * (1 - beyondTheEnds) &&
    fit.largeEnd.diameter.value.si <= largeEnd.si * (1 + beyondTheEnds)
  );
}

function sentence(fit: TaperFit, matches: readonly TaperMatch[]): string {
  const system = fit.profile.unitSystem;
  const agreeing = matches.filter(({ agrees }) => agrees);
  if (agreeing.length === 0) {
    const nearest = matches[0]!;
    return `The readings allow none of the ${matches.length} standard tapers compared; the nearest is ${nearest.name}, off by ${misfitText(nearest, fit, system)}.`;
  }
  const likely = agreeing.filter((match) => match.sizeFits !== false);
  const wrongSize = agreeing.filter((match) => match.sizeFits === false);
  const oneSlope = likely.every(({ taper }) => Math.abs(taper - likely[0]!.taper) < sameRatio);
  const parts: string[] = [];
  if (likely.length > 0) {
    const misfit = misfitText(likely[0]!, fit, system);
    parts.push(
      oneSlope
        ? `The readings allow ${names(likely)}, off by ${misfit}.`
        : `The readings allow ${names(likely)}; the nearest is off by ${misfit}.`,
    );
  }
  if (wrongSize.length > 0)
    parts.push(
      `${likely.length > 0 ? "" : "The readings allow no standard taper of their size. "}The slope of ${names(wrongSize)} fits too, but not ${wrongSize.length === 1 ? "its" : "their"} diameters.`,
    );
  if (!oneSlope) parts.push("The readings cannot tell these apart.");
  return parts.join(" ");
}

/** "Morse 3", "Morse 1 or Morse 2", "1 in per foot (the same as 1:12)". */
function names(matches: readonly TaperMatch[]): string {
  const groups: TaperMatch[][] = [];
  for (const match of matches) {
    const same = groups.find(([first]) => Math.abs(first!.taper - match.taper) < sameRatio);
    if (same === undefined) groups.push([match]);
    else same.push(match);
  }
  const named = groups
    .slice(0, mostNamed)
    .map(([first, ...same]) =>
      same.length === 0
        ? first!.name
        : `${first!.name} (the same slope as ${same.map(({ name }) => name).join(" and ")})`,
    );
  const more = groups.length - named.length;
  if (more > 0) named.push(`${more} more`);
  return named.length === 1
    ? named[0]!
    : `${named.slice(0, -1).join(", ")} ${more > 0 ? "and" : "or"} ${named[named.length - 1]}`;
}

function misfitText({ misfit }: TaperMatch, fit: TaperFit, system: UnitSystem): string {
  const [length, symbol] = system === "inch" ? [fit.length.in("inch"), "in"] : [fit.length.in("mm"), "mm"];
  const size =
    system === "inch"
      ? inThou(misfit.absolute(), 2)
      : `${formatFixed(Math.abs(misfit.in("micrometre")), 1)} µm`;
  return `${size} on diameter over the ${formatNumber(length, 4)} ${symbol} measured`;
}
