// The table editor without its page: a CSV file as text, and everything that can be done to it.
export { cellRaw, cellValue } from "./cell-text.js";
export { type ColumnLook, columnLook } from "./column-look.js";
export { compareTexts, type TextStretch } from "./compare-texts.js";
export {
  type CsvDocument,
  headerRow,
  lineNumbers,
  type Piece,
  type RemarkLine,
  type Row,
  writeCsv,
} from "./csv-document.js";
export { type Draft, readDraft, writeDraft } from "./draft.js";
export { setBlock } from "./edit-block.js";
export { cellAt, setCell } from "./edit-cells.js";
export { insertColumn, startTable } from "./edit-columns.js";
export { setRemark } from "./edit-remarks.js";
export { appendRow, deletePiece, insertRemark, insertRow } from "./edit-rows.js";
export { type EmptyForm, emptyForm } from "./empty-form.js";
export {
  faultsByPlace,
  lineNamed,
  type PlacedFault,
  placeFaults,
  placeKey,
  type ReportedFault,
} from "./fault-places.js";
export { type History, record, redo, type Step, startHistory, undo } from "./history.js";
export { type ColumnProposal, headerFaults, nextAngleColumn } from "./new-column.js";
export { type Move, movedPlace, nextPlace, type Place, type TableShape } from "./next-place.js";
export { parseCsv } from "./parse-csv.js";
export { pastedBlock } from "./pasted-block.js";
export { type RemarkParts, remarkParts, remarkText, withRemarkParts } from "./remark-parts.js";
export { type Starter, starterHeaders } from "./starter-headers.js";
export { aboutPieces, bodyPieces } from "./table-parts.js";
export { visibleRange } from "./visible-range.js";
