import { inspect } from "node:util";
import type { ErrorContent } from "./error-content.js";
import { excerpt } from "./excerpt.js";
import { faint, red } from "./ink.js";
import type { Place } from "./scripts.js";
import { describePlace, type PlacesOf } from "./stack-places.js";

/** More places, or more causes, than this help nobody. */
const most = 5;

/**
 * What was thrown in a cell, told to the one who wrote the cell: name and message, the cell's own line with an
 * excerpt, and the chain of causes. Frames of helpers, packages and the kernel are left out.
 */
export function thrownError(thrown: unknown, placesOf: PlacesOf): ErrorContent {
  const { ename, evalue } = nameAndMessage(thrown);
  return Object.freeze({ ename, evalue, traceback: Object.freeze(tell(thrown, placesOf, [])) });
}

function tell(thrown: unknown, placesOf: PlacesOf, before: readonly unknown[]): string[] {
  const { ename, evalue } = nameAndMessage(thrown);
  const told = before.length === 0 ? red(`${ename}: ${evalue}`) : `caused by ${ename}: ${evalue}`;
  const lines = [told];
  if (!(thrown instanceof Error)) return lines;
  lines.push(...tellPlaces(placesOf(thrown)));
  if (thrown instanceof AggregateError)
    for (const one of thrown.errors.slice(0, most)) lines.push(`- ${nameAndMessage(one).evalue}`);
  const seen = [...before, thrown];
  if (thrown.cause !== undefined && !seen.includes(thrown.cause) && seen.length <= most)
    lines.push(...tell(thrown.cause, placesOf, seen));
  return lines;
}

/** The innermost place with its excerpt; the way there in one line each. */
function tellPlaces(places: readonly Place[]): string[] {
  const [innermost, ...callers] = differentLines(places);
  if (innermost === undefined) return [];
  const way = callers.slice(0, most).map((place) => faint(`called from ${describePlace(place)}`));
  return [
    `in ${describePlace(innermost)}`,
    ...excerpt(innermost.script.source, innermost.at),
    ...way,
    ...(callers.length > most ? [faint(`and ${callers.length - most} more`)] : []),
  ];
}

function differentLines(places: readonly Place[]): Place[] {
  return places.filter(
    (place, i) =>
      places.findIndex((other) => other.script === place.script && other.at.line === place.at.line) === i,
  );
}

function nameAndMessage(thrown: unknown): { readonly ename: string; readonly evalue: string } {
  if (thrown instanceof Error)
    return { ename: thrown.name || "Error", evalue: String(thrown.message || "(no message)") };
  return { ename: "Thrown", evalue: inspect(thrown) };
}
