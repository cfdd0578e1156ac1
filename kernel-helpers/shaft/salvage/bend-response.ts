import { beamMesh } from "../beam/beam-mesh.js";
import { whirlFamilies } from "../beam/critical-speeds.js";
import type { ShaftModel } from "../beam/index.js";
import { type PlainShaft, readModel } from "../beam/read-model.js";
import { gravity, solveBending } from "../beam/solve-bending.js";
import type { CarriedNumber } from "../carried/carried-input.js";
import type { WheelDrawn } from "./case-numbers.js";

/** Prisms at least, as for `shaftBending` and `criticalSpeeds`. */
const finest = 24;
/** How many whirls of each sense are looked at. */
const modes = 3;
/** Steps that the response of whirls is taken over: relative, of modulus and masses, and of diameters. */
const [wide, fine] = [0.05, 0.002];

/** What is drawn of a shaft: relative, 1 at the estimates. */
export interface BendDrawn {
  readonly wheels: readonly WheelDrawn[];
  /** The modulus, and the DIAMETER that carries in each box, over its estimate [-]. */
  readonly modulus: number;
  readonly sizes: readonly number[];
}

/** How one state of a shaft leans and whirls under loads as drawn, by response and not by solving it each time. */
export interface BendResponse {
  readonly modulus: CarriedNumber;
  /** Slope in each box [-]. */
  readonly slopes: (drawn: BendDrawn) => readonly number[];
  /** Of all whirls, those that unbalance drives first [rad/s]. */
  readonly whirls: (drawn: BendDrawn) => readonly number[];
}

type Plane = "horizontal" | "vertical";

/**
 * Solves a state of a shaft for one unit of each load, and for a little more of what its whirls hang on.
 *
 * slope: θᵢ = Σⱼ cᵢⱼ Fⱼ in each plane, exact in loads and in the modulus; in the diameters of the boxes its first term.
 * whirl: ln ω = ln ω₀ + Σ (∂ln ω/∂ln x) ln x over modulus, masses, and the diameters of the boxes.
 *
 * Valid when: diameters move by thousandths and masses by tenths, as draws do: whirls are then true to a per cent or two.
 * Diameters that are not in a box are held.
 *
 * @param model  the state as loaded, its wheels in the order of the case
 * @param boxes  ends of each box: the stretches between are scaled together [m]
 * @returns responses
 * @throws RangeError  as `shaftBending`
 */
export function bendResponse(
  where: string,
  model: ShaftModel,
  boxes: readonly { readonly from: number; readonly to: number }[],
): BendResponse {
  const { inputs, plain } = readModel(where, model);
  const base = plain(inputs.map(({ si }) => si));
  const modulus = inputs.at(-1)!;
  const scaled = (
    stiffer: number,
    size: (box: number) => number,
    heavier: (wheel: number) => number,
  ): PlainShaft => ({
    ...base,
    modulus: base.modulus * stiffer,
    stretches: base.stretches.map((stretch) => {
      const middle = (stretch.from + stretch.to) / 2;
      const box = boxes.findIndex(({ from, to }) => middle > from && middle < to);
      return box < 0 ? stretch : { ...stretch, d: stretch.d * size(box) };
    }),
    wheels: base.wheels.map((wheel, i) => {
      const by = heavier(i);
      return { ...wheel, mass: wheel.mass * by, polar: wheel.polar * by, diametral: wheel.diametral * by };
    }),
  });
  const one = (): number => 1;
  const only =
    (at: number, by: number) =>
    (i: number): number =>
      i === at ? by : 1;

  // Slopes: of one newton at each wheel, and of the shaft's own weight.
  const influences = (shaft: PlainShaft): Readonly<Record<Plane, readonly (readonly number[])[]>> => {
    const bare = { ...shaft, wheels: shaft.wheels.map((wheel) => ({ ...wheel, mass: 0 })) };
    const mesh = beamMesh(shaft, finest);
    const slopesOf = (plane: Plane, pulls: PlainShaft["pulls"], ownWeight: boolean): readonly number[] => {
      const bent = solveBending({ ...bare, pulls, ownWeight: ownWeight && shaft.ownWeight }, mesh, plane);
      if (bent === undefined)
        throw new RangeError(
          `${where}: the boxes do not hold the shaft: it must be held at two places apart`,
        );
      return shaft.supports.map(({ at }) => bent.slope[mesh.nodeAt(at)]!);
    };
    const of = (plane: Plane): readonly (readonly number[])[] => [
      ...shaft.wheels.map(({ at }) => slopesOf(plane, [{ at, horizontal: 1, vertical: 1 }], false)),
      slopesOf(plane, [], true),
    ];
    return { horizontal: of("horizontal"), vertical: of("vertical") };
  };
  const at1 = influences(scaled(1, one, one));
  const at2 = influences(scaled(2, one, one));
  const larger = boxes.map((_, b) => influences(scaled(1, only(b, 1 + fine), one)));
  const response = (plane: Plane, load: number, box: number, { modulus: e, sizes }: BendDrawn): number => {
    const c = at1[plane][load]![box]!;
    // Two boxes share loads by statics alone, so that what bends goes with 1/E exactly, and what boxes give does not.
    const bends = 2 * (c - at2[plane][load]![box]!);
    const moved = sizes.reduce(
      (sum, size, b) => sum + ((larger[b]![plane][load]![box]! - c) / fine) * (size - 1),
      0,
    );
    return c - bends + (bends + moved) / e;
  };
  const slopes: BendResponse["slopes"] = (drawn) =>
    boxes.map((_, box) => {
      const along = (plane: Plane): number =>
        drawn.wheels.reduce(
          (sum, { x, y, mass }, load) => {
            const force = plane === "horizontal" ? x : y - mass * gravity;
            return sum + force * response(plane, load, box, drawn);
          },
          response(plane, drawn.wheels.length, box, drawn),
        );
      return Math.hypot(along("horizontal"), along("vertical"));
    });

  // Whirls: how each goes with the modulus, the masses, the diameters in the boxes.
  const logs = (shaft: PlainShaft): readonly number[] =>
    whirlFamilies(where, shaft, beamMesh(shaft, finest), modes).flatMap(({ whirls }) =>
      whirls.map(({ omega }) => Math.log(omega)),
    );
  const still = logs(base);
  const by = (step: number, moved: PlainShaft): readonly number[] => {
    const now = logs(moved);
    return still.map((log, k) => ((now[k] ?? log) - log) / Math.log1p(step));
  };
  const withModulus = by(wide, scaled(1 + wide, one, one));
  const withMass = base.wheels.map((_, i) => by(wide, scaled(1, one, only(i, 1 + wide))));
  const withSize = boxes.map((_, b) => by(fine, scaled(1, only(b, 1 + fine), one)));
  const whirls: BendResponse["whirls"] = ({ modulus: e, wheels, sizes }) =>
    still.map((log, k) => {
      const masses = wheels.reduce((sum, { mass }, i) => {
        const before = base.wheels[i]!.mass;
        return before === 0 ? sum : sum + withMass[i]![k]! * Math.log(mass / before);
      }, 0);
      const diameters = sizes.reduce((sum, size, b) => sum + withSize[b]![k]! * Math.log(size), 0);
      return Math.exp(log + withModulus[k]! * Math.log(e) + masses + diameters);
    });
  return { modulus, slopes, whirls };
}
