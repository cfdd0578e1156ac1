import type {
  CutPlan,
  FitsToMake,
  IndicatorSchedule,
  ShaftDrawing,
  TaperCorrection,
  TaperWays,
  TurningStock,
} from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import { presentCutPlan, presentTurningStock } from "./present-cut-plan.js";
import { presentFitsToMake } from "./present-fits-to-make.js";
import { presentIndicatorSchedule } from "./present-indicator-schedule.js";
import { presentShaftDrawing } from "./present-shaft-drawing.js";
import { presentTaperCorrection, presentTaperWays } from "./present-taper-ways.js";

/** What comes of setting up the lathe. */
export type TurningResult =
  | CutPlan
  | FitsToMake
  | IndicatorSchedule
  | ShaftDrawing
  | TaperCorrection
  | TaperWays
  | TurningStock;

/** Every kind of result of turning and its look. A kind without an entry here does not compile. */
export const turningLooks: {
  readonly [K in TurningResult["kind"]]: (result: Extract<TurningResult, { kind: K }>) => Presentation;
} = {
  "turning stock": presentTurningStock,
  "cut plan": presentCutPlan,
  "fits to make": presentFitsToMake,
  "taper ways": presentTaperWays,
  "indicator schedule": presentIndicatorSchedule,
  "taper correction": presentTaperCorrection,
  "shaft drawing": presentShaftDrawing,
};
