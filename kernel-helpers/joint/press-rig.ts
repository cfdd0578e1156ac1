import { threadNamed } from "../handbook/index.js";
import { type Force, type Length, quantityFromSi, systemOf } from "../quantity/index.js";
import { requireBetween, requireQuantity, requireSmaller } from "./fit-check.js";
import { rigChecks } from "./rig-checks.js";
import { plateArm, sectionNumbers } from "./rig-sections.js";
import type { PressRig, Rig, RigFactors } from "./rig-types.js";
import { chanceNotAbove, type Spread, spreadOf } from "./spread.js";

/**
 * How far each part may be loaded. Jack 80 % of its rating; rods half of proof, for people stand near; steel in
 * bending 60 % of yield; iron's face a fifth of its compressive strength, for its edges chip.
 *
 * @example rigFactors.rods // 0.5
 * @source bending: 0.6 of yield, allowable stress design of steel structures (from memory); the others: common
 * practice, no source
 */
export const rigFactors: RigFactors = Object.freeze({ jack: 0.8, rods: 0.5, bending: 0.6, hubFace: 0.2 });

/** More than any jack of a shop: a unit is wrong. */
const absurdForce = 1e7;

/**
 * Whether a press rig stands the force that a hub needs, part by part, with the weakest named; how far it gives, what
 * energy it stores, and whether the ram reaches.
 *
 * rods: F/n·(1 + 2e/s) on the heavier side against proof × stress area; beam: σ = F s/(4 Z), y = F s³/(48 E I);
 * plate: σ = 6 M/(b t²), M = F/2·(s/2 − x̄), b beside the slot; hub face: F/A·(1 + 8 e D/(D² + w²)); shaft end:
 * F/A + 32 F e/(π d³); energy = F·(y + F L/(n A E))/2
 *
 * Valid when: beam and plate are straight and square to the shaft, the rods' nuts are run up alike and the jack pushes
 * e off the shaft's axis at most. The jack's push is taken as a point, which is the safe side for the beam.
 *
 * @param rig      jack, rods, beam, plate, hub and shaft; forces [N], sizes [m], strengths [Pa]
 * @param needed   the press-off force, as a range from `hubFit` or one force [N]
 * @param factors  shares of strength that may be used [-], default `rigFactors`
 * @returns the checks at the high end of what is needed, rating [N], spring [m], energy [J]
 * @throws RangeError  a size is impossible, a force absurd, the rods do not clear the hub, or the plate has no metal
 *   beside its slot
 * @example
 * const steel = material("steel A36");
 * const rig = {
 *   jack: { capacity: shortTonForce(30), stroke: inch(6) },
 *   rods: { thread: "1-8 UNC", proof: ksi(85), span: inch(10), length: inch(20) },
 *   beam: { section: { width: inch(2), height: inch(4) }, material: steel },
 *   plate: { width: inch(7), thickness: inch(2), slot: inch(2.5), material: steel },
 *   hub: { face: inch(5.5), length: inch(4.5), material: material("grey iron class 20") },
 *   shaft: { end: inch(1.5), material: material("steel") },
 *   release: inch(0.25),
 * };
 * pressRig(rig, lbf(20000)).weakest // "bearing plate"
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, table A-9 case 5 (beam) and section 3-9;
 * statics; factors: see `rigFactors`
 */
export function pressRig(
  rig: Rig,
  needed: Force | Spread<Force>,
  factors: Partial<RigFactors> = {},
): PressRig {
  checkRig(rig);
  const used: RigFactors = { ...rigFactors, ...factors };
  for (const [name, value] of Object.entries(used))
    requireBetween("pressRig", `factors.${name}`, value, 0.01, 1);
  const inch = systemOf(rig.rods.span.writtenIn ?? "mm") === "inch";
  const wanted = spreadOfForce(needed);
  const force = wanted.high;
  if (!(force.si > 0 && force.si <= absurdForce))
    throw new RangeError(
      `pressRig: the force needed must be more than 0 and what a shop can press; is its unit right? got ${force}`,
    );
  const checks = rigChecks(rig, used, force, inch);
  const weakest = checks.reduce((least, check) => (check.pressForce < least.pressForce ? check : least));
  const rating = weakest.pressForce;
  const thread = threadNamed(rig.rods.thread);
  const count = rig.rods.count ?? 2;
  const spring = springOf(rig, thread.stressArea.si, count, rating.si, inch);
  const zero = quantityFromSi("length", 0, rig.rods.span.writtenIn);
  const extended = rig.jack.extended ?? zero;
  const left = rig.jack.stroke.minus(extended);
  const way = rig.release.plus(spring.beam).plus(spring.rods);
  const plate = checks.find(({ part }) => part === "bearing plate")!;
  const thickness = Math.sqrt(
    (6 * plateArm(rig) * force.si) / ((rig.plate.width.si - rig.plate.slot.si) * plate.capacity.si),
  );
  const { section } = rig.beam;
  return Object.freeze<PressRig>({
    kind: "press rig",
    rig: Object.freeze({
      jack: Object.freeze({ capacity: rig.jack.capacity, stroke: rig.jack.stroke, extended }),
      rods: Object.freeze({
        thread: thread.name,
        count,
        span: rig.rods.span,
        length: rig.rods.length,
        diameter: thread.majorDiameter,
      }),
      beamHeight: "height" in section ? section.height : undefined,
      plate: Object.freeze({
        width: rig.plate.width,
        thickness: rig.plate.thickness,
        slot: rig.plate.slot,
      }),
      hub: Object.freeze({
        face: rig.hub.face,
        length: rig.hub.length,
        material: rig.hub.material.name,
      }),
      shaftEnd: rig.shaft.end,
      offCentre: rig.offCentre ?? zero,
    }),
    needed: wanted,
    force,
    checks: Object.freeze(checks),
    weakest: weakest.part,
    rating,
    chance: chanceNotAbove(wanted, rating),
    verdict: rating >= force ? "stands" : rating < wanted.low ? "does not stand" : "cannot tell yet",
    plateThickness: quantityFromSi("length", thickness, rig.plate.thickness.writtenIn),
    spring,
    ram: Object.freeze({ left, needed: way, verdict: way <= left ? "reaches" : "does not reach" }),
    warnings: Object.freeze(warningsFor(rig, count)),
  });
}

