// What the boxes ask of their metal and their clearance, and what is chosen for it.

export { type BoxDesign, boxDesign, type DesignedBox, type OilSupply } from "./box-design.js";
export { boxesOnJournals } from "./boxes-on-journals.js";
export {
  type AlloyChoice,
  type AlloyCriterion,
  alloyChosen,
  chooseBabbitt,
  type JudgedAlloy,
} from "./choose-babbitt.js";
export { type ClearanceChoice, type ClearanceRange, clearanceChoice } from "./clearance-choice.js";
export { partingLines } from "./parting-lines.js";
