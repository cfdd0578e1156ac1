import { type Angle, type Length, type Measured, micrometre, thou } from "../../quantity/index.js";
import type { TaperWays } from "./taper-ways.js";

/** One way to set the taper: the shape that a decision takes. */
export interface TaperOption {
  readonly name: string;
  readonly figures: Readonly<Record<string, Measured<Length> | Measured<Angle> | Length | string>>;
  /** The limits it violates, each in words. */
  readonly breaks: readonly string[];
}

/**
 * The ways to set a taper as options of a decision. A way breaks a limit where the lathe does not reach, or where the setting
 * alone may leave the taper wrong by more than is allowed.
 *
 * @param found  of `taperWays`
 * @returns the options, the truest first; errors ON DIAMETER, rounded to a hundredth of a thou or a tenth of a
 * micrometre [m]
 * @example
 * const lathe = { indicatorDivision: thou(0.5), indicatorTravel: inch(5), attachmentReach: inch(4) };
 * taperOptions(taperWays({ taper: measured(1 / 16, 0), seat: inch(5), allowed: thou(1), ...lathe }))[0].breaks[0] // "it reaches 4 in"
 */
export function taperOptions({ ways, allowed, unitSystem }: TaperWays): readonly TaperOption[] {
  // To a hundredth of a thou, a tenth of a micrometre: finer, nobody sets.
  const rounded = (length: Length): Length =>
    unitSystem === "inch"
      ? thou(Math.round(100 * length.in("thou")) / 100)
      : micrometre(Math.round(10 * length.in("micrometre")) / 10);
  return Object.freeze(
    ways.map(({ name, setting, settingIs, error, verdict, reason }) =>
      Object.freeze<TaperOption>({
        name,
        figures: Object.freeze({
          set: setting,
          "that is": settingIs,
          "taper wrong by, end to end (95 %)": rounded(error),
        }),
        breaks: Object.freeze(
          verdict === "cannot reach"
            ? [reason]
            : verdict === "too coarse"
              ? [`the setting alone may leave it wrong by ${rounded(error)}, ${rounded(allowed)} is allowed`]
              : [],
        ),
      }),
    ),
  );
}
