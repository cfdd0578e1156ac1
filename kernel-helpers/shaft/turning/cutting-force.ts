import { cuttingForceConstants } from "../../handbook/index.js";
import { type Force, type Length, newton } from "../../quantity/index.js";

/** The chip and the force it takes. */
export interface CuttingForce {
  /** Mean thickness and width of the chip, uncut. */
  readonly thickness: Length;
  readonly width: Length;
  /** Down on the tool, along the cutting speed. */
  readonly tangential: Force;
  /** What pushes work and tool apart, ON RADIUS: from 0.3 to 1.2 of the tangential, middle 0.6. */
  readonly radial: { readonly low: Force; readonly middle: Force; readonly high: Force };
}

/** Share of the tangential force that pushes work and tool apart in a cut shallower than the nose is round. Common practice, no source. */
const radialShare = { low: 0.3, middle: 0.6, high: 1.2 } as const;

/**
 * Force of a turning cut by Kienzle's law, the rounded nose counted.
 *
 * F = k_c1.1 · b · h^(1−m_c) [b, h in mm]; b the length of edge in the cut, r·acos(1 − a/r) while the nose alone cuts,
 * else r·κ + (a − r(1 − cos κ))/sin κ; h = a·f/b
 *
 * Valid when: sharp tool, feed below the nose radius, chip above 0.02 mm thick. A worn edge takes a third to a half more.
 *
 * @param of  name of the metal turned
 * @param cut.depth  ON RADIUS [m]
 * @param cut.feed  for one turn [m]
 * @param cut.noseRadius  of the tool [m]
 * @returns chip [m] and forces [N]
 * @throws RangeError  a length is not above 0, or the metal is not known
 * @example cuttingForce("steel", { depth: mm(2), feed: mm(0.2), noseRadius: mm(0.4) }).tangential.in("newton").toFixed(0) // "958"
 * @source O. Kienzle's law (see `cuttingForceConstants`); lead angle of the edge taken as 75°; share of the radial force:
 * common practice, no source
 */
export function cuttingForce(
  of: string,
  cut: { readonly depth: Length; readonly feed: Length; readonly noseRadius: Length },
): CuttingForce {
  for (const [name, value] of Object.entries(cut))
    if (!(value.si > 0)) throw new RangeError(`cuttingForce: ${name} must be above 0, got ${value}`);
  const { kc11, mc } = cuttingForceConstants(of);
  const [a, f, r] = [cut.depth, cut.feed, cut.noseRadius].map((length) => length.in("mm")) as [
    number,
    number,
    number,
  ];
  const lead = (75 * Math.PI) / 180;
  const noseDepth = r * (1 - Math.cos(lead));
  const width = a <= noseDepth ? r * Math.acos(1 - a / r) : r * lead + (a - noseDepth) / Math.sin(lead);
  const thickness = (a * f) / width;
  const force = kc11 * width * thickness ** (1 - mc);
  const metres = (value: number): Length => cut.depth.times(value / a);
  return Object.freeze({
    thickness: metres(thickness),
    width: metres(width),
    tangential: newton(force),
    radial: Object.freeze({
      low: newton(radialShare.low * force),
      middle: newton(radialShare.middle * force),
      high: newton(radialShare.high * force),
    }),
  });
}
