import type { Material } from "../handbook/index.js";
import {
  type AnyQuantity,
  deltaC,
  deltaF,
  type Force,
  formatNumber,
  kilonewton,
  type Length,
  lbf,
  lbfFoot,
  megapascal,
  micrometre,
  newtonMetre,
  psi,
  quantityFromSi,
  systemOf,
  thou,
} from "../quantity/index.js";
import { requireQuantity, requireSmaller } from "./fit-check.js";
import { drawCases, type FitInput, type InputShape, shapeOf } from "./fit-input.js";
import { compliance, forcesPerPressure, wallRatio } from "./fit-numbers.js";
import { requireInterference } from "./fit-pressure.js";
import type { HubFit, HubFitInput, HubFitOptions, HubOnShaft, Narrowing } from "./hub-fit-types.js";
import { chanceNotAbove, spreadOf } from "./spread.js";

type Shapes = Readonly<Record<HubFitInput, InputShape>>;

/** A column of drawn values for each input, SI. */
type Drawn = Readonly<Record<HubFitInput, readonly number[]>>;

/** The columns that one run of cases gives, SI. */
interface Columns {
  readonly interference: number[];
  readonly friction: number[];
  readonly pressure: number[];
  readonly stress: number[];
  readonly on: number[];
  readonly off: number[];
  readonly torque: number[];
}

/**
 * A hub on its shaft, straight or tapered: pressure, stress in the hub, force to press it on and off, torque, and
 * how warm it must be to come loose, each as the range that what is known of the inputs allows.
 *
 * By cases: each input is drawn from what is known of it (a measured value from its normal or t distribution, a
 * range evenly), and every case is reckoned by `fitPressure` and `taperFitForces`. A range holds 95 % of the cases.
 *
 * Valid when: hub and shaft stay elastic and touch all along. A brittle hub is judged by its largest tension against
 * the tensile strength of its class; another by hoop less radial stress against its yield (Tresca). A keyway leaves
 * the wall above it thinner: the mean tension there is judged too. For grey iron no factor is added for the corner
 * of a keyway, for its graphite is as sharp; a ductile hub yields there locally. Rim, web and a drawn key are left
 * out.
 *
 * @param fit.diameter      seat diameter, half-way along a taper [m]
 * @param fit.length        contact along the axis [m]
 * @param fit.taper         diameter per length [-]
 * @param fit.interference  on DIAMETER [m]
 * @param fit.hub           metal, outside diameter, depth of a keyway [m]
 * @param fit.shaft         metal, bore [m]
 * @param fit.friction      µ [-]
 * @returns ranges with the middle case; forces [N], pressures [Pa], torque [N·m]
 * @throws RangeError  a size is impossible, the interference is below 0 or absurd, a coefficient is out of bounds
 * @example
 * const hub = { material: material("grey iron class 20"), outside: inch(5.5) };
 * const shaft = { material: material("steel") };
 * const seat = { diameter: inch(2.25), length: inch(4.5), taper: 1 / 16, interference: thou(1.5) };
 * hubFit({ ...seat, hub, shaft, friction: 0.15 }).hubStress.verdict // "holds"
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, sections 3-16, 5-9 and 7-8 (grey iron and
 * notches: section 3-13, from memory); cases: JCGM 101:2008, clause 7
 */
export function hubFit(fit: HubOnShaft, options: HubFitOptions = {}): HubFit {
  const where = "hubFit";
  const { cases = 20_000, seed = 1 } = options;
  if (!Number.isInteger(cases) || cases < 1000 || cases > 200_000)
    throw new RangeError(`${where}: cases must be a whole number from 1000 to 200000, got ${cases}`);
  const shapes = shapesOf(where, fit);
  checkSizes(where, fit, shapes);
  const drawn = drawCases(shapes, cases, seed);
  const columns = reckon(fit, drawn, cases);
  const inch = systemOf(fit.diameter.writtenIn ?? "mm") === "inch";
  const shown = inch
    ? { length: thou(0), force: lbf(0), stress: psi(0), torque: lbfFoot(0), warmer: deltaF(0) }
    : {
        length: micrometre(0),
        force: kilonewton(0),
        stress: megapascal(0),
        torque: newtonMetre(0),
        warmer: deltaC(0),
      };
  const { material: metal, outside, keywayDepth } = fit.hub;
  const brittle = metal.brittle;
  const strength = strengthOf(where, metal);
  const judged = spreadOf(columns.stress, shown.stress);
  const chanceHolds = chanceNotAbove(judged, strength.value);
  const pressOff = spreadOf(columns.off, shown.force);
  const expansion = metal.expansion.value;
  const holdsAbove = shapes.taper.middle / 2;
  return Object.freeze<HubFit>({
    kind: "hub fit",
    diameter: fit.diameter,
    length: fit.length,
    taper: shapes.taper.middle,
    hub: Object.freeze({ material: metal.name, outside, keywayDepth, expansion }),
    shaft: Object.freeze({
      material: fit.shaft.material.name,
      bore: fit.shaft.bore,
      expansion: fit.shaft.material.expansion.value,
    }),
    interference: spreadOf(columns.interference, shown.length),
    friction: spreadOf(columns.friction, 0),
    pressure: spreadOf(columns.pressure, shown.stress),
    pressOn: spreadOf(columns.on, shown.force),
    pressOff,
    torque: spreadOf(columns.torque, shown.torque),
    opening: spreadOf(
      columns.interference.map((interference) => interference / (expansion.si * fit.diameter.si)),
      shown.warmer,
    ),
    hubStress: Object.freeze({
      rule: brittle ? "largest tension" : "largest shear",
      stress: judged,
      strength: strength.value,
      strengthIs: strength.is,
      chanceHolds,
      verdict:
        judged.high.si <= strength.value.si
          ? "holds"
          : judged.low.si > strength.value.si
            ? "does not hold"
            : "cannot tell yet",
    }),
    selfHolding: Object.freeze({
      above: holdsAbove,
      chance: columns.friction.filter((mu) => mu > holdsAbove).length / cases,
    }),
    chanceLoose: columns.interference.filter((interference) => interference <= 0).length / cases,
    narrowing: narrowingOf(fit, shapes, drawn, pressOff.high.minus(pressOff.low), inch),
    cases,
    seed,
    warnings: Object.freeze(warningsFor(fit, shapes)),
  });
}

