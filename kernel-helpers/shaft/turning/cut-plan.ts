import { cuttingSpeed, isoZone, leastChip, material } from "../../handbook/index.js";
import {
  isQuantity,
  type Length,
  measured,
  quantityFromSi,
  type RotationalSpeed,
  systemOf,
  type Time,
} from "../../quantity/index.js";
import { coverageFactor } from "../../statistics/index.js";
import type { CutPlan, CutPlanInput, TurningPass } from "./cut-plan-types.js";
import { cuttingForce } from "./cutting-force.js";
import { divideStock } from "./divide-stock.js";
import { latheSetting } from "./lathe-setting.js";
import { speedNotAbove, spindleSpeed } from "./spindle-speed.js";
import { turnedRoughness } from "./turned-roughness.js";
import { growthBySpringing, longestFreeLength, type WorkBetweenCentres } from "./work-deflection.js";

/** Thickness of a chip that the law of the cutting force holds down to [mm]. */
const thinnest = 0.02;
/** Share of the tolerance that springing may take. Common practice, no source. */
const mayTake = 1 / 3;

/**
 * The cuts that bring a worn journal to size between centres, what to dial in for each, what to measure after it, and
 * where the work springs too far for it.
 *
 * Metal on one side = (reach of the highest place − aim − what is left on)/2. Roughing cuts share what the last two
 * leave; the measuring and the finishing cut are equally deep, so that what the first springs the second will too, and
 * the dial is put right between them by (measured − wanted), halved where it counts the radius. A diameter is accepted
 * where its uncertainty U (95 %) lies within the limits. Speed: the lathe's fastest that is not above the handbook's
 * high end, while cuts are interrupted not above its low end.
 *
 * Valid when: plain shaft between centres, tool at centre height. Springing as `growthBySpringing`, force as
 * `cuttingForce`.
 *
 * @param input.stock  as `turningStock` gives it for the same stretch
 * @param input.journal  as `finishedJournals` holds it; its diameter is the nominal of the tolerance
 * @param input.tolerance  a shaft's zone of ISO 286, or deviations ON DIAMETER [m]
 * @param input.leave  ≥ 0, ON DIAMETER [m]
 * @param input.measuring  > 0, standard uncertainty [m]
 * @param input.material  name in the handbook
 * @param input.lathe  depths ON RADIUS [m], dial in what it counts, feed and nose radius [m], speeds [rad/s]
 * @param input.betweenCentres, input.zeroFromCentre  [m]
 * @returns the plan; diameters ON DIAMETER [m], depths ON RADIUS [m]
 * @throws RangeError  nothing is there to be cut, the size is above what cleans up, the tolerance is upside down or
 * finer than can be measured, the journal is not between the centres, the lathe has no speed slow enough, or a length,
 * the metal or the tool is none; the message says what was found
 * @source common practice of the trade, no source; decision rule: ISO 14253-1 (guard band U); the parts name theirs
 */
