import { formatFixed, formatNumber } from "../../quantity/index.js";
import type {
  CalibrationLine,
  CorrectedReading,
  InstrumentComparison,
  InstrumentVerdict,
  RepeatabilityStudy,
} from "../../survey/instrument-study-types.js";
import type { Fact, Presentation } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { chanceText } from "./chance-text.js";
import { shownUnits, sizeText, smallText, smallUncertainty, systemOfLength } from "./shown-units.js";
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
            value: `${smallText(limits.low, units)} to ${smallText(limits.high, units)}`,
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
          { title: "reading", align: "right" },
          { title: "error", align: "right" },
          { title: "corrected", align: "right" },
        ],
        rows: found.corrections.map(({ reading, error, value }) => ({
          cells: [
            sizeText(reading, units),
            plusMinus(error, { unit: units.small }),
            plusMinus(value, { unit: units.size }),
          ],
        })),
      },
      {
        type: "facts",
        facts: [
          {
            label: "slope",
            value: `${formatNumber(found.line.slope * 1000, 3)} thousandths of the size`,
            note: `${found.count} gauges, ${formatNumber(found.line.degreesOfFreedom)} degrees of freedom`,
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
          { label: "corrected", value: formatMeasured(found.value, { unit: units.size }) },
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
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
            label: "guard band",
            value: smallUncertainty(found.guardBand, units),
            note: "U, k = 2 (ISO 14253-1)",
          },
          { label: "ratio", value: formatFixed(found.ratio, 1), note: "test uncertainty ratio" },
          ...(found.readingsNeeded === undefined
            ? []
            : [{ label: "independent readings that would be enough", value: String(found.readingsNeeded) }]),
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}
