import {
  type Angle,
  type Force,
  formatNumber,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  systemOf,
  type Torque,
} from "../../quantity/index.js";
import { carry } from "../carried/carry.js";
import { beamMesh } from "./beam-mesh.js";
import type { BendingStation, ShaftBending, ShownLoad } from "./bending-types.js";
import { readModel } from "./read-model.js";
import type { ShaftModel } from "./shaft-model.js";
import { gravity, solveBending } from "./solve-bending.js";

/** No prism is longer than the shaft over this: for the drawing; the numbers are exact at any. */
const finest = 48;

/**
 * Reactions, shear, bending moment, deflection and slope of a stepped shaft on two or more supports, under its weight,
 * wheels and pulls, in two planes.
 *
 * Beam elements with cubic shapes (E I w″″ = q), exact at the nodes for prisms under point loads and even loads; with
 * `shear`, Timoshenko's. Uncertainty: each uncertain input (pulls, masses, torques, diameters, modulus as a range) one
 * standard uncertainty up and down, all results anew, combined as independent. Stations are taken as exact.
 *
 * Valid when: the shaft is slender, and its bearings hold it in their middle and let it lean. A long box holds it
 * straighter than that; with the slope found against its clearance one sees whether. No press fit stiffens it.
 *
 * @param model.stretches  DIAMETERS > 0 and bores from end to end, without gap [m]
 * @param model.sleeves  weigh, and bear nothing [m]
 * @param model.material  of the handbook, or modulus [Pa] and density [kg/m³]
 * @param model.supports  two or more; stiffness > 0, or stiff [N/m]
 * @param model.wheels  masses ≥ 0 [kg]
 * @param model.pulls  forces [N] with direction [rad]
 * @param model.torques  what a stretch carries [N·m]
 * @param model.ownWeight  default true
 * @param model.shear  default false
 * @returns by station, support and load, with standard uncertainties
 * @throws TypeError   something is no quantity of its kind
 * @throws RangeError  a gap between stretches, something off the shaft, fewer than two supports, no load at all
 * @example
 * const stretches = [{ from: inch(0), to: inch(31), diameter: inch(1) }];
 * const steel = { modulus: psi(30e6), density: poundPerCubicInch(0.282) };
 * const supports = [{ name: "left", at: inch(0) }, { name: "right", at: inch(31) }];
 * const pulls = [{ name: "belt", at: inch(15.5), force: lbf(100), direction: degree(270) }];
 * const bent = shaftBending({ stretches, material: steel, supports, pulls, ownWeight: false });
 * bent.largestMoment.moment.value.in("lbfInch").toFixed(0) // "775"
 * @source beam elements: J. S. Przemieniecki, Theory of Matrix Structural Analysis, 1968, section 5.6 (from memory);
 * uncertainty: JCGM 100:2008 (GUM), 5.1.3 note 2
 */
