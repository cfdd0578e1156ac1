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
    expect(verdictAt(0.001)).toMatchObject({
      outcome: "cannot tell yet",
      text: "short of oil; what film there is keeps the metals apart",
    });
    expect(verdictAt(1e-9)).toMatchObject({ outcome: "no", text: "short of oil; no film to speak of" });
  });
  it("says that a parting line within the short film makes it thinner still", () => {
    const noteWith = (degrees: readonly number[]) =>
      presentRunningFilm(
        runningFilm({
          ...box,
          supply: quantity(30, "cm3PerHour"),
          grooves: degrees.map((angle) => quantity(angle, "degree")),
        }),
      )
        .blocks.flatMap((block) => (block.type === "facts" ? block.facts : []))
        .find(({ label }) => label === "least film on it")!.note;
    expect(noteWith([-10, 170])).toMatch(/a parting line, which is not reckoned with here, lies within it/);
    expect(noteWith([-90, 90])).not.toMatch(/parting line/);
  });
  it("says how much is brought of what is lost, in drops too, and what helps", () => {
    const film = runningFilm({ ...box, supply: quantity(30, "cm3PerHour") });
    const { blocks } = presentRunningFilm(film);
    const facts = blocks.flatMap((block) => (block.type === "facts" ? block.facts : []));
    expect(facts.find(({ label }) => label === "oil brought")).toMatchObject({
      value: "30 cm³ an hour",
      note: `${Number((100 * film.short!.share).toPrecision(2))} % of that`,
    });
    const warning = blocks.find((block) => block.type === "warning");
    const drops = (film.sideFlow.in("cm3PerHour") * 25) / 60;
    expect(warning!.text).toContain(`about ${Number(drops.toPrecision(2))} drops a minute`);
    expect(warning!.text).toMatch(/What helps: oil that stays \(a ring, a bath/);
  });
});
