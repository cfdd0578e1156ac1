import type { PossibleCause } from "./run-in-types.js";

/** What was seen of one box, as yes or no. */
export interface BoxSigns {
  /** Hotter, or cooler, than foretold, by more than its uncertainty. */
  readonly hotter: boolean;
  readonly cooler: boolean;
  /** Its readings bend towards an end. */
  readonly settles: boolean;
  /** It is still rising with no end in sight, after long enough to expect one. */
  readonly risesOn: boolean;
  /** It had a crest in this stretch and fell since. */
  readonly pastCrest: boolean;
  /** It jumped between two readings by more than any steady heating does. */
  readonly jumped: boolean;
  /** Another box is as foretold, or cooler. */
  readonly othersFine: boolean;
  /** Every other box is hotter than foretold too. */
  readonly othersHotToo: boolean;
}

interface Sign {
  readonly holds: boolean;
  readonly text: string;
  readonly weight: number;
}

/**
 * What could make a box run hotter, cooler or less steadily than foretold, the likeliest first.
 *
 * A cause's weight is the sum of the weights of its signs that hold; one without a sign is left out. The weights say
 * an order, no probability.
 *
 * @param signs  what was seen
 * @returns causes with their signs and what to look at; none where nothing departs
 * @example possibleCauses({ hotter: false, cooler: false, settles: true, risesOn: false, pastCrest: false, jumped: false, othersFine: true, othersHotToo: false }).length // 0
 * @source common practice, no source
 */
export function possibleCauses(signs: BoxSigns): readonly PossibleCause[] {
  const { hotter, cooler, settles, risesOn, pastCrest, jumped, othersFine, othersHotToo } = signs;
  if (!(hotter || cooler || risesOn || pastCrest || jumped)) return Object.freeze([]);
  const sign = (holds: boolean, text: string, weight: number): Sign => ({ holds, text, weight });
  const hot = sign(hotter, "hotter than foretold", 1);
  const onlyThis = sign(hotter && othersFine, "the other box is not", 2);
  const causes: readonly (readonly [cause: string, look: string, ...signs: readonly Sign[]])[] = [
    [
      "starved of oil",
      "oil level, ring or wick turning, feed holes open, drops counted",
      hot,
      sign(risesOn, "rises on with no end in sight", 3),
      sign(jumped && hotter, "jumped between two readings", 1),
    ],
    [
      "clearance too small, or cap drawn too tight",
      "slack the cap by one shim; clearance by lead wire when stopped",
      hot,
      sign(hotter && settles, "but settles", 2),
    ],
    [
      "out of line, bearing on one edge",
      "compare the two ends of the box by hand and thermometer; contact spots when stopped",
      hot,
      onlyThis,
    ],
    [
      "belt too tight, or a heavier load than reckoned",
      "belt tension; run with the belt off and compare",
      hot,
      sign(hotter && othersHotToo, "the other box is hotter too", 2),
    ],
    [
      "room, oil or forecast not as reckoned",
      "oil grade and room against those of the forecast",
      sign(hotter && othersHotToo, "every box is off to the same side", 1),
      sign(cooler, "cooler than foretold", 1),
    ],
    [
      "bedding in: high spots wearing down",
      "keep on at this speed while it falls; contact spots when stopped",
      sign(pastCrest, "passed a crest and falls since", 3),
    ],
    [
      "dirt or a particle of metal between journal and bearing",
      "stop, feel the journal for scores, look at the oil",
      sign(jumped, "jumped between two readings", 2),
    ],
    [
      "clearance larger than planned, or the thermometer not at the hottest place",
      "move the thermometer to the loaded side; clearance by lead wire when stopped",
      sign(cooler, "cooler than foretold", 2),
    ],
  ];
  return Object.freeze(
    causes
      .map(([cause, look, ...all]) => {
        const held = all.filter(({ holds }) => holds);
        return Object.freeze({
          cause,
          look,
          signs: Object.freeze(held.map(({ text }) => text)),
          weight: held.reduce((sum, { weight }) => sum + weight, 0),
        });
      })
      .filter(({ weight }) => weight > 0)
      .sort((a, b) => b.weight - a.weight),
  );
}
