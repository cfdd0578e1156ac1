export { quotedTexts } from "./asked-names.js";
export { type EmptyTable, emptyTable } from "./empty-table.js";
export {
  exampleInstruments,
  type NewRebuild,
  type NewRebuildOptions,
  newRebuild,
  templateSheets,
} from "./new-rebuild.js";
