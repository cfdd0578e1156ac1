import type { Comparison } from "../../survey/compare-measured.js";
import type { Profile, TaperFit, WearBands } from "../../survey/profile-types.js";
import type { Table } from "../../survey/table.js";
import type { TaperIdentity, TaperSetting } from "../../survey/taper-setting-types.js";
import type { Presentation } from "../blocks.js";
import type { Caution } from "../caution.js";
import { presentCaution } from "./present-caution.js";
import { presentComparison } from "./present-comparison.js";
import { presentProfile } from "./present-profile.js";
import { isSingle, presentSingle, presentSingles } from "./present-quantity.js";
import {
  presentPublication,
  presentRebuild,
  type ShownPublication,
  type ShownRebuild,
} from "./present-rebuild.js";
import { presentTable } from "./present-table.js";
import { presentTaper } from "./present-taper.js";
import { presentTaperIdentity } from "./present-taper-identity.js";
import { presentTaperSetting } from "./present-taper-setting.js";
import { presentWearBands } from "./present-wear-bands.js";

type Result =
  | ShownRebuild
  | ShownPublication
  | Caution
  | Table
  | Profile
  | WearBands
  | TaperFit
  | TaperIdentity
  | TaperSetting
  | Comparison;

/** Every kind of result and its look. A kind without an entry here does not compile. */
const looks: { readonly [K in Result["kind"]]: (result: Extract<Result, { kind: K }>) => Presentation } = {
  rebuild: presentRebuild,
  published: presentPublication,
  caution: presentCaution,
  table: presentTable,
  profile: presentProfile,
  "wear bands": presentWearBands,
  taper: presentTaper,
  "taper identity": presentTaperIdentity,
  "taper setting": presentTaperSetting,
  comparison: presentComparison,
};

/**
 * The look of a result by its `kind`; of a quantity, a temperature, a measured value, or a list of these.
 *
 * @returns undefined for anything else
 */
export function presentResult(value: unknown): Presentation | undefined {
  if (isSingle(value)) return presentSingle(value);
  if (Array.isArray(value))
    return value.length > 0 && value.every(isSingle) ? presentSingles(value) : undefined;
  if (typeof value !== "object" || value === null) return undefined;
  const { kind } = value as { kind?: unknown };
  if (typeof kind !== "string" || !Object.hasOwn(looks, kind)) return undefined;
  return (looks as Readonly<Record<string, (result: unknown) => Presentation>>)[kind]!(value);
}
