import { type Material, material } from "../handbook/index.js";
import {
  formatNumber,
  isTemperature,
  type Length,
  type Mass,
  type Power,
  type Quantity,
  quantityFromSi,
  systemOf,
  type Temperature,
  type Time,
} from "../quantity/index.js";
import { requireQuantity } from "./fit-check.js";
import { shapeOf } from "./fit-input.js";
import { twoBodies } from "./heating-bodies.js";
import { type CaseOutcome, followCase } from "./heating-case.js";
import type { HeatingCase, HeatingInput, HeatingPlan } from "./heating-types.js";
import type { HubFit } from "./hub-fit-types.js";

/**
 * Heat conducted across a tight metal joint, in W/(m²·K): poor where rust or air lies between, good where it is
 * bright and pressed.
 *
 * @example jointConductance.low.si // 1000
 * @source textbook ranges of thermal contact conductance for machined metals (from memory)
 */
export const jointConductance: {
  readonly low: Quantity<"heat transfer coefficient">;
  readonly high: Quantity<"heat transfer coefficient">;
} = Object.freeze({
  low: quantityFromSi("heat transfer coefficient", 1000),
  high: quantityFromSi("heat transfer coefficient", 5000),
});

/**
 * A hub heated on its shaft: when it comes loose (or so far that the press does the rest), how long it stays so while
 * the shaft warms after it, and the tension that uneven heat adds at its bore.
 *
 * Two bodies that share heat across the joint, see `twoBodies` and `warmthAt`, in three cases: easy (least
 * interference, most power, poorest contact), middle, and hard (the reverse). The flame is taken off when the hub has
 * reached what it may.
 *
 * Valid when: the flame is moved all round so that the hub warms evenly, the shaft is cold at first, and the heat given
 * is what goes INTO the hub. A wet rag or ice on the shaft makes the window longer than this.
 *
 * @param input.fit          the fit, from `hubFit`
 * @param input.power        into the hub [W]
 * @param input.room         at the start [K]
 * @param input.hubMass      of the hub alone [kg], default by its sizes
 * @param input.hottest      of the hub [K], default that of its metal
 * @param input.remaining    interference that may be left, on diameter [m], default 0
 * @param input.conductance  of the joint [W/(m²·K)], default `jointConductance`
 * @returns three cases with times [s], temperatures [K], tension [Pa]; verdict
 * @throws RangeError  the ceiling is above what the metal stands or not above the room, or a figure is impossible
 * @example
 * const hub = { material: material("grey iron class 20"), outside: inch(5.5) };
 * const shaft = { material: material("steel") };
 * const seat = { diameter: inch(2.25), length: inch(4.5), interference: thou(0.4), friction: 0.3 };
 * heatingPlan({ fit: hubFit({ ...seat, hub, shaft }), power: kilowatt(8), room: degF(65) }).verdict // "yes"
 * @source lumped bodies: textbook of heat transfer; formulas derived, see `twoBodies`
 */
export function heatingPlan(input: HeatingInput): HeatingPlan {
  const where = "heatingPlan";
  const { fit, room } = input;
  const [hubMetal, shaftMetal] = [material(fit.hub.material), material(fit.shaft.material)];
  const hottest = ceilingOf(where, input, hubMetal);
  const power = shapeOf(where, "power", input.power);
  if (!(power.low > 0 && power.high <= 1e6))
    throw new RangeError(
      `${where}: power must be more than 0 and what a torch can give, got ${formatNumber(power.low)} to ${formatNumber(power.high)} W`,
    );
  const conductance = shapeOf(where, "conductance", input.conductance ?? jointConductance);
  if (!(conductance.low > 0))
    throw new RangeError(`${where}: conductance must be more than 0, got ${conductance.low}`);
  const inch = systemOf(fit.diameter.writtenIn ?? "mm") === "inch";
  const remaining = input.remaining ?? quantityFromSi("length", 0, inch ? "thou" : "micrometre");
  requireQuantity(where, "remaining", remaining, "length", "0 or more");
  const hubMass = input.hubMass ?? massOf(fit, hubMetal, inch);
  requireQuantity(where, "hubMass", hubMass, "mass", "more than 0");

  const cases = (["easy", "middle", "hard"] as const).map((name): HeatingCase => {
    const end = { easy: "low", middle: "middle", hard: "high" } as const;
    const watts = name === "easy" ? power.high : name === "hard" ? power.low : power.middle;
    const interference = fit.interference[end[name]];
    const outcome = followCase({
      bodies: bodiesOf(fit, hubMetal, shaftMetal, hubMass, conductance[end[name]]),
      power: watts,
      diameter: fit.diameter.si,
      interference: interference.si,
      remaining: remaining.si,
      hubExpansion: fit.hub.expansion.si,
      shaftExpansion: fit.shaft.expansion.si,
      hottest: hottest.kelvin - room.kelvin,
      coldTension: fit.hubStress.stress[end[name]].si,
      perLead: (hubMetal.modulus.value.si * fit.hub.expansion.si) / (1 - hubMetal.poisson.value),
    });
    return caseOf(name, outcome, watts, interference, fit, room, inch);
  }) as [HeatingCase, HeatingCase, HeatingCase];

  const strength = fit.hubStress.strength;
  const gentle = cases.every(({ tension }) => tension.si <= gentleShare * strength.si);
  const [easy, , hard] = cases;
  return Object.freeze<HeatingPlan>({
    kind: "heating plan",
    hubMaterial: fit.hub.material,
    hubMass,
    room,
    hottest,
    remaining,
    cases: Object.freeze(cases),
    verdict: hard.opens !== undefined ? "yes" : easy.opens === undefined ? "no" : "cannot tell yet",
    strength,
    gentle,
    warnings: Object.freeze(warningsFor(hubMetal, gentle, fit)),
  });
}

