import { type Angle, type Length, measured, quantityFromSi } from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";
import type { Profile } from "./profile-types.js";
import { requireAgreeingReadings } from "./repeated-readings.js";
import { countDiameters, fitOval } from "./roundness-oval-fit.js";
import type { Ovality } from "./roundness-types.js";
import { angleWords, chanceText, plainSmall, smallText } from "./run-out-text.js";
import { scattersTooMuch, scatterWarning } from "./scatter-test.js";
import { unitOf } from "./unit-of.js";

/** So rare must an ovality be on a round shaft to be called real. */
const realBelow = 0.05;

/**
 * The ovality of a shaft between two stations, from diameters at two or more angles.
 *
 * D(θ) = D̄ + ½O cos 2(θ − ψ), O the ovality ON DIAMETER, largest less smallest; ψ the largest diameter's direction.
 * - From 3 or more directions: weighted least squares with a mean of each station's own and one oval for all;
 *   real where the chance of a round shaft reading so (chi-square, 2 degrees of freedom) is below 5 %.
 * - From two directions θ₁, θ₂: only the difference d = D(θ₁) − D(θ₂) is known, and |d| = O |sin(θ₁−θ₂)|
 *   |sin(θ₁+θ₂−2ψ)|, so O is AT LEAST |d|/|sin(θ₁−θ₂)|, and where the oval lies is not known. Real by Student's t.
 *
 * Where the readings scatter about the oval more than stated (chi-square, 1 %) the uncertainties are widened.
 *
 * Valid when: the shape does not change between the stations, and what differs from angle to angle is an oval.
 * Diameters cannot see odd lobes: a three-lobed shaft has one diameter all round. Nor can they tell on which of two
 * opposite sides metal is missing. Noise makes a small ovality too large: look at `chance`.
 *
 * @param profile  the diameter along the shaft, gross readings left out beforehand
 * @param from  first station [m]
 * @param to  last station [m], default the first
 * @returns ovality on diameter [m] with its uncertainty, directions [rad], whether it is real
 * @throws RangeError  no station there was read at two different directions, the directions cannot tell where an
 *   oval lies, from lies behind to, or readings of one place contradict each other
 * @example
 * const rows = ["5,0,2.4350", "5,45,2.4340", "5,90,2.4330", "5,135,2.4340"];
 * const bytes = new TextEncoder().encode(["station [in],angle [deg],diameter [in]", ...rows].join("\n"));
 * const profile = profileOf(readTable(bytes, { name: "box", file: "box.csv" }), { readingUncertainty: thou(0.2) });
 * ovalityOf(profile, inch(5)).ovality.value.in("thou").toFixed(3) // "2.000"
 * @source two-point measurement: ISO 4292:1985 (from memory); least squares and tests: textbook
 */
export function ovalityOf(profile: Profile, from: Length, to: Length = from): Ovality {
  if (to < from) throw new RangeError(`ovalityOf: from must not lie behind to, got ${from} and ${to}`);
  const slack = 1e-9;
  const stations = profile.stations
    .filter(({ station }) => station.si >= from.si - slack && station.si <= to.si + slack)
    .map(({ readings }) =>
      readings.map((i) => profile.readings[i]!).filter(({ angle }) => angle !== undefined),
    )
    .filter((readings) => countDiameters(readings) >= 2);
  if (stations.length === 0)
    throw new RangeError(
      `ovalityOf: at least one station read at two different directions is needed, got none from ${from} to ${to}`,
    );
  const places = stations.map((readings) => readings[0]!.station);
  requireAgreeingReadings("ovalityOf", {
    ...profile,
    stations: profile.stations.filter(({ station }) => places.includes(station)),
  });
  const { bound, directions, chiSquare, degreesOfFreedom, ovalWith } = fitOval(stations);
  const tooMuch = scattersTooMuch(chiSquare, degreesOfFreedom);
  const noiseRatio = tooMuch ? Math.sqrt(chiSquare / degreesOfFreedom) : 1;
  const oval = ovalWith(noiseRatio, tooMuch ? degreesOfFreedom : Number.POSITIVE_INFINITY);
  const dof = oval.degreesOfFreedom;
  const real = oval.chance < realBelow;
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unitOf(profile));
  const angleOf = (si: number): Angle => quantityFromSi("angle", si, "degree");
  const directionAt = (si: number): Ovality["largestAt"] =>
    real && bound === "measured" ? measured(angleOf(si % Math.PI), angleOf(oval.uPhase), dof) : undefined;
  const found = {
    bound,
    ovality: measured(lengthOf(2 * oval.amplitude), lengthOf(2 * oval.uAmplitude), dof),
    largestAt: directionAt(oval.phase),
    smallestAt: directionAt(oval.phase + Math.PI / 2),
    chance: oval.chance,
    real,
  };
  return Object.freeze<Ovality>({
    kind: "ovality",
    title: profile.title,
    unitSystem: profile.unitSystem,
    from: places[0]!,
    to: places[places.length - 1]!,
    stationCount: stations.length,
    angleCount: directions,
    ...found,
    text: sentence(found, profile.unitSystem),
    warnings: Object.freeze(tooMuch ? [scatterWarning(noiseRatio)] : []),
  });
}

function sentence(
  {
    bound,
    ovality,
    largestAt,
    chance,
    real,
  }: Pick<Ovality, "bound" | "ovality" | "largestAt" | "chance" | "real">,
  system: Profile["unitSystem"],
): string {
  const why = `a round shaft reads so in ${chanceText(chance)} of surveys`;
  const two = "two directions give a lower bound, and do not tell where the oval lies";
  if (!real) {
    const most = ovality.value.plus(
      ovality.standardUncertainty.times(coverageFactor(0.95, ovality.degreesOfFreedom)),
    );
    const blind =
      bound === "measured" ? "" : "; an oval midway between the two directions would not show at all";
    return `No ovality stands out of the noise: ${why}. One up to ${plainSmall(most, system)} on diameter could hide in it${blind}.`;
  }
  return bound === "measured"
    ? `Oval by ${smallText(ovality, system)} on diameter (95 %), largest at ${angleWords(largestAt!)}: ${why}.`
    : `Oval by at least ${smallText(ovality, system)} on diameter (95 %): ${two}; ${why}.`;
}