function shapesOf(where: string, { interference, friction, taper, hub, shaft }: HubOnShaft): Shapes {
  return {
    interference: shapeOf(where, "interference", interference),
    friction: shapeOf(where, "friction", friction as FitInput<number>),
    taper: shapeOf(where, "taper", taper ?? 0),
    "hub modulus": shapeOf(where, "hub.material.modulus", rangeOf(hub.material.modulus)),
    "hub Poisson's ratio": shapeOf(where, "hub.material.poisson", rangeOf(hub.material.poisson)),
    "shaft modulus": shapeOf(where, "shaft.material.modulus", rangeOf(shaft.material.modulus)),
  };
}

function rangeOf<V extends AnyQuantity | number>({
  low,
  high,
}: {
  readonly low: V;
  readonly high: V;
}): {
  readonly low: V;
  readonly high: V;
} {
  return { low, high };
}

function checkSizes(where: string, fit: HubOnShaft, shapes: Shapes): void {
  const { diameter, length, hub, shaft } = fit;
  requireQuantity(where, "diameter", diameter, "length", "more than 0");
  requireQuantity(where, "length", length, "length", "more than 0");
  requireQuantity(where, "hub.outside", hub.outside, "length", "more than 0");
  requireSmaller(where, ["diameter", diameter], ["hub.outside", hub.outside]);
  if (shaft.bore !== undefined) {
    requireQuantity(where, "shaft.bore", shaft.bore, "length", "0 or more");
    requireSmaller(where, ["shaft.bore", shaft.bore], ["diameter", diameter]);
  }
  if (hub.keywayDepth !== undefined) {
    requireQuantity(where, "hub.keywayDepth", hub.keywayDepth, "length", "0 or more");
    requireSmaller(
      where,
      ["hub.keywayDepth", hub.keywayDepth],
      ["the wall of the hub", hub.outside.minus(diameter).over(2)],
    );
  }
  const lengthSi = (si: number): Length => quantityFromSi("length", si, diameter.writtenIn);
  requireInterference(where, lengthSi(shapes.interference.middle), diameter);
  if (!("standardUncertainty" in (fit.interference as object)))
    requireInterference(where, lengthSi(shapes.interference.low), diameter);
  requireInterference(where, lengthSi(Math.max(0, shapes.interference.high)), diameter);
  const { friction, taper } = shapes;
  if (!(friction.low >= 0 && friction.high <= 1))
    throw new RangeError(
      `${where}: friction must lie between 0 and 1, got ${friction.low} to ${friction.high}`,
    );
  if (!(taper.middle >= 0 && taper.middle <= 1))
    throw new RangeError(
      `${where}: taper must be diameter per length, from 0 to 1 (3/4 in per foot is 0.0625), got ${taper.middle}`,
    );
  requireSmaller(where, ["taper × length", length.times(taper.middle)], ["diameter", diameter]);
}

