import {
  type Angle,
  type Force,
  isQuantity,
  type Length,
  type Measured,
  measured,
  type RotationalSpeed,
  type Torque,
} from "../../quantity/index.js";

/** What presses a journal on its box. */
export interface JournalLoad {
  readonly force: Measured<Force>;
  /**
   * Towards which side the journal is pressed: where the load stands still, from straight down, counter-clockwise as
   * `seenFrom` says; where it turns with the shaft, the mark of the shaft. Left out where nobody knows.
   */
  readonly direction?: Angle;
  /** From which end of the shaft a direction that stands still is seen, in words. */
  readonly seenFrom?: string;
  /** An unbalance turns with the shaft; belts and weight stand still. */
  readonly turnsWithShaft: boolean;
}

/** A journal as it is to be finished. */
export interface JournalGiven {
  /** As the box it runs in is called. */
  readonly name: string;
  /** Stations where it begins and ends. */
  readonly from: Length;
  readonly to: Length;
  /** The finished DIAMETER, with the uncertainty it is turned and measured to. */
  readonly diameter: Measured<Length>;
  readonly load?: JournalLoad;
  /** How far the shaft leans in the box under its load: change of deflection per length [-], not below 0. */
  readonly slope?: Measured<number>;
}

export interface FinishedJournal extends JournalGiven {
  /** From end to end. */
  readonly length: Length;
}

/** What of the shaft the boxes are made to. */
export interface FinishedJournals {
  readonly kind: "finished journals";
  /** In the order of their stations. */
  readonly journals: readonly FinishedJournal[];
  readonly speed?: RotationalSpeed;
  /** That the shaft carries. */
  readonly torque?: Torque;
}

/**
 * The journals as they are to be finished, for all that is made to them: pour, fit, running, turning.
 *
 * length = to − from
 *
 * @param given.journals  each with a name of its own; stations, diameter [m] > 0, load [N] ≥ 0, slope [-] ≥ 0; none
 * may lie over another
 * @param given.speed   of the shaft, > 0 [rad/s]
 * @param given.torque  that the shaft carries, ≥ 0 [N·m]
 * @returns the journals in the order of their stations, with their lengths [m]
 * @throws RangeError  no journal, two of one name or over one another, a stretch the wrong way round, a diameter not
 * above 0, a load below 0, or a direction that stands still and does not say from where it is seen
 * @example
 * const size = measured(inch(2.425), inch(0.0002));
 * const box = { name: "pulley box", from: inch(5.5), to: inch(13.5), diameter: size };
 * finishedJournals({ journals: [box], speed: rpm(110) }).journals[0].length.in("inch") // 8
 */
export function finishedJournals(given: {
  readonly journals: readonly JournalGiven[];
  readonly speed?: RotationalSpeed;
  readonly torque?: Torque;
}): FinishedJournals {
  const { journals, speed, torque } = given;
  const where = "finishedJournals";
  if (!Array.isArray(journals) || journals.length === 0)
    throw new RangeError(`${where}: at least one journal must be given, got none`);
  const list = journals.map(journalOf).sort((a, b) => a.from.si - b.from.si);
  list.slice(1).forEach((next, i) => {
    const before = list[i]!;
    if (next.from.si < before.to.si)
      throw new RangeError(
        `${where}: journals must not lie over one another, got "${before.name}" to ${before.to} and "${next.name}" from ${next.from}`,
      );
  });
  const names = list.map(({ name }) => name);
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (twice !== undefined)
    throw new RangeError(`${where}: each journal must have a name of its own, got two called "${twice}"`);
  if (speed !== undefined && !(speed.si > 0))
    throw new RangeError(`${where}: speed must be above 0, got ${speed}`);
  if (torque !== undefined && !(torque.si >= 0))
    throw new RangeError(`${where}: torque must be 0 or more, got ${torque}`);
  return Object.freeze<FinishedJournals>({
    kind: "finished journals",
    journals: Object.freeze(list),
    ...(speed === undefined ? {} : { speed }),
    ...(torque === undefined ? {} : { torque }),
  });
}

function journalOf(given: JournalGiven): FinishedJournal {
  const { name, from, to, diameter, load, slope } = given;
  const where = `finishedJournals: "${name}"`;
  if (typeof name !== "string" || name.trim() === "")
    throw new RangeError(`finishedJournals: each journal must have a name, got ${JSON.stringify(name)}`);
  if (!isQuantity(from, "length") || !isQuantity(to, "length") || !(to.si > from.si))
    throw new RangeError(`${where} must run from a lower to a higher station, got ${from} to ${to}`);
  if (diameter?.kind !== "measured" || !(diameter.value.si > 0))
    throw new RangeError(
      `${where}: diameter must be a measured length above 0, e.g. measured(inch(2.425), inch(0.0002)), got ${diameter?.value ?? diameter}`,
    );
  if (load !== undefined && !(load.force.value.si >= 0))
    throw new RangeError(`${where}: the load must be 0 or more, got ${load.force.value}`);
  if (
    load?.direction !== undefined &&
    !load.turnsWithShaft &&
    (load.seenFrom === undefined || load.seenFrom.trim() === "")
  )
    throw new RangeError(
      `${where}: a load that stands still needs seenFrom, the end of the shaft from which its direction is seen`,
    );
  if (slope !== undefined && !(slope.value >= 0))
    throw new RangeError(`${where}: slope must be 0 or more, got ${slope.value}`);
  return Object.freeze<FinishedJournal>({
    name,
    from,
    to,
    diameter,
    ...(load === undefined ? {} : { load: Object.freeze({ ...load }) }),
    ...(slope === undefined ? {} : { slope: measured(slope.value, slope.standardUncertainty) }),
    length: to.minus(from),
  });
}
