import type { FilmMap } from "../../bearing/index.js";
import { formatFixed, type Length, measured, type UnitName } from "../../quantity/index.js";
import type { Presentation } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { alarm, pencil, seriesLook } from "../palette.js";
import { inUnit, jointUnits } from "./joint-text.js";

/** The film round a box and the pressure in it, unrolled: least film against the roughness, grooves as upright lines. */
export function presentFilmMap(map: FilmMap): Presentation {
  const units = jointUnits(map.along[0]!);
  const inch = units.system === "inch";
  const on = (length: Length, unit: UnitName): number => Number(length.in(unit as "mm").toPrecision(5));
  const degrees = map.angles.map((angle) => Number(angle.in("degree").toFixed(2)));
  const [small, size] = inch ? ["thou", "in"] : ["µm", "mm"];
  // Shown in the rebuild's units, whatever the box was written in.
  const perUnit = (map.pressureUnit === "psi" ? 6894.757293168361 : 1e6) / (inch ? 6894.757293168361 : 1e6);
  const stress = inch ? "psi" : "MPa";
  const angle = (of: FilmMap["leastAt"]): string => `${formatFixed(of.in("degree"), 0)}°`;
  const film = map.film.map((length) => on(length, units.small));
  const needed = on(map.needed, units.small);
  const least = `${plusMinus(measured(map.leastFilm, map.leastFilmUncertainty), { unit: units.small })} (95 %) at ${angle(map.leastAt)}`;
  const highest = `${plusMinus(measured(map.highest, map.highestUncertainty), { unit: inch ? "psi" : "megapascal" })} at ${angle(map.highestAt)}`;
  return Object.freeze<Presentation>({
    title: `Film and pressure, ${map.name}`,
    blocks: [
      {
        type: "figure",
        alt: `Above, the film round the ${map.name}, thinnest ${least} from the load, against the ${inUnit(map.needed, units.small, 2)} that keep the metals apart; below, the pressure in the unrolled bearing, highest ${highest}.`,
        caption: `From the load on, in the direction of rotation. Thinnest ${least}; ${inUnit(map.needed, units.small, 2)}, three times the roughness, keep the metals apart (dashed). Highest pressure ${highest}. Dotted: the parting lines with their relief.`,
        figure: {
          data: [
            {
              type: "scatter",
              mode: "lines",
              x: degrees,
              y: film,
              yaxis: "y2",
              line: { color: seriesLook(0).color, width: 2 },
              showlegend: false,
              hovertemplate: `film %{y:.3~g} ${small} at %{x:.0f}°<extra></extra>`,
            },
            {
              type: "heatmap",
              x: degrees,
              y: map.along.map((length) => on(length, units.size)),
              z: map.pressure.map((row) => row.map((value) => Number((value * perUnit).toPrecision(4)))),
              colorscale: [
                [0, "#ffffff"],
                [0.5, "#86a9d0"],
                [1, "#173a63"],
              ],
              colorbar: { title: { text: stress }, len: 0.5, y: 0.22, thickness: 12 },
              hovertemplate: `%{z:.3~g} ${stress} at %{x:.0f}°, %{y:.3~g} ${size}<extra></extra>`,
            },
          ],
          layout: {
            title: { text: "Film and pressure, unrolled" },
            width: 720,
            height: 520,
            margin: { l: 70, r: 40, t: 56, b: 56 },
            xaxis: {
              title: { text: "from the load [°]" },
              range: [-180, 180],
              tickvals: [-180, -90, 0, 90, 180],
              anchor: "y",
              mirror: "all",
            },
            yaxis: { title: { text: `along [${size}]` }, domain: [0, 0.44] },
            yaxis2: { title: { text: `film [${small}]` }, domain: [0.54, 1], rangemode: "tozero" },
            shapes: [
              ...map.grooves.map((groove) => ({
                type: "line",
                yref: "paper",
                x0: groove.in("degree"),
                x1: groove.in("degree"),
                y0: 0,
                y1: 1,
                line: { color: pencil, width: 1, dash: "dot" },
              })),
              {
                type: "line",
                xref: "paper",
                yref: "y2",
                x0: 0,
                x1: 1,
                y0: needed,
                y1: needed,
                line: { color: alarm, width: 1.5, dash: "dash" },
              },
            ],
          },
        },
      },
    ],
  });
}