export function shaftBending(model: ShaftModel): ShaftBending {
  const where = "shaftBending";
  const { inputs, plain, unit } = readModel(where, model);
  const shaft = plain(inputs.map(({ si }) => si));
  const loadCase = loadCaseOf(model);
  if (loadCase.length === 0)
    throw new RangeError(
      `${where}: the load case is empty: give pulls, wheels, or let the shaft's own weight count (ownWeight: true)`,
    );
  const mesh = beamMesh(shaft, finest);
  const nodes = mesh.stations.length;
  const solve = (numbers: readonly number[]): Solved => {
    const now = plain(numbers);
    const there = beamMesh(now, finest);
    const [h, v] = [solveBending(now, there, "horizontal"), solveBending(now, there, "vertical")];
    if (h === undefined || v === undefined)
      throw new RangeError(
        `${where}: the supports do not hold the shaft: it must be held at two places apart`,
      );
    return { h, v, torque: there.stations.map((x, i) => torqueAt(now, x, i === 0)) };
  };
  const middle = solve(inputs.map(({ si }) => si));
  const resultant = (a: readonly number[], b: readonly number[]): number[] =>
    a.map((x, i) => Math.hypot(x, b[i]!));
  const found = carry((numbers) => {
    const { h, v, torque } = solve(numbers);
    return [
      ...resultant(h.moment, v.moment),
      ...resultant(h.deflection, v.deflection),
      ...resultant(h.slope, v.slope),
      ...resultant(h.shear, v.shear),
      ...torque,
      ...resultant(h.reactions, v.reactions),
    ];
  }, inputs);
  const imperial = systemOf(unit) === "inch";
  const lengthIn = (si: number): Length => quantityFromSi("length", si, imperial ? "inch" : "mm");
  const smallIn = (si: number): Length => quantityFromSi("length", si, imperial ? "thou" : "micrometre");
  const forceIn = (si: number): Force => quantityFromSi("force", si, imperial ? "lbf" : "newton");
  const torqueIn = (si: number): Torque =>
    quantityFromSi("torque or energy", si, imperial ? "lbfInch" : "newtonMetre");
  const angleIn = (si: number): Angle =>
    quantityFromSi("angle", (si + 2 * Math.PI) % (2 * Math.PI), "degree");
  const of = <Q extends Force | Length | Torque | number>(
    index: number,
    make: (si: number) => Q,
  ): Measured<Q> =>
    measured(make(found.values[index]!), make(found.u[index]!), found.degreesOfFreedom[index]!);
  const number = (x: number): number => x;
  const stations = mesh.stations.map((x, i): BendingStation => {
    const beside = [mesh.elements[i - 1], mesh.elements[i]].filter((e) => e !== undefined);
    const least = beside.reduce((a, b) => (b.stiffness < a.stiffness ? b : a));
    return Object.freeze({
      station: lengthIn(x),
      diameter: lengthIn(least.diameter),
      bore: least.bore > 0 ? lengthIn(least.bore) : undefined,
      moment: of(i, torqueIn),
      deflection: of(nodes + i, smallIn),
      slope: of(2 * nodes + i, number),
      shear: of(3 * nodes + i, forceIn),
      torque: of(4 * nodes + i, torqueIn),
      horizontal: smallIn(middle.h.deflection[i]!),
      vertical: smallIn(middle.v.deflection[i]!),
      horizontalMoment: torqueIn(middle.h.moment[i]!),
      verticalMoment: torqueIn(middle.v.moment[i]!),
    });
  });
  const supports = model.supports.map(({ name, at }, s) => {
    const there = stations[mesh.nodeAt(at.si)]!;
    const angle = Math.atan2(middle.v.reactions[s]!, middle.h.reactions[s]!);
    return Object.freeze({
      name,
      station: at,
      reaction: of(5 * nodes + s, forceIn),
      direction: angleIn(angle),
      loadDirection: angleIn(angle + Math.PI),
      slope: there.slope,
      deflection: there.deflection,
    });
  });
  const shown: readonly ShownLoad[] = [
    ...(model.wheels ?? []).map(({ name, at }, i) => ({
      name,
      station: at,
      force: forceIn(shaft.wheels[i]!.mass * gravity),
      direction: angleIn(1.5 * Math.PI),
    })),
    ...(model.pulls ?? []).map(({ name, at, direction }, i) => ({
      name,
      station: at,
      force: forceIn(Math.hypot(shaft.pulls[i]!.horizontal, shaft.pulls[i]!.vertical)),
      direction,
    })),
  ];
  const largest = (by: (s: BendingStation) => number): number =>
    stations.reduce((best, s, i) => (by(s) > by(stations[best]!) ? i : best), 0);
  const worst = largest(({ moment }) => moment.value.si);
  const total = found.u[worst]! ** 2;
  return Object.freeze({
    kind: "shaft bending",
    loadCase: Object.freeze(loadCase),
    stations: Object.freeze(stations),
    supports: Object.freeze(supports),
    loads: Object.freeze(
      shown.map((load) => {
        const { deflection, slope } = stations[mesh.nodeAt(load.station.si)]!;
        return Object.freeze({ ...load, deflection, slope });
      }),
    ),
    largestMoment: stations[worst]!,
    largestDeflection: stations[largest(({ deflection }) => deflection.value.si)]!,
    shares: Object.freeze(
      found.shares
        .map(({ name, squares }) => ({ source: name, share: total > 0 ? squares[worst]! / total : 0 }))
        .filter(({ share }) => share > 0.001)
        .sort((a, b) => b.share - a.share),
    ),
    outline: Object.freeze([
      ...shaft.stretches.map(({ from, to, d }) => ({
        from: lengthIn(from),
        to: lengthIn(to),
        diameter: lengthIn(d),
        carries: true,
      })),
      ...shaft.sleeves.map(({ from, to, d }) => ({
        from: lengthIn(from),
        to: lengthIn(to),
        diameter: lengthIn(d),
        carries: false,
      })),
    ]),
    warnings: Object.freeze(warningsOf(model)),
  });
}

interface Solved {
  readonly h: NonNullable<ReturnType<typeof solveBending>>;
  readonly v: NonNullable<ReturnType<typeof solveBending>>;
  readonly torque: readonly number[];
}

/** The larger of what is carried on either side of a station. */
function torqueAt(
  {
    torques,
  }: { readonly torques: readonly { readonly from: number; readonly to: number; readonly torque: number }[] },
  at: number,
  first: boolean,
): number {
  const near = 1e-9;
  const sum = (x: number): number => torques.reduce((s, t) => (x > t.from && x < t.to ? s + t.torque : s), 0);
  const [before, behind] = [first ? 0 : sum(at - near), sum(at + near)];
  return Math.abs(before) > Math.abs(behind) ? before : behind;
}

function loadCaseOf({ wheels = [], pulls = [], sleeves = [], ownWeight = true }: ShaftModel): string[] {
  return [
    ...(ownWeight ? ["the shaft's own weight"] : []),
    ...(ownWeight && sleeves.length > 0 ? ["the weight of what it wears"] : []),
    ...wheels.map(({ name }) => `weight of ${name}`),
    ...pulls.map(({ name, direction }) => `${name}, towards ${formatNumber(direction.in("degree"), 3)}°`),
  ];
}

function warningsOf({ stretches, torques = [], pulls = [] }: ShaftModel): string[] {
  const length =
    Math.max(...stretches.map(({ to }) => to.si)) - Math.min(...stretches.map(({ from }) => from.si));
  const thick = Math.max(
    ...stretches.map(({ diameter }) => ("standardUncertainty" in diameter ? diameter.value.si : diameter.si)),
  );
  return [
    ...(length < 8 * thick
      ? ["The shaft is short for its thickness: it gives by shear too; reckon with shear: true."]
      : []),
    ...(pulls.length > 0 && torques.length === 0 ? ["No torque was given: the stations carry none."] : []),
  ];
}
