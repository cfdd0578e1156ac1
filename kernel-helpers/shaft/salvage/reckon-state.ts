import type { Length } from "../../quantity/index.js";
import { beamMesh } from "../beam/beam-mesh.js";
import { whirlFamilies, whirlWarnings } from "../beam/critical-speeds.js";
import type { ShaftModel, ShaftStretch } from "../beam/index.js";
import { type PlainShaft, readModel } from "../beam/read-model.js";
import { solveBending } from "../beam/solve-bending.js";
import type { CarriedNumber, MaybeMeasured } from "../carried/carried-input.js";
import type { WheelDrawn } from "./case-numbers.js";
import type { ComparedMeasure } from "./compare-types.js";
import { loadedShaft } from "./loaded-shaft.js";
import type { ShaftCase } from "./shaft-case.js";

/** Prisms at least, for the bend and for the whirls. */
const finest = 24;

/** One state of a shaft, whose figures can be reckoned again and again. */
export interface ReckonedState {
  /** The figures in their order; `box` where they are of one. */
  readonly names: readonly {
    readonly name: string;
    readonly measure: ComparedMeasure;
    readonly box: number;
  }[];
  readonly modulus: CarriedNumber;
  /** Of the stretches, along the shaft, as given. */
  readonly diameters: readonly MaybeMeasured<Length>[];
  /** Estimate at a position [m]. */
  readonly diameterAt: (position: number) => number;
  /** The figures [SI] for loads, modulus [Pa] and diameters [m]. */
  readonly reckon: (
    wheels: readonly WheelDrawn[],
    modulus: number,
    sized: (diameter: MaybeMeasured<Length>) => number,
  ) => readonly number[];
  readonly warnings: readonly string[];
}

/**
 * Reads one state of a shaft and makes what reckons its figures.
 *
 * @throws RangeError  as `shaftBending`
 */
export function stateReckoner(
  where: string,
  shaft: ShaftCase,
  stretches: readonly ShaftStretch[],
  material: ShaftModel["material"],
  asked: { readonly modes: number; readonly speed: number | undefined },
): ReckonedState {
  const model = loadedShaft(shaft, stretches, material);
  const { inputs, plain } = readModel(where, model);
  const base = plain(inputs.map(({ si }) => si));
  const sorted = [...stretches].sort((a, b) => a.from.si - b.from.si);
  const { modes, speed } = asked;
  const boxes = shaft.boxes.map(({ name }) => name);
  const middles = model.supports.map(({ at }) => at.si);
  const indexAt = (position: number): number =>
    Math.max(
      0,
      sorted.findIndex(({ to }) => position <= to.si + 1e-9),
    );
  const reckon: ReckonedState["reckon"] = (wheels, modulus, sized) => {
    const now: PlainShaft = {
      ...base,
      modulus,
      stretches: base.stretches.map((stretch, i) => ({ ...stretch, d: sized(sorted[i]!.diameter) })),
      wheels: base.wheels.map((wheel, i) => {
        const heavier = wheel.mass === 0 ? 1 : wheels[i]!.mass / wheel.mass;
        const [polar, diametral] = [wheel.polar * heavier, wheel.diametral * heavier];
        return { ...wheel, mass: wheels[i]!.mass, polar, diametral };
      }),
      pulls: base.pulls.map((pull, i) => ({ ...pull, horizontal: wheels[i]!.x, vertical: wheels[i]!.y })),
    };
    const mesh = beamMesh(now, finest);
    const [h, v] = [solveBending(now, mesh, "horizontal"), solveBending(now, mesh, "vertical")];
    if (h === undefined || v === undefined)
      throw new RangeError(`${where}: the boxes do not hold the shaft: it must be held at two places apart`);
    const most = (a: readonly number[], b: readonly number[]): number =>
      a.reduce((top, x, i) => Math.max(top, Math.hypot(x, b[i]!)), 0);
    const nodes = middles.map((at) => mesh.nodeAt(at));
    const loads = h.reactions.map((x, i) => Math.hypot(x, v.reactions[i]!));
    const whirls = whirlFamilies(where, now, mesh, modes);
    const driven = whirls[0]!.whirls.map(({ omega }) => omega);
    const all = whirls.flatMap((family) => family.whirls.map(({ omega }) => omega));
    return [
      most(h.shear, v.shear),
      most(h.moment, v.moment),
      most(h.deflection, v.deflection),
      ...nodes.map((n) => Math.hypot(h.slope[n]!, v.slope[n]!)),
      ...loads,
      ...loads.map(
        (force, i) =>
          force /
          (now.stretches[indexAt(middles[i]!)]!.d * (shaft.boxes[i]!.to.si - shaft.boxes[i]!.from.si)),
      ),
      ...Array.from({ length: modes }, (_, i) => driven[i] ?? Number.NaN).filter(Number.isFinite),
      Math.min(...all),
      ...(speed === undefined ? [] : [Math.min(...all.map((omega) => Math.abs(omega - speed) / omega))]),
    ];
  };
  const count = whirlFamilies(where, base, beamMesh(base, finest), modes)[0]!.whirls.length;
  const ordinals = ["first", "second", "third", "fourth", "fifth", "sixth"];
  return {
    names: [
      { name: "largest shear", measure: "force", box: -1 },
      { name: "largest moment", measure: "moment", box: -1 },
      { name: "largest deflection", measure: "deflection", box: -1 },
      ...boxes.map((name, box) => ({ name: `slope in ${name}`, measure: "slope" as const, box })),
      ...boxes.map((name, box) => ({ name: `load on ${name}`, measure: "force" as const, box })),
      ...boxes.map((name, box) => ({ name: `pressure in ${name}`, measure: "pressure" as const, box })),
      ...Array.from({ length: count }, (_, i) => ({
        name: `${ordinals[i] ?? `${i + 1}th`} critical speed`,
        measure: "speed" as const,
        box: -1,
      })),
      { name: "slowest whirl of all", measure: "speed", box: -1 },
      ...(speed === undefined
        ? []
        : [{ name: "running speed from the nearest whirl", measure: "share" as const, box: -1 }]),
    ],
    modulus: inputs.at(-1)!,
    diameters: sorted.map(({ diameter }) => diameter),
    diameterAt: (position) => base.stretches[indexAt(position)]!.d,
    reckon,
    warnings: whirlWarnings(model),
  };
}
