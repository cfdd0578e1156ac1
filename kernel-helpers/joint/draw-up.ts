import { threadNamed } from "../handbook/index.js";
import {
  formatNumber,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  systemOf,
  type Torque,
} from "../quantity/index.js";
import { drawUpCases, drawUpFor, meanInterference } from "./draw-up-cases.js";
import type { DrawUp, DrawUpInput, DrawUpStop } from "./draw-up-types.js";
import { requireQuantity, requireSmaller } from "./fit-check.js";
import { drawCases, shapeOf } from "./fit-input.js";
import { interferenceByPractice } from "./fit-interference.js";
import { hubFit } from "./hub-fit.js";
import type { HubFitOptions } from "./hub-fit-types.js";
import { chanceNotAbove, spreadOf } from "./spread.js";

/** Chances beyond which something is taken as told [-]. */
const sure = 0.975;

/**
 * A tapered hub drawn up on its shaft, from the two measured tapers: where it first touches, where it bears, how far to
 * draw it up for the interference wanted, what that carries, the nut's torque, and whether it bottoms before it holds.
 *
 * first contact at the large end where the shaft's taper is the steeper, else at the small end; peak interference there
 * t·a after a draw-up a, falling by the gap g = |t_s − t_b|·L to the other end; mean t·a − g/2 once it bears all along.
 * Forces, torque and stress by `hubFit` at the mean; nut T = K F d.
 *
 * Valid when: both tapers are straight and at one temperature, and first contact is found by hand, clean and dry. The
 * bore gives way evenly: where a large gap remains, the peak stress at the end that bears first is higher than said.
 *
 * @param input.shaft, input.bore  surveyed tapers: stations [m], diameters [m]
 * @param input.hub        metal, outside, length, depth of a keyway [m]
 * @param input.friction   [-]
 * @param input.wanted     interference half-way, on DIAMETER [m], default that of practice
 * @param input.gauge      standard uncertainty of the way from first contact, along the axis [m]
 * @param input.shoulder, input.nutStop  stations of the stops [m]
 * @param input.nut        thread and nut factor [-]
 * @param input.torque     to be carried by friction alone [N·m]
 * @returns stations, draw-up, interference [m], fit, torque [N·m], stops, verdict
 * @throws RangeError  a taper does not grow with the station, the two are of different slopes beyond all use, or a size
 *   is impossible
 * @example
 * const taperOf = (rows) => {
 *   const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 *   const table = readTable(bytes, { name: "taper", file: "taper.csv" });
 *   return fitTaper(profileOf(table, { readingUncertainty: thou(0.1), stationUncertainty: thou(1) }));
 * };
 * const shaft = taperOf(["0,2.0000", "2,2.1250", "4,2.2500", "6,2.3750"]);
 * const bore = taperOf(["0,2.0625", "2,2.1875", "4,2.3125"]);
 * const hub = { material: material("grey iron class 20"), outside: inch(5.5), length: inch(4) };
 * const up = drawUp({ shaft, bore, hub, shaftMaterial: material("steel"), friction: 0.15, gauge: thou(2) });
 * up.firstContact.middle.in("inch").toFixed(2) // "1.00"
 * @source geometry of the cone; see `hubFit` and `nutTorque`; interference wanted: common practice, no source
 */
