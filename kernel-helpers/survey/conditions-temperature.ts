import {
  quantityFromSi,
  readNumber,
  readTemperature,
  type Temperature,
  type TemperatureDifference,
} from "../quantity/index.js";
import type { Remark } from "./table.js";
import { type ReportFault, shown } from "./table-faults.js";

/** What the remarks say of the temperature. */
export interface TemperatureSaid {
  readonly temperature: Temperature | undefined;
  readonly temperatureUncertainty: TemperatureDifference | undefined;
}

/**
 * Reads `# temperature: 54 ± 2 degF` and `# temperature uncertainty: 1 degF`; `conditionsFrom` says what
 * they mean.
 *
 * @source JCGM 100:2008 (GUM), 4.3.7 (limits ±a of a rectangular distribution: u = a/√3)
 */
export function temperatureFrom(
  said: ReadonlyMap<string, Remark>,
  warnings: string[],
  report: ReportFault,
): TemperatureSaid {
  const remark = said.get("temperature");
  const own = said.get("temperature uncertainty");
  const [reading, limits, ...more] = (remark?.value ?? "")
    .replace(/^\((.*)\)/, "$1")
    .split(/\s*(?:±|\+\/?-)\s*/);
  const unit = limits === undefined ? "" : (/[^\d.\s].*$/.exec(limits)?.[0] ?? "");
  // In 54 ± 2 degF the scale stands once for both.
  const scaled = /[CFK]$|kelvin$/.test(reading!) ? reading! : `${reading} ${unit}`;
  let temperature: Temperature | undefined;
  let uncertainty: TemperatureDifference | undefined;
  if (remark !== undefined) {
    temperature = more.length > 0 ? undefined : attempt(() => readTemperature(scaled));
    if (limits !== undefined) uncertainty = attempt(() => differenceFrom(limits, 1 / Math.sqrt(3)));
    if (temperature === undefined || (limits !== undefined && uncertainty === undefined)) {
      report(
        remark.line,
        undefined,
        shown(remark.value),
        "a temperature with its scale",
        'write e.g. "54 degF" or "54 ± 2 degF"',
      );
      return { temperature: undefined, temperatureUncertainty: undefined };
    }
    const celsius = temperature.in("degC");
    if (celsius < -10 || celsius > 45)
      warnings.push(
        `Line ${remark.line}: ${remark.value} is an unusual temperature to measure at; is it the right scale?`,
      );
  }
  if (own !== undefined) {
    if (limits !== undefined)
      report(
        own.line,
        undefined,
        "a second uncertainty of the temperature",
        `one (line ${remark!.line} has a ±)`,
        "delete one of the two",
      );
    uncertainty = attempt(() => differenceFrom(own.value, 1));
    if (uncertainty === undefined)
      report(own.line, undefined, shown(own.value), "a temperature difference", 'write e.g. "1 degF"');
    else if (remark === undefined)
      report(
        own.line,
        undefined,
        "an uncertainty of the temperature",
        "the temperature too",
        'add a line "# temperature: …"',
      );
  }
  return { temperature, temperatureUncertainty: uncertainty };
}

/** A difference such as "2 degF": a size of degree, without its zero point. */
function differenceFrom(text: string, share: number): TemperatureDifference | undefined {
  const match = /^(.*?)\s*(?:°|deg|delta)?\s*([CFK])$/.exec(text);
  const size = match === null ? Number.NaN : readNumber(match[1]!) * share;
  if (!(size >= 0)) return undefined;
  return match![2] === "F"
    ? quantityFromSi("temperature difference", (size * 5) / 9, "deltaF")
    : quantityFromSi("temperature difference", size, "deltaC");
}

/** What cannot be read is undefined; the caller says what was expected. */
function attempt<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch {
    return undefined;
  }
}
