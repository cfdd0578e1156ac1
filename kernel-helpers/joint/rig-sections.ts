import { requireQuantity } from "./fit-check.js";
import type { BeamSection, Rig } from "./rig-types.js";

/** Section modulus Z [m³] and second moment I [m⁴] of a beam about the axis it bends on. */
export interface SectionNumbers {
  readonly modulus: number;
  readonly second: number;
}

/**
 * Section modulus and second moment of area of a cross-beam.
 *
 * flat bars on edge: Z = n b h²/6, I = n b h³/12
 *
 * @param section  width b and height h [m] and count n, or Z [m³] and I [m⁴] as a table gives them
 * @returns Z [m³] and I [m⁴]
 * @throws RangeError  a size is not more than 0, or the count of bars is not a whole number from 1
 * @example sectionNumbers({ width: inch(1), height: inch(4) }).modulus / inch3(1).si // 2.667
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, table A-18 (from memory)
 */
export function sectionNumbers(section: BeamSection): SectionNumbers {
  if ("sectionModulus" in section) {
    requireQuantity(
      "pressRig",
      "beam.section.sectionModulus",
      section.sectionModulus,
      "volume",
      "more than 0",
    );
    requireQuantity(
      "pressRig",
      "beam.section.secondMoment",
      section.secondMoment,
      "second moment of area",
      "more than 0",
    );
    return { modulus: section.sectionModulus.si, second: section.secondMoment.si };
  }
  const { width, height, bars = 1 } = section;
  requireQuantity("pressRig", "beam.section.width", width, "length", "more than 0");
  requireQuantity("pressRig", "beam.section.height", height, "length", "more than 0");
  if (!Number.isInteger(bars) || bars < 1)
    throw new RangeError(`pressRig: beam.section.bars must be a whole number from 1, got ${bars}`);
  const [b, h] = [width.si * bars, height.si];
  return { modulus: (b * h ** 2) / 6, second: (b * h ** 3) / 12 };
}

/**
 * Arm of the bearing plate's bending moment for one newton of press force: half the force at each line of rods,
 * taken up by half of the ring of hub face, at its centroid.
 *
 * M/F = ½ (s/2 − x);  x = (2/3π)(D³ − w³)/(D² − w²), the half ring between the slot w and the face D
 *
 * @returns moment over force [m]
 */
export function plateArm({ rods, hub, plate }: Pick<Rig, "rods" | "hub" | "plate">): number {
  const [face, slot] = [hub.face.si, plate.slot.si];
  const centroid = ((2 / (3 * Math.PI)) * (face ** 3 - slot ** 3)) / (face ** 2 - slot ** 2);
  return (rods.span.si / 2 - centroid) / 2;
}
