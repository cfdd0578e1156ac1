import { oilEnergy, type StoredEnergy, springEnergy } from "../intake/index.js";
import { type Pressure, quantityFromSi, type Volume } from "../quantity/index.js";
import { requireQuantity } from "./fit-check.js";
import { quantityLike } from "./quantity-like.js";
import type { PressRig } from "./rig-types.js";

/** The oil of a jack. */
export interface JackOil {
  /** On its plate: the pressure at its rated capacity. */
  readonly fullPressure: Pressure;
  /** Under pressure outside the ram: hose and pump. */
  readonly hose: Volume;
}

/**
 * What a press holds while it stands at its rating, before the hub lets go: the spring of beam and rods, and the oil.
 *
 * spring: ½·F·s, F the rating, s what beam and rods give; oil: `oilEnergy` at p = p₀·F/capacity, volume = hose +
 * capacity/p₀ · ram needed
 *
 * Valid when: nobody pumps beyond the rating. A hose that swells holds more than the oil does.
 *
 * @param rig  as `pressRig` returns it
 * @param oil.fullPressure  at the jack's capacity, > 0 [Pa]
 * @param oil.hose  volume of hose and pump, 0 or more [m³]
 * @returns both stores, for `storedEnergies` [J]
 * @throws RangeError  a value is out of its range
 * @example
 * const plain = material("steel A36");
 * const rig = pressRig({
 *   jack: { capacity: shortTonForce(50), stroke: inch(6) },
 *   rods: { thread: "1 1/4-7 UNC", proof: ksi(74), span: inch(10), length: inch(26) },
 *   beam: { section: { width: inch(1.25), height: inch(5), bars: 2 }, material: plain },
 *   plate: { width: inch(8), thickness: inch(2.5), slot: inch(2.625), material: plain },
 *   hub: { face: inch(5.5), length: inch(4.25), material: material("grey iron class 20") },
 *   shaft: { end: inch(1.75), material: material("steel") },
 *   release: inch(0.25),
 * }, lbf(20000));
 * pressStores(rig, { fullPressure: psi(10000), hose: inch3(10) }).map(({ store }) => store) // ["press under load", "oil under pressure"]
 * @source elasticity; see `springEnergy` and `oilEnergy`
 */
export function pressStores(rig: PressRig, oil: JackOil): readonly StoredEnergy[] {
  const { rating, spring, ram } = rig;
  const { capacity } = rig.rig.jack;
  const where = "pressStores";
  requireQuantity(where, "oil.fullPressure", oil.fullPressure, "pressure", "more than 0");
  requireQuantity(where, "oil.hose", oil.hose, "volume", "0 or more");
  const area = capacity.si / oil.fullPressure.si;
  const pressure = quantityLike(oil.fullPressure, (oil.fullPressure.si * rating.si) / capacity.si);
  const volume = quantityFromSi("volume", oil.hose.si + area * ram.needed.si, oil.hose.writtenIn);
  return Object.freeze([
    springEnergy("press under load", "spring of the rig", rating, spring.beam.plus(spring.rods)),
    oilEnergy("oil of the jack", pressure, volume),
  ]);
}
