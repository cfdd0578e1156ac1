import { describe, expect, it } from "vitest";
import { boxCooling, runningFilm } from "../../../kernel-helpers/bearing/index.js";
import { oil } from "../../../kernel-helpers/handbook/index.js";
import { degF, inch, lbf, quantity, rpm, thou } from "../../../kernel-helpers/quantity/index.js";
import { presentRunningFilm } from "../../../kernel-helpers/view/results/present-running.js";

const box = {
  diameter: inch(2.4375),
  length: inch(8),
  diametralClearance: thou(4),
  load: lbf(700),
  speed: rpm(110),
  oil: oil("ISO VG 100"),
  room: degF(65),
  boxSurface: quantity(250, "inch2"),
  cooling: boxCooling("shaft-stirred air"),
  roughness: thou(0.06),
};

describe("presentRunningFilm(film)", () => {
  const verdictAt = (litres: number) =>
    presentRunningFilm(runningFilm({ ...box, supply: quantity(litres, "litrePerMinute") })).blocks.find(
      ({ type }) => type === "verdict",
    );

  it("does not call a film full whose oil is not brought", () => {
    expect(verdictAt(5)).toMatchObject({ outcome: "yes", text: "a full film carries it" });
    expect(verdictAt(0.0001)).toMatchObject({
      outcome: "cannot tell yet",
      text: "a full film would carry it, but its oil is not brought",
    });
  });
});
