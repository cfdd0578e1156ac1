// Ways to save a shaft, held against every limit.
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
export { weighOptions } from "./weigh-options.js";
export { type JournalTurned, type WeighShaftInput, weighShaft } from "./weigh-shaft.js";
export type {
  Assumption,
  Flip,
  LimitKept,
  OptionsWeighed,
  OptionWeighed,
  PlainNumbers,
  WeighedLimit,
  WeighOptionsInput,
  WorthMeasuring,
} from "./weigh-types.js";
