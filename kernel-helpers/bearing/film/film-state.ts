import { type FilmMesh, type FilmPiece, filmPressure, type PieceOfPressure } from "./film-pressure.js";

/** Where oil is let in: at the thickest film or later, or at grooves (parting lines) that stand still against the load. */
export type FilmSupply =
  | { readonly at: "thickest film" }
  /** Later than there, where oil is short; counted from the thickest film in the direction of rotation, 0 to below π [rad]. */
  | { readonly at: "film begins"; readonly fromThickest: number }
  | {
      readonly at: "grooves";
      /** Counted from the direction of the load in the direction of rotation [rad]. */
      readonly fromLoad: readonly number[];
    };

/** A film in balance, dimensionless. */
export interface FilmState {
  readonly eccentricity: number;
  /** From the load on to the thinnest film, in the direction of rotation [rad]. */
  readonly attitude: number;
  /** Sommerfeld number S = µNDL/W·(R/c)², N in turns a second, c RADIAL clearance [-]. */
  readonly sommerfeld: number;
  /** f·R/c [-]. */
  readonly friction: number;
  /** Q/(R·c·N·L): what flows in where the film begins [-]. */
  readonly flow: number;
  /** Share of it that leaves at the ends [-]. */
  readonly sideShare: number;
  /** Mean pressure W/(LD) over the highest [-]. */
  readonly meanOverHighest: number;
  readonly pieces: readonly PieceOfPressure[];
}

/** Fine enough: halving it moves S by less than 0.5 % up to ε = 0.9. */
export const usualMesh: FilmMesh = { around: 180, along: 18 };

/** The attitude is settled when it misses by less than this [rad]. */
const settled = 1e-6;
/** From node to node the edge of a film jumps, and with it the miss: settled too where both sides of a jump are this near [rad]. */
const jump = 1e-3;
const mostTurns = 60;
/** Steps by which the attitude is enclosed [rad]. */
const stride = 0.12;
const mostSteps = 26;

/**
 * The film of a bearing at a given eccentricity: how it stands to the load, what it carries, drags and lets through.
 *
 * Attitude tan φ = ∫∫P sin θ/(−∫∫P cos θ); S = 1/(3π·|∫∫P|); f·R/c = (ε/2) sin φ + 2π²S/√(1 − ε²) (shear of a whole
 * film all round, torn or not: on the safe side); flow = (π/2)∫(H − H³P′)dζ where the film begins, over all pieces
 * that carry; side flow = π(D/L)²∫H³(−∂P/∂ζ)dθ.
 *
 * @param eccentricity  ε, 0.01 to 0.99 [-]
 * @param lengthOverDiameter  L/D, 0.1 to 10 [-]
 * @param supply  where oil is let in
 * @param mesh  nodes of the mesh of a piece
 * @returns the film in balance
 * @throws RangeError  a value out of its range, or grooves that leave no film
 * @example filmState(0.6, 1).sommerfeld.toFixed(3) // "0.121"
 * @source A. A. Raimondi & J. Boyd, ASLE Transactions 1, 1958 (definitions); see `filmPressure`
 */
export function filmState(
  eccentricity: number,
  lengthOverDiameter: number,
  supply: FilmSupply = { at: "thickest film" },
  mesh: FilmMesh = usualMesh,
): FilmState {
  if (!(eccentricity >= 0.01 && eccentricity <= 0.99))
    throw new RangeError(`filmState: eccentricity must lie between 0.01 and 0.99, got ${eccentricity}`);
  if (!(lengthOverDiameter >= 0.1 && lengthOverDiameter <= 10))
    throw new RangeError(
      `filmState: length over diameter must lie between 0.1 and 10, got ${lengthOverDiameter}`,
    );
  const slender = 1 / lengthOverDiameter;
  const solve = (pieces: readonly FilmPiece[]): FilmState =>
    summedUp(
      eccentricity,
      slender,
      pieces.map((piece) => {
        // As many nodes a radian in a piece as all round.
        const around = Math.max(8, Math.round((mesh.around * (piece.to - piece.from)) / (2 * Math.PI)));
        return filmPressure(eccentricity, slender, piece, { ...mesh, around });
      }),
    );
  if (supply.at === "thickest film") return solve([{ from: 0, to: 2 * Math.PI }]);
  if (supply.at === "film begins") {
    const from = supply.fromThickest;
    if (!(from >= 0 && from < Math.PI))
      throw new RangeError(`filmState: fromThickest must lie between 0 and π, got ${from}`);
    return solve([{ from, to: 2 * Math.PI }]);
  }
  if (supply.fromLoad.length === 0)
    throw new RangeError("filmState: at least one groove is needed, got none");
  // The load stands at π − φ from the thickest film, and the grooves with it: φ is found where all agree.
  const turnedBy = (attitude: number): FilmState =>
    solve(piecesBetween(supply.fromLoad.map((angle) => Math.PI - attitude + angle)));
  const start = Math.atan((Math.PI * Math.sqrt(1 - eccentricity ** 2)) / (4 * eccentricity));
  return balanced(turnedBy, start, () => {
    const grooves = supply.fromLoad.map((angle) => `${Math.round((angle * 180) / Math.PI)}°`).join(", ");
    return `filmState: no balance was found with grooves at ${grooves} from the load and eccentricity ${eccentricity}`;
  });
}

