import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { profileOf } from "../../kernel-helpers/survey/index.js";
import { stationMeans } from "../../kernel-helpers/survey/station-means.js";
import { expectClose } from "../support/expect-close.js";
import { shaftTable } from "../support/shaft-table.js";

// Worn on one side by 4 thou: 2.437 in at 0°, 2.433 in at 90°, at station 4 less by 1 thou at both.
const rows = [1, 2, 3, 4, 5].flatMap((station) => [
  { station, angle: 0, diameter: station === 4 ? 2.436 : 2.437 },
  { station, angle: 90, diameter: station === 4 ? 2.432 : 2.433 },
]);
const profile = profileOf(shaftTable(rows), { readingUncertainty: thou(0.2), stationUncertainty: inch(0) });
const thousandth = (metres: number): number => metres / 2.54e-5;
const rounding = { rel: 1e-10, because: "rounding only" };

describe("stationMeans(profile, stations, leftOut)", () => {
  it("is the plain mean with u/√m where all angles are read", () => {
    const means = stationMeans(profile, profile.stations, new Set());
    expect(means.map(({ angles }) => angles)).toEqual(["all", "all", "all", "all", "all"]);
    expectClose(thousandth(means[0]!.diameter), 2435, rounding);
    expectClose(thousandth(means[0]!.u), 0.2 / Math.SQRT2, rounding);
  });
  it("fills a missing angle as the likest neighbour has it, with its uncertainty", () => {
    const leftOut = new Set([6]); // station 4 at 0°
    const fourth = stationMeans(profile, profile.stations, leftOut)[3]!;
    expect(fourth.angles).toBe("filled");
    expectClose(thousandth(fourth.diameter), 2434, rounding);
    // d̄ = read + ½ (missing − read, next door): u² = u² (1 + ¼ + ¼).
    expectClose(thousandth(fourth.u), 0.2 * Math.sqrt(1.5), rounding);
  });
  it("leaves out a station that has no reading left", () => {
    const means = stationMeans(profile, profile.stations, new Set([6, 7]));
    expect(means.map(({ station }) => Math.round(station.station.in("inch")))).toEqual([1, 2, 3, 5]);
  });
  it("takes the plain mean at a station read elsewhere, and marks it", () => {
    const odd = profileOf(shaftTable([...rows, { station: 6, angle: 45, diameter: 2.435 }]), {
      readingUncertainty: thou(0.2),
      stationUncertainty: inch(0),
    });
    const sixth = stationMeans(odd, odd.stations, new Set())[5]!;
    expect(sixth.angles).toBe("other");
    expectClose(thousandth(sixth.diameter), 2435, rounding);
  });
});
