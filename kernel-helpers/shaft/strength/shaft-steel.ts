import { type Material, material, materials } from "../../handbook/index.js";
import {
  isQuantity,
  ksi,
  type Measured,
  measured,
  megapascal,
  type Pressure,
  psi,
} from "../../quantity/index.js";

/** What a shaft's steel is taken to bear, and why. */
export interface ShaftSteel {
  readonly kind: "shaft steel";
  readonly name: string;
  /** Ultimate tensile strength. */
  readonly tensile: Measured<Pressure>;
  /** Yield strength in tension. */
  readonly yield: Measured<Pressure>;
  /** Nobody has tested this steel: the strengths are a bound chosen by name. */
  readonly assumed: boolean;
  readonly basis: string;
}

/** The bounds that may be assumed for a shaft nobody can test. */
export type AssumedSteelName = "wrought iron of the period" | "mild steel of the period";

interface AssumedSteel {
  /** [ksi] */
  readonly tensile: number;
  readonly yield: number;
  readonly basis: string;
}

const assumedSteels: Readonly<Record<AssumedSteelName, AssumedSteel>> = Object.freeze({
  "wrought iron of the period": {
    tensile: 45,
    yield: 25,
    basis:
      "bound: tensile at least 45 ksi, yield at least 25 ksi along the grain (ASTM A189 and A41, wrought iron bars and plates, low end, from memory)",
  },
  "mild steel of the period": {
    tensile: 55,
    yield: 27.5,
    basis:
      "bound: tensile at least 55 ksi, yield at least half of it (ASTM A7 and A9 of the early 1900s, medium steel 60 to 70 ksi, soft steel from 52 ksi on, yield half of tensile, from memory)",
  },
});

/**
 * The steel of an old shaft that nobody can test, by the name of a bound: a choice that somebody makes and that stands
 * in the record, never a silent default.
 *
 * Valid when: the shaft is of that make. Whether it is iron or steel tells a spark test or an etched end (iron shows
 * its strands); how strong it is tells a hardness test, see `steelOfHardness`.
 *
 * @param name  "wrought iron of the period" or "mild steel of the period"
 * @returns tensile and yield strength [Pa], both taken as exact: a bound has no scatter
 * @throws RangeError  there is no such bound; the message lists them
 * @example assumedSteel("mild steel of the period").tensile.value.in("ksi") // 55
 * @source see the basis that comes with each
 */
export function assumedSteel(name: AssumedSteelName | (string & {})): ShaftSteel {
  if (!isAssumedName(name))
    throw new RangeError(
      `assumedSteel: the name must be one of ${Object.keys(assumedSteels)
        .map((n) => `"${n}"`)
        .join(
          ", ",
        )}, got ${JSON.stringify(name)}. Where the steel is known, take shaftSteel(material(...)); where its hardness is, steelOfHardness(...)`,
    );
  const { tensile, yield: gives, basis } = assumedSteels[name];
  return frozen({
    name,
    tensile: measured(ksi(tensile), ksi(0)),
    yield: measured(ksi(gives), ksi(0)),
    assumed: true,
    basis,
  });
}

function isAssumedName(name: string): name is AssumedSteelName {
  return Object.hasOwn(assumedSteels, name);
}

/**
 * The steel of a shaft by its name (a metal of the handbook, or a bound of `assumedSteel`), by a metal of the handbook, or by the strengths of its own test certificate.
 *
 * @param of  a name, such as rebuild.json has; a steel of `material`; or { name, tensile, yield, basis } with strengths [Pa], each plain
 *   or measured
 * @returns tensile and yield strength [Pa]
 * @throws RangeError  the metal is no steel or not known, a strength is not above 0, or it yields above its
 *   tensile strength
 * @throws TypeError   neither
 * @example shaftSteel(material("steel 1040")).yield.value.in("megapascal") // 290
 * @source each property of the handbook names its own
 */
export function shaftSteel(
  of:
    | string
    | Material
    | {
        readonly name: string;
        readonly tensile: Pressure | Measured<Pressure>;
        readonly yield: Pressure | Measured<Pressure>;
        readonly basis: string;
      },
): ShaftSteel {
  const where = "shaftSteel";
  if (typeof of === "string") return steelNamed(where, of);
  if (typeof of !== "object" || of === null)
    throw new TypeError(
      `${where}: a metal of the handbook, or name, tensile, yield and basis of a certificate was expected, got ${String(of)}. Where nobody knows the steel, choose a bound by name: assumedSteel("mild steel of the period")`,
    );
  if ("kind" in of) {
    if (of.family !== "steel" || of.yield === undefined || of.tensile === undefined)
      throw new RangeError(
        `${where}: must be a steel, for endurance limit and notches are those of steel; got ${of.name}`,
      );
    return frozen({
      name: of.name,
      tensile: exact(where, "tensile", of.tensile.low),
      yield: exact(where, "yield", of.yield.low),
      assumed: false,
      basis: `tensile: ${of.tensile.source}; yield: ${of.yield.source}`,
    });
  }
  if (typeof of.name !== "string" || typeof of.basis !== "string" || of.basis.trim() === "")
    throw new TypeError(
      `${where}: name and basis (where the strengths come from) must be texts, got ${String(of.name)} and ${String(of.basis)}`,
    );
  const [tensile, gives] = [exact(where, "tensile", of.tensile), exact(where, "yield", of.yield)];
  if (gives.value.si > tensile.value.si)
    throw new RangeError(
      `${where}: yield must not be above tensile (${tensile.value}), got ${gives.value}; are they the wrong way round?`,
    );
  return frozen({ name: of.name, tensile: tensile, yield: gives, assumed: false, basis: of.basis });
}

