import {
  formatFixed,
  formatNumber,
  type Length,
  type Measured,
  type Pressure,
  type Torque,
} from "../../quantity/index.js";
import type { SafetyFactor, SafetyVerdict, ShaftDuty, ShaftSafety, ShaftSteel } from "../../shaft/index.js";
import type { VerdictBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { chanceText } from "./chance-text.js";
import { type JointUnits, jointUnits } from "./joint-text.js";

/** How a verdict on strength stands in a verdict block. */
export const strengthOutcome: Readonly<Record<SafetyVerdict, VerdictBlock["outcome"]>> = Object.freeze({
  holds: "yes",
  "does not hold": "no",
  "cannot tell yet": "cannot tell yet",
});

/** The units of a shaft's loads: of the rebuild, else those its diameter was written in. */
export function strengthUnits(diameter: Length): JointUnits {
  return jointUnits(diameter);
}

/** Bending moments are spoken of in pound-inches in the shop of the inch, as the books have them. */
export function momentText(moment: Measured<Torque>, { system }: JointUnits): string {
  return measuredText(moment, system === "inch" ? "lbfInch" : "newtonMetre");
}

/** A stress with its uncertainty: "5.2 ± 1.1 ksi". */
export function stressMeasured(stress: Measured<Pressure>, { stress: unit }: JointUnits): string {
  return measuredText(stress, unit as "ksi" | "megapascal");
}

function measuredText(
  value: Measured<Torque> | Measured<Pressure>,
  unit: "lbfInch" | "newtonMetre" | "ksi" | "megapascal",
): string {
  if (value.standardUncertainty.si > 0) return plusMinus(value, { unit });
  const symbol = { lbfInch: "lbf·in", newtonMetre: "N·m", ksi: "ksi", megapascal: "MPa" }[unit];
  return `${formatNumber((value.value as Torque).in(unit as "newtonMetre"), 4)} ${symbol}`;
}

/** A factor of safety with its 95 %: "1.9 (1.3 to 2.7)". */
export function factorText({ factor, low, high }: SafetyFactor): string {
  return low === high
    ? factorNumber(factor.value)
    : `${factorNumber(factor.value)} (${factorNumber(low)} to ${factorNumber(high)})`;
}

/** A factor by itself: three digits. */
export function factorNumber(n: number): string {
  return n >= 100 ? "over 100" : formatFixed(n, n < 10 ? 2 : 1);
}

/** What governs a place, with margin, chance, and where the doubt comes from. */
export function strengthBecause(safety: ShaftSafety): string {
  const { governing, demanded } = safety;
  const found = safety[governing];
  const against = governing === "fatigue" ? `fatigue (${safety.criterion})` : "yielding";
  const doubt = found.shares[0];
  const from =
    doubt === undefined || safety.verdict !== "cannot tell yet"
      ? ""
      : ` Most of the doubt is of the ${doubt.source} (${Math.round(100 * doubt.share)} %)${remedy(doubt.source)}.`;
  return `Factor ${factorNumber(found.factor.value)} against ${against}, 95 % from ${factorNumber(found.low)} to ${factorNumber(found.high)}; chance that it is below ${formatNumber(demanded, 3)}: ${chanceText(found.chanceBelow)}.${from}`;
}

function remedy(source: string): string {
  const remedies: Readonly<Record<string, string>> = {
    "endurance limit":
      ": no reading on the shaft takes it away, only less stress or a reliability that somebody demands",
    "stress concentration":
      ": the scatter of fatigue tests, which no reading takes away; a rounder corner or less load does",
    "tensile strength": ": more hardness readings on the shaft",
    "yield strength": ": more hardness readings on the shaft",
    "bending moment": ": belt pulls and weights, better known",
    torque: ": the power taken, better known",
    diameter: ": read it again",
  };
  return remedies[source] ?? "";
}

/** The steel and what is reckoned with. */
export function steelText(steel: ShaftSteel, units: JointUnits): string {
  return `tensile ${stressMeasured(steel.tensile, units)}, yield ${stressMeasured(steel.yield, units)}`;
}

/** What the limit reckoned with stands for. */
export function reliabilityText(reliability: NonNullable<ShaftDuty["reliability"]>): string {
  return reliability === 0.5
    ? "mean endurance limit, its scatter in the 95 %"
    : `endurance limit that ${formatNumber(100 * reliability, 5)} % of shafts exceed; its scatter is not counted again`;
}
