import { type FilmLines, missAt } from "./film-lines.js";
import { filmSystem } from "./film-system.js";

/** Nodes of the mesh: round one piece of film, and from the middle of the length to its end. */
export interface FilmMesh {
  readonly around: number;
  readonly along: number;
}

/** A piece of film between two lines of no pressure. */
export interface FilmPiece {
  /** Counted from the thickest film in the direction of rotation [rad]; less than a turn apart. */
  readonly from: number;
  readonly to: number;
}

/** Dimensionless pressure over one piece, and what is summed up from it. */
export interface PieceOfPressure {
  readonly piece: FilmPiece;
  /** P at the nodes, by lines round the film, each from the middle to the end. */
  readonly pressure: Float64Array;
  readonly mesh: FilmMesh;
  /** ∫∫ P cos θ dθ dζ and ∫∫ P sin θ dθ dζ over the whole length, ζ from −1 to 1. */
  readonly cosine: number;
  readonly sine: number;
  readonly highest: number;
  /** ∫ H³ (−∂P/∂ζ) dθ at one end. */
  readonly leak: number;
  /** ∫ (H − H³ ∂P/∂θ) dζ over the whole length at the beginning of the piece. */
  readonly inflow: number;
}

/** No mesh coarser than this helps a finer one. */
const leastAround = 20;
const leastAlong = 4;
/** Between two rounds no node may change sides; more rounds than this have never been needed. */
const mostRounds = 60;

/**
 * Pressure of an oil film of a bearing of finite length with an aligned journal, in one piece between two lines of no
 * pressure (an oil groove, a parting line with its relief, or the thickest film).
 *
 * Reynolds: ∂/∂θ(H³ ∂P/∂θ) + (D/L)² ∂/∂ζ(H³ ∂P/∂ζ) = ∂H/∂θ, H = 1 + ε cos θ, P = p(c/R)²/(6µω), ζ = 2z/L;
 * P = 0 at the ends and at both lines. Cavitation by Reynolds' (Swift–Stieber) condition: P ≥ 0, and where the film
 * breaks P = ∂P/∂n = 0. Solved as a complementarity problem by an active set on central differences of second order,
 * each round exactly (`filmSystem`), from the edge found on a mesh half as fine; the middle of the length is a line of
 * symmetry.
 *
 * Valid when: laminar flow, constant viscosity in the film, rigid and smooth surfaces, oil enough at the line the film
 * begins at.
 *
 * @param eccentricity  ε, 0 < ε < 1 [-]
 * @param slender  D/L [-]
 * @param piece  where the film begins and ends [rad]
 * @param mesh  nodes between the borders
 * @returns pressure and its sums, dimensionless
 * @throws RangeError  the set did not settle (never seen)
 * @source O. Reynolds, Phil. Trans. R. Soc. 177, 1886; H. W. Swift, 1932; W. Stieber, 1933 (condition); M. Hintermüller,
 * K. Ito & K. Kunisch, SIAM J. Optim. 13, 2002 (active set) (all from memory)
 */
export function filmPressure(
  eccentricity: number,
  slender: number,
  piece: FilmPiece,
  mesh: FilmMesh,
): PieceOfPressure {
  // Where the film ends is found on a coarser mesh first, so that the finer one has little left to settle.
  const coarser = { around: Math.floor(mesh.around / 2), along: Math.floor(mesh.along / 2) };
  const emptyFrom =
    coarser.along < leastAlong || coarser.around < leastAround
      ? undefined
      : filmPressure(eccentricity, slender, piece, coarser);
  const { around, along } = mesh;
  const dTheta = (piece.to - piece.from) / (around + 1);
  const dZeta = 1 / along;
  const film = (theta: number): number => 1 + eccentricity * Math.cos(theta);
  const cube = (theta: number): number => film(theta) ** 3;
  const theta = (i: number): number => piece.from + (i + 1) * dTheta;

  // Unknowns: lines i = 0…around − 1, on each j = 0…along − 1 from the middle outwards (the end is 0).
  const size = around * along;
  const between = (i: number): number => theta(i) - dTheta / 2;
  const ratio = (slender / dZeta) ** 2;
  const lines: FilmLines = {
    around,
    along,
    turn: Float64Array.from({ length: around + 1 }, (_, i) => cube(between(i)) / dTheta ** 2),
    out: Float64Array.from({ length: around }, (_, i) => ratio * cube(theta(i))),
    // −H′ over the cell, exactly: the difference of H across it.
    right: Float64Array.from(
      { length: around },
      (_, i) => (film(between(i)) - film(between(i + 1))) / dTheta,
    ),
  };
  const system = filmSystem(lines);
  const empty = emptyFrom === undefined ? new Uint8Array(size) : spread(emptyFrom, mesh);
  let pressure = system.solve(empty);
  for (let round = 0; ; round++) {
    if (round === mostRounds) throw new RangeError("filmPressure: the edge of the film did not settle");
    let settled = true;
    for (let at = 0; at < size; at++) {
      // A node without film stays so while more film would pull; one with film leaves it when it pulls.
      const wasEmpty = empty[at] === 1;
      const nowEmpty = wasEmpty
        ? missAt(lines, pressure, Math.floor(at / along), at % along) >= 0
        : pressure[at]! < 0;
      if (nowEmpty !== wasEmpty) {
        empty[at] = nowEmpty ? 1 : 0;
        settled = false;
      }
    }
    if (settled) break;
    pressure = system.solve(empty);
  }

  let [cosine, sine, highest, leak] = [0, 0, 0, 0];
  for (let i = 0; i < around; i++) {
    const row = pressure.subarray(i * along, (i + 1) * along);
    // Trapezoid along the half length, both halves.
    const line = 2 * dZeta * row.reduce((sum, p, j) => sum + (j === 0 ? p / 2 : p), 0);
    cosine += line * Math.cos(theta(i)) * dTheta;
    sine += line * Math.sin(theta(i)) * dTheta;
    highest = Math.max(highest, row[0]!);
    // One-sided difference of third order at the end, where P = 0: in a long bearing the pressure falls steeply there.
    const last = (k: number): number => (k <= along ? row[along - k]! : 0);
    const slope = (18 * last(1) - 9 * last(2) + 2 * last(3)) / (6 * dZeta);
    leak += cube(theta(i)) * slope * dTheta;
  }
  const first = pressure.subarray(0, along);
  const second = pressure.subarray(along, 2 * along);
  let inflow = 0;
  for (let j = 0; j < along; j++) {
    const slope = (4 * first[j]! - (second[j] ?? 0)) / (2 * dTheta);
    inflow += 2 * dZeta * (j === 0 ? 0.5 : 1) * (film(piece.from) - cube(piece.from) * slope);
  }
  // The end of the length, where there is no pressure, closes the trapezoid.
  inflow += dZeta * film(piece.from);
  return { piece, pressure, mesh, cosine, sine, highest, leak, inflow };
}

/** Where a finer mesh has no film, by the nearest node of a coarser one: 1 there. */
function spread({ pressure, mesh: coarse }: PieceOfPressure, { around, along }: FilmMesh): Uint8Array {
  const empty = new Uint8Array(around * along);
  for (let i = 0; i < around; i++) {
    const line = Math.round(((i + 1) * (coarse.around + 1)) / (around + 1)) - 1;
    const nearest = Math.min(coarse.around - 1, Math.max(0, line));
    for (let j = 0; j < along; j++) {
      const place = Math.min(coarse.along - 1, Math.round((j * coarse.along) / along));
      empty[i * along + j] = pressure[nearest * coarse.along + place]! > 0 ? 0 : 1;
    }
  }
  return empty;
}
