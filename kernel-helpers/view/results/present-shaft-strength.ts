import { formatFixed, formatNumber } from "../../quantity/index.js";
import {
  type EnduranceLimit,
  featureWords,
  type ShaftSafety,
  type ShaftSteel,
  type ShaftStrength,
  type StressConcentration,
} from "../../shaft/index.js";
import type { Fact, FactsBlock, Presentation, TableBlock, VerdictBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { chanceText } from "./chance-text.js";
import { inUnit, type JointUnits, stressText } from "./joint-text.js";
import { nominalText, shownUnits, sizeText, systemOfLength } from "./shown-units.js";
import { strengthFigure } from "./strength-figure.js";
import {
  factorText,
  momentText,
  reliabilityText,
  steelText,
  strengthBecause,
  strengthOutcome,
  strengthUnits,
  stressMeasured,
} from "./strength-text.js";
import { warningBlocks } from "./warning-blocks.js";

/** The places of a shaft: the verdict with the weakest named, a bar a place, the table, the steel. */
export function presentShaftStrength(found: ShaftStrength): Presentation {
  const units = strengthUnits(found.places[0]!.diameter.value);
  return Object.freeze<Presentation>({
    title: "Strength of the shaft",
    blocks: [
      verdict(found),
      strengthFigure(found.places, found.demanded),
      factorTable(found),
      loadTable(found, units),
      facts(found.places[0]!, units, [
        {
          label: "scatter counted",
          value: "endurance limit, stress concentration, and what moment, torque and diameter carry",
          note: "not a load that nobody thought of: that is what the factor demanded is for",
        },
      ]),
      ...warningBlocks(found.warnings),
    ],
  });
}

function verdict({ places, weakest, demanded, verdict: judged }: ShaftStrength): VerdictBlock {
  const worst = places.find(({ name }) => name === weakest)!;
  const factor = formatNumber(demanded, 3);
  const text = {
    holds: `Every place bears its load with the factor ${factor} that is demanded.`,
    "does not hold": `The shaft does not bear its load with the factor ${factor} that is demanded.`,
    "cannot tell yet": `Whether the shaft bears its load with the factor ${factor} cannot be told yet.`,
  };
  return {
    type: "verdict",
    outcome: strengthOutcome[judged],
    text: text[judged],
    because: `Weakest: ${weakest}. ${strengthBecause(worst)}`,
  };
}

function factorTable({ places, weakest, demanded }: ShaftStrength): TableBlock {
  return {
    type: "table",
    caption: "Factor of safety of each place, with its 95 %",
    columns: [
      { title: "place", align: "left" },
      { title: "against fatigue", align: "right" },
      { title: "against yielding", align: "right" },
      { title: `chance below ${formatNumber(demanded, 3)}`, align: "right" },
      { title: "verdict", align: "left" },
    ],
    rows: places.map((place) => ({
      cells: [
        place.name === weakest ? `${place.name} (weakest)` : place.name,
        factorText(place.fatigue),
        factorText(place.yielding),
        chanceText(place[place.governing].chanceBelow),
        place.verdict,
      ],
      ...(place.verdict === "does not hold"
        ? { mark: "bad" as const }
        : place.verdict === "cannot tell yet"
          ? { mark: "warn" as const }
          : {}),
    })),
  };
}

function loadTable({ places }: ShaftStrength, units: JointUnits): TableBlock {
  const sizes = shownUnits(units.system);
  return {
    type: "table",
    caption: "What each place carries, and how much its feature raises the stress",
    columns: [
      { title: "place", align: "left" },
      { title: "diameter", align: "right" },
      { title: "moment, reversed", align: "right" },
      { title: "torque", align: "right" },
      { title: "feature", align: "left" },
      { title: "K_f, K_fs", align: "right" },
    ],
    rows: places.map(({ name, diameter, moment, torque, factors }) => ({
      cells: [
        name,
        sizeText(diameter.value, sizes),
        momentText(moment, units),
        momentText(torque, units),
        featureWords(factors.concentration.feature),
        `${formatFixed(factors.bending, 2)}, ${formatFixed(factors.torsion, 2)}`,
      ],
    })),
  };
}

/** One place by itself, with its stresses and what made the limit. */
export function presentShaftSafety(place: ShaftSafety): Presentation {
  const units = strengthUnits(place.diameter.value);
  const factor = formatNumber(place.demanded, 3);
  const text = {
    holds: `${place.name} bears its load with the factor ${factor} that is demanded.`,
    "does not hold": `${place.name} does not bear its load with the factor ${factor} that is demanded.`,
    "cannot tell yet": `Whether ${place.name} bears its load with the factor ${factor} cannot be told yet.`,
  };
  return Object.freeze<Presentation>({
    title: `Strength at ${place.name}`,
    blocks: [
      {
        type: "verdict",
        outcome: strengthOutcome[place.verdict],
        text: text[place.verdict],
        because: strengthBecause(place),
      },
      {
        type: "facts",
        facts: [
          { label: "against fatigue", value: factorText(place.fatigue), note: "factor of safety, 95 %" },
          { label: "against yielding", value: factorText(place.yielding), note: "factor of safety, 95 %" },
          {
            label: "stress, half of the swing",
            value: stressMeasured(place.stress.alternating, units),
            note: "von Mises with stress concentration, 95 %",
          },
          { label: "stress, mean", value: stressMeasured(place.stress.mean, units), note: "likewise" },
          {
            label: "largest stress, for yielding",
            value: stressMeasured(place.stress.largest, units),
            note: "without stress concentration, of the section that the feature leaves",
          },
          {
            label: "stress concentration",
            value: `${formatFixed(place.factors.bending, 2)} in bending, ${formatFixed(place.factors.torsion, 2)} in torsion`,
            note: `${featureWords(place.factors.concentration.feature)}: ${place.factors.concentration.source}`,
          },
          {
            label: "endurance limit",
            value: stressText(place.endurance.value, units),
            note: marinText(place.endurance),
          },
        ],
      },
      facts(place, units, []),
      ...warningBlocks(place.warnings),
    ],
  });
}

function facts(place: ShaftSafety, units: JointUnits, more: readonly Fact[]): FactsBlock {
  const { steel, criterion, reliability } = place;
  return {
    type: "facts",
    facts: [
      {
        label: steel.assumed ? "steel, assumed" : "steel",
        value: `${steel.name}: ${steelText(steel, units)}`,
        note: steel.basis,
      },
      { label: "criterion", value: `distortion energy, ${criterion}`, note: reliabilityText(reliability) },
      ...more,
    ],
  };
}

function marinText({ factors, surface }: EnduranceLimit): string {
  const f = (value: number): string => formatFixed(value, 3);
  return `half of tensile; surface ${f(factors.surface)} (${surface}), size ${f(factors.size)}, temperature ${f(factors.temperature)}, reliability ${f(factors.reliability)}`;
}

/** How much a feature raises the stress, peak by peak, with the range and the source. */
export function presentStressConcentration(found: StressConcentration): Presentation {
  const units = shownUnits(systemOfLength(found.diameter));
  return Object.freeze<Presentation>({
    title: `Stress concentration: ${featureWords(found.feature)} on ${nominalText(found.diameter, units)}`,
    blocks: [
      found.fromFatigueTests
        ? {
            type: "text",
            text: "For a hub the factors come from fatigue tests and depend on the steel; they are worked out where its strength is known.",
          }
        : {
            type: "table",
            columns: [
              { title: "where", align: "left" },
              { title: "bending", align: "right" },
              { title: "torsion", align: "right" },
              { title: "radius", align: "right" },
            ],
            rows: found.peaks.map(({ at, bending, torsion, radius }) => ({
              cells: [
                at,
                formatFixed(bending, 2),
                formatFixed(torsion, 2),
                radius === undefined ? "-" : inUnit(radius, units.size, 3),
              ],
            })),
          },
      {
        type: "facts",
        facts: [
          { label: "holds for", value: found.range, note: found.source },
          {
            label: "scatter of the fatigue factor",
            value: `${Math.round(100 * found.relativeUncertainty)} %`,
            note: "one standard deviation",
          },
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

/** What a steel is taken to bear. */
export function presentShaftSteel(steel: ShaftSteel): Presentation {
  const inch = steel.tensile.value.writtenIn === "ksi" || steel.tensile.value.writtenIn === "psi";
  const unit = inch ? "ksi" : "megapascal";
  return Object.freeze<Presentation>({
    title: `${steel.name[0]!.toUpperCase()}${steel.name.slice(1)}${steel.assumed ? ", assumed" : ""}`,
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "tensile strength", value: plusMinus(steel.tensile, { unit }), note: steel.basis },
          { label: "yield strength", value: plusMinus(steel.yield, { unit }) },
        ],
      },
    ],
  });
}

/** An endurance limit with the factors that make it. */
export function presentEnduranceLimit(limit: EnduranceLimit): Presentation {
  const inch = limit.value.writtenIn === "ksi" || limit.value.writtenIn === "psi";
  const unit = inch ? "ksi" : "megapascal";
  return Object.freeze<Presentation>({
    title: "Endurance limit",
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "endurance limit", value: inUnit(limit.value, unit, 3), note: marinText(limit) },
          { label: "of a polished test bar", value: inUnit(limit.testBar, unit, 3) },
          {
            label: "scatter",
            value: `${Math.round(100 * limit.relativeUncertainty)} %`,
            note: "one standard deviation, with the steel known by its tensile strength",
          },
        ],
      },
    ],
  });
}
