import {
  type AnyQuantity,
  formatNumber,
  isQuantity,
  type KindName,
  type Measured,
  measured,
  type Pressure,
  type Quantity,
  quantityFromSi,
  shownUnit,
  systemOf,
  type Temperature,
  type Torque,
  type UnitSystem,
  unitNamed,
} from "../quantity/index.js";
import { beforeWork } from "./stored-energy-before.js";
import type { EnergyStore, StoredEnergies, StoredEnergy } from "./stored-energy-types.js";

/** Exact, or with its standard uncertainty. */
export type ExactOrMeasured<K extends KindName> = Quantity<K> | Measured<Quantity<K>>;

const gravity = 9.80665;

/**
 * The energy of a wheel that turns.
 *
 * E = ½·I·ω²; u(E)/E = √((u(I)/I)² + (2·u(ω)/ω)²)
 *
 * @param what  its name
 * @param inertia  about its axis, > 0 [kg·m²]
 * @param speed  the highest it can have, > 0 [rad/s]
 * @returns the energy [J] and what to do before
 * @throws RangeError  a value is not above 0
 * @example turningEnergy("wheel", quantity(2, "kilogramSquareMetre"), radianPerSecond(10)).energy.value.in("joule") // 100
 * @source mechanics of rigid bodies
 */
export function turningEnergy(
  what: string,
  inertia: ExactOrMeasured<"moment of inertia">,
  speed: ExactOrMeasured<"rotational speed">,
): StoredEnergy {
  const [i, w] = [number("inertia", inertia), number("speed", speed)];
  const spoken = `${shown(value(inertia))} at ${shown(value(speed))}`;
  return stored(
    "turning wheel",
    what,
    (i.si * w.si ** 2) / 2,
    [i, { ...w, u: 2 * w.u }],
    spoken,
    value(inertia),
  );
}

/**
 * The energy of a mass that may come down.
 *
 * E = m·g·h
 *
 * @param what  its name
 * @param mass  > 0 [kg]
 * @param height  it can fall, > 0 [m]
 * @returns the energy [J] and what to do before
 * @throws RangeError  a value is not above 0
 * @example raisedEnergy("pulley", pound(180), foot(3)).energy.value.in("lbfFoot") // 540
 * @source mechanics
 */
export function raisedEnergy(
  what: string,
  mass: ExactOrMeasured<"mass">,
  height: ExactOrMeasured<"length">,
): StoredEnergy {
  const [m, h] = [number("mass", mass), number("height", height)];
  const spoken = `${shown(value(mass))} raised ${shown(value(height))}`;
  return stored("raised mass", what, m.si * gravity * h.si, [m, h], spoken, value(mass));
}

/**
 * The energy of a spring, or of a belt pulled tight: whatever gives in proportion to its force.
 *
 * E = ½·F·s
 *
 * @param store  "spring", "tight belt" or "press under load"
 * @param what  its name
 * @param force  it pushes or pulls with now, > 0 [N]
 * @param way  it has given from slack to there, > 0 [m]
 * @returns the energy [J] and what to do before
 * @throws RangeError  a value is not above 0
 * @example springEnergy("spring", "latch", newton(200), mm(50)).energy.value.in("joule") // 5
 * @source elasticity: work of a force that grows in proportion (Clapeyron)
 */
export function springEnergy(
  store: "spring" | "tight belt" | "press under load",
  what: string,
  force: ExactOrMeasured<"force">,
  way: ExactOrMeasured<"length">,
): StoredEnergy {
  if (!["spring", "tight belt", "press under load"].includes(store))
    throw new RangeError(
      `springEnergy: store must be spring, tight belt or press under load, got "${store}"`,
    );
  const [f, s] = [number("force", force), number("way", way)];
  const spoken = `${shown(value(force))} over ${shown(value(way))}`;
  return stored(store, what, (f.si * s.si) / 2, [f, s], spoken, value(force));
}

/**
 * The energy of oil squeezed in a jack and its hose.
 *
 * E = ½·p²·V/K; walls and hose taken as stiff: a hose that swells holds several times as much
 *
 * @param what  its name
 * @param pressure  > 0 [Pa]
 * @param volume  of the oil under it, > 0 [m³]
 * @param bulkModulus  of the oil; default 1.5 GPa, a mineral oil with a little air [Pa]
 * @returns the energy [J] and what to do before
 * @throws RangeError  a value is not above 0
 * @example oilEnergy("jack", megapascal(70), litre(1)).energy.value.in("joule") // 1633.33
 * @source compressibility of a liquid; bulk modulus of mineral oil: public hydraulics pages give half a
 * per cent for 1000 psi, which is 1.4 GPa, and 1.5 to 2.0 GPa (read)
 */
export function oilEnergy(
  what: string,
  pressure: ExactOrMeasured<"pressure">,
  volume: ExactOrMeasured<"volume">,
  bulkModulus: Pressure = quantityFromSi("pressure", 1.5e9, "gigapascal"),
): StoredEnergy {
  const [p, v] = [number("pressure", pressure), number("volume", volume)];
  const k = number("bulkModulus", bulkModulus);
  const spoken = `${shown(value(volume))} of oil at ${shown(value(pressure))}`;
  return stored(
    "oil under pressure",
    what,
    (p.si ** 2 * v.si) / (2 * k.si),
    [{ ...p, u: 2 * p.u }, v],
    spoken,
    value(pressure),
  );
}

