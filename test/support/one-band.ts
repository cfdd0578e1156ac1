import { inch, type Length, measured, thou } from "../../kernel-helpers/quantity/index.js";
import type { WearBand, WearBands } from "../../kernel-helpers/survey/profile-types.js";
import { sampleWear } from "./sample-results.js";

/** One flat, round band 2.4300 in thick with u = 0.1 thou and 10 degrees of freedom. */
export function oneBand(limit: Length, change: Partial<WearBand> = {}): WearBands {
  const wear = sampleWear();
  const size = inch(2.43);
  const band: WearBand = {
    ...wear.bands[0]!,
    diameter: measured(size, thou(0.1), 10),
    diameterAtFrom: size,
    diameterAtTo: size,
    smallestAngle: undefined,
    ...change,
  };
  // The sample's gross readings are no part of it.
  const gross = new Set(wear.gross.map(({ reading }) => reading));
  const readings = wear.profile.readings.map((reading, i) =>
    gross.has(i) ? { ...reading, diameter: size } : reading,
  );
  const profile = { ...wear.profile, readings };
  return { ...wear, profile, limit, bands: [band], edges: [], gross: [] };
}
