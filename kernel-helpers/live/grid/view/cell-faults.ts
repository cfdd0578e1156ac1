import { faultsByPlace, type PlacedFault, placeKey } from "../model/index.js";
import type { TableSession } from "../table-session.js";

/** The faults of each cell and line, as long as they fit the lines of the text as it stands. */
export class CellFaults {
  readonly #session: TableSession;
  #of: readonly PlacedFault[] | undefined;
  #places: ReadonlyMap<string, readonly PlacedFault[]> = new Map();

  constructor(session: TableSession) {
    this.#session = session;
  }

  /** Those in one cell; column −1 for those of the whole line. */
  at(piece: number, column: number): readonly PlacedFault[] {
    const { check, editor } = this.#session;
    if (check === undefined || check.document.pieces.length !== editor.document.pieces.length) return [];
    if (this.#of !== check.faults) {
      this.#of = check.faults;
      this.#places = faultsByPlace(check.faults);
    }
    return this.#places.get(placeKey(piece, column)) ?? [];
  }
}
