import {
  type KindName,
  type Length,
  type Measured,
  measured,
  type Quantity,
  quantityFromSi,
  type UnitName,
} from "../quantity/index.js";
import type { Table } from "../survey/index.js";
import type { Masses, PartMass } from "./masses-types.js";
import { type Piece, piecesOf, sizeUncertainty } from "./pieces-of.js";
import { type SolidSize, solidFigures } from "./solid.js";

/**
 * What the parts of a machine weigh, where their centres of mass lie and how they resist being turned, from a table of
 * the simple bodies they are put together from: columns part, piece, shape, count, across, far, inside, length, thick
 * (sizes), along (the station of the near end), material; `-` for a size that a shape has not (`solidForms`).
 *
 * m = Σ n·ρ·V,  x = Σ n·ρ·V·x̄/m,  I = Σ n·ρ·∫r² dV;
 * u² = Σ (∂/∂size · u(size))² + Σ (∂/∂ρ · u(ρ))², u(ρ) = (highest − lowest)/√12 of the handbook's range, one density for
 * all pieces of a metal
 *
 * Valid when: the pieces share the shaft's axis and do not overlap. Fillets and bosses are left out, so that a casting is
 * rather heavier than reckoned: `castings` says by how much its sizes may differ from the simple shape.
 *
 * @param table  of pieces; the instruments of its remarks give u(size), each size taken as read by itself
 * @param options.castings  standard uncertainty of a size of cast metal by draught, fillets and rough skin, ≥ 0 [m]
 * @returns masses [kg], centres along the axis [m], moments of inertia about it [kg·m²], of each part and of all
 * @throws RangeError  a row is not such a piece; the message names file, line and column
 * @example
 * const header = "part [text],piece [text],shape [text],count [-],across [in],far [in],inside [in],length [in],thick [in],along [in],material [text]";
 * const row = "flange,plate,ring,1,10,-,2,1,-,0,steel";
 * const table = readTable(new TextEncoder().encode(`${header}\n${row}`), { name: "pieces", file: "pieces.csv" });
 * massesOf(table).parts[0].mass.value.in("pound") // 21.383
 * @source F. P. Beer & E. R. Johnston, Vector Mechanics for Engineers (composite bodies, from memory); JCGM 100:2008
 * (GUM), 5.1.2 and 4.3.7
 */
export function massesOf(table: Table, options: { readonly castings?: Length } = {}): Masses {
  const { castings } = options;
  if (castings !== undefined && !(castings.si >= 0))
    throw new RangeError(`massesOf: castings must be 0 or more, got ${castings}`);
  const pieces = piecesOf(table);
  const inch = table.unitSystem === "inch";
  const unread = (["across", "far", "inside", "length", "thick"] as const).filter(
    (name) =>
      sizeUncertainty(table, name) === undefined && pieces.some(({ sizes }) => sizes[name] !== undefined),
  );
  const sums = (some: readonly Piece[]): Omit<PartMass, "part" | "pieces"> => {
    const [mass, centre, inertia] = combined(inputsOf(some, table, castings?.si ?? 0), (at) =>
      totals(some, at),
    );
    return {
      mass: like("mass", mass!, inch ? "pound" : "kilogram"),
      centre: like("length", centre!, inch ? "inch" : "mm"),
      inertia: like("moment of inertia", inertia!, inch ? "poundSquareInch" : "kilogramSquareMetre"),
    };
  };
  const parts = [...new Set(pieces.map(({ part }) => part))].map((part): PartMass => {
    const own = pieces.filter((piece) => piece.part === part);
    return Object.freeze({
      part,
      ...sums(own),
      pieces: Object.freeze(
        own.map((piece) => {
          const { shape, count, material } = piece;
          return Object.freeze({
            piece: piece.piece,
            shape,
            count,
            material: material.name,
            mass: sums([piece]).mass,
          });
        }),
      ),
    });
  });
  return Object.freeze<Masses>({
    kind: "masses",
    title: table.name,
    parts: Object.freeze(parts),
    ...sums(pieces),
    unitSystem: inch ? "inch" : "metric",
    warnings: Object.freeze(
      unread.length === 0
        ? []
        : [
            `No remark of ${table.file} names the instrument of ${unread.join(", ")}: these sizes count as exact. Write e.g. "# instrument: steel-tape".`,
          ],
    ),
  });
}

/** Something measured that a mass hangs on: its value and standard uncertainty in SI. */
interface Input {
  /** "3 across" of the piece in row 3, "steel" of a metal, "3 along". */
  readonly name: string;
  readonly value: number;
  readonly u: number;
}

type Values = ReadonlyMap<string, number>;

function inputsOf(pieces: readonly Piece[], table: Table, castings: number): readonly Input[] {
  const inputs = new Map<string, Input>();
  for (const piece of pieces) {
    const { line, material, sizes, along } = piece;
    const { value, low, high } = material.density;
    inputs.set(material.name, {
      name: material.name,
      value: value.si,
      u: (high.si - low.si) / Math.sqrt(12),
    });
    const cast = material.family === "steel" ? 0 : castings;
    for (const [name, size] of Object.entries(sizes) as [SolidSize, number][]) {
      const u = Math.hypot(sizeUncertainty(table, name) ?? 0, cast);
      inputs.set(`${line} ${name}`, { name: `${line} ${name}`, value: size, u: size === 0 ? 0 : u });
    }
    const place = `${line} along`;
    inputs.set(place, { name: place, value: along, u: sizeUncertainty(table, "along") ?? 0 });
  }
  return [...inputs.values()];
}

/** Mass, centre, moment of inertia at given sizes and densities, in SI. */
function totals(pieces: readonly Piece[], at: Values): readonly [number, number, number] {
  let [mass, moment, inertia] = [0, 0, 0];
  for (const { line, shape, count, material, sizes } of pieces) {
    const now = Object.fromEntries(Object.keys(sizes).map((name) => [name, at.get(`${line} ${name}`)!]));
    const { volume, centre, polar } = solidFigures(shape, now);
    const own = count * at.get(material.name)! * volume;
    mass += own;
    moment += own * (at.get(`${line} along`)! + centre);
    inertia += count * at.get(material.name)! * polar;
  }
  return [mass, moment / mass, inertia];
}

/** Values and standard uncertainties, by differences over a hundredth of each input's uncertainty. */
function combined(
  inputs: readonly Input[],
  f: (at: Values) => readonly number[],
): readonly { readonly value: number; readonly u: number }[] {
  const at = new Map(inputs.map(({ name, value }) => [name, value]));
  const values = f(at);
  const variances = values.map(() => 0);
  for (const { name, value, u } of inputs) {
    if (u === 0) continue;
    const step = u / 100;
    const [up, down] = [f(new Map(at).set(name, value + step)), f(new Map(at).set(name, value - step))];
    values.forEach((_, i) => {
      variances[i]! += (((up[i]! - down[i]!) / (2 * step)) * u) ** 2;
    });
  }
  return values.map((value, i) => ({ value, u: Math.sqrt(variances[i]!) }));
}

function like<K extends KindName>(
  kind: K,
  { value, u }: { readonly value: number; readonly u: number },
  unit: UnitName,
): Measured<Quantity<K>> {
  return measured(
    quantityFromSi(kind, value, unit as never),
    quantityFromSi(kind, u, unit as never),
  ) as Measured<Quantity<K>>;
}
