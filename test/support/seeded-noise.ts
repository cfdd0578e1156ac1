/**
 * Reproducible random numbers for tests: Park and Miller's generator, and normal noise from it by the polar method.
 *
 * @source S. K. Park, K. W. Miller, Communications of the ACM 31 (1988) 1192-1201; G. Marsaglia's polar method
 */
export function seededNoise(seed: number): { readonly uniform: () => number; readonly normal: () => number } {
  let state = (seed % 2147483646) + 1;
  const uniform = (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  const normal = (): number => {
    for (;;) {
      const a = 2 * uniform() - 1;
      const b = 2 * uniform() - 1;
      const s = a * a + b * b;
      if (s > 0 && s < 1) return a * Math.sqrt((-2 * Math.log(s)) / s);
    }
  };
  return { uniform, normal };
}
