// Published tables, each row with its source.
export { type BrownSharpeRow, brownSharpeRows, brownSharpeTapers } from "./brown-sharpe-tapers.js";
export { expansionOf, type MaterialExpansion, materialExpansions } from "./expansion.js";
export { jarnoSeries, jarnoTaper } from "./jarno-tapers.js";
export { type MorseRow, morseRows, morseTapers } from "./morse-tapers.js";
export type { StandardTaper } from "./standard-taper.js";
export { perFootTapers, ratioTapers } from "./taper-series.js";
export { standardTapers } from "./tapers.js";