/** All cases of one run; a case without interference has no pressure. */
function reckon(fit: HubOnShaft, drawn: Drawn, cases: number): Columns {
  const { diameter, length, hub, shaft } = fit;
  const [d, outside, bore] = [diameter.si, hub.outside.si, shaft.bore?.si ?? 0];
  const wall = wallRatio(outside, d);
  const wallLeft = (outside - d) / 2 - (hub.keywayDepth?.si ?? 0);
  // Tension at the bore and, above a keyway, mean tension of the wall that is left: p d / (2 × wall).
  const tension = hub.keywayDepth === undefined ? wall : Math.max(wall, d / (2 * wallLeft));
  const stressPerPressure = hub.material.brittle ? tension : tension + 1;
  const shaftPoisson = shaft.material.poisson.value;
  const columns: Columns = {
    interference: [],
    friction: [],
    pressure: [],
    stress: [],
    on: [],
    off: [],
    torque: [],
  };
  for (let i = 0; i < cases; i++) {
    const friction = Math.max(0, drawn.friction[i]!);
    const interference = drawn.interference[i]!;
    const gives = compliance({
      diameter: d,
      hubOutside: outside,
      hubModulus: drawn["hub modulus"][i]!,
      hubPoisson: drawn["hub Poisson's ratio"][i]!,
      shaftBore: bore,
      shaftModulus: drawn["shaft modulus"][i]!,
      shaftPoisson,
    });
    const pressure = Math.max(0, interference) / (d * gives);
    const per = forcesPerPressure({ diameter: d, length: length.si, taper: drawn.taper[i]!, friction });
    columns.interference.push(interference);
    columns.friction.push(friction);
    columns.pressure.push(pressure);
    columns.stress.push(pressure * stressPerPressure);
    columns.on.push(pressure * per.on);
    columns.off.push(pressure * per.off);
    columns.torque.push(pressure * per.torque);
  }
  return columns;
}

function strengthOf(
  where: string,
  metal: Material,
): {
  readonly value: NonNullable<Material["tensile"]>["value"];
  readonly is: "tensile strength" | "yield";
} {
  if (metal.brittle && metal.tensile !== undefined)
    return { value: metal.tensile.low, is: "tensile strength" };
  if (metal.yield !== undefined) return { value: metal.yield.low, is: "yield" };
  throw new RangeError(`${where}: hub.material must have a strength in the handbook, got ${metal.name}`);
}

/** How narrow the press-off range would be if one input were known; those that gain least come last. */
function narrowingOf(
  fit: HubOnShaft,
  shapes: Shapes,
  drawn: Drawn,
  width: Force,
  inch: boolean,
): readonly Narrowing[] {
  // The first of the cases already drawn: each input has random numbers of its own, so one held still moves no other.
  const fewer = Math.min(drawn.interference.length, 4000);
  const inputs = (Object.keys(shapes) as HubFitInput[]).filter((name) => !shapes[name].exact);
  const widthOf = (of: Drawn): number => {
    const { low, high } = spreadOf(reckon(fit, of, fewer).off, 0);
    return high - low;
  };
  const now = widthOf(drawn);
  const rows = inputs.map((input): Narrowing => {
    const { middle } = shapes[input];
    const still = new Array<number>(fewer).fill(middle);
    const left = now === 0 ? 1 : widthOf({ ...drawn, [input]: still }) / now;
    return Object.freeze({
      input,
      known: knownText(input, shapes[input], inch),
      width: width.times(left),
      gain: Math.max(0, 1 - left),
    });
  });
  return Object.freeze(rows.sort((a, b) => b.gain - a.gain));
}

function knownText(input: HubFitInput, { low, high }: InputShape, inch: boolean): string {
  const scales: Readonly<Record<HubFitInput, readonly [number, string]>> = {
    interference: inch ? [2.54e-5, " thou on diameter"] : [1e-6, " µm on diameter"],
    friction: [1, ""],
    taper: [1, ""],
    "hub modulus": inch ? [6894757293.168, " million psi"] : [1e9, " GPa"],
    "hub Poisson's ratio": [1, ""],
    "shaft modulus": inch ? [6894757293.168, " million psi"] : [1e9, " GPa"],
  };
  const [size, unit] = scales[input];
  const digits = input === "taper" ? 5 : 3;
  return `${formatNumber(low / size, digits)} to ${formatNumber(high / size, digits)}${unit}`;
}

function warningsFor({ hub, diameter, length }: HubOnShaft, shapes: Shapes): string[] {
  const warnings: string[] = [];
  if (hub.material.brittle && hub.keywayDepth === undefined)
    warnings.push(
      "No keyway in the hub is reckoned with. If there is one, say how deep: the wall above it is what breaks.",
    );
  if (hub.outside.si < 1.5 * diameter.si)
    warnings.push(
      `The hub's wall is thin, ${formatNumber(hub.outside.si / diameter.si, 3)} times the bore: spokes and web then carry a good part of the pressure, which this leaves out.`,
    );
  if (length.si > 3 * diameter.si)
    warnings.push("The hub is long against its bore: it rarely bears all along, and less force may do.");
  if (shapes.interference.low < 0)
    warnings.push("Part of what the readings allow is a clearance: the hub may be held by rust alone.");
  return warnings;
}
