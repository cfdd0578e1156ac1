import type { Profile, TaperFit, TaperIdentity, TaperSetting, WearBands } from "../survey/index.js";

/** The kinds of result a sheet can publish and a later one recall, by the `kind` each carries. */
export interface ResultKinds {
  readonly profile: Profile;
  readonly "wear bands": WearBands;
  readonly taper: TaperFit;
  readonly "taper identity": TaperIdentity;
  readonly "taper setting": TaperSetting;
}
