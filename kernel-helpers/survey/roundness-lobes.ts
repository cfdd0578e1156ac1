import { type Angle, type Length, measured } from "../quantity/index.js";
import type { Harmonic, HarmonicFit } from "../statistics/index.js";
import type { Lobes, Roundness } from "./roundness-types.js";

/** A vee that shows less than this share of a lobe is not asked about it. */
const blindBelow = 0.2;
const realBelow = 0.05;
/** Places round the section at which lobes are added up: every half degree. */
const steps = 720;

/** A wave of the readings, and what the set-up made of it. */
export interface SeenWave {
  readonly wave: Harmonic;
  readonly factor: number;
}

/** How uncertain the waves are, and in what units they are written. */
export interface LobeScale {
  /** Factor on the stated uncertainties, and the degrees of freedom behind it [-]. */
  readonly widened: number;
  readonly dof: number;
  readonly lengthOf: (si: number) => Length;
}

/** Lobes of one number from a wave of the readings: divided by the set-up's factor, or refused where that is near 0. */
export function lobesOf(
  { wave, factor }: SeenWave,
  {
    widened,
    dof,
    lengthOf,
    angleOf,
    among,
  }: LobeScale & { readonly angleOf: (si: number) => Angle; readonly among: number },
): Lobes {
  const seen = Math.abs(factor) >= blindBelow;
  const chance = chanceWidened(wave, widened, dof);
  // A negative factor shows a crest as a trough: half a wave further.
  const crest = factor < 0 ? wave.phase + Math.PI / wave.order : wave.phase;
  const height = (amplitude: number): Length => lengthOf((2 * amplitude) / Math.abs(factor));
  return Object.freeze({
    count: wave.order,
    factor,
    height: seen ? measured(height(wave.amplitude), height(wave.uAmplitude * widened), dof) : undefined,
    crestAt: seen
      ? measured(angleOf(crest % ((2 * Math.PI) / wave.order)), angleOf(wave.uPhase * widened), dof)
      : undefined,
    chance,
    real: seen && chance < realBelow / among,
  });
}

/** Peak to valley of the section drawn by the lobes a vee can see, its uncertainty that of the two places. */
export function visibleDeviation(
  waves: readonly SeenWave[],
  fit: HarmonicFit,
  { widened, dof, lengthOf }: LobeScale,
): Roundness["deviation"] {
  const seen = waves.flatMap(({ wave, factor }, k) =>
    wave.order > 1 && Math.abs(factor) >= blindBelow ? [{ wave, factor, v: fit.covariances[k]! }] : [],
  );
  const heightAt = (angle: number): number =>
    seen.reduce(
      (sum, { wave, factor }) =>
        sum +
        (wave.cosine * Math.cos(wave.order * angle) + wave.sine * Math.sin(wave.order * angle)) / factor,
      0,
    );
  let [low, high] = [0, 0];
  for (let i = 1; i < steps; i++) {
    const angle = (2 * Math.PI * i) / steps;
    if (heightAt(angle) < heightAt(low)) low = angle;
    if (heightAt(angle) > heightAt(high)) high = angle;
  }
  // Waves of different order are taken as uncorrelated, which they are for equally spaced readings.
  const variance = seen.reduce((sum, { wave, factor, v }) => {
    const c = (Math.cos(wave.order * high) - Math.cos(wave.order * low)) / factor;
    const s = (Math.sin(wave.order * high) - Math.sin(wave.order * low)) / factor;
    return sum + c * c * v.cosine + 2 * c * s * v.both + s * s * v.sine;
  }, 0);
  return measured(lengthOf(heightAt(high) - heightAt(low)), lengthOf(Math.sqrt(variance) * widened), dof);
}

/** The chance again, where the noise is not that stated but the one seen. */
function chanceWidened({ chance }: Harmonic, widened: number, dof: number): number {
  if (widened === 1) return chance;
  const squared = (-2 * Math.log(chance)) / widened ** 2;
  return Math.exp((-dof / 2) * Math.log1p(squared / dof));
}

/** What to say of lobes that a vee does not show. */
export function blindWarning(lobes: readonly Lobes[]): string[] {
  const blind = lobes.filter(({ height }) => height === undefined).map(({ count }) => count);
  if (blind.length === 0) return [];
  const shown =
    blind.length === 1 ? `${blind[0]} lobes` : `${blind.slice(0, -1).join(", ")} or ${blind.at(-1)} lobes`;
  return [
    `This vee block does not show ${shown}: the shaft may have them and read round. Read again in a vee of another angle, or between centres.`,
  ];
}
