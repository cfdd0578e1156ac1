import { type FilmState, type FilmSupply, filmState } from "./film-state.js";

/** The film of one shape of bearing over all loads: states by growing eccentricity. */
export interface FilmCurve {
  readonly lengthOverDiameter: number;
  readonly supply: FilmSupply;
  readonly states: readonly Omit<FilmState, "pieces">[];
}

/** Close enough that reading between them errs by less than 0.5 %. */
const eccentricities: readonly number[] = [
  0.02, 0.04, 0.07, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.84,
  0.87, 0.9, 0.92, 0.94, 0.955, 0.97, 0.98,
];

/** Films at a row of eccentricities, to read between. Throws as `filmState`. */
export function filmCurve(lengthOverDiameter: number, supply: FilmSupply): FilmCurve {
  const states = eccentricities.map((eccentricity) => {
    const { pieces: _, ...state } = filmState(eccentricity, lengthOverDiameter, supply);
    return Object.freeze(state);
  });
  return Object.freeze({ lengthOverDiameter, supply, states: Object.freeze(states) });
}

/**
 * The film at a Sommerfeld number, read between the states of a curve: all but S and the drag straight in ln S, the
 * drag straight in ln–ln.
 *
 * @param curve  as `filmCurve` returns it
 * @param sommerfeld  S, > 0 [-]
 * @returns the film; undefined where the load is more than the curve reaches (ε above 0.98)
 * @example filmAt(filmCurve(1, { at: "thickest film" }), 0.121).eccentricity.toFixed(2) // "0.60"
 * @source interpolation
 */
export function filmAt(curve: FilmCurve, sommerfeld: number): Omit<FilmState, "pieces"> | undefined {
  const { states } = curve;
  const first = states[0]!;
  // A lighter load than the lightest: the drag is Petroff's, the rest as at the lightest.
  if (sommerfeld >= first.sommerfeld)
    return {
      ...first,
      eccentricity: (first.eccentricity * first.sommerfeld) / sommerfeld,
      sommerfeld,
      friction: (first.friction * sommerfeld) / first.sommerfeld,
    };
  const next = states.findIndex((state) => state.sommerfeld <= sommerfeld);
  if (next < 0) return undefined;
  const [a, b] = [states[next - 1]!, states[next]!];
  const share = Math.log(sommerfeld / a.sommerfeld) / Math.log(b.sommerfeld / a.sommerfeld);
  const between = (of: (state: Omit<FilmState, "pieces">) => number): number =>
    of(a) + share * (of(b) - of(a));
  return {
    eccentricity: between((s) => s.eccentricity),
    attitude: between((s) => s.attitude),
    sommerfeld,
    friction: Math.exp(between((s) => Math.log(s.friction))),
    flow: between((s) => s.flow),
    sideShare: between((s) => s.sideShare),
    meanOverHighest: between((s) => s.meanOverHighest),
  };
}
