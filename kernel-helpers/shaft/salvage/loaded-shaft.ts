import type { ShaftModel, ShaftStretch } from "../beam/index.js";
import { caseNumbers } from "./case-numbers.js";
import type { ShaftCase } from "./shaft-case.js";

/**
 * A load case on a stepped shaft, as `shaftBending` and `criticalSpeeds` take it: each box holds in its middle, each
 * wheel weighs and is pulled by its belt, torque runs from the first wheel to the last.
 *
 * Valid when: see `shaftLoads`, `shaftBending`. The own weight is that of the stretches, whatever the case says of it.
 * The pulls come as independent; `compareShafts` keeps together what they owe to one power.
 *
 * @param shaft      the load case
 * @param stretches  of the whole shaft, as made or after a cut: DIAMETERS from end to end [m]
 * @param material   of the handbook, or modulus [Pa] and density [kg/m³]
 * @returns the model
 * @throws RangeError  the load case is empty or not determined by two boxes
 * @example
 * const belt = beltPulls({ power: hp(5), speed: rpm(110), diameter: inch(30), wrap: degree(170), friction: { low: 0.3, high: 0.3 }, towards: degree(270) });
 * const box = (name, from) => ({ name: name, from: inch(from), to: inch(from + 8) });
 * const wheel = { name: "pulley", station: inch(29), mass: pound(60), belt: belt };
 * const duty = { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 1.5 };
 * const shaft = { loadCase: "5 hp", boxes: [box("near box", 5), box("far box", 45)], wheels: [wheel], seats: [], duty: duty };
 * const bar = [{ from: inch(0), to: inch(58), diameter: inch(2.4375) }];
 * shaftBending(loadedShaft(shaft, bar, material("steel"))).largestMoment.station.in("inch") // 29
 */
export function loadedShaft(
  shaft: ShaftCase,
  stretches: readonly ShaftStretch[],
  material: ShaftModel["material"],
): ShaftModel {
  caseNumbers("loadedShaft", shaft);
  const { boxes, wheels } = shaft;
  const along = [...wheels].sort((a, b) => a.station.si - b.station.si);
  const [first, last] = [along[0]!, along.at(-1)!];
  return Object.freeze<ShaftModel>({
    stretches,
    material,
    supports: boxes.map(({ name, from, to, stiffness }) => ({
      name,
      at: from.plus(to.minus(from).over(2)),
      ...(stiffness === undefined ? {} : { stiffness }),
    })),
    wheels: wheels.map(({ name, station, mass, polarInertia }) => ({
      name,
      at: station,
      mass,
      ...(polarInertia === undefined ? {} : { polarInertia }),
    })),
    pulls: wheels.map(({ name, station, belt }) => ({
      name: `belt on ${name}`,
      at: station,
      force: belt.pull,
      direction: belt.direction!,
    })),
    torques:
      first === last
        ? []
        : [{ name: "torque", from: first.station, to: last.station, torque: first.belt.torque }],
  });
}
