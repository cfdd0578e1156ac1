import { formatNumber, type TemperatureDifference } from "../quantity/index.js";
import type { HubFit } from "./hub-fit-types.js";
import type { Release, ReleaseOption } from "./release-types.js";
import type { PressRig } from "./rig-types.js";
import { rounded, roundedDown } from "./rounded.js";

/** Chances beyond which the answer is taken as told [-]. */
const sure = 0.975;

/**
 * Whether a hub comes off with this rig cold, and how warm it must be where it does not.
 *
 * pressure, and so the force, falls with the interference that is left: F' = F·δ'/δ, δ' = δ − α d ΔT, so that the rig
 * does it at ΔT = (1 − rating/F)·δ/(α d)
 *
 * Valid when: the hub is warmer than the shaft by ΔT all through while it is pressed (see `heatingPlan` for how long
 * it is), and friction is the same warm as cold; soaking oil draws in better warm.
 *
 * @param fit  from `hubFit`
 * @param rig  from `pressRig`, for the press-off force of this fit
 * @returns chance cold [-], temperatures of the hub over the shaft [K], options for a decision
 * @throws RangeError  the rig was judged for another force than this fit's
 * @example
 * const steel = material("steel A36");
 * const iron = material("grey iron class 20");
 * const seat = { diameter: inch(2.25), length: inch(4.5), taper: 1 / 16, interference: thou(1.5), friction: 0.12 };
 * const fit = hubFit({ ...seat, hub: { material: iron, outside: inch(5.5) }, shaft: { material: steel } });
 * const rig = pressRig(
 *   {
 *     jack: { capacity: shortTonForce(30), stroke: inch(6) },
 *     rods: { thread: "1-8 UNC", proof: ksi(85), span: inch(10), length: inch(20) },
 *     beam: { section: { width: inch(2), height: inch(4) }, material: steel },
 *     plate: { width: inch(7), thickness: inch(2), slot: inch(2.5), material: steel },
 *     hub: { face: inch(5.5), length: inch(4.5), material: iron },
 *     shaft: { end: inch(1.5), material: steel },
 *     release: inch(0.25),
 *   },
 *   fit.pressOff,
 * );
 * releaseOf(fit, rig).cold // "yes"
 * @source the fit's own: see `hubFit`; linear in the interference (Lamé)
 */
export function releaseOf(fit: HubFit, rig: PressRig): Release {
  if (rig.needed.high.si !== fit.pressOff.high.si)
    throw new RangeError(
      `releaseOf: the rig must be judged for this hub's force, up to ${fit.pressOff.high}, got one judged for ${rig.needed.high}`,
    );
  const { pressOff, opening, interference } = fit;
  const { rating, chance } = rig;
  const cold = chance >= sure ? "yes" : chance <= 1 - sure ? "no" : "cannot tell yet";
  const spare = (force: number): number => Math.max(0, 1 - rating.si / Math.max(force, 1e-9));
  const warmerBy = (end: "middle" | "high"): TemperatureDifference =>
    opening[end].times(spare(pressOff[end].si));
  const interferenceLeft = interference.high.times(1 - spare(pressOff.high.si));
  const warmer = Object.freeze({ middle: warmerBy("middle"), high: warmerBy("high") });
  return Object.freeze<Release>({
    kind: "release",
    pressOff,
    rating,
    weakest: rig.weakest,
    chanceCold: chance,
    cold,
    warmer,
    interferenceLeft,
    options: Object.freeze(optionsOf(fit, rig, cold, warmer)),
  });
}

function optionsOf(
  { pressOff, opening, hubStress }: HubFit,
  { rating, weakest, ram }: PressRig,
  cold: Release["cold"],
  warmer: Release["warmer"],
): ReleaseOption[] {
  const stroke =
    ram.verdict === "reaches"
      ? []
      : [`the ram has ${rounded(ram.left, 3)} left and needs ${rounded(ram.needed, 3)}`];
  const hub = hubStress.verdict === "holds" ? [] : ["the hub may already be stressed beyond its strength"];
  const option = (
    name: string,
    figures: ReleaseOption["figures"],
    breaks: readonly string[],
  ): ReleaseOption => Object.freeze({ name, figures: Object.freeze(figures), breaks: Object.freeze(breaks) });
  return [
    option(
      "press cold",
      { "force, high end": rounded(pressOff.high, 2), "rig allows": roundedDown(rating, 2) },
      [
        ...(cold === "yes"
          ? []
          : [
              `${weakest} allows ${shortForce(rating.si, rating.writtenIn === "lbf")}, the hub may need more`,
            ]),
        ...stroke,
        ...hub,
      ],
    ),
    option(
      "press and heat the hub",
      {
        "hub over shaft, middle case": asWarm(warmer.middle),
        "hub over shaft, tightest case": asWarm(warmer.high),
      },
      [...stroke],
    ),
    option("heat alone", { "hub over shaft, tightest case": rounded(opening.high, 3) }, []),
  ];
}

/** How much warmer; in words where no heat is needed, for nobody waits for 0 °C. */
function asWarm(warmer: TemperatureDifference): TemperatureDifference | string {
  return warmer.si === 0 ? "none needed" : rounded(warmer, 3);
}

function shortForce(si: number, inch: boolean): string {
  return inch ? `${formatNumber(si / 4.4482216152605, 2)} lbf` : `${formatNumber(si / 1000, 2)} kN`;
}
