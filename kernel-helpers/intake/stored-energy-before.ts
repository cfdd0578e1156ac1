import type { EnergyStore } from "./stored-energy-types.js";

/**
 * What is done about a store of energy before work begins: reminders, under local codes and licensed practice.
 *
 * @example beforeWork["raised mass"].length // 2
 * @source lock-out and blocking of stored energy: OSHA 29 CFR 1910.147(d)(5) (read); the rest common practice, no
 * source
 */
export const beforeWork: Readonly<Record<EnergyStore, readonly string[]>> = Object.freeze({
  "turning wheel": [
    "lock and tag what drives it, and let it run down by itself; no bar or board into the spokes",
    "when it stands, let its heavy side hang down and chock the rim",
  ],
  "raised mass": [
    "let it down, or block it from below on timber that carries it; a jack or a hoist is no block",
    "nobody under it, and no bolt slackened that holds it up",
  ],
  spring: [
    "ease it step by step on a screw longer than its way, and stay out of its line",
    "where it cannot be eased, clamp it so that it cannot move, and tag it",
  ],
  "tight belt": [
    "lock the drive, ease the tightener, then throw the belt off by hand turning; never with the shaft under power",
    "cut a belt only when it hangs slack",
  ],
  "press under load": [
    "let the pressure off before a hand goes near; pump from the side, screen the rig, hold-back nut on",
  ],
  "oil under pressure": [
    "open the release valve and see the gauge at zero; then look whether the ram still carries",
    "a jet from a pinhole goes through the skin: look for leaks with a card, never with a hand",
  ],
  "closed hollow": [
    "sound it for hollows and drill it open at its thin side, away from faces, before any heat",
    "no flame on anything that may hold water, oil or grease inside",
  ],
});
