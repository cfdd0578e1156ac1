// Ways to save a shaft, held against every limit.
export type { WeighedBending } from "./bend-limits.js";
export { compareShafts } from "./compare-shafts.js";
export type {
  ComparedFigure,
  ComparedMeasure,
  ComparedValue,
  CompareShaftsInput,
  ShaftsCompared,
} from "./compare-types.js";
export { loadedShaft } from "./loaded-shaft.js";
export { type SalvageOption, salvageOptions } from "./salvage-options.js";
export { type SalvageWay, salvageWays } from "./salvage-ways.js";
export type {
  OwnWeight,
  PlaceLoaded,
  ShaftBox,
  ShaftCase,
  ShaftLoads,
  ShaftSeat,
  ShaftWheel,
} from "./shaft-case.js";
export { shaftLoads } from "./shaft-loads.js";
export { type PlacesAs, shaftPlaces } from "./shaft-places.js";
export { type DrawnChance, drawnChance } from "./weigh-chance.js";
export { weighOptions, weighOptionsInSteps } from "./weigh-options.js";
export { type JournalTurned, type WeighShaftInput, weighShaft, weighShaftInSteps } from "./weigh-shaft.js";
export type {
  Assumption,
  Flip,
  LimitKept,
  OptionsWeighed,
  OptionWeighed,
  PlainNumbers,
  WeighedLimit,
  WeighedVerdict,
  WeighingStep,
  WeighOptionsInput,
  WorthMeasuring,
} from "./weigh-types.js";
