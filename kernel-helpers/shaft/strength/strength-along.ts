import { isQuantity, type Length } from "../../quantity/index.js";
import type { LengthGiven, ShaftDuty, ShaftPlace, ShaftStrength, TorqueGiven } from "./safety-types.js";
import { weakestPlace } from "./weakest-place.js";

/** What a shaft carries at a station, and what carries it there. */
export interface LoadsAtStation {
  /** DIAMETER. */
  readonly diameter: LengthGiven;
  readonly bore?: LengthGiven;
  readonly moment: TorqueGiven;
  readonly steadyMoment?: TorqueGiven;
  readonly torque: TorqueGiven;
  readonly torqueSwing?: TorqueGiven;
}

/** A place by its station; what it is given besides counts before what the station has. */
export type PlaceAlong = Pick<ShaftPlace, "name" | "feature"> &
  Partial<Omit<ShaftPlace, "name" | "feature" | "station">> & { readonly station: Length };

/**
 * The strength of a shaft at places given by their station, loads and diameter taken from what is known along the shaft,
 * e.g. from its bending.
 *
 * Valid when: as `weakestPlace`. At a step the smaller diameter counts; where the station's is the larger one, give the
 * place its own.
 *
 * @param at      gives diameter [m], moment and torque [N·m] at a station
 * @param places  name, station [m] and feature, and whatever of the loads or sizes is another there
 * @param duty    what holds for the whole shaft
 * @returns as `weakestPlace`, places in the order of their stations
 * @throws TypeError   a place without a station
 * @throws RangeError  as `weakestPlace`; what `at` throws, with the place named
 * @example
 * const at = (station) => ({ diameter: mm(60), moment: newton(1000).times(station), torque: newtonMetre(500) });
 * const duty = { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 2 };
 * const places = [{ name: "middle", station: mm(400), feature: { shape: "plain" } }, { name: "end", station: mm(100), feature: { shape: "keyed hub" } }];
 * strengthAlong(at, places, duty).weakest // "middle"
 * @source as `weakestPlace`
 */
export function strengthAlong(
  at: (station: Length) => LoadsAtStation,
  places: readonly PlaceAlong[],
  duty: ShaftDuty,
): ShaftStrength {
  const where = "strengthAlong";
  if (typeof at !== "function")
    throw new TypeError(
      `${where}: the first argument must give diameter, moment and torque at a station, got ${String(at)}`,
    );
  const loaded = places.map((place): ShaftPlace => {
    if (!isQuantity(place?.station, "length"))
      throw new TypeError(
        `${where}: ${String(place?.name)} must have a station with its unit, got ${String(place?.station)}`,
      );
    return { ...loadsAt(where, at, place), ...place };
  });
  return weakestPlace(
    loaded.sort((a, b) => a.station!.si - b.station!.si),
    duty,
  );
}

function loadsAt(
  where: string,
  at: (station: Length) => LoadsAtStation,
  { name, station }: PlaceAlong,
): LoadsAtStation {
  try {
    return at(station);
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    throw new RangeError(`${where}: ${name}, station ${station}: ${error.message}`, { cause: error });
  }
}
