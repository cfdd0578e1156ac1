import type { Material } from "../../handbook/material-type.js";
import type { StandardKey } from "../../handbook/standard-keys.js";
import type {
  Hang,
  Lift,
  LiftPlan,
  Masses,
  PartsLedger,
  StoredEnergies,
  StoredEnergy,
  SupportLoads,
  Tipping,
} from "../../intake/index.js";
import type { DrawUp } from "../../joint/draw-up-types.js";
import type { NutRemoval } from "../../joint/fastener-types.js";
import type { HandPrediction, ThreadHand } from "../../joint/hand-types.js";
import type { HeatNut } from "../../joint/heat-nut.js";
import type { HeatingPlan } from "../../joint/heating-types.js";
import type { HubFit } from "../../joint/hub-fit-types.js";
import type { NutLock } from "../../joint/nut-lock-types.js";
import type { Release } from "../../joint/release-types.js";
import type { PressRig } from "../../joint/rig-types.js";
import type { ThreadIdentity, ThreadReadings } from "../../joint/thread-types.js";
import type { AnyQuantity } from "../../quantity/index.js";
import type {
  Balance,
  BalanceOnWays,
  BalanceRuns,
  BalanceWithoutPhase,
  BearingPressure,
  BeltAlignment,
  BeltPulls,
  BeltTensions,
  BeltWrap,
  CleanUp,
  CriticalSpeeds,
  DeepestCut,
  DrilledHoles,
  EnduranceLimit,
  FinishedJournals,
  JournalCleanUps,
  KeyStrength,
  KeyseatAfterCut,
  OptionsWeighed,
  PermissibleUnbalance,
  Recentring,
  RimSpeed,
  ShaftBending,
  ShaftLoads,
  ShaftSafety,
  ShaftSteel,
  ShaftStrength,
  ShaftsCompared,
  SplitCorrection,
  StressConcentration,
  TaperCleanUp,
  UnbalanceVerdict,
  WheelRunOut,
} from "../../shaft/index.js";
import type { AnyUncertain, Budget, MonteCarlo } from "../../statistics/index.js";
import type { Comparison } from "../../survey/compare-measured.js";
import type {
  CalibrationLine,
  CorrectedReading,
  InstrumentComparison,
  InstrumentVerdict,
  RepeatabilityStudy,
} from "../../survey/instrument-study-types.js";
import type { NextReadings } from "../../survey/next-readings-types.js";
import type { Profile, TaperFit, WearBands } from "../../survey/profile-types.js";
import type { Ovality, Roundness } from "../../survey/roundness-types.js";
import type { RunOut } from "../../survey/run-out-types.js";
import type { WornSide } from "../../survey/run-out-worn-side.js";
import type { SurveyReport } from "../../survey/survey-report-types.js";
import type { Table } from "../../survey/table.js";
import type { TaperIdentity, TaperSetting } from "../../survey/taper-setting-types.js";
import type { Presentation } from "../blocks.js";
import type { Caution } from "../caution.js";
import type { Audit } from "./audit-types.js";
import { type BearingResult, bearingLooks } from "./bearing-looks.js";
import { presentAudit } from "./present-audit.js";
import {
  presentBalance,
  presentBalanceOnWays,
  presentBalanceRuns,
  presentBalanceWithoutPhase,
  presentDrilledHoles,
  presentPermissibleUnbalance,
  presentSplitCorrection,
  presentUnbalanceVerdict,
} from "./present-balance.js";
import { presentBearingPressure } from "./present-bearing-pressure.js";
import { presentBeltPulls, presentBeltWrap } from "./present-belt.js";
import { presentBeltTensions } from "./present-belt-tensions.js";
import { presentBending } from "./present-bending.js";
import { presentBudget, presentUncertain } from "./present-budget.js";
import { presentCaution } from "./present-caution.js";
import { presentCleanUp } from "./present-clean-up.js";
import { presentComparison } from "./present-comparison.js";
import { presentCriticalSpeeds } from "./present-critical-speeds.js";
import { presentDecision, type ShownDecision } from "./present-decision.js";
import { presentDeepestCut } from "./present-deepest-cut.js";
import { presentDrawUp } from "./present-draw-up.js";
import { presentFinishedJournals } from "./present-finished-journals.js";
import { type FitInputResult, fitInputLooks } from "./present-fit-inputs.js";
import {
  presentBook,
  presentCautions,
  presentHandover,
  presentLists,
  type ShownBook,
  type ShownCautions,
  type ShownHandover,
  type ShownLists,
} from "./present-handover.js";
import { presentHang, presentTipping } from "./present-hang.js";
import { presentHeatingPlan } from "./present-heating-plan.js";
import { presentHubFit } from "./present-hub-fit.js";
import {
  presentCalibrationLine,
  presentCorrectedReading,
  presentInstrumentComparison,
  presentInstrumentVerdict,
  presentRepeatability,
} from "./present-instrument-study.js";
import {
  presentLift,
  presentMasses,
  presentStoredEnergies,
  presentStoredEnergy,
  presentSupportLoads,
} from "./present-intake.js";
import {
  presentJournalCleanUps,
  presentRecentring,
  presentTaperCleanUp,
} from "./present-journal-clean-ups.js";
import { presentKeyStrength, presentKeyseatAfterCut, presentStandardKey } from "./present-key.js";
import { presentLedger } from "./present-ledger.js";
import { presentLiftPlan } from "./present-lift-plan.js";
import { presentMaterial } from "./present-material.js";
import { presentMonteCarlo } from "./present-monte-carlo.js";
import { presentNextReadings } from "./present-next-readings.js";
import { presentNoted, type ShownNoted } from "./present-noted.js";
import { presentNutHeat } from "./present-nut-heat.js";
import { presentNutLock } from "./present-nut-lock.js";
import { presentNutRemoval } from "./present-nut-removal.js";
import { presentOptionsWeighed } from "./present-options-weighed.js";
import { presentOvality } from "./present-ovality.js";
import { presentPressRig } from "./present-press-rig.js";
import { presentProfile } from "./present-profile.js";
import { isSingle, presentSingle, presentSingles } from "./present-quantity.js";
import {
  presentPublication,
  presentRebuild,
  type ShownPublication,
  type ShownRebuild,
} from "./present-rebuild.js";
import { presentRelease } from "./present-release.js";
import { presentRoundness } from "./present-roundness.js";
import { presentRunOut } from "./present-run-out.js";
import { presentShaftLoads } from "./present-shaft-loads.js";
import {
  presentEnduranceLimit,
  presentShaftSafety,
  presentShaftSteel,
  presentShaftStrength,
  presentStressConcentration,
} from "./present-shaft-strength.js";
import { presentShaftsCompared } from "./present-shafts-compared.js";
import { presentSurveyReport } from "./present-survey-report.js";
import { presentTable } from "./present-table.js";
import { presentTaper } from "./present-taper.js";
import { presentTaperIdentity } from "./present-taper-identity.js";
import { presentTaperSetting } from "./present-taper-setting.js";
import { presentHandPrediction, presentThreadHand } from "./present-thread-hand.js";
import { presentThreadIdentity, presentThreadReadings } from "./present-thread-identity.js";
import { presentWearBands } from "./present-wear-bands.js";
import { presentBeltAlignment, presentRimSpeed, presentWheelRunOut } from "./present-wheel.js";
import { presentWornSide } from "./present-worn-side.js";
import { type TurningResult, turningLooks } from "./turning-looks.js";

