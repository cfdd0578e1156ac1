/** A caution for one kind of work, shown where the hand would get hurt. */
export interface Caution {
  readonly kind: "caution";
  readonly title: string;
  readonly points: readonly string[];
}

const defers =
  "Local codes, the machine's own instructions and licensed practice come before anything written here.";

// The usual cautions of the trade: common practice, no source.
const cautions = {
  "shaft on supports": {
    title: "A shaft on supports rolls and falls",
    points: [
      "Weigh it or reckon its weight first; lift with slings and gear rated for it, and keep clear of what hangs.",
      "Chock it on vee blocks at both ends, and let nobody turn it while a hand is between shaft and block.",
      "Edges of wear bands and keyways cut: wipe with a rag, feel with the nail and not with the finger.",
      "Old oil, paint and white metal dust may hold lead: gloves, no food, wash before eating.",
    ],
  },
  "turning between centres": {
    title: "Turning between centres",
    points: [
      "A long shaft whips: support it with a steady, and start at the lowest speed.",
      "With the tailstock set over, the centres bear on an edge: drill them deep, grease them, and look at them often.",
      "Measure with the spindle stopped and the chuck key out; no gloves, sleeves or rags near turning work.",
      "Guard the dog and the overhanging end, and wear eye protection.",
    ],
  },
  "refitting a wheel": {
    title: "Heavy wheels on a shaft",
    points: [
      "Lift by gear rated for it, and block what is lifted before a hand goes under or between.",
      "A wheel on ways or in its boxes turns by itself to its heavy side: stand clear of spokes and rim, chock it when you leave.",
      "Hang masses so that they cannot fly or fall; never stand in the plane of the rim while it turns.",
      "Drill or add mass at the rim only, never at spokes or a crack; dust of old paint may hold lead.",
    ],
  },
  "first start": {
    title: "First start",
    points: [
      "Guards on, keys and set screws tight, tools and rags off, belts clear: one person checks, another checks again.",
      "Everybody out of the plane of every wheel, pulley and belt; the one at the stop lever stays there.",
      "No loose clothing, gloves, rings or long hair near a turning shaft; hearing and eye protection.",
      "Start at the lowest speed; stop at once for a knock, a smell or a box too hot to hold.",
      "Hot oil burns and can catch fire: a fire extinguisher for oil within reach, no water on it, no bare hand on a hot box.",
    ],
  },
} as const satisfies Readonly<Record<string, Omit<Caution, "kind">>>;

/** The kinds of work that have a caution. */
export type CautionTopic =
  | "shaft on supports"
  | "turning between centres"
  | "refitting a wheel"
  | "first start";

/**
 * The usual cautions for a kind of work, to stand in a worksheet before the work begins. They are reminders
 * for somebody who knows the trade, not instructions, and defer to local codes and licensed practice.
 *
 * @param topic  the work, e.g. "shaft on supports"
 * @throws RangeError  there is no caution for that work
 * @source common practice, no source
 */
export function caution(topic: CautionTopic): Caution {
  if (!Object.hasOwn(cautions, topic))
    throw new RangeError(
      `caution: topic must be one of ${Object.keys(cautions).join(", ")}, got ${String(topic)}`,
    );
  const { title, points } = cautions[topic];
  return Object.freeze({
    kind: "caution",
    title,
    points: Object.freeze([...points, defers]),
  });
}
