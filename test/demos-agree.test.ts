import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { piecesOf } from "../kernel-helpers/intake/pieces-of.js";
import { measured } from "../kernel-helpers/quantity/index.js";
import { templateFolder } from "../kernel-helpers/record/find-sheets.js";
import { openRebuild } from "../kernel-helpers/record/index.js";
import {
  fitTaper,
  lengthsOf,
  profileOf,
  stationOfDiameter,
  textOf,
  wearBands,
} from "../kernel-helpers/survey/index.js";
import { expectClose } from "./support/expect-close.js";

const sameSize = { rel: 1e-9, because: "one size, written in two places" };

// Each sheet runs on its own facts; only here is it seen that all of them are facts of one machine.
describe.each(["demo", "demo-metric"])("%s", (demo) => {
  const rebuild = openRebuild({ folder: join(templateFolder(), demo) });
  const pieces = piecesOf(rebuild.table("pieces"));
  const shaft = pieces.filter(({ part }) => part === "shaft");
  const piece = (part: string, name: string) =>
    pieces.find((one) => one.part === part && one.piece === name)!;
  const zero = rebuild.length("station zero from centre").si;
  const stations = lengthsOf(rebuild.table("shaft-survey"), "station").flatMap((at) => at ?? []);

  it("has a shaft whose pieces join end to end, as long as it is between centres", () => {
    for (const [i, { along, sizes }] of shaft.slice(0, -1).entries())
      expectClose(along + sizes.length!, shaft[i + 1]!.along, sameSize);
    const last = shaft[shaft.length - 1]!;
    expectClose(last.along + last.sizes.length!, rebuild.length("between centres").si, sameSize);
    expect(zero + Math.max(...stations.map(({ si }) => si))).toBeLessThan(
      rebuild.length("between centres").si,
    );
  });
  it("has its taper end where the survey of the shaft begins, by the pieces and by the readings", () => {
    const { along, sizes } = piece("shaft", "taper");
    expectClose(along + sizes.length!, zero, sameSize);
    const taper = fitTaper(profileOf(rebuild.table("taper-survey")));
    const end = stationOfDiameter(
      taper,
      measured(rebuild.length("shaft nominal"), rebuild.length("journal uncertainty")),
    ).value;
    expectClose(end.si, sizes.length!, { rel: 0.01, because: "the nominal size is not the size turned" });
  });
  it.each(["driven pulley", "second pulley"])("has the rim of the %s where its belt pulls", (part) => {
    const { along, sizes } = piece(part, "rim");
    const station = rebuild.length(`${part} station`).si;
    expectClose(along + sizes.length! / 2, zero + station, sameSize);
    expectClose(sizes.across!, rebuild.length(`${part} diameter`).si, sameSize);
  });
  it("holds each wheel that is lifted by its arms within its rim, and slings the shaft within its length", () => {
    const lifts = rebuild.table("lifts");
    const [parts, slings] = [textOf(lifts, "part"), textOf(lifts, "sling")];
    const at = lengthsOf(lifts, "held at");
    const ends = ["first", "second"].map((name) => lengthsOf(lifts, name));
    for (const [row, part] of parts.entries()) {
      if (slings[row] === "two across") {
        const { along, sizes } = piece(part, "rim");
        expect(at[row]!.si).toBeGreaterThan(along);
        expect(at[row]!.si).toBeLessThan(along + sizes.length!);
      }
      if (slings[row] === "two along")
        for (const end of ends) expect(end[row]!.si).toBeLessThan(rebuild.length("between centres").si);
    }
  });
  it("has its boxes as far apart where their line is taken as where the shaft has worn in them", () => {
    const bands = wearBands(profileOf(rebuild.table("shaft-survey")), {
      nominal: rebuild.length("shaft nominal"),
      wornBeyond: rebuild.length("making tolerance"),
    }).bands.filter(({ state }) => state === "worn");
    const worn = bands.map(({ from, to }) => (from.si + to.si) / 2);
    const line = rebuild.table("box-line");
    const [names, at] = [textOf(line, "box"), lengthsOf(line, "station")];
    const boxes = [...new Set(names)].map((name) => {
      const own = at.flatMap((one, row) => (names[row] === name ? [one!.si] : []));
      return own.reduce((sum, one) => sum + one, 0) / own.length;
    });
    const apart = (places: readonly number[]): number => places[places.length - 1]! - places[0]!;
    expect([worn.length, boxes.length]).toEqual([2, 2]);
    expectClose(apart(boxes), apart(worn), {
      rel: 0.005,
      because:
        "a band ends between two stations of the survey: half an inch in 53 inches, measured 0 to 0.2 %",
    });
  });
  it("finds its belt about as tight as its stiffness and stretch say", () => {
    // T = EA·stretch/length; the belt open, length 2C + π(D + d)/2.
    const length =
      2 * rebuild.length("belt centres").si +
      (Math.PI / 2) *
        (rebuild.length("driven pulley diameter").si + rebuild.length("other pulley diameter").si);
    const stretch = rebuild.measured("belt stretch", "length");
    const stiffness = rebuild.measured("belt stiffness", "force");
    const tension = rebuild.measured("belt tension", "force");
    expectClose((stiffness.value.si * stretch.value.si) / length, tension.value.si, {
      rel: 0.4,
      because: "the stiffness of a belt is known to two fifths, as it is written there",
    });
  });
});
