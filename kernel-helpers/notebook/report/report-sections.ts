import type { Painter } from "../../view/picture/painter.js";
import { holdsFigures } from "./figure-picture.js";
import { plotlyLibrary } from "./plotly-library.js";
import { sheetId } from "./report-head.js";
import type { ReportSheet } from "./report-input.js";
import { sheetSection } from "./sheet-section.js";

/** The sections of a report, each made once: whoever has a sheet early may ask for its section early. */
export class ReportSections {
  readonly #painter: Painter;
  readonly #made: WeakMap<ReportSheet, Promise<string>> = new WeakMap();

  constructor(painter: Painter) {
    this.#painter = painter;
  }

  /** @param index the sheet's place in the report, from 0 [-] */
  of(sheet: ReportSheet, index: number): Promise<string> {
    const section = this.#made.get(sheet) ?? this.#make(sheet, index);
    this.#made.set(sheet, section);
    return section;
  }

  async #make(sheet: ReportSheet, index: number): Promise<string> {
    const html = await sheetSection(sheet, sheetId(index), this.#painter);
    if (holdsFigures(html)) plotlyLibrary(); // packed now, while whoever asked early waits for other sheets
    return html;
  }
}
