import { addTo, type BandedMatrix, bandedMatrix, hold } from "./banded-matrix.js";
import type { PlainShaft } from "./read-model.js";

/** A prism between two nodes. */
export interface BeamElement {
  readonly length: number;
  /** E I [N·m²] */
  readonly stiffness: number;
  /** 12 E I/(κ G A L²) [-]; 0 without shear. */
  readonly shear: number;
  /** [kg/m], with what the shaft wears. */
  readonly massPerLength: number;
  /** ρ I of the shaft [kg·m]: resistance to tilting, per length. */
  readonly tilting: number;
  readonly diameter: number;
  readonly bore: number;
}

export interface BeamMesh {
  readonly stations: readonly number[];
  readonly elements: readonly BeamElement[];
  /** The node at a station that was named in the model. */
  readonly nodeAt: (station: number) => number;
}

/**
 * The shaft in prisms: a node at every end, step, support, wheel, pull and torque, and so many between that no prism is
 * longer than a share of the shaft.
 *
 * Deflections at the nodes are exact for any prisms (cubic between them); modes want some nodes more.
 */
export function beamMesh(shaft: PlainShaft, finest: number): BeamMesh {
  const [first, last] = [shaft.stretches[0]!.from, shaft.stretches.at(-1)!.to];
  const same = 1e-9 * (last - first);
  const breaks = [
    ...shaft.stretches.flatMap(({ from, to }) => [from, to]),
    ...shaft.sleeves.flatMap(({ from, to }) => [from, to]),
    ...shaft.supports.map(({ at }) => at),
    ...shaft.wheels.map(({ at }) => at),
    ...shaft.pulls.map(({ at }) => at),
    ...shaft.torques.flatMap(({ from, to }) => [from, to]),
  ]
    .sort((a, b) => a - b)
    .filter((at, i, all) => i === 0 || at - all[i - 1]! > same);
  const longest = (last - first) / finest;
  const stations = breaks.flatMap((at, i) => {
    const before = breaks[i - 1];
    if (before === undefined) return [at];
    const parts = Math.max(1, Math.ceil((at - before) / longest - 1e-9));
    return Array.from({ length: parts }, (_, k) =>
      k === parts - 1 ? at : before + ((at - before) * (k + 1)) / parts,
    );
  });
  const elements = stations.slice(1).map((to, i) => elementOf(shaft, stations[i]!, to));
  return {
    stations,
    elements,
    nodeAt: (station) => {
      let best = 0;
      stations.forEach((x, i) => {
        if (Math.abs(x - station) < Math.abs(stations[best]! - station)) best = i;
      });
      return best;
    },
  };
}

function elementOf(shaft: PlainShaft, from: number, to: number): BeamElement {
  const middle = (from + to) / 2;
  const stretch = shaft.stretches.find((s) => middle < s.to) ?? shaft.stretches.at(-1)!;
  const { d, bore } = stretch;
  const area = (Math.PI / 4) * (d * d - bore * bore);
  const second = (Math.PI / 64) * (d ** 4 - bore ** 4);
  const worn = shaft.sleeves.filter((s) => middle > s.from && middle < s.to);
  const more = worn.reduce((sum, s) => sum + s.density * (Math.PI / 4) * Math.max(0, s.d * s.d - d * d), 0);
  const nu = shaft.poisson;
  const kappa = (6 * (1 + nu)) / (7 + 6 * nu);
  const shearModulus = shaft.modulus / (2 * (1 + nu));
  const length = to - from;
  return {
    length,
    stiffness: shaft.modulus * second,
    shear: shaft.shear ? (12 * shaft.modulus * second) / (kappa * shearModulus * area * length * length) : 0,
    massPerLength: shaft.density * area + more,
    tilting: shaft.density * second,
    diameter: d,
    bore,
  };
}

/** Stiffness of a prism against [deflection, slope] at either end [N, N·m]. */
export function elementStiffness({ length: l, stiffness, shear }: BeamElement): readonly number[][] {
  const c = stiffness / (l ** 3 * (1 + shear));
  return [
    [12, 6 * l, -12, 6 * l],
    [6 * l, (4 + shear) * l * l, -6 * l, (2 - shear) * l * l],
    [-12, -6 * l, 12, -6 * l],
    [6 * l, (2 - shear) * l * l, -6 * l, (4 + shear) * l * l],
  ].map((row) => row.map((x) => x * c));
}