/** Of its strength, what the hub is kept below while it is heated [-]. Common practice, no source. */
const gentleShare = 2 / 3;

function ceilingOf(where: string, { hottest, room }: HeatingInput, metal: Material): Temperature {
  if (!isTemperature(room))
    throw new TypeError(`${where}: room must be a temperature (degF, degC), got ${String(room)}`);
  const ceiling = hottest ?? metal.hottest.value;
  if (!isTemperature(ceiling))
    throw new TypeError(`${where}: hottest must be a temperature (degF, degC), got ${String(ceiling)}`);
  if (ceiling.kelvin > metal.hottest.value.kelvin + 1e-9)
    throw new RangeError(
      `${where}: hottest must not be above ${metal.hottest.value} for ${metal.name} (${metal.hottest.why}), got ${ceiling}`,
    );
  if (!(ceiling.kelvin > room.kelvin))
    throw new RangeError(`${where}: hottest must be above the room (${room}), got ${ceiling}`);
  return ceiling;
}

function massOf(fit: HubFit, metal: Material, inch: boolean): Mass {
  const volume = (Math.PI / 4) * (fit.hub.outside.si ** 2 - fit.diameter.si ** 2) * fit.length.si;
  return quantityFromSi("mass", volume * metal.density.value.si, inch ? "pound" : "kilogram");
}

function bodiesOf(fit: HubFit, hub: Material, shaft: Material, hubMass: Mass, conductance: number) {
  return twoBodies({
    diameter: fit.diameter.si,
    outside: fit.hub.outside.si,
    length: fit.length.si,
    hubMass: hubMass.si,
    hubSpecificHeat: hub.specificHeat.value.si,
    hubConductivity: hub.conductivity.value.si,
    shaftDensity: shaft.density.value.si,
    shaftSpecificHeat: shaft.specificHeat.value.si,
    shaftConductivity: shaft.conductivity.value.si,
    conductance,
  });
}

function caseOf(
  name: HeatingCase["name"],
  outcome: CaseOutcome,
  watts: number,
  interference: Length,
  fit: HubFit,
  room: Temperature,
  inch: boolean,
): HeatingCase {
  const seconds = (si: number): Time => quantityFromSi("time", si, "minute");
  const warmer = (si: number) => quantityFromSi("temperature difference", si, inch ? "deltaF" : "deltaC");
  const power = (si: number): Power => quantityFromSi("power", si, "kilowatt");
  const { opens, closes } = outcome;
  return Object.freeze<HeatingCase>({
    name,
    power: power(watts),
    interference,
    opens: opens === undefined ? undefined : seconds(opens),
    closes: closes === undefined ? undefined : seconds(closes),
    open: seconds(opens === undefined || closes === undefined ? 0 : closes - opens),
    flameOff: seconds(outcome.flameOff),
    mostDifference: warmer(outcome.most),
    neededDifference: warmer(outcome.needed),
    leastPower: power(outcome.leastPower),
    tension: quantityFromSi("pressure", outcome.tension, fit.hubStress.strength.writtenIn),
    curve: Object.freeze(
      outcome.curve.map(({ time, hub, shaft, interference: left }) =>
        Object.freeze({
          time: seconds(time),
          hub: room.plus(warmer(hub)),
          shaft: room.plus(warmer(shaft)),
          interference: quantityFromSi("length", left, inch ? "thou" : "micrometre"),
        }),
      ),
    ),
  });
}

function warningsFor(metal: Material, gentle: boolean, fit: HubFit): string[] {
  const warnings: string[] = [];
  if (!gentle)
    warnings.push(
      `${metal.brittle ? "The hub may crack" : "The hub may give way"} at its bore: the heat goes in faster than it goes through the wall. Use less flame for longer, all round, and keep it moving.`,
    );
  if (fit.hub.expansion.si < fit.shaft.expansion.si)
    warnings.push(
      "The shaft expands more than the hub: once both are warm through, the fit is tighter than cold. Pull while the difference lasts, or let it cool and begin again.",
    );
  return warnings;
}
