/** The state of a screw thread and the seat of its nut. */
export type ThreadSurface = "anti-seize" | "oiled" | "dry" | "rusted";

/** Friction in a thread and under its nut, as a range with the reason for both ends. */
export interface ThreadFriction {
  readonly surface: ThreadSurface;
  readonly low: number;
  readonly high: number;
  readonly because: string;
  readonly source: string;
}

/**
 * Coefficients of friction of screw threads and nut seats, steel on steel or iron, as ranges.
 *
 * @source common practice, no source
 */
export const threadFrictions: readonly ThreadFriction[] = Object.freeze([
  range("anti-seize", 0.06, 0.11, "freshly spread, to old paste"),
  range("oiled", 0.1, 0.16, "wet with oil, to the film of the shop"),
  range("dry", 0.12, 0.22, "as received, to bare metal"),
  range("rusted", 0.2, 0.5, "a stain, to scale in the flanks"),
]);

/**
 * The range of friction of a thread by its state.
 *
 * Valid when: at rest, room temperature. Flanks that have welded or galled have no coefficient of friction.
 *
 * @param surface  "anti-seize", "oiled", "dry" or "rusted" [-]
 * @returns least and greatest coefficient [-], with the reason
 * @throws RangeError  it is none of these
 * @example threadFriction("oiled").high // 0.16
 * @source common practice, no source
 */
export function threadFriction(surface: ThreadSurface): ThreadFriction {
  const found = threadFrictions.find((one) => one.surface === surface);
  if (found === undefined)
    throw new RangeError(
      `threadFriction: surface must be one of ${threadFrictions.map((one) => one.surface).join(", ")}, got ${String(surface)}`,
    );
  return found;
}

function range(surface: ThreadSurface, low: number, high: number, because: string): ThreadFriction {
  return Object.freeze({ surface, low, high, because, source: "common practice, no source" });
}
