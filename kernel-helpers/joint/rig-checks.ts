import { type Material, threadNamed } from "../handbook/index.js";
import { type Force, formatNumber, type Pressure, quantityFromSi } from "../quantity/index.js";
import { plateArm, sectionNumbers } from "./rig-sections.js";
import type { Rig, RigCheck, RigFactors, RigPart } from "./rig-types.js";

/** A part as two numbers: its load for one newton of press force, and what it may bear. */
interface PartNumbers {
  readonly part: RigPart;
  readonly what: string;
  readonly kind: "force" | "pressure";
  /** [N/N] or [Pa/N] */
  readonly perNewton: number;
  /** [N] or [Pa] */
  readonly capacity: number;
  readonly basis: string;
}

/** Every part of the rig at one press force. */
export function rigChecks(rig: Rig, factors: RigFactors, force: Force, inch: boolean): readonly RigCheck[] {
  return partsOf(rig, factors).map(({ part, what, kind, perNewton, capacity, basis }): RigCheck => {
    const shown = (si: number): Force | Pressure =>
      kind === "force"
        ? quantityFromSi("force", si, inch ? "lbf" : "kilonewton")
        : quantityFromSi("pressure", si, inch ? "psi" : "megapascal");
    const load = perNewton * force.si;
    return Object.freeze({
      part,
      what,
      load: shown(load),
      capacity: shown(capacity),
      pressForce: quantityFromSi("force", capacity / perNewton, inch ? "lbf" : "kilonewton"),
      margin: load === 0 ? Number.POSITIVE_INFINITY : capacity / load,
      verdict: load <= capacity ? "stands" : "does not stand",
      basis,
    });
  });
}

function partsOf(rig: Rig, factors: RigFactors): readonly PartNumbers[] {
  const { jack, rods, beam, plate, hub, shaft } = rig;
  const off = rig.offCentre?.si ?? 0;
  const count = rods.count ?? 2;
  const thread = threadNamed(rods.thread);
  const { modulus } = sectionNumbers(beam.section);
  const bears = plate.width.si - plate.slot.si;
  const [face, slot] = [hub.face.si, plate.slot.si];
  const ring = (Math.PI / 4) * (face ** 2 - slot ** 2);
  const end = shaft.end.si;
  const proofLoad = rods.proof.si * thread.stressArea.si;
  const faceStrength = strengthOfFace(hub.material);
  const share = (factor: number): string => `${formatNumber(100 * factor, 3)} %`;
  return [
    {
      part: "jack",
      what: "force of the jack",
      kind: "force",
      perNewton: 1,
      capacity: factors.jack * jack.capacity.si,
      basis: `${share(factors.jack)} of its rated capacity`,
    },
    {
      part: "tie rods",
      what: `tension of ${count === 2 ? "one rod" : "one of the rods"}${off === 0 ? "" : ", on the heavier side"}`,
      kind: "force",
      perNewton: (1 + (2 * off) / rods.span.si) / count,
      capacity: factors.rods * proofLoad,
      basis: `${share(factors.rods)} of proof on the stress area of ${thread.name}`,
    },
    {
      part: "cross-beam",
      what: "bending stress at the jack",
      kind: "pressure",
      perNewton: rods.span.si / 4 / modulus,
      capacity: factors.bending * yieldOf(beam.material, "beam"),
      basis: `${share(factors.bending)} of the yield of ${beam.material.name}; force at the middle of the span`,
    },
    {
      part: "bearing plate",
      what: "bending stress across the slot",
      kind: "pressure",
      perNewton: (6 * plateArm(rig)) / (bears * plate.thickness.si ** 2),
      capacity: factors.bending * yieldOf(plate.material, "plate"),
      basis: `${share(factors.bending)} of the yield of ${plate.material.name}; both halves beside the slot together`,
    },
    {
      part: "hub face",
      what: `pressure of the plate on ${hub.material.name}${off === 0 ? "" : ", at the heavier edge"}`,
      kind: "pressure",
      perNewton: (1 + (8 * off * face) / (face ** 2 + slot ** 2)) / ring,
      capacity: factors.hubFace * faceStrength.value,
      basis: `${share(factors.hubFace)} of its ${faceStrength.is}; the face clean and the plate flat on it`,
    },
    {
      part: "shaft end",
      what: `compression${off === 0 ? "" : " and bending"} at the end of the shaft`,
      kind: "pressure",
      perNewton: 1 / ((Math.PI / 4) * end ** 2) + (32 * off) / (Math.PI * end ** 3),
      capacity: factors.bending * yieldOf(shaft.material, "shaft"),
      basis: `${share(factors.bending)} of the yield of ${shaft.material.name}`,
    },
  ];
}

function yieldOf(metal: Material, field: string): number {
  if (metal.yield === undefined)
    throw new RangeError(
      `pressRig: ${field}.material must be a metal that yields before it breaks, got ${metal.name}`,
    );
  return metal.yield.low.si;
}

function strengthOfFace(metal: Material): { readonly value: number; readonly is: string } {
  if (metal.brittle && metal.compressive !== undefined)
    return { value: metal.compressive.low.si, is: "compressive strength" };
  return { value: yieldOf(metal, "hub"), is: "yield" };
}