export function drawUp(input: DrawUpInput, options: HubFitOptions = {}): DrawUp {
  const { shaft, bore, hub, gauge } = input;
  check(input);
  const { cases = 20_000, seed = 1 } = options;
  const inch = systemOf(hub.length.writtenIn ?? "mm") === "inch";
  const long: Length = quantityFromSi("length", 0, inch ? "inch" : "mm");
  const small: Length = quantityFromSi("length", 0, inch ? "thou" : "micrometre");
  const drawn = drawUpCases(shaft, bore, hub.length.si, cases, seed);
  const [contact, gap] = [spreadOf(drawn.contact, long), spreadOf(drawn.gap, small)];
  const taper = shaft.taper.value;
  const diameter = quantityFromSi(
    "length",
    diameterOf(shaft, contact.middle.si + hub.length.si / 2),
    hub.length.writtenIn,
  );
  const wanted = input.wanted ?? interferenceByPractice(diameter);
  const way = (interference: number): Length =>
    quantityFromSi("length", drawUpFor(interference, taper, gap.middle.si), long.writtenIn);
  const aim = way((wanted.low.si + wanted.high.si) / 2);
  // What the gauge lets through is drawn apart from the tapers, with a seed of its own.
  const real = drawCases({ way: shapeOf("drawUp", "gauge", measured(aim, gauge)) }, cases, seed + 100).way;
  const interference = summary(
    real.map((a, i) => meanInterference(a, drawn.shaftTaper[i]!, drawn.gap[i]!)),
    small,
  );
  const seat = drawn.contact.map((s, i) => s + real[i]!);
  const fit = hubFit(
    {
      diameter,
      length: hub.length,
      taper: shaft.taper,
      interference,
      hub: { material: hub.material, outside: hub.outside, keywayDepth: hub.keywayDepth },
      shaft: { material: input.shaftMaterial },
      friction: input.friction,
    },
    { cases, seed },
  );
  const stops = stopsOf(input, drawn, seat, wanted.low.si, long);
  const chanceCarries = input.torque && 1 - chanceNotAbove(fit.torque, input.torque);
  const large = drawn.largeFirst.filter(Boolean).length / cases;
  const { verdict, reasons } = judge(fit.hubStress.verdict, stops, chanceCarries);
  const nut = nutOf(input, fit.pressOn);
  return Object.freeze<DrawUp>({
    kind: "draw-up",
    shaftTaper: shaft.taper,
    boreTaper: bore.taper,
    hubLength: hub.length,
    firstContact: contact,
    bearsFirst: large > sure ? "at its large end" : large < 1 - sure ? "at its small end" : "all along",
    gap,
    bearsAllAfter: spreadOf(drawn.bearsAllAfter, long),
    wanted: Object.freeze({ ...wanted }),
    drawUp: Object.freeze({ low: way(wanted.low.si), middle: aim, high: way(wanted.high.si) }),
    seat: spreadOf(seat, long),
    interference,
    fit,
    nutTorque: nut?.torque,
    threadLoad: nut?.load,
    stops: Object.freeze(stops),
    torqueNeeded: input.torque,
    chanceCarries,
    verdict,
    reasons: Object.freeze(reasons),
    warnings: Object.freeze(warningsFor(input, gap.middle.si, wanted.low.si, nut?.load, fit.warnings)),
  });
}

function check({ shaft, bore, hub, gauge, torque, nut }: DrawUpInput): void {
  const where = "drawUp";
  requireQuantity(where, "hub.length", hub.length, "length", "more than 0");
  requireQuantity(where, "hub.outside", hub.outside, "length", "more than 0");
  requireQuantity(where, "gauge", gauge, "length", "0 or more");
  if (torque !== undefined) requireQuantity(where, "torque", torque, "torque or energy", "more than 0");
  if (nut !== undefined && !(nut.factor.low > 0 && nut.factor.low <= nut.factor.high && nut.factor.high < 1))
    throw new RangeError(
      `${where}: nut.factor must run from low to high between 0 and 1, got ${nut.factor.low} to ${nut.factor.high}`,
    );
  for (const [name, fit] of [["shaft", shaft] as const, ["bore", bore] as const])
    if (!(fit.taper.value > 2 * fit.taper.standardUncertainty))
      throw new RangeError(
        `${where}: the ${name}'s diameter must grow with the station, from its small end; got a taper of ${formatNumber(fit.taper.value, 4)}`,
      );
  requireSmaller(where, ["the bore's large end", bore.largeEnd.diameter.value], ["hub.outside", hub.outside]);
  const apart = Math.abs(shaft.taper.value - bore.taper.value);
  if (apart > 0.2 * shaft.taper.value)
    throw new RangeError(
      `${where}: the two tapers must be near each other, got ${formatNumber(shaft.taper.value, 4)} for the shaft and ${formatNumber(bore.taper.value, 4)} for the bore: bore or turn one to the other first`,
    );
}

function diameterOf({ smallEnd, taper }: DrawUpInput["shaft"], station: number): number {
  return smallEnd.diameter.value.si + taper.value * (station - smallEnd.station.si);
}

/** Mean and standard deviation of simulated values. */
function summary(values: readonly number[], pattern: Length): Measured<Length> {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  const length = (si: number): Length => quantityFromSi("length", si, pattern.writtenIn);
  return measured(length(mean), length(Math.sqrt(square)));
}

