import type { Profile } from "./profile-types.js";

/** The unit a profile's small lengths are spoken of in. */
export function unitOf(profile: Profile): "inch" | "mm" {
  return profile.unitSystem === "inch" ? "inch" : "mm";
}
