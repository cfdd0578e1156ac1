/** Math whose random numbers repeat from a seed. */
export interface SeededMath {
  readonly math: Math;
  seed(value: number): void;
}

/**
 * A copy of Math with a random() of its own, for plotly names its clip paths at random: the same figure must
 * give the same bytes. The global Math is not touched.
 *
 * @source linear congruential generator x ← 1664525 x + 1013904223 mod 2³²: W. H. Press et al., Numerical
 *   Recipes, 2nd edition, 1992, section 7.1 (from memory). Good enough for names, for nothing else.
 */
export function createSeededMath(): SeededMath {
  let state = 1;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const math = Object.create(Math, { random: { value: random } }) as Math;
  return {
    math,
    seed(value) {
      state = value >>> 0;
    },
  };
}
