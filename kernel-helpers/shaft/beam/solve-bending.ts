import { factorOf, solved } from "./banded-matrix.js";
import { type BeamMesh, elementStiffness, stiffnessMatrix } from "./beam-mesh.js";
import type { PlainShaft } from "./read-model.js";

/** Standard gravity [m/s²]. */
export const gravity = 9.80665;

/** One plane, a number a node [SI]; moments are above 0 where the shaft hangs through under a load from above. */
export interface PlaneBending {
  readonly deflection: readonly number[];
  readonly slope: readonly number[];
  readonly moment: readonly number[];
  /** Just behind the node; the last is 0. */
  readonly shear: readonly number[];
  /** Of each support on the shaft. */
  readonly reactions: readonly number[];
}

/** Bending in one plane; undefined where the shaft is not held. */
export function solveBending(
  shaft: PlainShaft,
  mesh: BeamMesh,
  plane: "horizontal" | "vertical",
): PlaneBending | undefined {
  const nodes = mesh.stations.length;
  const load = new Float64Array(2 * nodes);
  const weight = plane === "vertical" ? -gravity : 0;
  // Fixed-end forces of each prism under its own weight, on its nodes.
  const own = mesh.elements.map(({ massPerLength, length }) => {
    const q = shaft.ownWeight ? weight * massPerLength : 0;
    return [(q * length) / 2, (q * length * length) / 12, (q * length) / 2, (-q * length * length) / 12];
  });
  own.forEach((forces, i) => {
    forces.forEach((f, k) => {
      load[2 * i + k]! += f;
    });
  });
  for (const pull of shaft.pulls) load[2 * mesh.nodeAt(pull.at)]! += pull[plane];
  for (const wheel of shaft.wheels) load[2 * mesh.nodeAt(wheel.at)]! += weight * wheel.mass;
  const factor = factorOf(stiffnessMatrix(shaft, mesh, [plane]));
  if (factor === undefined) return undefined;
  const right = new Float64Array(load);
  for (const support of shaft.supports)
    if (!Number.isFinite(support[plane])) right[2 * mesh.nodeAt(support.at)] = 0;
  const u = solved(factor, right);
  const moment: number[] = [];
  const shear: number[] = [];
  // What the prisms ask of each node in all, less the load there, is the support's.
  const asked = new Float64Array(2 * nodes);
  mesh.elements.forEach((element, i) => {
    const k = elementStiffness(element);
    const ends = k.map((row, r) => row.reduce((sum, x, c) => sum + x * u[2 * i + c]!, 0) - own[i]![r]!);
    ends.forEach((f, r) => {
      asked[2 * i + r]! += f + own[i]![r]!;
    });
    moment.push(-ends[1]!);
    shear.push(ends[0]!);
    if (i === mesh.elements.length - 1) {
      moment.push(ends[3]!);
      shear.push(0);
    }
  });
  const reactions = shaft.supports.map((support) => {
    const node = 2 * mesh.nodeAt(support.at);
    return asked[node]! - load[node]!;
  });
  const each = (offset: number): number[] => Array.from({ length: nodes }, (_, i) => u[2 * i + offset]!);
  return { deflection: each(0), slope: each(1), moment, shear, reactions };
}
