import type {
  AlloyChoice,
  BoxAlignment,
  BoxDesign,
  BoxFit,
  ClearanceChoice,
  ContactSpots,
  LoadsAgainst,
  OrderOfFitting,
  PourPlan,
  RunIn,
  RunningPrediction,
} from "../bearing/index.js";
import type { Lift, LiftPlan, Masses, PartsLedger, StoredEnergies, SupportLoads } from "../intake/index.js";
import type {
  DrawUp,
  HeatingPlan,
  HeatNut,
  HubFit,
  NutLock,
  NutRemoval,
  PressRig,
  Release,
  ThreadHand,
  ThreadIdentity,
} from "../joint/index.js";
import type {
  Balance,
  BalanceOnWays,
  BearingPressure,
  BeltPulls,
  BeltTensions,
  BeltWrap,
  CleanUp,
  CriticalSpeeds,
  CutPlan,
  DeepestCut,
  FinishedJournals,
  FitsToMake,
  IndicatorSchedule,
  JournalCleanUps,
  KeyStrength,
  KeyseatAfterCut,
  OptionsWeighed,
  Recentring,
  ShaftBending,
  ShaftDrawing,
  ShaftLoads,
  ShaftSafety,
  ShaftSteel,
  ShaftStrength,
  ShaftsCompared,
  TaperWays,
  WheelRunOut,
} from "../shaft/index.js";
import type {
  CalibrationLine,
  InstrumentComparison,
  InstrumentVerdict,
  NextReadings,
  Ovality,
  Profile,
  RepeatabilityStudy,
  Roundness,
  RunOut,
  SurveyReport,
  TaperFit,
  TaperIdentity,
  TaperSetting,
  WearBands,
  WornSide,
} from "../survey/index.js";

/** The kinds of result a sheet can publish and a later one recall, by the `kind` each carries. */
export interface ResultKinds {
  readonly masses: Masses;
  readonly lift: Lift;
  readonly "lift plan": LiftPlan;
  readonly "support loads": SupportLoads;
  readonly "stored energies": StoredEnergies;
  readonly "parts ledger": PartsLedger;
  readonly profile: Profile;
  readonly "wear bands": WearBands;
  readonly taper: TaperFit;
  readonly "taper identity": TaperIdentity;
  readonly "taper setting": TaperSetting;
  readonly ovality: Ovality;
  readonly roundness: Roundness;
  readonly "run-out": RunOut;
  readonly "worn side": WornSide;
  readonly "next readings": NextReadings;
  readonly "survey report": SurveyReport;
  readonly "repeatability study": RepeatabilityStudy;
  readonly "instrument comparison": InstrumentComparison;
  readonly "calibration line": CalibrationLine;
  readonly "instrument verdict": InstrumentVerdict;
  readonly "thread identity": ThreadIdentity;
  readonly "thread hand": ThreadHand;
  readonly "nut removal": NutRemoval;
  readonly "nut heat": HeatNut;
  readonly "hub fit": HubFit;
  readonly "press rig": PressRig;
  readonly release: Release;
  readonly "heating plan": HeatingPlan;
  readonly "draw-up": DrawUp;
  readonly "nut lock": NutLock;
  readonly "balance on ways": BalanceOnWays;
  readonly balance: Balance;
  readonly "critical speeds": CriticalSpeeds;
  readonly "shaft bending": ShaftBending;
  readonly "shafts compared": ShaftsCompared;
  readonly "belt pulls": BeltPulls;
  readonly "belt tensions": BeltTensions;
  readonly "belt wrap": BeltWrap;
  readonly "clean-up": CleanUp;
  readonly "cut plan": CutPlan;
  readonly "fits to make": FitsToMake;
  readonly "taper ways": TaperWays;
  readonly "indicator schedule": IndicatorSchedule;
  readonly "shaft drawing": ShaftDrawing;
  readonly "finished journals": FinishedJournals;
  readonly "shaft loads": ShaftLoads;
  readonly "options weighed": OptionsWeighed;
  readonly "journals cleaned up": JournalCleanUps;
  readonly "re-centring": Recentring;
  readonly "wheel run-out": WheelRunOut;
  readonly "shaft steel": ShaftSteel;
  readonly "shaft safety": ShaftSafety;
  readonly "shaft strength": ShaftStrength;
  readonly "deepest cut": DeepestCut;
  readonly "key strength": KeyStrength;
  readonly "keyseat after cut": KeyseatAfterCut;
  readonly "bearing pressure": BearingPressure;
  readonly "pour plan": PourPlan;
  readonly "alloy choice": AlloyChoice;
  readonly "box design": BoxDesign;
  readonly "clearance choice": ClearanceChoice;
  readonly "box fit": BoxFit;
  readonly "contact spots": ContactSpots;
  readonly "box alignment": BoxAlignment;
  readonly "order of fitting": OrderOfFitting;
  readonly "run-in": RunIn;
  readonly "loads against foretold": LoadsAgainst;
  readonly "running prediction": RunningPrediction;
}
