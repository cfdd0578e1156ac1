import { isQuantity, isTemperature } from "../quantity/index.js";
import type { DecisionOptionGiven, DecisionRequest } from "./decision-types.js";

/**
 * Checks all of a decision but its limits: what is missing, unknown or no date is said in plain words.
 *
 * @throws TypeError   a part is missing or of the wrong form
 * @throws RangeError  the choice is none of the options, two options have one name, or the date is none
 */
export function checkDecision(request: DecisionRequest): void {
  for (const part of ["name", "question", "choice", "reason", "by"] as const)
    requireText(part, request[part]);
  const { options, choice, by, on, override, limits = {} } = request;
  if (!Array.isArray(options) || options.length === 0)
    throw new TypeError("decide: options must list at least one way to go on, got none");
  const names = new Set<string>();
  for (const option of options) {
    requireText("the name of an option", option?.name);
    if (names.has(option.name))
      throw new RangeError(`decide: each option must have a name of its own, got "${option.name}" twice`);
    names.add(option.name);
    checkFigures(`figures of "${option.name}"`, option.figures);
    if (!Array.isArray(option.breaks) || option.breaks.some((limit: unknown) => typeof limit !== "string"))
      throw new TypeError(
        `decide: breaks of "${option.name}" must list the limits it violates, each in words ([] for none), got ${JSON.stringify(option.breaks)}`,
      );
  }
  checkFigures("limits", limits);
  if (!names.has(choice))
    throw new RangeError(`decide: choice must be one of the options, ${quoted([...names])}, got "${choice}"`);
  if (by.length > mostInitials)
    throw new RangeError(
      `decide: by must be the initials of who decided, at most ${mostInitials} characters, got "${by}"`,
    );
  if (!isDate(on))
    throw new RangeError(
      `decide: on must be the day it was decided, as year-month-day ("2026-05-04"), got ${JSON.stringify(on)}`,
    );
  if (override !== undefined) requireText("override", override);
}

/**
 * Why the option chosen may not be taken as it is: it violates a limit, and no reason of its own is given for that.
 *
 * @returns the refusal in words; undefined where the choice may stand
 */
export function refusalOf({
  options,
  choice,
  override,
}: Pick<DecisionRequest, "options" | "choice" | "override">): string | undefined {
  const chosen = options.find(({ name }) => name === choice);
  if (chosen === undefined)
    return `choice must be one of the options, ${quoted(options.map(({ name }) => name))}, got "${choice}"`;
  if (chosen.breaks.length === 0 || override !== undefined) return undefined;
  return `"${choice}" breaks ${chosen.breaks.length === 1 ? "a limit" : `${chosen.breaks.length} limits`} (${chosen.breaks.join("; ")}); choose another option, or give override: a reason of its own for going against ${chosen.breaks.length === 1 ? "it" : "them"}`;
}

const mostInitials = 12;

function requireText(part: string, text: unknown): asserts text is string {
  if (typeof text !== "string" || text.trim() === "")
    throw new TypeError(`decide: ${part} must say something, got ${JSON.stringify(text) ?? "nothing"}`);
}

function checkFigures(what: string, figures: DecisionOptionGiven["figures"] | undefined): void {
  if (typeof figures !== "object" || figures === null || Array.isArray(figures))
    throw new TypeError(
      `decide: ${what} must be figures by name ({} for none), got ${JSON.stringify(figures)}`,
    );
  for (const [name, figure] of Object.entries(figures))
    if (figure !== undefined && !isFigure(figure))
      throw new TypeError(
        `decide: ${what} must be quantities, measured values, temperatures, numbers or words, got ${String(figure)} for "${name}"`,
      );
}

function isFigure(figure: unknown): boolean {
  if (typeof figure === "string") return true;
  if (typeof figure === "number") return !Number.isNaN(figure);
  return (
    isQuantity(figure) ||
    isTemperature(figure) ||
    (typeof figure === "object" && figure !== null && (figure as { kind?: unknown }).kind === "measured")
  );
}

/** A day of the calendar, written as year-month-day. */
function isDate(text: unknown): boolean {
  if (typeof text !== "string" || !/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

function quoted(names: readonly string[]): string {
  return names.map((name) => `"${name}"`).join(", ");
}
