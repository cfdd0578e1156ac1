import type {
  AlloyChoice,
  BoxAlignment,
  BoxDesign,
  BoxFit,
  ClearanceChoice,
  ClearanceMap,
  CoastDown,
  ContactSpots,
  FilmMap,
  LoadsAgainst,
  OrderOfFitting,
  PourComparison,
  PourPlan,
  RunIn,
  RunningFilm,
  RunningPrediction,
} from "../../bearing/index.js";
import type { Presentation } from "../blocks.js";
import { presentAlloyChoice, presentBoxDesign, presentClearanceChoice } from "./present-bearing-design.js";
import { presentBoxAlignment, presentBoxFit, presentContactSpots } from "./present-box-fit.js";
import { presentFilmMap } from "./present-film-map.js";
import { presentLoadsAgainst } from "./present-loads-against.js";
import { presentOrderOfFitting } from "./present-order-of-fitting.js";
import { presentPourComparison } from "./present-pour-comparison.js";
import { presentPourPlan } from "./present-pour-plan.js";
import { presentCoastDown, presentRunIn } from "./present-run-in.js";
import { presentClearanceMap, presentRunningFilm, presentRunningPrediction } from "./present-running.js";

/** What comes of poured bearings. */
export type BearingResult =
  | AlloyChoice
  | BoxAlignment
  | BoxDesign
  | BoxFit
  | ClearanceChoice
  | ClearanceMap
  | CoastDown
  | ContactSpots
  | FilmMap
  | LoadsAgainst
  | OrderOfFitting
  | PourComparison
  | PourPlan
  | RunIn
  | RunningFilm
  | RunningPrediction;

/** Every kind of result of a poured bearing and its look. A kind without an entry here does not compile. */
export const bearingLooks: {
  readonly [K in BearingResult["kind"]]: (result: Extract<BearingResult, { kind: K }>) => Presentation;
} = {
  "alloy choice": presentAlloyChoice,
  "box design": presentBoxDesign,
  "film map": presentFilmMap,
  "loads against foretold": presentLoadsAgainst,
  "clearance choice": presentClearanceChoice,
  "run-in": presentRunIn,
  "coast-down": presentCoastDown,
  "box fit": presentBoxFit,
  "contact spots": presentContactSpots,
  "box alignment": presentBoxAlignment,
  "order of fitting": presentOrderOfFitting,
  "pour comparison": presentPourComparison,
  "pour plan": presentPourPlan,
  "running film": presentRunningFilm,
  "running prediction": presentRunningPrediction,
  "clearance map": presentClearanceMap,
};
