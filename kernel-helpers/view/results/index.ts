/** What each kind of result looks like. */
export { presentProfile } from "./present-profile.js";
export { isSingle, presentSingle, presentSingles, type Single, singleText } from "./present-quantity.js";
export { presentResult } from "./present-result.js";
export { presentTable } from "./present-table.js";
export { presentTaper } from "./present-taper.js";
export { presentTaperIdentity } from "./present-taper-identity.js";
export { presentTaperSetting } from "./present-taper-setting.js";
export { presentWearBands } from "./present-wear-bands.js";
export { profileFigure } from "./profile-figure.js";
export { taperFigure } from "./taper-figure.js";
export { wearFigure } from "./wear-figure.js";