function steelNamed(where: string, name: string): ShaftSteel {
  if (isAssumedName(name)) return assumedSteel(name);
  const known = materials.filter(({ family }) => family === "steel");
  const names = known.flatMap((metal) => [metal.name, ...metal.also]);
  if (!names.some((known) => known.toLowerCase() === name.trim().toLowerCase()))
    throw new RangeError(
      `${where}: there is no steel called "${name}": take one of the handbook (${known.map((metal) => metal.name).join(", ")}), or, where nobody knows it, a bound by name (${Object.keys(assumedSteels).join(", ")})`,
    );
  return shaftSteel(material(name));
}

/** Tensile strength for one Brinell number [psi]. */
const psiPerBrinell = 500;
/** How far single steels lie from that rule, relative standard uncertainty [-]. */
const ruleScatter = 0.05;

/**
 * The steel of a shaft by its Brinell hardness, taken on the shaft itself; with it yield as a share of tensile, to be
 * chosen by the condition.
 *
 * S_ut = 500 HB psi (3.4 HB MPa); S_y = share · S_ut
 *
 * Valid when: 100 to 450 HB, carbon and low-alloy steel; a ground spot, not the scale. A rule of thumb: single steels
 * lie about 5 % (1 s) off it, which is in the uncertainty. A portable tester adds its own, through the readings.
 *
 * @param hardness  Brinell number, mean of the readings, plain or measured [-]
 * @param condition  "as rolled" (yield half of tensile) or "cold drawn" (yield 0.8 of tensile)
 * @returns tensile and yield strength [Pa] with standard uncertainty
 * @throws RangeError  the number is out of range, or the condition not known
 * @example steelOfHardness(measured(121, 3), "as rolled").tensile.value.in("ksi") // 60.5
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, equation 2-21; yield over tensile: common
 * practice, no source; scatter: comparison with the table of ASTM A370, from memory
 */
export function steelOfHardness(
  hardness: number | Measured<number>,
  condition: "as rolled" | "cold drawn",
): ShaftSteel {
  const where = "steelOfHardness";
  const number = typeof hardness === "number" ? measured(hardness, 0) : hardness;
  if (!(number?.value >= 100 && number.value <= 450))
    throw new RangeError(
      `${where}: hardness must be a Brinell number from 100 to 450, got ${String(number?.value)}`,
    );
  const share = { "as rolled": 0.5, "cold drawn": 0.8 }[condition];
  if (share === undefined)
    throw new RangeError(`${where}: condition must be "as rolled" or "cold drawn", got ${String(condition)}`);
  const relative = Math.hypot(number.standardUncertainty / number.value, ruleScatter);
  const strength = (of: number): Measured<Pressure> => {
    const value = psi(of * psiPerBrinell * number.value);
    return measured(value, value.times(relative));
  };
  return frozen({
    name: `steel of ${Number(number.value.toPrecision(3))} HB, ${condition}`,
    tensile: strength(1),
    yield: strength(share),
    assumed: false,
    basis: `hardness on the shaft: 500 psi a Brinell number, yield ${share} of tensile for ${condition}`,
  });
}

function exact(where: string, field: string, value: unknown): Measured<Pressure> {
  const given = (value as Measured<Pressure> | undefined)?.kind === "measured" ? value : undefined;
  const plain = given === undefined ? value : (given as Measured<Pressure>).value;
  if (!isQuantity(plain, "pressure"))
    throw new TypeError(`${where}: ${field} must be a pressure with its unit, got ${String(plain)}`);
  if (!(plain.si > 0)) throw new RangeError(`${where}: ${field} must be more than 0, got ${plain}`);
  return given === undefined ? measured(plain, megapascal(0)) : (given as Measured<Pressure>);
}

function frozen(steel: Omit<ShaftSteel, "kind">): ShaftSteel {
  return Object.freeze<ShaftSteel>({ kind: "shaft steel", ...steel });
}
