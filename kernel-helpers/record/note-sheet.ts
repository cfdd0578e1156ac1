import { getSession, handedOnSoFar, openedSoFar, readSoFar, shownSoFar } from "./session.js";
import { noteReads, type ShownCaution } from "./sheet-reads.js";
import { sourcesIn } from "./sources-in.js";

/** Notes on disk what a running sheet has taken in and done so far. */
export function noteSheet(directory: string, sheet: string): void {
  const { published, decided, refused, notes } = handedOnSoFar(directory, sheet);
  const wrote =
    [published, decided, refused].some((part) => Object.keys(part).length > 0) ||
    Object.values(notes).some((entries) => entries.length > 0);
  noteReads(directory, sheet, {
    ...readSoFar(directory),
    ...shownSoFar(),
    wrote,
    decided: Object.keys(decided).sort(),
  });
}

/**
 * Notes what the running sheet shows: the cautions, and the sources named in it. Called by the kernel for the last
 * value of each cell; nothing is noted outside a sheet.
 *
 * @param value   the value shown
 * @param blocks  what it looks like; undefined for a value without a look
 */
export function noteShown(value: unknown, blocks: readonly unknown[] | undefined): void {
  const { sheet } = getSession();
  if (sheet === undefined) return;
  const shown = shownSoFar();
  let news = false;
  for (const { type, title, points } of (blocks ?? []) as readonly Partial<
    ShownCaution & { readonly type: string }
  >[]) {
    if (type !== "caution" || title === undefined || points === undefined) continue;
    if (shown.cautions.some((caution) => caution.title === title)) continue;
    shown.cautions.push({ title, points });
    news = true;
  }
  for (const source of sourcesIn(value)) {
    if (shown.sources.includes(source)) continue;
    shown.sources.push(source);
    news = true;
  }
  if (news) for (const directory of openedSoFar()) noteSheet(directory, sheet);
}
