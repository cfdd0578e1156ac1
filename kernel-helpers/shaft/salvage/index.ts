// Ways to save a shaft, held against every limit.
export { weighOptions } from "./weigh-options.js";
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