/**
 * The energy of air shut in a hollow casting that is heated, let go when its wall bursts.
 *
 * p = p₀·T/T₀; E = p·V/(γ − 1)·(1 − (p₀/p)^((γ − 1)/γ)), γ = 1.4, p₀ = 101 325 Pa
 *
 * Valid when: the hollow is dry. Water, oil or grease in it boil, and reach many times this pressure and energy: this is
 * the least of it.
 *
 * @param what  its name
 * @param volume  of the hollow, > 0 [m³]
 * @param heatedTo  absolute temperature reached, above the one it was shut at [K]
 * @param shutAt  absolute temperature at which it was closed [K]
 * @returns the energy [J] and what to do before
 * @throws RangeError  a value out of its range
 * @example hollowEnergy("hub", litre(1), degC(313), degC(20)).energy.value.in("joule") // 90.969
 * @source ideal gas, isentropic expansion to the air's pressure (CCPS, guidelines on vessel bursts, from
 * memory)
 */
export function hollowEnergy(
  what: string,
  volume: ExactOrMeasured<"volume">,
  heatedTo: Temperature,
  shutAt: Temperature,
): StoredEnergy {
  const v = number("volume", volume);
  if (!(heatedTo > shutAt))
    throw new RangeError(
      `hollowEnergy: heatedTo must be above the temperature it was shut at, got ${heatedTo} and ${shutAt}`,
    );
  const [p0, gamma] = [101325, 1.4];
  const p = (p0 * heatedTo.kelvin) / shutAt.kelvin;
  const energy = ((p * v.si) / (gamma - 1)) * (1 - (p0 / p) ** ((gamma - 1) / gamma));
  return stored(
    "closed hollow",
    what,
    energy,
    [v],
    `${shown(value(volume))} of air warmed to ${heatedTo}`,
    value(volume),
  );
}

/**
 * All stores of energy of a machine, the largest first.
 *
 * @param stores  of them, at least one
 * @returns the stores in the order of their energy
 * @throws RangeError  there are none, or two of one name
 * @example storedEnergies([raisedEnergy("a", pound(1), foot(1)), raisedEnergy("b", pound(2), foot(1))]).stores[0].what // "b"
 */
export function storedEnergies(stores: readonly StoredEnergy[]): StoredEnergies {
  if (!Array.isArray(stores) || stores.length === 0)
    throw new RangeError("storedEnergies: at least one store must be given, got none");
  const names = stores.map(({ what }) => what);
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (twice !== undefined)
    throw new RangeError(`storedEnergies: each store must have a name of its own, got two called "${twice}"`);
  return Object.freeze({
    kind: "stored energies",
    stores: Object.freeze([...stores].sort((a, b) => b.energy.value.si - a.energy.value.si)),
  });
}

interface Input {
  readonly si: number;
  readonly u: number;
}

function value(given: AnyQuantity | Measured<AnyQuantity>): AnyQuantity {
  return "kind" in given && given.kind === "measured"
    ? (given as Measured<AnyQuantity>).value
    : (given as AnyQuantity);
}

function number(name: string, given: AnyQuantity | Measured<AnyQuantity>): Input {
  const estimate = value(given);
  if (!isQuantity(estimate) || !(estimate.si > 0))
    throw new RangeError(`storedEnergy: ${name} must be above 0, with its unit, got ${String(estimate)}`);
  return {
    si: estimate.si,
    u: estimate === given ? 0 : (given as Measured<AnyQuantity>).standardUncertainty.si,
  };
}

function shown(quantity: AnyQuantity): string {
  const unit = shownUnit(quantity.dimension, quantity.writtenIn);
  if (unit === undefined) return String(quantity);
  const { si, symbol } = unitNamed(unit);
  return `${formatNumber(quantity.si / si, 3)} ${symbol}`;
}

/** Puts a store together; the uncertainty of a product of independent factors, exponents counted in their u. */
function stored(
  store: EnergyStore,
  what: string,
  joules: number,
  factors: readonly Input[],
  from: string,
  spokenIn: AnyQuantity,
): StoredEnergy {
  if (typeof what !== "string" || what.trim() === "")
    throw new RangeError(`storedEnergy: what must name the thing, got ${JSON.stringify(what)}`);
  const relative = Math.hypot(...factors.map(({ si, u }) => u / si));
  const unit = systemOfUnit(spokenIn) === "inch" ? "lbfFoot" : "joule";
  const like = (si: number): Torque => quantityFromSi("torque or energy", si, unit);
  return Object.freeze({
    kind: "stored energy",
    what,
    store,
    energy: measured(like(joules), like(joules * relative)),
    from,
    before: beforeWork[store],
  });
}

function systemOfUnit({ writtenIn }: AnyQuantity): UnitSystem | "both" {
  return writtenIn === undefined ? "both" : systemOf(writtenIn);
}