/** How far beam and rods give at a force, and what they give back. */
function springOf(
  rig: Rig,
  stressArea: number,
  count: number,
  force: number,
  inch: boolean,
): PressRig["spring"] {
  const { span, length } = rig.rods;
  const beam =
    (force * span.si ** 3) /
    (48 * rig.beam.material.modulus.value.si * sectionNumbers(rig.beam.section).second);
  // Threaded all along and of plain steel: the rod gives most.
  const rods = (force * length.si) / (count * stressArea * steelModulus);
  const metres = (si: number): Length => quantityFromSi("length", si, inch ? "thou" : "mm");
  return Object.freeze({
    beam: metres(beam),
    rods: metres(rods),
    energy: quantityFromSi("torque or energy", (force * (beam + rods)) / 2, inch ? "lbfFoot" : "joule"),
  });
}

/** Of any steel rod [Pa]: 30 million psi, Shigley & Nisbett, table A-5 (from memory). */
const steelModulus = 207e9;

function spreadOfForce(needed: Force | Spread<Force>): Spread<Force> {
  return "steps" in needed ? needed : spreadOf([needed.si], needed);
}

function checkRig(rig: Rig): void {
  const where = "pressRig";
  const { jack, rods, plate, hub, shaft } = rig;
  requireQuantity(where, "jack.capacity", jack.capacity, "force", "more than 0");
  if (jack.capacity.si > absurdForce)
    throw new RangeError(
      `${where}: jack.capacity is more than any jack of a shop; is its unit right? got ${jack.capacity}`,
    );
  requireQuantity(where, "jack.stroke", jack.stroke, "length", "more than 0");
  if (jack.extended !== undefined) {
    requireQuantity(where, "jack.extended", jack.extended, "length", "0 or more");
    requireSmaller(where, ["jack.extended", jack.extended], ["jack.stroke", jack.stroke]);
  }
  requireQuantity(where, "rods.proof", rods.proof, "pressure", "more than 0");
  requireQuantity(where, "rods.span", rods.span, "length", "more than 0");
  requireQuantity(where, "rods.length", rods.length, "length", "more than 0");
  const { count = 2 } = rods;
  if (!Number.isInteger(count) || count < 2 || count % 2 !== 0)
    throw new RangeError(
      `${where}: rods.count must be an even number from 2: half on each side, got ${String(count)}`,
    );
  for (const [name, size] of Object.entries({
    "plate.width": plate.width,
    "plate.thickness": plate.thickness,
    "plate.slot": plate.slot,
    "hub.face": hub.face,
    "hub.length": hub.length,
    "shaft.end": shaft.end,
  }))
    requireQuantity(where, name, size, "length", "more than 0");
  requireQuantity(where, "release", rig.release, "length", "0 or more");
  if (rig.offCentre !== undefined) {
    requireQuantity(where, "offCentre", rig.offCentre, "length", "0 or more");
    requireSmaller(where, ["offCentre", rig.offCentre], ["half of rods.span", rods.span.over(2)]);
  }
  requireSmaller(where, ["plate.slot", plate.slot], ["plate.width", plate.width]);
  requireSmaller(where, ["plate.slot", plate.slot], ["hub.face", hub.face]);
  requireSmaller(
    where,
    ["hub, plate and beam together", hub.length.plus(plate.thickness).plus(beamHeight(rig))],
    ["rods.length", rods.length],
  );
  requireSmaller(
    where,
    ["hub.face plus a rod", hub.face.plus(threadNamed(rods.thread).majorDiameter)],
    ["rods.span", rods.span],
  );
}

/** In the direction of the load; nothing for a rolled section, whose height is not asked for. */
function beamHeight({ beam, rods }: Rig): Length {
  return "height" in beam.section ? beam.section.height : quantityFromSi("length", 0, rods.length.writtenIn);
}

function warningsFor(rig: Rig, count: number): string[] {
  const warnings: string[] = [];
  const slack = rig.plate.slot.si;
  if (rig.offCentre === undefined || rig.offCentre.si === 0)
    warnings.push(
      "The jack is taken to stand on the shaft's axis. Say how far it may be off, measured: an eighth of an inch (3 mm) already loads one side.",
    );
  if (rig.plate.width.si < rig.hub.face.si)
    warnings.push("The bearing plate is narrower than the hub's face: the face bears on two strips only.");
  if (count > 2)
    warnings.push("More than two rods share the load evenly only if all nuts are run up alike: measure it.");
  if (slack > 0.75 * rig.hub.face.si)
    warnings.push("The slot leaves less than a quarter of the hub's face to bear on.");
  return warnings;
}
