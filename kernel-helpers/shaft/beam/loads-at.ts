import { type Length, type Measured, measured, quantityFromSi, type Torque } from "../../quantity/index.js";
import type { BendingStation, ShaftBending } from "./bending-types.js";

/**
 * What a bent shaft carries at a station, for its strength there: use as `strengthAlong(at => loadsAt(bending, at), …)`.
 *
 * Moment, with its uncertainty, on the straight line between the two stations reckoned beside it; torque of the nearer one;
 * diameter of the smaller.
 *
 * @param bending  of `shaftBending`
 * @param station  on the shaft [m]
 * @returns DIAMETER and bore [m], resultant moment and torque [N·m]
 * @throws RangeError  the station is not on the shaft
 * @example
 * const stretches = [{ from: mm(0), to: mm(1000), diameter: mm(50) }];
 * const model = { stretches, material: material("steel"), supports: [{ name: "a", at: mm(0) }, { name: "b", at: mm(1000) }] };
 * const pulls = [{ name: "belt", at: mm(500), force: newton(1000), direction: degree(0) }];
 * loadsAt(shaftBending({ ...model, pulls, ownWeight: false }), mm(250)).moment.value.in("newtonMetre").toFixed(0) // "125"
 * @source straight line between stations: exact between point loads
 */
export function loadsAt(
  bending: ShaftBending,
  station: Length,
): {
  readonly diameter: Length;
  readonly bore?: Length;
  readonly moment: Measured<Torque>;
  readonly torque: Measured<Torque>;
} {
  const { stations } = bending;
  const [first, last] = [stations[0]!, stations.at(-1)!];
  const slack = 1e-9 * (last.station.si - first.station.si);
  if (!(station.si >= first.station.si - slack && station.si <= last.station.si + slack))
    throw new RangeError(
      `loadsAt: the station must lie on the shaft, from ${first.station} to ${last.station}, got ${station}`,
    );
  const near = stations.find((s) => Math.abs(s.station.si - station.si) <= slack);
  if (near !== undefined) return of(near, near.moment);
  const behind = stations.findIndex((s) => s.station.si > station.si);
  const [a, b] = [stations[behind - 1]!, stations[behind]!];
  const t = (station.si - a.station.si) / (b.station.si - a.station.si);
  const si = (1 - t) * a.moment.value.si + t * b.moment.value.si;
  const u = (1 - t) * a.moment.standardUncertainty.si + t * b.moment.standardUncertainty.si;
  const torque = (x: number): Torque =>
    quantityFromSi("torque or energy", x, a.moment.value.writtenIn as "newtonMetre");
  const thinner = a.diameter.si < b.diameter.si ? a : b;
  return of(
    { ...(t < 0.5 ? a : b), diameter: thinner.diameter, bore: thinner.bore },
    measured(torque(si), torque(u)),
  );
}

function of(
  { diameter, bore, torque }: BendingStation,
  moment: Measured<Torque>,
): ReturnType<typeof loadsAt> {
  return Object.freeze({ diameter, ...(bore === undefined ? {} : { bore }), moment, torque });
}
