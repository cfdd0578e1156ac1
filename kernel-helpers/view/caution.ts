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
  "loading a repaired shaft": {
    title: "A reckoned factor is no proof: look for cracks before it is loaded",
    points: [
      "A fatigue crack leaves nothing to see until the day it breaks: dye penetrant or magnetic particles at every keyseat, step, hole and end of a hub, on clean bare metal, before the cut and after it.",
      "One crack ends the reckoning: no factor here holds for a cracked, rust-pitted, welded or once bent shaft.",
      "A keyseat's corner, a tool mark across the shaft and a stamped number are where the next crack begins: round and polish, and stamp on the end face only.",
      "Where a break would drop a wheel or throw a belt on somebody, a licensed engineer checks loads, steel and factor, and signs.",
      "First under load: guards on, nobody in the plane of wheels and belts; look at the same places again after the first days.",
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
  "pressing off a hub": {
    title: "Pressing off a hub: it lets go all at once",
    points: [
      "Never stand in line with the shaft, the jack or the rods; pump from the side, with a screen or a heavy mat over the rig.",
      "Leave the hold-back nut on by a few threads, with wood between it and the hub: it catches the hub when it breaks loose.",
      "Carry the hub in a sling or on blocks before it is loose, and chock the shaft against its slide; cushion with wood where either may go.",
      "A jack lying on its side may not pump, and tips: use one made for it, on the shaft's axis, with a pad over the centre hole.",
      "Iron breaks without warning: pull on the hub, never on the rim or the spokes, and no hammer on a rig under load. A crack or a tick that is heard: let the pressure off.",
      "Go up in steps, wait at each, and stop at the rating of the weakest part. Let the pressure off before a hand goes near.",
    ],
  },
  "heating a hub": {
    title: "Heating a hub",
    points: [
      "A closed hollow in a casting bursts when heated: sound it, look for plugs, and drill it open first. Grease and water in a bore do the same.",
      "Iron cracks from uneven heat: warm it slowly and all round, keep the flame moving, never quench it.",
      "Measure the heat with a crayon or a gauge, on hub and shaft; stop at the ceiling of what is nearest: white metal, paint, temper.",
      "Old paint and oil give lead and other fumes: strip them first, work in the open air, with a breathing mask made for it.",
      "Wipe away soaking oil before the flame; an extinguisher at hand, a watch kept for an hour after. Gloves: hot iron looks like cold iron.",
      "No flame near a jack's hoses and seals, nor on rods and beam of a rig under load.",
    ],
  },
  "seized fasteners": {
    title: "A seized nut lets go all at once",
    points: [
      "Find the hand of the thread before anybody pulls: a left-hand nut pulled the usual way tightens until its stud breaks.",
      "Pull steadily towards you, never push; stand so that you do not fall when it lets go, with nobody in line with the wrench.",
      "A wrench that fits all flats, square on: no worn jaw, no pipe over a wrench that was not made for it; a spring balance on the end shows the pull.",
      "Block shaft and wheel so that neither can turn, and mark nut against stud before the first pull.",
      "Eye protection when anything is struck; no hardened hammer on a hardened part.",
    ],
  },
  "heating parts": {
    title: "Heat: coatings, oil, hollows and brittle iron",
    points: [
      "Zinc and cadmium plating, galvanizing, lead paint and old white metal give off poisonous fumes: strip them well back, ventilate, and wear the right respirator.",
      "Penetrating oil and grease burn: wipe dry before a flame, with a helper and an extinguisher beside you.",
      "A closed hollow casting, a plugged shaft or a trapped pocket of oil can burst: drill or open it first.",
      "Cast iron cracks from uneven heat: warm it slowly and all round, never quench it, and keep the flame moving.",
      "White metal in a near box softens long before it melts: shield it with wet rags and feel it often.",
      "Hot metal looks like cold metal: mark it, and wear gloves made for heat.",
    ],
  },
  "lifting and stored energy": {
    title: "What hangs, what turns, what is wound up",
    points: [
      "Lock and tag every source of power, the belt thrown off and the sluice shut; block what could still turn it.",
      "A wheel on a shaft keeps turning: let it run down, and block the heavy side at the bottom before a hand goes in.",
      "Weigh or reckon before lifting; slings and gear rated for it, one person giving signals, nobody under a load.",
      "Let down weights and ease springs and belts before a bolt is slackened.",
      "A part lifted out of balance swings: sling it at its centre of mass, and try it a hand's breadth first.",
    ],
  },
  "pouring white metal": {
    title: "Pouring white metal: one drop of water throws the whole pot",
    points: [
      "Water under molten metal flashes to steam and throws it at the face: everything that the metal touches, shell, mandrel, dams, ladle, ingots, tools, is heated above boiling and kept so first. No damp putty, no rust scale, no wet floor.",
      "Face shield over glasses, leather apron and boots that shed metal, gauntlets, trousers over the boots; nobody in front of riser or vents.",
      "Lead, antimony, cadmium and zinc: fume and dross poison. OSHA's limit for lead in air is 50 µg/m³ over 8 hours, action from 30 µg/m³ on (29 CFR 1910.1025): pour under a hood or in the open, wear what the limits ask for, no food, wash, leave the clothes there.",
      "Old metal of unknown make may hold cadmium or zinc, and old boxes oil and paint: have it tested, or buy new metal by its number; never heat it to find out.",
      "Watch the pot with a thermometer, not by eye: overheated, it fumes and may burn; flames, oil and solvents far off, dry sand and a fire extinguisher for metal within reach, no water.",
      "Two people, one of them only to watch; a way out behind. It burns long after it looks solid.",
      "Dross, turnings and dust are hazardous waste: a closed, named tin, never the bin; no dry sweeping, no blowing.",
    ],
  },
  "scraping a bearing": {
    title: "Scraping a bearing",
    points: [
      "Scrapings of white metal hold lead: wet rag or vacuum with a fine filter, no blowing out, no food, wash before eating.",
      "The shaft is turned by hand with power locked off and the belt off; no hand between journal and box when it is let down.",
      "A scraper is a knife: cut away from the hand, and put it down in its cover. Marking blue only thin: rags with oil go into a closed tin.",
    ],
  },
} as const satisfies Readonly<Record<string, Omit<Caution, "kind">>>;

/** The kinds of work that have a caution. */
export type CautionTopic =
  | "shaft on supports"
  | "turning between centres"
  | "loading a repaired shaft"
  | "refitting a wheel"
  | "first start"
  | "pressing off a hub"
  | "heating a hub"
  | "pouring white metal"
  | "scraping a bearing"
  | "seized fasteners"
  | "heating parts"
  | "lifting and stored energy";

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
