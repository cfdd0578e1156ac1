import type { Layout, PlotData } from "plotly.js";
import type { HeatingCase, HeatingPlan } from "../../joint/heating-types.js";
import type { FigureBlock } from "../blocks.js";
import { seriesLook } from "../palette.js";
import { inUnit, type JointUnits } from "./joint-text.js";
import { strip, tidy } from "./plot-parts.js";

const upper = [0.5, 1] as const;
const lower = [0, 0.38] as const;

/** Temperatures of hub and shaft over time in the middle case, and below what is left of the interference in all. */
export function heatingFigure(plan: HeatingPlan, units: JointUnits): FigureBlock {
  const [easy, middle, hard] = plan.cases;
  const inch = units.system === "inch";
  const degrees = inch ? "degF" : "degC";
  const small = inch ? "thou" : "micrometre";
  const last = Math.max(...plan.cases.map(({ curve }) => curve.at(-1)!.time.in("minute")));
  const trace = (
    name: string,
    { curve }: HeatingCase,
    value: (moment: HeatingCase["curve"][number]) => number,
    look: number,
    axis: "y" | "y2",
    dash: "solid" | "dot" | "dash",
  ) =>
    ({
      type: "scatter",
      mode: "lines",
      name,
      x: curve.map(({ time }) => tidy(time.in("minute"))),
      y: curve.map((moment) => tidy(value(moment))),
      yaxis: axis,
      line: { color: seriesLook(look).color, width: 2, dash },
    }) satisfies Record<string, unknown> & Partial<PlotData>;
  const window = middle.opens !== undefined && middle.closes !== undefined;
  return {
    type: "figure",
    alt: `Mean temperature of hub and shaft over time in the middle case, and below the interference that is left in the easy, middle and hard case; it may be ${inUnit(plan.remaining, units.small, 2)}.`,
    caption: `Upper panel: middle case.${window ? " The strip is its window." : " Its window never opens."} Lower panel: interference left on diameter; the line is what may be left.`,
    figure: {
      data: [
        trace("hub, middle case", middle, ({ hub }) => hub.in(degrees), 1, "y2", "solid"),
        trace("shaft, middle case", middle, ({ shaft }) => shaft.in(degrees), 0, "y2", "solid"),
        trace("easy", easy, ({ interference }) => interference.in(small), 5, "y", "dot"),
        trace("middle", middle, ({ interference }) => interference.in(small), 2, "y", "solid"),
        trace("hard", hard, ({ interference }) => interference.in(small), 3, "y", "dash"),
      ],
      layout: {
        width: 720,
        height: 480,
        title: { text: "Heating the hub" },
        legend: { orientation: "h", x: 0, xanchor: "left", y: -0.14, yanchor: "top" },
        xaxis: {
          title: { text: "time from lighting the flame (min)" },
          range: [0, last],
          anchor: "y",
          mirror: "all",
        },
        yaxis: { domain: [...lower], title: { text: `interference left (${inch ? "thou" : "µm"})` } },
        yaxis2: { domain: [...upper], title: { text: `mean temperature (${inch ? "°F" : "°C"})` } },
        shapes: [
          ...(window
            ? [upper, lower].map((domain) =>
                strip(
                  tidy(middle.opens!.in("minute")),
                  tidy(middle.closes!.in("minute")),
                  domain,
                  "rgba(11,79,138,0.10)",
                ),
              )
            : []),
          {
            type: "line",
            xref: "paper",
            yref: "y",
            x0: 0,
            x1: 1,
            y0: tidy(plan.remaining.in(small)),
            y1: tidy(plan.remaining.in(small)),
            line: { color: "#5c6975", width: 1.2, dash: "dash" },
          },
        ],
      } satisfies Record<string, unknown> & Partial<Layout>,
    },
  };
}
