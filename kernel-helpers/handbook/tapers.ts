import { brownSharpeTapers } from "./brown-sharpe-tapers.js";
import { jarnoSeries } from "./jarno-tapers.js";
import { morseTapers } from "./morse-tapers.js";
import type { StandardTaper } from "./standard-taper.js";
import { perFootTapers, ratioTapers } from "./taper-series.js";

/** Every standard taper of this handbook, each with its source. Jarno stands once: its numbers share one taper. */
export const standardTapers: readonly StandardTaper[] = Object.freeze([
  ...morseTapers,
  ...brownSharpeTapers,
  jarnoSeries,
  ...perFootTapers,
  ...ratioTapers,
]);
