import { leadAt, rateOf, type TwoBodies, warmthAt } from "./heating-bodies.js";

/** One case as SI numbers. */
export interface CaseInput {
  readonly bodies: TwoBodies;
  readonly power: number;
  readonly diameter: number;
  /** On diameter, cold; and what may be left of it. */
  readonly interference: number;
  readonly remaining: number;
  readonly hubExpansion: number;
  readonly shaftExpansion: number;
  /** How much warmer than the room the hub may get [K]. */
  readonly hottest: number;
  /** Tension at the bore of the cold fit [Pa]. */
  readonly coldTension: number;
  /** Tension for one kelvin by which the mean of the hub leads its bore: E α/(1 − ν) [Pa/K]. */
  readonly perLead: number;
}

/** What comes of it, SI. */
export interface CaseOutcome {
  readonly opens: number | undefined;
  readonly closes: number | undefined;
  readonly flameOff: number;
  readonly most: number;
  readonly needed: number;
  readonly leastPower: number;
  readonly tension: number;
  readonly curve: readonly {
    readonly time: number;
    readonly hub: number;
    readonly shaft: number;
    readonly interference: number;
  }[];
}

/** The look goes on for at most so long [s]. */
const longest = 4 * 3600;

/**
 * Follows one case in time: second by second while it moves fast, to four hours at most.
 *
 * interference left: δ' = δ − d(α_h·hub − α_s·shaft); open while δ' ≤ what may remain; tension at the bore: that of the
 * fit in proportion to δ', and E α/(1 − ν) times the lead of the hub's mean over its bore
 *
 * @source tension by uneven heat: S. Timoshenko & J. N. Goodier, Theory of Elasticity, hollow cylinder, at the bore
 * (from memory)
 */
export function followCase(input: CaseInput): CaseOutcome {
  const { bodies, power, diameter, interference, remaining } = input;
  const rate = rateOf(bodies);
  const flameOff = timeToReach(input);
  const left = (time: number): number => {
    const { hub, shaft } = warmthAt(bodies, power, flameOff, time);
    return interference - diameter * (input.hubExpansion * hub - input.shaftExpansion * shaft);
  };
  const end = Math.min(longest, flameOff + 6 / rate + 60);
  const steps = 4000;
  const step = end / steps;
  let opens: number | undefined;
  let closes: number | undefined;
  let [most, tension] = [0, input.coldTension];
  let before = left(0);
  if (before <= remaining) opens = 0;
  for (let k = 1; k <= steps; k++) {
    const time = k * step;
    const now = left(time);
    const crossing = time - step + (step * (before - remaining)) / (before - now);
    if (opens === undefined && now <= remaining) opens = crossing;
    else if (opens !== undefined && closes === undefined && before <= remaining && now > remaining)
      closes = crossing;
    before = now;
    const { hub, shaft } = warmthAt(bodies, power, flameOff, time);
    most = Math.max(most, hub - shaft);
    const onTheWay = leadAt(bodies, power, flameOff, time);
    const lead = onTheWay + bodies.joint * Math.max(0, hub - shaft - onTheWay) * bodies.within;
    tension = Math.max(
      tension,
      (input.coldTension * Math.max(0, now)) / Math.max(interference, Number.MIN_VALUE) +
        input.perLead * lead,
    );
  }
  const needed = Math.max(0, interference - remaining) / (input.hubExpansion * diameter);
  return {
    opens,
    closes: opens === undefined ? undefined : (closes ?? end),
    flameOff,
    most,
    needed,
    leastPower: needed / (1 / (rate * bodies.hub) + bodies.ahead),
    tension,
    curve: Array.from({ length: 81 }, (_, k) => {
      const time = (end * k) / 80;
      return { time, ...warmthAt(bodies, power, flameOff, time), interference: left(time) };
    }),
  };
}

/** When the hub has reached what it may, by halving the time it lies in [s]; the longest look where it never does. */
function timeToReach({ bodies, power, hottest }: CaseInput): number {
  const hub = (time: number): number => warmthAt(bodies, power, Number.POSITIVE_INFINITY, time).hub;
  if (hub(longest) <= hottest) return longest;
  let [early, late] = [0, longest];
  for (let i = 0; i < 60; i++) {
    const middle = (early + late) / 2;
    if (hub(middle) < hottest) early = middle;
    else late = middle;
  }
  return (early + late) / 2;
}
