import { type Length, type Measured, measured } from "../../quantity/index.js";
import type { CornerRadius, ShaftPlace } from "../strength/index.js";
import { caseNumbers } from "./case-numbers.js";
import type { ShaftCase } from "./shaft-case.js";
import { shaftLoads } from "./shaft-loads.js";

/** The places of a shaft that matter, as `weakestPlace` takes them. */
export interface PlacesAs {
  /** DIAMETER of what carries at each box, in the order of the boxes; undefined: as made. */
  readonly turnedTo?: readonly Measured<Length>[];
  /** What the journals were made to, on DIAMETER. */
  readonly asMade: Measured<Length>;
  /** The corner where a turned journal ends. */
  readonly fillet: CornerRadius;
}

/**
 * The end of each journal and every seat of a load case, with its moment and torque: what `weakestPlace` judges, as
 * made or after a cut.
 *
 * Valid when: see `shaftLoads`. Of the two ends of a journal the one with the larger moment is taken; turned down it
 * ends in a shoulder, as made it is plain.
 *
 * @param shaft     the load case
 * @param as.turnedTo  a diameter for each box [m]; without it the shaft is as made
 * @param as.asMade    > 0 [m]
 * @param as.fillet    [m], or "sharp corner"
 * @returns places with moment and torque [N·m]
 * @throws RangeError  not a diameter for each box, or one that is not below what it was made to; and as `shaftLoads`
 * @source see `shaftLoads`
 */
export function shaftPlaces(shaft: ShaftCase, { turnedTo, asMade, fillet }: PlacesAs): readonly ShaftPlace[] {
  const where = "shaftPlaces";
  if (turnedTo !== undefined && turnedTo.length !== shaft.boxes.length)
    throw new RangeError(
      `${where}: turnedTo needs a diameter for each box (${shaft.boxes.map(({ name }) => name).join(", ")}), got ${turnedTo.length}`,
    );
  const { momentAt } = caseNumbers(where, shaft).carried({});
  const ends = shaft.boxes.map(({ name, from, to }) => ({
    name: `end of ${name}`,
    station: momentAt(from.si) >= momentAt(to.si) ? from : to,
  }));
  const loads = shaftLoads(shaft, ends);
  const loadOf = (name: string) => {
    const { moment, torque } = loads.places.find((place) => place.name === name)!;
    return { moment, torque };
  };
  return Object.freeze([
    ...ends.map(({ name, station }, i): ShaftPlace => {
      const diameter = turnedTo?.[i];
      if (diameter === undefined)
        return { name, station, diameter: asMade, ...loadOf(name), feature: { shape: "plain" } };
      if (!(diameter.value.si < asMade.value.si))
        throw new RangeError(
          `${where}: ${name} turned to ${diameter.value} is not below what it was made to, ${asMade.value}`,
        );
      const feature = { shape: "shoulder", larger: asMade.value, fillet } as const;
      return {
        name,
        station,
        diameter: measured(diameter.value, diameter.standardUncertainty),
        ...loadOf(name),
        feature,
      };
    }),
    ...shaft.seats.map((seat): ShaftPlace => ({ ...seat, ...loadOf(seat.name) })),
  ]);
}
