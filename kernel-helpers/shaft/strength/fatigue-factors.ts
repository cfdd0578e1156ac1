import type { Length, Pressure } from "../../quantity/index.js";
import type { ShaftFeature, StressConcentration } from "./feature-types.js";
import { notchSensitivity } from "./notch-sensitivity.js";
import { stressConcentration, stressPeaks } from "./stress-concentration.js";

/** How much a feature of a shaft of a certain steel raises the stress that fatigue feels. */
export interface FatigueFactors {
  /** K_f, in bending [-]. */
  readonly bending: number;
  /** K_fs, in torsion [-]. */
  readonly torsion: number;
  readonly concentration: StressConcentration;
}

/**
 * The fatigue stress concentration factors of a feature in a steel: the elastic factors brought down by the notch
 * sensitivity, peak by peak, the largest taken; or the measured factors of hubs.
 *
 * K_f = 1 + q (K_t − 1). Hub pressed on: 2.7 (S/1000)^0.43, in torsion 0.65 of it; hub on a key: 3.0 (S/1000)^0.38 (two
 * keys: 1.15 times), in torsion 0.56 of it + 0.1; S tensile strength [MPa], 40 mm shaft; other sizes times K₃(40)/K₃(d),
 * K₃ = 1 − 0.2 lg K_f lg(d/7.5 mm)/lg 20.
 *
 * Valid when: see `stressConcentration`; hubs: 400 to 1200 MPa (softer steel as of 400, the safe side).
 *
 * @param feature   what is at the place
 * @param diameter  of the place [m], > 0
 * @param tensile   tensile strength [Pa]
 * @returns K_f and K_fs [-], not below 1, and where they come from
 * @throws RangeError  see `stressConcentration`; a hub on steel above 1200 MPa
 * @example fatigueFactors({ shape: "shoulder", larger: inch(1.65), fillet: inch(0.11) }, inch(1.1), ksi(105)).bending // 1.632
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, equation 6-32; DIN 743-2:2012, notch factors of
 * keys and press fits (read in public copies of the formulas; K₃ from memory)
 */
export function fatigueFactors(feature: ShaftFeature, diameter: Length, tensile: Pressure): FatigueFactors {
  return Object.freeze({
    ...fatigueNumbers(feature, diameter, tensile),
    concentration: stressConcentration(feature, diameter),
  });
}

/** The two factors alone, for whoever asks ten thousand times. See `fatigueFactors`. */
export function fatigueNumbers(
  feature: ShaftFeature,
  diameter: Length,
  tensile: Pressure,
): Pick<FatigueFactors, "bending" | "torsion"> {
  const peaks = stressPeaks(feature, diameter);
  if (feature.shape === "press-fitted hub" || feature.shape === "keyed hub")
    return hub(feature, diameter, tensile);
  let [bending, torsion] = [1, 1];
  for (const peak of peaks) {
    const q = peak.radius === undefined ? { bending: 1, torsion: 1 } : notchSensitivity(peak.radius, tensile);
    bending = Math.max(bending, 1 + q.bending * (peak.bending - 1));
    torsion = Math.max(torsion, 1 + q.torsion * (peak.torsion - 1));
  }
  return { bending, torsion };
}

function hub(
  feature: ShaftFeature,
  diameter: Length,
  tensile: Pressure,
): Pick<FatigueFactors, "bending" | "torsion"> {
  const megapascals = tensile.in("megapascal");
  if (megapascals > 1200)
    throw new RangeError(`fatigueFactors: the factors of hubs are for steel up to 1200 MPa, got ${tensile}`);
  const s = Math.max(400, megapascals) / 1000;
  const pressed = feature.shape === "press-fitted hub";
  const twoKeys = feature.shape === "keyed hub" && feature.keys === 2;
  const bending = pressed ? 2.7 * s ** 0.43 : 3 * s ** 0.38 * (twoKeys ? 1.15 : 1);
  const torsion = pressed ? 0.65 * bending : 0.56 * bending + 0.1;
  const sized = (factor: number): number => {
    const sizeFactor = (d: number): number =>
      1 - (0.2 * Math.log10(factor) * Math.log10(d / 7.5)) / Math.log10(20);
    return (factor * sizeFactor(40)) / sizeFactor(Math.min(150, Math.max(7.5, diameter.in("mm"))));
  };
  return { bending: Math.max(1, sized(bending)), torsion: Math.max(1, sized(torsion)) };
}
