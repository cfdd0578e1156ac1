import type { ShaftFeature } from "./feature-types.js";

/**
 * The share of a shaft's strength against yielding that a feature leaves, of the whole diameter.
 *
 * keyseat: 1 − 0.2 w/d − 1.1 h/d, with a seat of usual size, w = d/4 and h = d/8, 0.81; two seats take twice as much.
 * Hole of diameter a through the axis: bending 1 − 16a/(3πd), torsion 1 − 8a/(3πd), the modulus of the section without
 * the strip of the hole. A shoulder, a groove and a press fit leave all of the diameter that is given.
 *
 * @param feature   what is at the place
 * @param diameter  [m]
 * @returns shares in bending and in torsion, 0 to 1 [-]
 * @example sectionLeft({ shape: "keyed hub" }, 0.06).bending // 0.8125
 * @source H. F. Moore, The effect of keyways on the strength of shafts, University of Illinois Engineering Experiment
 * Station, Bulletin 42, 1909 (from memory); hole: thin strip of the section
 */
export function sectionLeft(
  feature: ShaftFeature,
  diameter: number,
): { readonly bending: number; readonly torsion: number } {
  switch (feature.shape) {
    case "keyseat":
      return both(1 - seatTakes);
    case "keyed hub":
      return both(1 - seatTakes * (feature.keys ?? 1));
    case "transverse hole": {
      const x = feature.hole.si / diameter;
      return { bending: 1 - (16 * x) / (3 * Math.PI), torsion: 1 - (8 * x) / (3 * Math.PI) };
    }
    default:
      return both(1);
  }
}

/** 0.2 w/d + 1.1 h/d of a seat a quarter of the diameter wide and an eighth deep [-]. */
const seatTakes = 0.2 / 4 + 1.1 / 8;

function both(share: number): { readonly bending: number; readonly torsion: number } {
  return { bending: share, torsion: share };
}