/** The film whose attitude is the one it was reckoned with: enclosed by steps from a first guess, then closed in on. */
function balanced(turnedBy: (attitude: number) => FilmState, start: number, fault: () => string): FilmState {
  const missOf = (attitude: number, state: FilmState): number =>
    Math.atan2(Math.sin(state.attitude - attitude), Math.cos(state.attitude - attitude));
  let [a, stateA] = [start, turnedBy(start)];
  let missA = missOf(a, stateA);
  const way = Math.sign(missA);
  let [b, stateB, missB] = [a, stateA, missA];
  // From half a turn one way to half a turn the other is no crossing.
  for (let step = 0; missA * missB > 0 || Math.abs(missA - missB) > Math.PI; step++) {
    if (step === mostSteps) throw new RangeError(fault());
    [a, stateA, missA] = [b, stateB, missB];
    b += way * stride;
    stateB = turnedBy(b);
    missB = missOf(b, stateB);
  }
  // Illinois: false position that halves the weight of an end it keeps.
  let [weightA, weightB] = [missA, missB];
  for (let turn = 0; turn < mostTurns; turn++) {
    if (Math.abs(missA) < settled) return stateA;
    if (Math.abs(missB) < settled) return stateB;
    if (Math.abs(b - a) < settled && Math.abs(missA) < jump && Math.abs(missB) < jump)
      return Math.abs(missA) < Math.abs(missB) ? stateA : stateB;
    const middle = (a * weightB - b * weightA) / (weightB - weightA);
    const state = turnedBy(middle);
    const miss = missOf(middle, state);
    if (miss * missB < 0) {
      [a, stateA, missA, weightA] = [b, stateB, missB, missB];
    } else weightA /= 2;
    [b, stateB, missB, weightB] = [middle, state, miss, miss];
  }
  throw new RangeError(fault());
}

function piecesBetween(lines: readonly number[]): FilmPiece[] {
  const turn = 2 * Math.PI;
  const sorted = lines.map((line) => ((line % turn) + turn) % turn).sort((a, b) => a - b);
  return sorted.map((from, i) => ({ from, to: i + 1 < sorted.length ? sorted[i + 1]! : sorted[0]! + turn }));
}

function summedUp(eccentricity: number, slender: number, pieces: readonly PieceOfPressure[]): FilmState {
  const total = (of: (piece: PieceOfPressure) => number): number =>
    pieces.reduce((sum, piece) => sum + of(piece), 0);
  const [cosine, sine] = [total((piece) => piece.cosine), total((piece) => piece.sine)];
  const carried = Math.hypot(cosine, sine);
  if (!(carried > 0)) throw new RangeError("filmState: between these grooves no film carries anything");
  const attitude = Math.atan2(sine, -cosine);
  const sommerfeld = 1 / (3 * Math.PI * carried);
  const flow = (Math.PI / 2) * total((piece) => (piece.highest > 0 ? piece.inflow : 0));
  const side = Math.PI * slender ** 2 * total((piece) => piece.leak);
  return Object.freeze({
    eccentricity,
    attitude,
    sommerfeld,
    friction:
      (eccentricity / 2) * Math.sin(attitude) +
      (2 * Math.PI ** 2 * sommerfeld) / Math.sqrt(1 - eccentricity ** 2),
    flow,
    sideShare: side / flow,
    // W/(LD) = 3µω(R/c)²·R·L·I/(2RL), highest = 6µω(R/c)²·Pmax.
    meanOverHighest: carried / (4 * Math.max(...pieces.map(({ highest }) => highest))),
    pieces: Object.freeze(pieces),
  });
}
