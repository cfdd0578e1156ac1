import { type Angle, quantityFromSi } from "../../quantity/index.js";

const turnings = ["clockwise", "counter-clockwise"] as const;

/**
 * Where the two level parting lines of a box lie, counted from its load in the direction of rotation: an oil film ends and
 * begins anew there.
 *
 * angle = ±(ψ − load), ψ = 90° and 270° from straight down; + where the shaft turns counter-clockwise, − clockwise.
 *
 * Valid when: box parted level; load and turning seen from the same end of the shaft.
 *
 * @param load  towards which side the journal is pressed, from straight down, counter-clockwise [rad]
 * @param turning  "clockwise" or "counter-clockwise"
 * @returns both angles, the one before the load first, from −180° to below 180° [rad]
 * @throws RangeError  no such turning
 * @example partingLines(degree(20), "counter-clockwise").map((angle) => angle.in("degree").toFixed(0)).join() // "-110,70"
 * @source elementary geometry
 */
export function partingLines(load: Angle, turning: string): readonly [Angle, Angle] {
  if (!turnings.some((one) => one === turning))
    throw new RangeError(`partingLines: turning must be one of ${turnings.join(", ")}, got "${turning}"`);
  const sense = turning === "clockwise" ? -1 : 1;
  const turn = 2 * Math.PI;
  const [a, b] = [Math.PI / 2, -Math.PI / 2]
    .map((psi) => sense * (psi - load.si))
    .map((angle) => angle - turn * Math.floor((angle + Math.PI) / turn))
    .sort((x, y) => x - y)
    .map((angle) => quantityFromSi("angle", angle, "degree"));
  return Object.freeze([a!, b!]);
}
