import type { Chill, PourPlan } from "./pour-types.js";

/** One pour planned in several ways: how long each runs. */
export interface PourComparison {
  readonly kind: "pour comparison";
  readonly pours: readonly ComparedPour[];
}

export interface ComparedPour {
  readonly as: string;
  readonly chill: { readonly quick: Chill; readonly slow: Chill };
  /** Time until it stops running over that of the first, at the same contact [-]. */
  readonly timesAsLong: number;
  readonly verdict: PourPlan["verdict"];
}

/**
 * Sets ways to pour one box side by side: until it begins to freeze and stops running, with good and with poor contact, and
 * how many times as long as the first it runs.
 *
 * Contact is known least, yet all times go as 1/contact: of two ways at the same contact it drops out of the ratio.
 *
 * Valid when: as `pourPlan`; the same coat of soot or chalk in all of them.
 *
 * @param pours  each with what it is called; the first is the one planned
 * @returns times [s] and ratios [-]
 * @throws RangeError  fewer than two pours, or of boxes with different names
 * @example
 * const hold = { anchors: { count: 6, mouth: quantity(0.2, "inch2"), depth: inch(0.25) }, shims: thou(60), loss: 0.15 };
 * const feed = { riser: { diameter: inch(1), height: inch(2) }, fillTime: second(2), shop: degF(65), loadAt: degree(0) };
 * const size = { journal: measured(inch(2.4375), thou(0.2)), clearance: thou(4), allowance: thou(15), shellBore: inch(3.25) };
 * const box = { name: "far box", alloy: babbitt(2), shellMass: pound(30), mandrelPreheat: degF(300), length: inch(8), ...size };
 * const [cold, warm] = [250, 300].map((f) => pourPlan({ ...box, ...hold, ...feed, shellPreheat: degF(f) }));
 * comparePours([["planned", cold], ["warmer", warm]]).pours[1].timesAsLong.toFixed(1) // "1.1"
 * @source see `chillTimes`: every time there is a number over the conductance
 */
export function comparePours(pours: readonly (readonly [as: string, pour: PourPlan])[]): PourComparison {
  if (pours.length < 2)
    throw new RangeError(`comparePours: at least two pours are needed, got ${pours.length}`);
  const [, first] = pours[0]!;
  for (const [as, { name }] of pours)
    if (name !== first.name)
      throw new RangeError(`comparePours: all pours must be of "${first.name}", got "${name}" for "${as}"`);
  return Object.freeze({
    kind: "pour comparison",
    pours: Object.freeze(
      pours.map(([as, { chill, verdict }]) =>
        Object.freeze({
          as,
          chill,
          timesAsLong: chill.quick.stopsRunning.si / first.chill.quick.stopsRunning.si,
          verdict,
        }),
      ),
    ),
  });
}