export function cutPlan(input: CutPlanInput): CutPlan {
  check(input);
  const { stock, journal, leave, lathe, betweenCentres, zeroFromCentre } = input;
  const inchShop = stock.unitSystem === "inch";
  const size = (si: number): Length => quantityFromSi("length", si, inchShop ? "inch" : "mm");
  const small = (si: number): Length => quantityFromSi("length", si, inchShop ? "thou" : "micrometre");

  const limits = limitsOf(input);
  const guard = coverageFactor(0.95, Number.POSITIVE_INFINITY) * input.measuring.si;
  const accept = { smallest: limits.smallest.si + guard, largest: limits.largest.si - guard };
  if (!(accept.smallest < accept.largest))
    throw new RangeError(
      `cutPlan: the tolerance, ${limits.smallest} to ${limits.largest}, is finer than can be measured with a standard uncertainty of ${input.measuring}: a better micrometer, or a wider tolerance`,
    );
  const aim = (accept.smallest + accept.largest) / 2;
  const { reach, unbroken } = stock;
  if (!(reach.value.si > aim + leave.si))
    throw new RangeError(
      `cutPlan: "${journal.name}" reaches only ${reach.value} and cannot be turned to ${size(aim + leave.si)}: nothing is there to be cut; build it up, or choose a smaller size`,
    );
  const black = unbroken.value.si - 2 * unbroken.standardUncertainty.si;
  if (limits.smallest.si > unbroken.value.si + 2 * unbroken.standardUncertainty.si)
    throw new RangeError(
      `cutPlan: "${journal.name}" does not clean up at ${journal.diameter.value}: its lowest place, at ${stock.unbrokenAt}, leaves only ${unbroken.value}; turn to less, or build it up`,
    );

  const depths = divideStock({
    total: (reach.value.si - aim - leave.si) / 2,
    deepest: lathe.deepestCut.si,
    finishing: lathe.finishingCut.si,
    least: leastChip(lathe.tool).si,
  });
  const surface = cuttingSpeed(input.material, lathe.tool);
  const fastest = speedNotAbove(lathe.speeds, spindleSpeed(surface.high, reach.value));
  if (fastest === undefined)
    throw new RangeError(
      `cutPlan: every speed of the lathe is above ${spindleSpeed(surface.high, reach.value)}, the most for ${lathe.tool} in ${input.material} at ${reach.value}; got ${lathe.speeds.join(", ")}`,
    );
  const careful = speedNotAbove(lathe.speeds, spindleSpeed(surface.low, reach.value)) ?? fastest;

  const onDial = lathe.dialCounts === "diameter" ? 1 : 1 / 2;
  let left = reach.value.si;
  const passes = depths.map(({ name, depth }, i): TurningPass => {
    const before = left;
    left -= 2 * depth;
    const dial = (reach.value.si - left) * onDial;
    const divisions = Math.round(dial / lathe.dialDivision.si);
    const dialled = divisions * lathe.dialDivision.si;
    const interrupted = before > unbroken.value.si && i < depths.length && left > black;
    const speed = interrupted || i === 0 ? careful : fastest;
    // By the dial alone: where the tool touched, and half a division, rectangular.
    const u = Math.hypot(reach.standardUncertainty.si, lathe.dialDivision.si / onDial / Math.sqrt(12));
    return Object.freeze<TurningPass>({
      number: i + 1,
      name,
      depth: small(depth),
      diameter: measured(size(left), size(u)),
      dial: quantityFromSi("length", dialled, lathe.dialDivision.writtenIn as "inch"),
      offDivision: small((dial - dialled) / onDial),
      interrupted,
      speed,
      time: timeOf(journal.length, lathe.feed, speed),
    });
  });

  const force = cuttingForce(input.material, {
    depth: depths.at(-1) === undefined ? lathe.finishingCut : size(depths.at(-1)!.depth),
    feed: lathe.feed,
    noseRadius: lathe.noseRadius,
  });
  const { modulus } = material(input.material);
  const tolerance = limits.largest.si - limits.smallest.si;
  const springing = springingOf(
    [force.radial.low, force.radial.middle, force.radial.high].map(
      (radial): WorkBetweenCentres => ({
        diameter: size(aim),
        betweenCentres,
        modulus: modulus.low as never,
        force: radial,
      }),
    ),
    [journal.from, journal.from.plus(journal.to).times(1 / 2), journal.to].map((station) =>
      station.plus(zeroFromCentre),
    ),
    tolerance,
    small,
  );
  const seconds = passes.reduce((sum, { time }) => sum + time.si, 0);
  const { writtenIn } = journal.diameter.value;
  const inch = writtenIn !== undefined && systemOf(writtenIn) === "inch";
  return Object.freeze<CutPlan>({
    kind: "cut plan",
    name: journal.name,
    unitSystem: stock.unitSystem,
    journal,
    stock,
    lathe,
    material: input.material,
    limits,
    accept: Object.freeze({ smallest: size(accept.smallest), largest: size(accept.largest) }),
    aim: size(aim),
    leave,
    passes: Object.freeze(passes),
    cuttingSpeed: surface,
    roughness: turnedRoughness(lathe.feed, lathe.noseRadius),
    radialForce: force.radial,
    springing,
    time: quantityFromSi("time", seconds, "minute"),
    warnings: Object.freeze([
      ...stock.warnings,
      ...(limits.smallest.si > black
        ? [
            `At ${journal.diameter.value} black spots may stay at ${stock.unbrokenAt}: the lowest place leaves ${unbroken.value}, and that is not known well enough to be sure.`,
          ]
        : []),
      ...(careful === fastest && careful.si > spindleSpeed(surface.low, reach.value).si * (1 + 1e-9)
        ? [
            `The lathe has no speed as slow as ${spindleSpeed(surface.low, reach.value)}, the low end for an interrupted cut: take less depth while the tool jumps.`,
          ]
        : []),
      ...(force.thickness.in("mm") < thinnest
        ? [
            `The chip of the finishing cut is thinner than the law of its force was measured for, ${inch ? "0.8 thou" : `${thinnest} mm`}: the tool partly rubs, and the force may be above the range shown. A stoned edge and a smaller nose radius help.`,
          ]
        : []),
      ...(depths.length === 1
        ? [
            "So little is to come off that one cut takes it all: there is no measuring cut to put the dial right by. Measure twice before it.",
          ]
        : []),
    ]),
  });
}

