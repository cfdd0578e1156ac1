import { formatFixed, formatNumber } from "../../quantity/index.js";
import type { WearBands } from "../../survey/profile-types.js";
import type { Fact, Presentation } from "../blocks.js";
import { bandShapeTable } from "./band-shape-table.js";
import { bandTable } from "./band-table.js";
import { grossTable } from "./gross-table.js";
import { limitVerdict } from "./limit-verdict.js";
import { correctionFact, uncertaintyFacts } from "./profile-facts.js";
import { nominalText, type ShownUnits, shownUnits } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";
import { wearFigure } from "./wear-figure.js";
import { wearSummary } from "./wear-summary.js";

/** What the wear bands of a shaft look like: the answer in words, the verdict, the figure, then the numbers. */
export function presentWearBands(wear: WearBands): Presentation {
  const { profile } = wear;
  const units = shownUnits(profile.unitSystem);
  return Object.freeze<Presentation>({
    title: `Wear bands of ${profile.title}`,
    blocks: [
      { type: "text", text: wearSummary(wear, units) },
      ...limitVerdict(wear, units),
      ...(wear.bands.length === 0 ? [] : [wearFigure(wear)]),
      bandTable(wear, units),
      bandShapeTable(wear, units),
      ...grossTable(profile, wear.gross, units, wear.doubtful),
      { type: "facts", facts: facts(wear, units) },
      ...warningBlocks([...profile.warnings, ...wear.warnings]),
    ],
  });
}

function facts(wear: WearBands, units: ShownUnits): Fact[] {
  const { nominal, limit, noiseRatio, degreesOfFreedom, profile, probabilityNote = "" } = wear;
  return [
    { label: "nominal diameter", value: nominal === undefined ? "not given" : nominalText(nominal, units) },
    {
      label: "smallest diameter allowed",
      value: limit === undefined ? "not given" : nominalText(limit, units),
    },
    correctionFact(profile),
    ...uncertaintyFacts(profile, units),
    {
      label: "scatter about the bands",
      value: `${formatFixed(noiseRatio, 2)} times the stated uncertainty`,
      note: `${formatNumber(degreesOfFreedom)} degrees of freedom; near 1 when the instrument does what is said of it`,
    },
    ...(probabilityNote === ""
      ? []
      : [{ label: "probability of edges", value: "not worked out", note: probabilityNote }]),
  ];
}
