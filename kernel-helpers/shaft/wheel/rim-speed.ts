import type { Material } from "../../handbook/index.js";
import {
  type Density,
  type Length,
  type Pressure,
  quantityFromSi,
  type RotationalSpeed,
  type Speed,
  type UnitSystem,
} from "../../quantity/index.js";

/** What counts of a rim's metal: density, and the least tensile strength it may be trusted with. */
export interface RimMetal {
  readonly density: Density;
  readonly tensileStrength: Pressure;
}

/** A rim and what it is made of. */
export interface RimSpeedOptions {
  /** Over the outside of the rim. */
  readonly diameter: Length;
  readonly speed: RotationalSpeed;
  /** A material of the handbook, taken at its heaviest and weakest, or the two figures that count. */
  readonly metal: Material | RimMetal;
  /** Strength over permitted stress; default 10, for old iron castings of unknown history. */
  readonly safetyFactor?: number;
  /** Strength of the rim's joint over that of the whole rim; 1 for a rim in one piece (default). */
  readonly jointEfficiency?: number;
  readonly units?: UnitSystem;
}

/** How fast a rim runs, against how fast it may. */
export interface RimSpeed {
  readonly kind: "rim speed";
  readonly state: "within" | "beyond";
  readonly rimSpeed: Speed;
  readonly permitted: Speed;
  readonly permittedTurning: RotationalSpeed;
  /** Hoop stress of a thin free rim. */
  readonly stress: Pressure;
  readonly permittedStress: Pressure;
  readonly safetyFactor: number;
  readonly jointEfficiency: number;
  readonly speed: RotationalSpeed;
}

/**
 * The hoop stress a rim puts on itself by turning, against what its iron and its joint may bear.
 *
 * σ = ρ·v², v at the outside (a little more than at the middle of the rim: on the safe side);
 * σ permitted = strength · joint efficiency / safety factor, v permitted = √(σ permitted/ρ)
 *
 * Valid when: the rim is thin and free. Arms hold it in and bend it between them: with few arms, or a joint between
 * two arms, the bending may be more than the hoop stress, which the safety factor has to cover. A crack, a blow hole
 * or a repair by welding is covered by nothing.
 *
 * @param options.diameter  outside of the rim, > 0 [m]
 * @param options.speed  highest, > 0 [rad/s]
 * @param options.metal  of the handbook, or density > 0 [kg/m³] and least tensile strength > 0 [Pa]
 * @param options.safetyFactor  at least 1; default 10 [-]
 * @param options.jointEfficiency  above 0 to 1; about 0.25 for flanged joints between the arms, 0.7 for links shrunk
 * into the rim at an arm [-]
 * @returns rim speed and permitted rim speed [m/s], stress and permitted stress [Pa]
 * @throws RangeError  a value out of its range, or a material without tensile strength
 * @example
 * const metal = { density: poundPerCubicInch(0.26), tensileStrength: psi(10000) };
 * rimSpeed({ diameter: foot(10), speed: rpm(190.99), metal }).stress.in("psi").toFixed(0) // "970"
 * @source thin rim: ρv²; 0.097 v² psi with v in ft/s for cast iron at 450 lb/ft³ in older handbooks; joint
 * efficiencies and a factor of 10 for cast iron: common practice, no source
 */
export function rimSpeed(options: RimSpeedOptions): RimSpeed {
  const { diameter, speed, safetyFactor = 10, jointEfficiency = 1, units = "inch" } = options;
  const { density, tensileStrength } = rimMetal(options.metal);
  for (const [name, value] of [
    ["diameter", diameter],
    ["speed", speed],
    ["density", density],
    ["tensileStrength", tensileStrength],
  ] as const)
    if (!(value.si > 0)) throw new RangeError(`rimSpeed: ${name} must be above 0, got ${value}`);
  if (!(safetyFactor >= 1))
    throw new RangeError(`rimSpeed: safetyFactor must be at least 1, got ${safetyFactor}`);
  if (!(jointEfficiency > 0 && jointEfficiency <= 1))
    throw new RangeError(`rimSpeed: jointEfficiency must lie above 0 and up to 1, got ${jointEfficiency}`);
  const v = (speed.si * diameter.si) / 2;
  const stress = density.si * v * v;
  const permittedStress = (tensileStrength.si * jointEfficiency) / safetyFactor;
  const permitted = Math.sqrt(permittedStress / density.si);
  const speedIn = (si: number): Speed =>
    quantityFromSi("speed", si, units === "inch" ? "footPerMinute" : "metrePerSecond");
  const stressIn = (si: number): Pressure =>
    quantityFromSi("pressure", si, units === "inch" ? "psi" : "megapascal");
  return Object.freeze({
    kind: "rim speed",
    state: v <= permitted ? "within" : "beyond",
    rimSpeed: speedIn(v),
    permitted: speedIn(permitted),
    permittedTurning: quantityFromSi("rotational speed", permitted / (diameter.si / 2), "rpm"),
    stress: stressIn(stress),
    permittedStress: stressIn(permittedStress),
    safetyFactor,
    jointEfficiency,
    speed,
  });
}

function rimMetal(metal: Material | RimMetal): RimMetal {
  if (!("kind" in metal)) return metal;
  if (metal.tensile === undefined)
    throw new RangeError(
      `rimSpeed: the handbook gives no tensile strength of ${metal.name}; give density and tensileStrength`,
    );
  return { density: metal.density.high, tensileStrength: metal.tensile.low };
}
