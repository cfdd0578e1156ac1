import { degree, type Length } from "../../../kernel-helpers/quantity/index.js";
import { type BalanceRuns, balanceRuns, type PhaseSense } from "../../../kernel-helpers/shaft/index.js";
import { readTable, type Table } from "../../../kernel-helpers/survey/index.js";

/** A table from its lines. */
export function tableOf(...lines: readonly string[]): Table {
  return readTable(new TextEncoder().encode(lines.join("\n")), { name: "runs", file: "runs.csv" });
}

interface Vector {
  readonly re: number;
  readonly im: number;
}

const product = (a: Vector, b: Vector): Vector => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
const sum = (a: Vector, b: Vector): Vector => ({ re: a.re + b.re, im: a.im + b.im });

export const vector = (size: number, degrees: number): Vector => ({
  re: size * Math.cos((degrees * Math.PI) / 180),
  im: size * Math.sin((degrees * Math.PI) / 180),
});

/** A machine whose truth is known: what each pickup shows for an ounce at each plane, and its own unbalance. */
export interface Machine {
  /** By pickup, then plane [thou/oz]. */
  readonly answers: readonly (readonly Vector[])[];
  /** By plane [oz at the radius]. */
  readonly unbalance: readonly Vector[];
}

/** The runs of a machine with masses [oz, deg] by run and plane, as balanceRuns reads them from its table. */
export function runsOf(
  machine: Machine,
  masses: readonly (readonly (readonly [mass: number, angle: number])[])[],
  options: { radius: Length; phase?: PhaseSense; noise?: () => number },
): BalanceRuns {
  const { phase = "as the angles", radius, noise = () => 0 } = options;
  const planes = machine.unbalance.map((_, p) => `P${p + 1}`);
  const pickups = machine.answers.map((_, s) => `S${s + 1}`);
  const header = [
    ...planes.flatMap((p) => [`mass ${p} [oz]`, `angle ${p} [deg]`]),
    ...pickups.flatMap((s) => [`amplitude ${s} [thou]`, `phase ${s} [deg]`]),
  ];
  const rows = masses.map((run) => {
    const readings = machine.answers.map((answer) => {
      const at = answer.reduce<Vector>(
        (total, h, p) => sum(total, product(h, sum(machine.unbalance[p]!, vector(...run[p]!)))),
        { re: noise(), im: noise() },
      );
      const turn = (Math.atan2(at.im, at.re) * 180) / Math.PI;
      return `${Math.hypot(at.re, at.im)},${(phase === "as the angles" ? turn : -turn) + 360}`;
    });
    return [...run.map(([mass, angle]) => `${mass},${angle}`), ...readings].join(",");
  });
  return balanceRuns(tableOf(header.join(","), ...rows), { radius, phase, phaseUncertainty: degree(1) });
}
