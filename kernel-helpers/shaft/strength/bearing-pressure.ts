import type { Babbitt } from "../../handbook/index.js";
import {
  type Force,
  isQuantity,
  type Length,
  type Measured,
  measured,
  type Pressure,
  psi,
  quantityFromSi,
  systemOf,
} from "../../quantity/index.js";
import type { Uncertain } from "../../statistics/index.js";
import { carriedThrough } from "./carried-through.js";
import { givenValue } from "./given-values.js";
import type { LengthGiven, SafetyFactor, SafetyVerdict } from "./safety-types.js";
import { factorOf } from "./shaft-safety.js";

/** For what a poured bearing serves: how hard such a one is loaded in long service. */
export type BearingService = "light line shafting" | "heavy line shafting" | "pump or motor" | "gear drive";

/** Usual pressure in long service, low and high [psi]. */
const services: Readonly<Record<BearingService, readonly [low: number, high: number]>> = {
  "light line shafting": [15, 35],
  "heavy line shafting": [100, 150],
  "pump or motor": [80, 250],
  "gear drive": [120, 250],
};

/** White metal may be pressed to this share of its yield point when it is warm [-]. */
const metalShare = 1 / 3;

/** The pressure in a poured bearing, held against its service and its metal. */
export interface BearingPressure {
  readonly kind: "bearing pressure";
  readonly diameter: Measured<Length>;
  readonly length: Length;
  readonly force: Measured<Force>;
  /** Force over projected area, diameter × length. */
  readonly pressure: Measured<Pressure>;
  readonly service: BearingService;
  /** Usual in that service. */
  readonly usual: { readonly low: Pressure; readonly high: Pressure };
  readonly metal: string;
  /** A third of the metal's yield point at 212 °F. */
  readonly allowed: Pressure;
  /** Highest of the service's usual pressure and over what is there, with the chance to be above. */
  readonly againstService: SafetyFactor;
  readonly againstMetal: SafetyFactor;
  readonly verdict: SafetyVerdict;
  readonly warnings: readonly string[];
}

/**
 * The mean pressure in a poured bearing after its journal is turned: load over projected area, against what bearings of
 * that service are loaded to and against what the white metal bears warm.
 *
 * p = F/(d l); allowed: the service's usual high end, and a third of the metal's yield point at 212 °F
 *
 * Valid when: the journal bears on its whole length; a bearing that carries on one end only has several times as much
 * there. Whether oil keeps the surfaces apart is another question, see `runningFilm`.
 *
 * @param bearing.diameter  of the journal after the cut, DIAMETER [m]
 * @param bearing.length    that bears, along the shaft [m]
 * @param bearing.force     resultant load on the bearing [N], > 0
 * @param bearing.metal     of `babbitt`
 * @param bearing.service   what it serves
 * @returns pressure [Pa] with uncertainty, limits, verdict at 95 %
 * @throws RangeError  a value is not above 0, no such service, a metal without a warm yield point
 * @throws TypeError   a value is missing or of another kind
 * @example
 * const bearing = { diameter: inch(2.425), length: inch(8), force: lbf(900), metal: babbitt(2), service: "heavy line shafting" };
 * bearingPressure(bearing).pressure.value.in("psi") // 46.39
 * @source usual pressures: Machinery's Handbook, allowable bearing pressures by class of service (from memory); Shigley &
 * Nisbett, 9th edition, table 12-5 (from memory); yield: ASTM B23; a third of it: common practice, no source
 */
export function bearingPressure(bearing: {
  readonly diameter: LengthGiven;
  readonly length: Length;
  readonly force: Force | Measured<Force> | Uncertain<"force">;
  readonly metal: Babbitt;
  readonly service: BearingService | (string & {});
}): BearingPressure {
  const where = "bearingPressure";
  const { length, metal, service } = bearing;
  const diameter = givenValue(where, "diameter", bearing.diameter, "length", "more than 0");
  const force = givenValue(where, "force", bearing.force, "force", "more than 0");
  if (!isQuantity(length, "length") || !(length.si > 0))
    throw new TypeError(`${where}: length must be a length above 0, got ${String(length)}`);
  if (!isService(service))
    throw new RangeError(
      `${where}: service must be one of ${Object.keys(services)
        .map((s) => `"${s}"`)
        .join(", ")}, got ${JSON.stringify(service)}`,
    );
  if (metal?.kind !== "babbitt")
    throw new TypeError(`${where}: metal must be a white metal, e.g. babbitt(2), got ${String(metal)}`);
  if (metal.yieldWarm === undefined)
    throw new RangeError(`${where}: no source gives the yield point of ${metal.name} when it is warm`);
  const inch = systemOf(diameter.measured.value.writtenIn ?? "mm") === "inch";
  const shown = (si: number): Pressure => quantityFromSi("pressure", si, inch ? "psi" : "megapascal");
  const mean = carriedThrough((n) => n.force / (n.diameter * length.si), { force, diameter });
  const [low, high] = services[service].map((value) => shown(psi(value).si));
  const allowed = shown(metal.yieldWarm.si * metalShare);
  const against = (limit: Pressure): SafetyFactor =>
    factorOf(
      carriedThrough((n) => Math.log((limit.si * n.diameter * length.si) / n.force), { force, diameter }),
      1,
    );
  const [againstService, againstMetal] = [against(high!), against(allowed)];
  const both = [againstService, againstMetal];
  return Object.freeze<BearingPressure>({
    kind: "bearing pressure",
    diameter: diameter.measured,
    length,
    force: force.measured,
    pressure: measured(shown(mean.value), shown(mean.standardUncertainty)),
    service,
    usual: Object.freeze({ low: low!, high: high! }),
    metal: metal.name,
    allowed,
    againstService,
    againstMetal,
    verdict: both.some((f) => f.high < 1)
      ? "does not hold"
      : both.every((f) => f.low >= 1)
        ? "holds"
        : "cannot tell yet",
    warnings: Object.freeze(
      length.si > 4 * diameter.si
        ? [
            "The bearing is longer than four diameters: the shaft's bend decides where it bears, not its length.",
          ]
        : [],
    ),
  });
}

function isService(name: string): name is BearingService {
  return Object.hasOwn(services, name);
}
