import { type Length, quantityFromSi, type Speed } from "../quantity/index.js";
import { material } from "./material.js";
import type { MaterialFamily } from "./material-type.js";

/** What the tool is made of. */
export type ToolMaterial = "high-speed steel" | "carbide";

/** Cutting speed at the surface of the work, from the least to the most that a source gives. */
export interface CuttingSpeed {
  readonly low: Speed;
  readonly high: Speed;
  readonly source: string;
}

const jones =
  "F. D. Jones, Turning and Boring, Industrial Press, 1914, average cutting speeds for turning (read)";
const table = "public table of turning conditions, rough turning with cemented carbide (read)";

/** Family, tool, least and most [ft/min for Jones, m/min for the table]. */
const speeds: readonly (readonly [MaterialFamily, ToolMaterial, number, number, string])[] = [
  ["steel", "high-speed steel", 45 * 0.3048, 65 * 0.3048, jones],
  ["grey iron", "high-speed steel", 40 * 0.3048, 50 * 0.3048, jones],
  ["bronze", "high-speed steel", 35 * 0.3048, 80 * 0.3048, jones],
  ["steel", "carbide", 150, 200, table],
  ["grey iron", "carbide", 60, 90, table],
];

/**
 * Cutting speeds for turning, by the metal turned and the tool.
 *
 * Valid when: rigid work of normal hardness. A long slender shaft chatters well below; an interrupted cut wants the low
 * end. Carbide needs a stiff lathe that reaches such speeds.
 *
 * @param of  name of the metal as the handbook has it, e.g. "steel"
 * @param tool  "high-speed steel" or "carbide"
 * @returns least and most speed at the surface [m/s]
 * @throws RangeError  no such metal, no such tool, or no published speed for the pair
 * @example cuttingSpeed("steel", "high-speed steel").low.in("footPerMinute") // 45
 * @source F. D. Jones, Turning and Boring, Industrial Press, 1914 (high-speed steel, read); a public table of turning
 * conditions (carbide, read)
 */
export function cuttingSpeed(of: string, tool: ToolMaterial): CuttingSpeed {
  const { family, name } = material(of);
  if (tool !== "high-speed steel" && tool !== "carbide")
    throw new RangeError(`cuttingSpeed: tool must be "high-speed steel" or "carbide", got "${String(tool)}"`);
  const row = speeds.find(([metal, edge]) => metal === family && edge === tool);
  if (row === undefined)
    throw new RangeError(`cuttingSpeed: no published speed here for ${tool} in ${name} (${family})`);
  const [, , low, high, source] = row;
  const unit = tool === "carbide" ? "metrePerSecond" : "footPerMinute";
  return Object.freeze({
    low: quantityFromSi("speed", low / 60, unit),
    high: quantityFromSi("speed", high / 60, unit),
    source,
  });
}

/** Constants of Kienzle's law: force on a chip 1 mm wide and 1 mm thick, and how it grows for a thinner one. */
export interface CuttingForceConstants {
  /** [N/mm²] */
  readonly kc11: number;
  /** [-] */
  readonly mc: number;
  readonly source: string;
}

const kienzle =
  "constants of O. Kienzle's law as textbooks of cutting give them (from memory; agree with a public table of specific cutting force by feed within 3 % for thin chips, within 11 % for thick ones)";

/** Metals of the handbook by name, then by family. */
const forces: Readonly<Record<string, readonly [number, number]>> = {
  steel: [1780, 0.17],
  "steel A36": [1780, 0.17],
  "steel 1040": [2220, 0.14],
  "steel 4140": [2500, 0.26],
  "grey iron": [1160, 0.26],
};

/**
 * Specific cutting force of a metal, as the constants of Kienzle's law.
 *
 * k_c = k_c1.1 · h^(−m_c), h the thickness of the chip [mm]
 *
 * Valid when: chip 0.05 to 2 mm thick, sharp tool; a worn one takes a third to a half more (common practice, no source).
 *
 * @param of  name of the metal as the handbook has it
 * @returns the two constants
 * @throws RangeError  no such metal, or none known for it
 * @example cuttingForceConstants("steel").kc11 // 1780
 * @source O. Kienzle's law, constants from memory; see the tests for the public table they agree with
 */
export function cuttingForceConstants(of: string): CuttingForceConstants {
  const { family, name } = material(of);
  const found = forces[name] ?? forces[family];
  if (found === undefined)
    throw new RangeError(
      `cuttingForceConstants: none known here for ${name}; known for ${Object.keys(forces).join(", ")}`,
    );
  return Object.freeze({ kc11: found[0], mc: found[1], source: kienzle });
}

/**
 * The least depth of cut, ON RADIUS, at which a tool still cuts; below it the edge rubs, burnishes and springs.
 *
 * @param tool  "high-speed steel", freshly stoned, or "carbide", with the rounded edge of an insert
 * @returns depth on radius [m]
 * @throws RangeError  no such tool
 * @example leastChip("high-speed steel").in("mm") // 0.02
 * @source common practice, no source
 */
export function leastChip(tool: ToolMaterial): Length {
  if (tool === "high-speed steel") return quantityFromSi("length", 20e-6, "mm");
  if (tool === "carbide") return quantityFromSi("length", 50e-6, "mm");
  throw new RangeError(`leastChip: tool must be "high-speed steel" or "carbide", got "${String(tool)}"`);
}