function stopsOf(
  { shoulder, nutStop, hub }: DrawUpInput,
  drawn: ReturnType<typeof drawUpCases>,
  seat: readonly number[],
  leastWanted: number,
  pattern: Length,
): DrawUpStop[] {
  const stop = (what: DrawUpStop["what"], station: number): DrawUpStop => {
    // Where the small face would have to be for the least interference, case by case.
    const holdsAt = drawn.contact.map(
      (s, i) => s + drawUpFor(leastWanted, drawn.shaftTaper[i]!, drawn.gap[i]!),
    );
    return Object.freeze({
      what,
      left: spreadOf(
        seat.map((s) => station - s),
        pattern,
      ),
      chanceFirst: holdsAt.filter((s) => s > station).length / holdsAt.length,
    });
  };
  return [
    ...(shoulder === undefined ? [] : [stop("shoulder", shoulder.si - hub.length.si)]),
    ...(nutStop === undefined ? [] : [stop("nut's stop", nutStop.si)]),
  ];
}

function nutOf(
  { nut, shaftMaterial }: DrawUpInput,
  pull: DrawUp["fit"]["pressOn"],
): { readonly torque: { readonly low: Torque; readonly high: Torque }; readonly load: number } | undefined {
  if (nut === undefined) return undefined;
  const thread = threadNamed(nut.thread);
  if (shaftMaterial.yield === undefined)
    throw new RangeError(`drawUp: shaftMaterial must be a metal that yields, got ${shaftMaterial.name}`);
  const unit = pull.low.writtenIn === "lbf" ? "lbfFoot" : "newtonMetre";
  const torque = (force: number, factor: number): Torque =>
    quantityFromSi("torque or energy", factor * force * thread.majorDiameter.si, unit);
  return {
    torque: Object.freeze({
      low: torque(pull.low.si, nut.factor.low),
      high: torque(pull.high.si, nut.factor.high),
    }),
    load: pull.high.si / (thread.stressArea.si * shaftMaterial.yield.value.si),
  };
}

function judge(
  hub: DrawUp["fit"]["hubStress"]["verdict"],
  stops: readonly DrawUpStop[],
  carries: number | undefined,
): { readonly verdict: DrawUp["verdict"]; readonly reasons: readonly string[] } {
  const first = stops.reduce((most, stop) => Math.max(most, stop.chanceFirst), 0);
  // Twenty thousand cases tell no finer.
  const percent = (chance: number): string =>
    chance < 0.01 ? "under 1 %" : chance > 0.99 ? "over 99 %" : `${formatNumber(100 * chance, 2)} %`;
  const reasons = [
    ...stops.map(
      ({ what, chanceFirst }) =>
        `It meets the ${what} before it has the least interference wanted in ${percent(chanceFirst)} of the cases.`,
    ),
    ...(hub === "holds" ? [] : ["The hub may not bear the tension."]),
    ...(carries === undefined
      ? []
      : [`Friction alone carries the torque asked for in ${percent(carries)} of the cases.`]),
  ];
  if (first >= sure) return { verdict: "bottoms first", reasons };
  if (hub === "does not hold" || (carries !== undefined && carries <= 1 - sure))
    return { verdict: "does not hold", reasons };
  const told = first <= 1 - sure && hub === "holds" && (carries === undefined || carries >= sure);
  return { verdict: told ? "holds" : "cannot tell yet", reasons };
}

function warningsFor(
  input: DrawUpInput,
  gap: number,
  leastWanted: number,
  threadLoad: number | undefined,
  fit: readonly string[],
): string[] {
  const warnings = [...fit];
  if (gap > leastWanted)
    warnings.push(
      "The tapers differ by more than the interference wanted: the hub bears at one end and rocks. Blue it, and lap or bore one to the other.",
    );
  for (const [name, { residualShape }] of [["shaft", input.shaft] as const, ["bore", input.bore] as const])
    if (residualShape.shape !== "straight" && residualShape.shape !== "cannot tell")
      warnings.push(
        `The taper of the ${name} is ${residualShape.shape === "barrel" ? "a barrel" : residualShape.shape}, not straight: first contact is not quite where its line says.`,
      );
  if (threadLoad !== undefined && threadLoad > 0.75)
    warnings.push(
      `The pull to draw it up loads the thread to ${formatNumber(100 * threadLoad, 2)} % of its yield: press the hub on, and let the nut only hold it.`,
    );
  return warnings;
}
