import { type Angle, type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";
import { anglesOf, type Table } from "../../survey/index.js";
import { lengthMaker, type OnceATurn, ringRunOut, vectorBetween } from "./ring-run-out.js";
import type { RingRunOut, WheelRunOut, WheelRunOutOptions } from "./wheel-run-out-types.js";

/**
 * Run-out of a wheel on its shaft from indicator readings on rim and face, and on its hub, split into offset, wobble and
 * out of round.
 *
 * The first harmonic of the rim's readings is its eccentricity ON RADIUS (half of the total indicator reading it
 * makes alone); that of the face's readings over their radius is how far the wheel leans; what is left is out of
 * round, or an uneven face. Hub and hub face are split alike. Rim less hub, as vectors, is what the wheel was made
 * with; what the hub has itself is how it sits on its shaft.
 *
 * Valid when: the shaft turns in its bearings without end play. End play falls on the face's readings: hold the shaft
 * against one collar, or read two indicators half a turn apart and halve their difference. The hub is read where it was
 * turned together with its bore; a rough casting says nothing of the seat.
 *
 * @param table  columns angle, rim and, if read, face, hub and hub face [rad], [m]; the angle is the mark under the
 * indicator
 * @param options.faceRadius  where the face was read, > 0 [m]
 * @param options.hubFaceRadius  where the hub's face was read, > 0 [m]
 * @param options.readingUncertainty  standard uncertainty of a reading, > 0 [m]
 * @returns each ring with uncertainties [m], the leans [rad], and rim against hub
 * @throws RangeError  a column is missing, fewer than 4 different angles, nothing says how good a reading is, a hub face
 * without its radius
 * @example
 * const rows = [0, 45, 90, 135, 180, 225, 270, 315].map((a) => `${a},${5 * Math.cos((a * Math.PI) / 180)}`);
 * const bytes = new TextEncoder().encode(["angle [deg],rim [thou]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "pulley", file: "pulley.csv" });
 * wheelRunOut(table, { faceRadius: inch(14), readingUncertainty: thou(0.5) }).rim.once.value.in("thou").toFixed(2) // "5.00"
 * @source first harmonic as the least-squares circle, see `fitHarmonics`; the split: common practice of the trade
 */
export function wheelRunOut(table: Table, options: WheelRunOutOptions): WheelRunOut {
  const { faceRadius, hubFaceRadius } = options;
  for (const [name, radius] of [
    ["faceRadius", faceRadius] as const,
    ["hubFaceRadius", hubFaceRadius] as const,
  ])
    if (radius !== undefined && !(radius.si > 0))
      throw new RangeError(`wheelRunOut: ${name} must be above 0, got ${radius}`);
  const angles = anglesOf(table);
  const units = table.unitSystem ?? "inch";
  const ring = (name: string): ReturnType<typeof ringRunOut> =>
    ringRunOut(table, name, angles, options, units);
  const rim = ring("rim");
  if (rim === undefined)
    throw new RangeError(`wheelRunOut: ${table.file} must have a column "rim" in a unit of length, got none`);
  const [face, hub, hubFace] = [ring("face"), ring("hub"), ring("hub face")];
  if (hubFace !== undefined && hubFaceRadius === undefined)
    throw new RangeError(
      `wheelRunOut: ${table.file} has a column "hub face": give hubFaceRadius, from the axis to where it was read`,
    );
  const angle = (si: number): Angle => quantityFromSi("angle", si, "degree");
  return Object.freeze<WheelRunOut>({
    kind: "wheel run-out",
    title: table.name,
    unitSystem: units,
    rim: rim.ring,
    face: face?.ring,
    lean: face && leanOf(face.ring, faceRadius),
    hub: hub?.ring,
    hubFace: hubFace?.ring,
    hubLean: hubFace && leanOf(hubFace.ring, hubFaceRadius!),
    ownOffset: hub && vectorBetween<Length>(rim.once, hub.once, [1, 1], lengthMaker(units)),
    ownLean: ownLean(face?.once, hubFace?.once),
    warnings: Object.freeze([
      ...(face === undefined ? ["The face was not read, so a wheel that leans is not found."] : []),
      ...(hub === undefined
        ? ["The hub was not read, so whether the wheel sits off centre or was made so is not told."]
        : []),
    ]),
  });

  function ownLean(of: OnceATurn | undefined, seat: OnceATurn | undefined): WheelRunOut["ownLean"] {
    if (of === undefined || seat === undefined) return undefined;
    return vectorBetween<Angle>(of, seat, [1 / faceRadius.si, 1 / hubFaceRadius!.si], angle);
  }

  function leanOf({ once }: RingRunOut, radius: Length): Measured<Angle> {
    return measured(
      angle(once.value.si / radius.si),
      angle(once.standardUncertainty.si / radius.si),
      once.degreesOfFreedom,
    );
  }
}
