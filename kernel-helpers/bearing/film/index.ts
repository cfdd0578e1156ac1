// The oil film and what it makes of a bearing.

export { type AirRoundBox, boxCooling } from "./box-cooling.js";
export {
  type ClearanceMap,
  type ClearanceMapOptions,
  clearanceMap,
  clearanceMapInSteps,
  type FilmStep,
} from "./clearance-map.js";
export { type FilmCurve, filmAt, filmCurve } from "./film-curve.js";
export { type FilmMap, filmMap } from "./film-map.js";
export { type FilmState, type FilmSupply, filmState } from "./film-state.js";
export { foretoldFriction } from "./foretold-friction.js";
export { type BoxLoadNow, type LoadsAgainst, loadsAgainstForetold } from "./loads-against-foretold.js";
export { type RunningFilm, type RunningFilmOptions, runningFilm, type ShortFilm } from "./running-film.js";
export {
  type BoxPrediction,
  type FilmUncertainty,
  type ForetoldBox,
  foretoldRises,
  type RiseShare,
  type RunningPrediction,
  runningPrediction,
} from "./running-prediction.js";
export { type StarvedFilm, type StarvedFilms, starvedFilm, starvedFilms } from "./starved-film.js";