function limitsOf({ tolerance, journal }: CutPlanInput): CutPlan["limits"] {
  const nominal = journal.diameter.value;
  if (typeof tolerance === "string") {
    const zone = isoZone(nominal, tolerance);
    if (zone.of === "hole")
      throw new RangeError(`cutPlan: tolerance must be a shaft's, a small letter, got "${tolerance}"`);
    return Object.freeze({ smallest: zone.smallest, largest: zone.largest, tolerance: zone.name });
  }
  const { upper, lower } = tolerance;
  if (!(upper.si > lower.si))
    throw new RangeError(`cutPlan: tolerance must have its upper above its lower, got ${upper} and ${lower}`);
  return Object.freeze({
    smallest: nominal.plus(lower),
    largest: nominal.plus(upper),
    tolerance: `${upper} / ${lower}`,
  });
}

function springingOf(
  works: readonly WorkBetweenCentres[],
  places: readonly Length[],
  tolerance: number,
  small: (si: number) => Length,
): CutPlan["springing"] {
  const grown = works.map((work) => places.map((at) => growthBySpringing(work, at).si));
  const spread = grown.map((at) => Math.max(...at) - Math.min(...at));
  const allowed = tolerance * mayTake;
  const [atFrom, atMiddle, atTo] = grown[1]!.map(small) as [Length, Length, Length];
  return Object.freeze({
    atFrom,
    atMiddle,
    atTo,
    error: Object.freeze({ low: small(spread[0]!), middle: small(spread[1]!), high: small(spread[2]!) }),
    allowed: small(allowed),
    slenderness: works[0]!.betweenCentres.over(works[0]!.diameter),
    steadyNeeded: spread[2]! > allowed || Math.max(...grown[2]!) > tolerance,
    freeLength: longestFreeLength(works[2]!, small(allowed)),
  });
}

function timeOf(length: Length, feed: Length, speed: RotationalSpeed): Time {
  return quantityFromSi("time", ((length.si / feed.si) * 2 * Math.PI) / speed.si, "minute");
}

function check({
  stock,
  journal,
  leave,
  measuring,
  lathe,
  betweenCentres,
  zeroFromCentre,
}: CutPlanInput): void {
  const positive: readonly (readonly [string, Length])[] = [
    ["measuring", measuring],
    ["betweenCentres", betweenCentres],
  ];
  for (const [name, value] of positive)
    if (!isQuantity(value, "length") || !(value.si > 0))
      throw new RangeError(`cutPlan: ${name} must be a length above 0, got ${String(value)}`);
  if (!(leave.si >= 0)) throw new RangeError(`cutPlan: leave must be 0 or more, got ${leave}`);
  latheSetting(lathe);
  const last = journal.to.plus(zeroFromCentre);
  if (!(journal.from.plus(zeroFromCentre).si >= 0 && last.si <= betweenCentres.si))
    throw new RangeError(
      `cutPlan: "${journal.name}" must lie between the centres, ${betweenCentres} apart; got ${journal.from} to ${journal.to}, ${zeroFromCentre} further from the centre`,
    );
  if (stock.to.si <= journal.from.si || stock.from.si >= journal.to.si)
    throw new RangeError(
      `cutPlan: the stock, ${stock.from} to ${stock.to}, is not of "${journal.name}", ${journal.from} to ${journal.to}`,
    );
}
