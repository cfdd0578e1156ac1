import { type Length, type Measured, measured, quantityFromSi } from "../quantity/index.js";
import type { TaperFit } from "./profile-types.js";

/**
 * The station at which a taper has a given diameter, by its fitted line: where it runs out into the shaft, or
 * where a hub of that bore sits.
 *
 * x = x₀ + (d − d₀)/t, with d₀ at the end of the readings nearer to d;
 * u(x)² = [u(d)² + u(d₀)² + (x − x₀)²·u(t)²]/t²
 *
 * Valid when: the taper goes on straight to there. Taking the end's diameter and the taper as independent
 * makes u a little too large between the ends.
 *
 * @param taper     the fitted taper
 * @param diameter  the diameter with its standard uncertainty [m]
 * @returns station [m] with its standard uncertainty [m]
 * @throws RangeError  the taper is 0 within its uncertainty: no station can be told
 * @source JCGM 100:2008 (GUM), 5.1.2, equation 10
 */
export function stationOfDiameter(taper: TaperFit, diameter: Measured<Length>): Measured<Length> {
  const t = taper.taper.value;
  if (Math.abs(t) <= 2 * taper.taper.standardUncertainty)
    throw new RangeError(
      `stationOfDiameter: the taper must differ from 0, got ${t} with standard uncertainty ${taper.taper.standardUncertainty}`,
    );
  const d = diameter.value.si;
  const [near] = [taper.smallEnd, taper.largeEnd].sort(
    (a, b) => Math.abs(a.diameter.value.si - d) - Math.abs(b.diameter.value.si - d),
  );
  const away = (d - near!.diameter.value.si) / t;
  const u =
    Math.hypot(
      diameter.standardUncertainty.si,
      near!.diameter.standardUncertainty.si,
      away * taper.taper.standardUncertainty,
    ) / Math.abs(t);
  const length = (si: number): Length => quantityFromSi("length", si, near!.station.writtenIn);
  return measured(length(near!.station.si + away), length(u), taper.taper.degreesOfFreedom);
}
