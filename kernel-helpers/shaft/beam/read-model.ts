import { isQuantity, type Length, type UnitName } from "../../quantity/index.js";
import { type CarriedNumber, carriedInput } from "../carried/carried-input.js";
import type { ShaftModel } from "./shaft-model.js";

/** The model in plain SI numbers. */
export interface PlainShaft {
  readonly stretches: readonly {
    readonly from: number;
    readonly to: number;
    readonly d: number;
    readonly bore: number;
  }[];
  readonly sleeves: readonly {
    readonly from: number;
    readonly to: number;
    readonly d: number;
    readonly density: number;
  }[];
  readonly modulus: number;
  readonly density: number;
  readonly poisson: number;
  readonly supports: readonly {
    readonly at: number;
    readonly horizontal: number;
    readonly vertical: number;
  }[];
  readonly wheels: readonly {
    readonly at: number;
    readonly mass: number;
    readonly polar: number;
    readonly diametral: number;
  }[];
  readonly pulls: readonly { readonly at: number; readonly horizontal: number; readonly vertical: number }[];
  readonly torques: readonly { readonly from: number; readonly to: number; readonly torque: number }[];
  readonly ownWeight: boolean;
  readonly shear: boolean;
}

/** A model that was checked: its uncertain numbers, and the plain shaft that such numbers make. */
export interface ReadModel {
  readonly inputs: readonly CarriedNumber[];
  readonly plain: (numbers: readonly number[]) => PlainShaft;
  /** The unit the stations were written in. */
  readonly unit: UnitName;
}

/**
 * Checks a model and takes it apart into plain numbers.
 *
 * @throws TypeError   something is no quantity of its kind
 * @throws RangeError  a gap or an overlap between stretches, something off the shaft, fewer than two supports
 */
