import { formatFixed, formatNumber, type Length, type RotationalSpeed } from "../../quantity/index.js";
import type { CutPlan, TurningPass, TurningStock } from "../../shaft/index.js";
import type { Fact, Presentation, TableBlock, VerdictBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { inUnit } from "./joint-text.js";
import {
  nominalText,
  type ShownUnits,
  shownUnits,
  sizeLimit,
  sizeLimits,
  sizeText,
  smallAtMost,
  smallText,
} from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** What a stretch offers to the tool: the circles of its highest and its lowest place. */
export function presentTurningStock(stock: TurningStock): Presentation {
  const units = shownUnits(stock.unitSystem);
  return Object.freeze<Presentation>({
    title: `What is there to turn, ${nominalText(stock.from, units)} to ${nominalText(stock.to, units)}`,
    blocks: [
      {
        type: "facts",
        facts: [
          {
            label: "the tool touches first at",
            value: formatMeasured(stock.reach, { unit: units.size }),
            note: `circle of the highest place, on diameter; station ${nominalText(stock.reachAt, units)}${stock.withRunOut ? ", run-out included" : ""}`,
          },
          {
            label: "it cuts all round below",
            value: formatMeasured(stock.unbroken, { unit: units.size }),
            note: `circle of the lowest place; station ${nominalText(stock.unbrokenAt, units)}`,
          },
        ],
      },
      ...warningBlocks(stock.warnings),
    ],
  });
}

/** How a journal is turned to size: the size, each cut with its dial, what stops it, and whether a steady is wanted. */
export function presentCutPlan(plan: CutPlan): Presentation {
  const units = shownUnits(plan.unitSystem);
  return Object.freeze<Presentation>({
    title: `Cuts for the journal "${plan.name}"`,
    blocks: [
      { type: "facts", facts: [...sizes(plan, units), ...lathe(plan, units)] },
      cuts(plan, units),
      { type: "text", text: stopWhen(plan, units) },
      steady(plan, units),
      ...warningBlocks(plan.warnings),
    ],
  });
}

function sizes({ limits, accept, aim, leave, stock }: CutPlan, units: ShownUnits): Fact[] {
  return [
    {
      label: "finished journal, limits",
      value: sizeLimits(limits, units),
      note: `on diameter, at 20 °C; tolerance ${limits.tolerance}`,
    },
    {
      label: "accept what measures",
      value: sizeLimits(accept, units),
      note: "the limits less the uncertainty of the measuring at either end (95 %), as ISO 14253-1 has it",
    },
    {
      label: "size after the last cut",
      value: sizeText(aim.plus(leave), units),
      note:
        leave.si > 0
          ? `${smallText(leave, units)} on diameter left for file, emery or lapping`
          : "the middle of what is accepted; nothing is left for polishing",
    },
    {
      label: "the tool touches first at",
      value: plusMinus(stock.reach, { unit: units.size }),
      note: "highest place as it turns between the centres, 95 %",
    },
    {
      label: "and cuts all round below",
      value: plusMinus(stock.unbroken, { unit: units.size }),
      note: "lowest place, 95 %; until then the tool jumps",
    },
  ];
}

function lathe({ cuttingSpeed, roughness, lathe: set, time, material }: CutPlan, units: ShownUnits): Fact[] {
  const metric = units.system === "metric";
  const speed = (value: CutPlan["cuttingSpeed"]["low"]): string =>
    metric
      ? `${formatNumber(value.si * 60, 2)} m/min`
      : `${formatNumber(value.in("footPerMinute"), 3)} ft/min`;
  return [
    {
      label: "cutting speed",
      value: `${speed(cuttingSpeed.low)} to ${speed(cuttingSpeed.high)}`,
      note: `${set.tool} in ${material}: ${cuttingSpeed.source}`,
    },
    {
      label: "feed",
      value: `${metric ? inUnit(set.feed, "mm", 3) : inUnit(set.feed, "inch", 3)} a turn`,
      note: `nose radius ${metric ? inUnit(set.noseRadius, "mm", 3) : inUnit(set.noseRadius, "inch", 3)}`,
    },
    {
      label: "roughness at best",
      value: `Ra ${roughnessText(roughness.ra, units)}, Rz ${roughnessText(roughness.rz, units)}`,
      note: "what feed and nose leave; steel at low speed comes out rougher, by half to twice",
    },
    { label: "time of cutting", value: inUnit(time, "minute", 2), note: "setting and measuring come on top" },
  ];
}

function roughnessText(length: Length, { system }: ShownUnits): string {
  const micrometres = length.in("micrometre");
  return system === "metric"
    ? `${formatNumber(micrometres, 2)} µm`
    : `${formatNumber(micrometres / 0.0254, 2)} µin`;
}

function cuts({ passes, lathe: { dialCounts, dialDivision } }: CutPlan, units: ShownUnits): TableBlock {
  const decimals = units.system === "inch" ? 4 : 3;
  const dialDecimals =
    dialDivision.in(units.size) < (units.system === "inch" ? 0.001 : 0.01) ? decimals : decimals - 1;
  return {
    type: "table",
    caption: `Dial at zero where the tool just touches the highest place. It counts the ${dialCounts}: ${dialCounts === "diameter" ? "what comes off the diameter" : "the way of the slide; the diameter loses twice that"}. Diameters ± U (95 %) by the dial alone.`,
    columns: [
      { title: "cut", align: "left" },
      { title: "depth", unit: `${units.smallSymbol}, on radius`, align: "right" },
      { title: `dial (${dialCounts})`, unit: units.sizeSymbol, align: "right" },
      { title: "off the division", unit: `${units.smallSymbol} on diameter`, align: "right" },
      { title: "then measures", align: "right" },
      { title: "spindle", unit: "rpm", align: "right" },
      { title: "min", align: "right" },
      { title: "", align: "left" },
    ],
    stacked: true,
    rows: passes.map((pass) => ({
      cells: [
        `${pass.number} ${pass.name}`,
        formatFixed(pass.depth.in(units.small), units.small === "thou" ? 1 : 0),
        formatFixed(pass.dial.in(units.size), dialDecimals),
        offText(pass, units),
        plusMinus(pass.diameter, { unit: units.size }),
        rpmText(pass.speed),
        formatNumber(pass.time.in("minute"), 2),
        pass.interrupted ? "interrupted: the tool jumps" : "all round",
      ],
    })),
  };
}

function offText({ offDivision }: TurningPass, { small }: ShownUnits): string {
  const off = offDivision.in(small);
  if (Math.abs(off) < (small === "thou" ? 0.05 : 0.5)) return "";
  return `${off > 0 ? "+" : "−"}${formatFixed(Math.abs(off), small === "thou" ? 1 : 0)}`;
}

function rpmText(speed: RotationalSpeed): string {
  return formatNumber(speed.in("rpm"), 3);
}

function stopWhen({ passes, aim, leave, accept, lathe: { dialCounts } }: CutPlan, units: ShownUnits): string {
  const [measuring, finishing] = [passes.find(({ name }) => name === "measuring"), passes.at(-1)!];
  const end = sizeText(aim.plus(leave), units);
  const half = dialCounts === "radius" ? "half of " : "";
  const between =
    measuring === undefined
      ? `Before the one cut measure at both ends and the middle; go in by ${half}what is above ${end}.`
      : `After cut ${measuring.number} stop the spindle, let the work cool, and measure at both ends and the middle. Whatever it shows, go in by ${half}(measured − ${end}), not by the dial of the table: cut ${finishing.number} is as deep, so it springs as much.`;
  const rest =
    leave.si > 0
      ? `Polish the rest; stop when it measures ${sizeLimit(accept.largest, "at most", units)} or less anywhere, and never below ${sizeLimit(accept.smallest, "at least", units)}.`
      : `Stop when it measures ${sizeLimit(accept.largest, "at most", units)} or less; never go below ${sizeLimit(accept.smallest, "at least", units)}.`;
  return `${between} ${rest}`;
}

/** Above this length over diameter a shaft chatters and whips. Common practice, no source. */
const slender = 12;

function steady({ springing, radialForce, name }: CutPlan, units: ShownUnits): VerdictBlock {
  const { error, allowed, steadyNeeded, freeLength, slenderness, atFrom, atMiddle, atTo } = springing;
  const force = units.system === "inch" ? ("lbf" as const) : ("newton" as const);
  const spring = (length: Length): string =>
    `${formatFixed(length.in(units.small), units.small === "thou" ? 2 : 1)} ${units.smallSymbol}`;
  const isSlender = slenderness > slender;
  const times = formatNumber(slenderness, 2);
  const text = steadyNeeded
    ? `"${name}" cannot be turned true without a steady.`
    : isSlender
      ? `"${name}" springs little enough, but the work is ${times} times as long as thick: set a steady against chatter.`
      : `"${name}" can be turned true without a steady.`;
  return {
    type: "verdict",
    outcome: steadyNeeded ? "no" : isSlender ? "cannot tell yet" : "yes",
    text,
    because: [
      `With no steady the finishing cut leaves it ${spring(atFrom)} larger on diameter at its first end, ${spring(atMiddle)} in the middle and ${spring(atTo)} at its last end (radial force ${inUnit(radialForce.low, force, 2)} to ${inUnit(radialForce.high, force, 2)}, middle ${inUnit(radialForce.middle, force, 2)}).`,
      `Uneven by ${spring(error.low)} to ${spring(error.high)}, where a third of the tolerance is ${smallAtMost(allowed, units)}.`,
      steadyNeeded
        ? `Keep the free length by the tool below ${freeText(freeLength, units)}.`
        : `By springing alone a free length up to ${freeText(freeLength, units)} would do${isSlender ? `; whether it chatters is for the ear (above ${slender} diameters it usually does: common practice, no source)` : ""}.`,
    ].join(" "),
  };
}

function freeText(length: Length, { system }: ShownUnits): string {
  return system === "inch"
    ? `${formatNumber(Math.floor(length.in("inch")), 3)} in`
    : `${formatNumber(Math.floor(length.in("mm") / 10) * 10, 3)} mm`;
}