/** Consistent mass of a prism, translation and tilting apart. */
function elementMass({ length: l, massPerLength, tilting }: BeamElement): {
  readonly moving: readonly number[][];
  readonly tilted: readonly number[][];
} {
  const m = (massPerLength * l) / 420;
  const t = tilting / (30 * l);
  return {
    moving: [
      [156, 22 * l, 54, -13 * l],
      [22 * l, 4 * l * l, 13 * l, -3 * l * l],
      [54, 13 * l, 156, -22 * l],
      [-13 * l, -3 * l * l, -22 * l, 4 * l * l],
    ].map((row) => row.map((x) => x * m)),
    tilted: [
      [36, 3 * l, -36, 3 * l],
      [3 * l, 4 * l * l, -3 * l, -l * l],
      [-36, -3 * l, 36, -3 * l],
      [3 * l, -l * l, -3 * l, 4 * l * l],
    ].map((row) => row.map((x) => x * t)),
  };
}

/** Adds a prism's matrix for a plane of a mesh with so many unknowns a node, the plane's two from `offset` on. */
function addElement(
  to: BandedMatrix,
  node: number,
  perNode: number,
  rows: number,
  columns: number,
  values: readonly number[][],
  factor = 1,
): void {
  const index = (k: number, offset: number): number => (node + (k >> 1)) * perNode + offset + (k & 1);
  for (let i = 0; i < 4; i++)
    for (let j = 0; j < 4; j++) {
      if (rows === columns && j > i) continue;
      addTo(to, index(i, rows), index(j, columns), values[i]![j]! * factor);
    }
}

/** Stiffness of the shaft on its supports in one plane or in both; stiff supports are held. */
export function stiffnessMatrix(
  shaft: PlainShaft,
  mesh: BeamMesh,
  planes: readonly ("horizontal" | "vertical")[],
): BandedMatrix {
  const perNode = 2 * planes.length;
  const k = bandedMatrix(mesh.stations.length * perNode, 2 * perNode - 1);
  mesh.elements.forEach((element, node) => {
    const values = elementStiffness(element);
    planes.forEach((_, p) => {
      addElement(k, node, perNode, 2 * p, 2 * p, values);
    });
  });
  for (const support of shaft.supports)
    planes.forEach((plane, p) => {
      const i = mesh.nodeAt(support.at) * perNode + 2 * p;
      if (Number.isFinite(support[plane])) addTo(k, i, i, support[plane]);
    });
  heldUnknowns(shaft, mesh, planes).forEach((i) => {
    hold(k, i, k.values[i * (k.band + 1) + k.band]!);
  });
  return k;
}

export function heldUnknowns(
  shaft: PlainShaft,
  mesh: BeamMesh,
  planes: readonly ("horizontal" | "vertical")[],
): readonly number[] {
  return shaft.supports.flatMap((support) =>
    planes.flatMap((plane, p) =>
      Number.isFinite(support[plane]) ? [] : [mesh.nodeAt(support.at) * 2 * planes.length + 2 * p],
    ),
  );
}

/**
 * Mass of the shaft and its wheels. The polar inertia counts times `polar`: in one plane −1 for whirling forward with the
 * turning shaft, 1 for whirling backward, 0 for a shaft that does not turn; in both planes it couples them.
 */
export function massMatrix(
  shaft: PlainShaft,
  mesh: BeamMesh,
  planes: readonly ("horizontal" | "vertical")[],
  polar: -1 | 0 | 1,
): BandedMatrix {
  const perNode = 2 * planes.length;
  const m = bandedMatrix(mesh.stations.length * perNode, 2 * perNode - 1);
  const both = planes.length === 2;
  mesh.elements.forEach((element, node) => {
    const { moving, tilted } = elementMass(element);
    planes.forEach((_, p) => {
      addElement(m, node, perNode, 2 * p, 2 * p, moving);
      addElement(m, node, perNode, 2 * p, 2 * p, tilted, both ? 1 : 1 + 2 * polar);
    });
    if (both && polar !== 0) addElement(m, node, perNode, 2, 0, tilted, 2 * polar);
  });
  for (const wheel of shaft.wheels) {
    const at = mesh.nodeAt(wheel.at) * perNode;
    planes.forEach((_, p) => {
      addTo(m, at + 2 * p, at + 2 * p, wheel.mass);
      addTo(m, at + 2 * p + 1, at + 2 * p + 1, wheel.diametral + (both ? 0 : polar * wheel.polar));
    });
    if (both && polar !== 0) addTo(m, at + 1, at + 3, polar * wheel.polar);
  }
  heldUnknowns(shaft, mesh, planes).forEach((i) => {
    hold(m, i, 0);
  });
  return m;
}