type Result =
  | BearingResult
  | TurningResult
  | ShownRebuild
  | ShownPublication
  | ShownDecision
  | Audit
  | ShownHandover
  | ShownBook
  | ShownLists
  | ShownCautions
  | ShownNoted
  | Caution
  | Material
  | Masses
  | Lift
  | LiftPlan
  | Hang
  | Tipping
  | SupportLoads
  | StoredEnergy
  | StoredEnergies
  | PartsLedger
  | FitInputResult
  | HubFit
  | PressRig
  | Release
  | HeatingPlan
  | DrawUp
  | NutLock
  | Table
  | Profile
  | WearBands
  | TaperFit
  | TaperIdentity
  | TaperSetting
  | Comparison
  | AnyUncertain
  | Budget
  | MonteCarlo<AnyQuantity | number>
  | Ovality
  | Roundness
  | RunOut
  | WornSide
  | NextReadings
  | SurveyReport
  | RepeatabilityStudy
  | InstrumentComparison
  | CalibrationLine
  | CorrectedReading
  | InstrumentVerdict
  | ThreadReadings
  | ThreadIdentity
  | HandPrediction
  | ThreadHand
  | NutRemoval
  | HeatNut
  | BalanceOnWays
  | BalanceRuns
  | Balance
  | BalanceWithoutPhase
  | PermissibleUnbalance
  | UnbalanceVerdict
  | DrilledHoles
  | SplitCorrection
  | RimSpeed
  | WheelRunOut
  | BeltAlignment
  | BeltPulls
  | BeltTensions
  | ShaftBending
  | ShaftsCompared
  | CriticalSpeeds
  | BeltWrap
  | EnduranceLimit
  | BearingPressure
  | DeepestCut
  | KeyStrength
  | KeyseatAfterCut
  | StandardKey
  | ShaftSafety
  | ShaftSteel
  | ShaftStrength
  | StressConcentration
  | CleanUp
  | FinishedJournals
  | ShaftLoads
  | OptionsWeighed
  | JournalCleanUps
  | Recentring
  | TaperCleanUp;