export function readModel(where: string, model: ShaftModel): ReadModel {
  const inputs: CarriedNumber[] = [];
  const given = (
    field: string,
    value: unknown,
    kind: Parameters<typeof carriedInput>[3],
    bound: Parameters<typeof carriedInput>[4],
  ): number => {
    inputs.push(carriedInput(where, field, value, kind, bound));
    return inputs.length - 1;
  };
  if (!Array.isArray(model.stretches) || model.stretches.length === 0)
    throw new RangeError(`${where}: stretches must name the shaft's diameters from end to end, got none`);
  const stretches = [...model.stretches]
    .sort((a, b) => station(where, "a stretch's from", a.from) - station(where, "a stretch's from", b.from))
    .map((stretch) => {
      const [from, to] = [stretch.from.si, station(where, "a stretch's to", stretch.to)];
      const name = `stretch ${stretch.from} to ${stretch.to}`;
      if (!(to > from)) throw new RangeError(`${where}: ${name} must end behind its beginning`);
      const bore =
        stretch.bore === undefined
          ? 0
          : carriedInput(where, `bore of ${name}`, stretch.bore, "length", "0 or more").si;
      const d = given(`diameter of ${name}`, stretch.diameter, "length", "more than 0");
      if (!(bore < inputs[d]!.si))
        throw new RangeError(
          `${where}: ${name}: the bore must be less than the diameter, got ${stretch.bore}`,
        );
      return { from, to, d, bore };
    });
  const unit: UnitName = model.stretches[0]!.from.writtenIn ?? "mm";
  const [first, last] = [stretches[0]!.from, stretches.at(-1)!.to];
  const close = 1e-6 * (last - first);
  stretches.forEach(({ from }, i) => {
    const before = stretches[i - 1];
    if (before === undefined || Math.abs(from - before.to) <= close) return;
    const [at, behind] = [
      lengthText(Math.min(before.to, from), unit),
      lengthText(Math.max(before.to, from), unit),
    ];
    throw new RangeError(
      from > before.to
        ? `${where}: nothing says how thick the shaft is from ${at} to ${behind}: measure there, or close the gap by name with closeGaps(stretches, "neighbouring smaller diameter")`
        : `${where}: two stretches lie over each other from ${at} to ${behind}: end the first where the second begins`,
    );
  });
  const onShaft = (what: string, at: Length): number => {
    const si = station(where, `station of ${what}`, at);
    if (si < first - close || si > last + close)
      throw new RangeError(
        `${where}: ${what} at ${at} must lie on the shaft, which reaches from ${lengthText(first, unit)} to ${lengthText(last, unit)}: add the stretch it sits on`,
      );
    return Math.min(last, Math.max(first, si));
  };
  const supports = (model.supports ?? []).map(({ name, at, stiffness }) => {
    const each =
      stiffness === undefined
        ? undefined
        : isQuantity(stiffness)
          ? { horizontal: stiffness, vertical: stiffness }
          : stiffness;
    const of = (side: "horizontal" | "vertical"): number =>
      each === undefined
        ? Number.POSITIVE_INFINITY
        : carriedInput(
            where,
            `${side} stiffness of ${name}`,
            each[side],
            "stiffness or line load",
            "more than 0",
          ).si;
    return { at: onShaft(name, at), horizontal: of("horizontal"), vertical: of("vertical") };
  });
  const places = [...new Set(supports.map(({ at }) => at))];
  if (places.length < 2 || places.length < supports.length)
    throw new RangeError(
      `${where}: the shaft must be held at two places or more, each once, got ${supports.length === 0 ? "no support" : model.supports.map(({ name, at }) => `${name} at ${at}`).join(", ")}: name the middle of each box`,
    );
  const wheels = (model.wheels ?? []).map(({ name, at, mass, polarInertia, diametralInertia }) => ({
    at: onShaft(name, at),
    mass: given(`mass of ${name}`, mass, "mass", "0 or more"),
    polar:
      polarInertia === undefined
        ? undefined
        : given(`polar inertia of ${name}`, polarInertia, "moment of inertia", "0 or more"),
    diametral:
      diametralInertia === undefined
        ? undefined
        : given(`diametral inertia of ${name}`, diametralInertia, "moment of inertia", "0 or more"),
  }));
  const pulls = (model.pulls ?? []).map(({ name, at, force, direction }) => {
    const angle = carriedInput(where, `direction of ${name}`, direction, "angle", "any").si;
    return {
      at: onShaft(name, at),
      force: given(`pull of ${name}`, force, "force", "any"),
      cos: Math.cos(angle),
      sin: Math.sin(angle),
    };
  });
  const torques = (model.torques ?? []).map(({ name = "torque", from, to, torque }) => {
    const ends = [onShaft(`${name}, from`, from), onShaft(`${name}, to`, to)];
    return {
      from: Math.min(...ends),
      to: Math.max(...ends),
      torque: given(name, torque, "torque or energy", "any"),
    };
  });
  const sleeves = (model.sleeves ?? []).map(({ from, to, diameter, density }) => ({
    from: onShaft("a sleeve's from", from),
    to: onShaft("a sleeve's to", to),
    d: carriedInput(where, "a sleeve's diameter", diameter, "length", "more than 0").si,
    density:
      density === undefined
        ? undefined
        : carriedInput(where, "a sleeve's density", density, "density", "more than 0").si,
  }));
  const metal = elasticity(where, model.material);
  inputs.push(metal.modulus);
  const modulus = inputs.length - 1;
  const plain = (n: readonly number[]): PlainShaft => ({
    stretches: stretches.map(({ from, to, d, bore }) => ({ from, to, d: n[d]!, bore })),
    sleeves: sleeves.map(({ from, to, d, density }) => ({ from, to, d, density: density ?? metal.density })),
    modulus: n[modulus]!,
    density: metal.density,
    poisson: metal.poisson,
    supports,
    wheels: wheels.map(({ at, mass, polar, diametral }) => {
      const ip = polar === undefined ? 0 : n[polar]!;
      return { at, mass: n[mass]!, polar: ip, diametral: diametral === undefined ? ip / 2 : n[diametral]! };
    }),
    pulls: pulls.map(({ at, force, cos, sin }) => ({
      at,
      horizontal: n[force]! * cos,
      vertical: n[force]! * sin,
    })),
    torques: torques.map(({ from, to, torque }) => ({ from, to, torque: n[torque]! })),
    ownWeight: model.ownWeight ?? true,
    shear: model.shear ?? false,
  });
  return { inputs, plain, unit };
}

function elasticity(
  where: string,
  material: ShaftModel["material"],
): { modulus: CarriedNumber; density: number; poisson: number } {
  if (material === undefined || material === null || typeof material !== "object")
    throw new TypeError(
      `${where}: material must be of the handbook, e.g. material("steel"), or a modulus and a density, got ${String(material)}; where the steel is unknown, assume by name material("steel"): steels differ little in stiffness, much in strength`,
    );
  if (!("kind" in material))
    return {
      modulus: carriedInput(where, "modulus", material.modulus, "pressure", "more than 0"),
      density: carriedInput(where, "density", material.density, "density", "more than 0").si,
      poisson: material.poisson ?? 0.3,
    };
  const { modulus, density, poisson } = material;
  return {
    modulus: {
      name: `modulus of ${material.name}`,
      si: modulus.value.si,
      u: (modulus.high.si - modulus.low.si) / Math.sqrt(12),
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      unit: undefined,
    },
    density: density.value.si,
    poisson: poisson.value,
  };
}

function station(where: string, field: string, value: unknown): number {
  return carriedInput(where, field, value, "length", "any").si;
}

function lengthText(si: number, unit: UnitName): string {
  return unit === "inch"
    ? `${Number((si / 0.0254).toPrecision(7))} in`
    : `${Number((si * 1000).toPrecision(7))} mm`;
}
