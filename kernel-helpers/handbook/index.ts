// Published tables, each row with its source.
export { type BrownSharpeRow, brownSharpeRows, brownSharpeTapers } from "./brown-sharpe-tapers.js";
export { expansionOf, type MaterialExpansion, materialExpansions } from "./expansion.js";
export {
  type FitFriction,
  type FitSurface,
  fitFriction,
  fitFrictions,
} from "./fit-friction.js";
export { jarnoSeries, jarnoTaper } from "./jarno-tapers.js";
export { material, materials } from "./material.js";
export type { Material, MaterialFamily, MaterialProperty } from "./material-type.js";
export { type MorseRow, morseRows, morseTapers } from "./morse-tapers.js";
export type { StandardTaper } from "./standard-taper.js";
export { perFootTapers, ratioTapers } from "./taper-series.js";
export { standardTapers } from "./tapers.js";