/** Every kind of result and its look. A kind without an entry here does not compile. */
const looks: { readonly [K in Result["kind"]]: (result: Extract<Result, { kind: K }>) => Presentation } = {
  rebuild: presentRebuild,
  published: presentPublication,
  decision: presentDecision,
  audit: presentAudit,
  handover: presentHandover,
  "decision book": presentBook,
  "handover lists": presentLists,
  "cautions in force": presentCautions,
  noted: presentNoted,
  caution: presentCaution,
  material: presentMaterial,
  masses: presentMasses,
  lift: presentLift,
  "lift plan": presentLiftPlan,
  hang: presentHang,
  tipping: presentTipping,
  "support loads": presentSupportLoads,
  "stored energy": presentStoredEnergy,
  "stored energies": presentStoredEnergies,
  "parts ledger": presentLedger,
  ...fitInputLooks,
  "hub fit": presentHubFit,
  "press rig": presentPressRig,
  release: presentRelease,
  "heating plan": presentHeatingPlan,
  "draw-up": presentDrawUp,
  "nut lock": presentNutLock,
  table: presentTable,
  profile: presentProfile,
  "wear bands": presentWearBands,
  taper: presentTaper,
  "taper identity": presentTaperIdentity,
  "taper setting": presentTaperSetting,
  comparison: presentComparison,
  uncertain: presentUncertain,
  budget: presentBudget,
  "monte carlo": presentMonteCarlo,
  ovality: presentOvality,
  roundness: presentRoundness,
  "run-out": presentRunOut,
  "worn side": presentWornSide,
  "next readings": presentNextReadings,
  "survey report": presentSurveyReport,
  "repeatability study": presentRepeatability,
  "instrument comparison": presentInstrumentComparison,
  "calibration line": presentCalibrationLine,
  "corrected reading": presentCorrectedReading,
  "instrument verdict": presentInstrumentVerdict,
  "thread readings": presentThreadReadings,
  "thread identity": presentThreadIdentity,
  "hand prediction": presentHandPrediction,
  "thread hand": presentThreadHand,
  "nut removal": presentNutRemoval,
  "nut heat": presentNutHeat,
  "balance on ways": presentBalanceOnWays,
  "balance runs": presentBalanceRuns,
  balance: presentBalance,
  "balance without phase": presentBalanceWithoutPhase,
  "permissible unbalance": presentPermissibleUnbalance,
  "unbalance verdict": presentUnbalanceVerdict,
  "drilled holes": presentDrilledHoles,
  "split correction": presentSplitCorrection,
  "rim speed": presentRimSpeed,
  "wheel run-out": presentWheelRunOut,
  "belt alignment": presentBeltAlignment,
  "shaft bending": presentBending,
  "shafts compared": presentShaftsCompared,
  "critical speeds": presentCriticalSpeeds,
  "belt pulls": presentBeltPulls,
  "belt tensions": presentBeltTensions,
  "belt wrap": presentBeltWrap,
  "endurance limit": presentEnduranceLimit,
  "bearing pressure": presentBearingPressure,
  "deepest cut": presentDeepestCut,
  "key strength": presentKeyStrength,
  "keyseat after cut": presentKeyseatAfterCut,
  "standard key": presentStandardKey,
  "shaft safety": presentShaftSafety,
  "shaft steel": presentShaftSteel,
  "shaft strength": presentShaftStrength,
  "stress concentration": presentStressConcentration,
  "clean-up": presentCleanUp,
  "finished journals": presentFinishedJournals,
  "shaft loads": presentShaftLoads,
  "options weighed": presentOptionsWeighed,
  "journals cleaned up": presentJournalCleanUps,
  "re-centring": presentRecentring,
  "taper clean-up": presentTaperCleanUp,
  ...bearingLooks,
  ...turningLooks,
};

/**
 * The look of a result by its `kind`; of a quantity, a temperature, a measured value, or a list of these.
 *
 * @returns undefined for anything else
 */
export function presentResult(value: unknown): Presentation | undefined {
  if (isSingle(value)) return presentSingle(value);
  if (Array.isArray(value))
    return value.length > 0 && value.every(isSingle) ? presentSingles(value) : undefined;
  if (typeof value !== "object" || value === null) return undefined;
  const { kind } = value as { kind?: unknown };
  if (typeof kind !== "string" || !Object.hasOwn(looks, kind)) return undefined;
  return (looks as Readonly<Record<string, (result: unknown) => Presentation>>)[kind]!(value);
}
