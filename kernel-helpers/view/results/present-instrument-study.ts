import { formatFixed, formatNumber, measured } from "../../quantity/index.js";
import type {
  CalibrationLine,
  CorrectedReading,
  InstrumentComparison,
  InstrumentVerdict,
  RepeatabilityStudy,
} from "../../survey/instrument-study-types.js";
import { betweenSmall } from "../../survey/run-out-text.js";
import type { Fact, Presentation } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { bareMeasured } from "./bare-measured.js";
import { degreesText } from "./budget-table.js";
import { chanceText } from "./chance-text.js";
import { type ShownUnits, shownUnits, sizeText, smallUncertainty, systemOfLength } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** A repeatability study: what the readings of one place say of instrument and hand. */
export function presentRepeatability(study: RepeatabilityStudy): Presentation {
  const units = shownUnits(study.unitSystem);
  const { interval, drift, instrument, mean } = study;
  const facts: Fact[] = [
    { label: "mean", value: formatMeasured(mean, { unit: units.size }), note: `${study.count} readings` },
    {
      label: "standard deviation",
      value: smallUncertainty(study.standardDeviation, units),
      note:
        interval === undefined
          ? "n − 1; hidden by the step read off"
          : `n − 1; ${smallUncertainty(interval.low, units)} to ${smallUncertainty(interval.high, units)} (95 %)`,
    },
    {
      label: "reckon for one reading with",
      value: smallUncertainty(study.readingUncertainty, units),
      note: "one standard deviation: scatter and rounding together, without calibration",
    },
    ...(instrument === undefined
      ? []
      : [
          {
            label: "stated repeatability",
            value: smallUncertainty(instrument.repeatability, units),
            note: instrument.title,
          },
        ]),
    ...(drift === undefined
      ? []
      : [
          {
            label: "drift from one reading to the next",
            value: formatMeasured(drift.perReading, { unit: units.small }),
            note: `chance without drift ${chanceText(drift.chance)}`,
          },
        ]),
  ];
  return Object.freeze<Presentation>({
    title: `Repeatability from ${study.title}`,
    blocks: [{ type: "text", text: study.text }, { type: "facts", facts }, ...warningBlocks(study.warnings)],
  });
}

/** Two instruments or people at the same places. */
export function presentInstrumentComparison(found: InstrumentComparison): Presentation {
  const units = shownUnits(found.unitSystem);
  const { first, second, bias, chance, limits, spread, standardDeviation } = found;
  return Object.freeze<Presentation>({
    title: `${second} against ${first}`,
    blocks: [
      { type: "text", text: found.text },
      {
        type: "facts",
        facts: [
          {
            label: `bias, ${second} less ${first}`,
            value: formatMeasured(bias, { unit: units.small }),
            note: `${found.count} places; chance without bias ${chanceText(chance)}`,
          },
          {
            label: "standard deviation of a difference",
            value: smallUncertainty(standardDeviation, units),
            note: "n − 1",
          },
          {
            label: "limits of agreement",
            value: betweenSmall(limits, units.system),
            note: "bias ± 1.96 standard deviations",
          },
          ...(spread === undefined
            ? []
            : [
                {
                  label: `spread of ${second} over ${first}`,
                  value: formatFixed(spread.ratio, 2),
                  note: `chance where both scatter alike ${chanceText(spread.chance)}`,
                },
              ]),
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

/** The line of error against reading, and what to take off. */
export function presentCalibrationLine(found: CalibrationLine): Presentation {
  const units = shownUnits(found.unitSystem);
  return Object.freeze<Presentation>({
    title: `Calibration line of ${found.title}`,
    blocks: [
      { type: "text", text: found.text },
      {
        type: "table",
        caption: "Error by the line, to be taken off a reading, ± U (95 %)",
        columns: [
          { title: "reading", unit: units.sizeSymbol, align: "right" },
          { title: "error", unit: units.smallSymbol, align: "right" },
          { title: "corrected", unit: units.sizeSymbol, align: "right" },
        ],
        rows: found.corrections.map(({ reading, error, value }) => ({
          cells: [
            formatFixed(reading.in(units.size), units.decimals),
            bareMeasured(error, units.small),
            bareMeasured(value, units.size),
          ],
        })),
      },
      {
        type: "facts",
        facts: [
          {
            label: "slope",
            value: slopeText(found, units),
            note: `how the error grows with the size; ${found.count} gauges, ${formatNumber(found.line.degreesOfFreedom)} degrees of freedom`,
          },
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

/** One reading corrected. */
export function presentCorrectedReading(found: CorrectedReading): Presentation {
  const units = shownUnits(systemOfLength(found.reading));
  return Object.freeze<Presentation>({
    title: "Corrected reading",
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "as read", value: sizeText(found.reading, units) },
          { label: "error taken off", value: formatMeasured(found.error, { unit: units.small }) },
          {
            label: "corrected",
            value: formatMeasured(found.value, { unit: units.size }),
            note: "uncertain by what the gauges leave open; how well the reading itself repeats comes on top where it was not given",
          },
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

function ratioNote({ clear }: InstrumentVerdict): string {
  return clear === undefined
    ? "half the tolerance over the guard band: test uncertainty ratio"
    : "margin over the guard band";
}

/** Whether an instrument can settle a question. */
export function presentInstrumentVerdict(found: InstrumentVerdict): Presentation {
  const units = shownUnits(found.unitSystem);
  return Object.freeze<Presentation>({
    title: `Can it be settled with: ${found.instrument.title}`,
    blocks: [
      { type: "verdict", outcome: found.outcome, text: found.text, because: found.because },
      {
        type: "facts",
        facts: [
          {
            label: "standard uncertainty",
            value: smallUncertainty(found.standardUncertainty, units),
            note: "one standard deviation, with the readings asked",
          },
          {
            label: "of one reading",
            value: smallUncertainty(found.readingUncertainty, units),
            note:
              found.from === "study"
                ? "repeatability as studied, and rounding"
                : "repeatability as stated in rebuild.json, and rounding",
          },
          {
            label: "guard band",
            value: smallUncertainty(found.guardBand, units),
            note: `U, k = ${formatNumber(found.coverageFactor, 3)} for ${degreesText(found.degreesOfFreedom)} degrees of freedom (ISO 14253-1)`,
          },
          { label: "ratio", value: formatFixed(found.ratio, 1), note: ratioNote(found) },
          ...(found.readingsNeeded === undefined
            ? []
            : [{ label: "independent readings that would be enough", value: String(found.readingsNeeded) }]),
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

/** Thousandths of an inch for each inch, or micrometres for each 100 mm, with U (95 %). */
function slopeText({ line }: CalibrationLine, { system }: ShownUnits): string {
  const scale = system === "inch" ? 1000 : 100_000;
  const slope = measured(
    line.slope * scale,
    line.uSlope * scale,
    line.scaled ? line.degreesOfFreedom : Number.POSITIVE_INFINITY,
  );
  return `${plusMinus(slope)} ${system === "inch" ? "thou per in" : "µm per 100 mm"} (95 %)`;
}
