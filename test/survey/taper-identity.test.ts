import { describe, expect, it } from "vitest";
import {
  brownSharpeTapers,
  jarnoTaper,
  morseTapers,
  type StandardTaper,
  standardTapers,
} from "../../kernel-helpers/handbook/index.js";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { fitTaper, identifyTaper, profileOf, type TaperFit } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";
import { shaftTable } from "../support/shaft-table.js";

/** Synthetic readings of a standard taper between its printed ends: 10 stations, two angles, seeded noise [in]. */
function readingsOf(standard: StandardTaper, noise: number, seed: number, turned = false): TaperFit {
  const { normal } = seededNoise(seed);
  const [small, large, length] = [standard.smallEnd!, standard.largeEnd!, standard.length!].map((l) =>
    l.in("inch"),
  ) as [number, number, number];
  const rows = Array.from({ length: 10 }, (_, i) =>
    [0, 90].map((angle) => {
      const z = (i / 9) * length;
      const diameter = small + ((large - small) * z) / length + noise * normal();
      return { station: turned ? length - z : z, angle, diameter };
    }),
  ).flat();
  return fitTaper(
    profileOf(shaftTable(rows), { readingUncertainty: inch(noise), stationUncertainty: thou(0.1) }),
  );
}

describe("identifyTaper(fit) of readings of a standard taper", () => {
  it.each(morseTapers.map((standard) => [standard.name, standard] as const))(
    "allows %s in 9 surveys of 10 and more, and its size fits",
    (name, standard) => {
      const found = Array.from({ length: 20 }, (_, i) => {
        const noise = i % 2 === 0 ? 0.0001 : 0.0002;
        const match = identifyTaper(readingsOf(standard, noise, 300 + 29 * i)).matches.find(
          (m) => m.name === name,
        )!;
        expect(match.sizeFits).toBe(true);
        expect(match.source).toMatch(/Morse/);
        return match.agrees;
      }).filter(Boolean);
      expect(found.length).toBeGreaterThanOrEqual(17); // 95 % of 20, less 2 standard deviations
    },
  );

  it.each(brownSharpeTapers.map((standard) => [standard.name, standard] as const))(
    "allows %s, its printed ends and length taken",
    (name, standard) => {
      // The ends are printed to 4 decimals and lengths to 0.01 in, so the slope they make is not quite the one printed;
      // readings are therefore made from the printed taper per foot and the small end.
      const exact: StandardTaper = {
        ...standard,
        largeEnd: standard.smallEnd!.plus(standard.length!.times(standard.taper)),
      };
      const found = Array.from({ length: 20 }, (_, i) =>
        identifyTaper(readingsOf(exact, i % 2 === 0 ? 0.0001 : 0.0002, 700 + 31 * i)).matches.find(
          (m) => m.name === name,
        ),
      ).filter((match) => match!.agrees && match!.sizeFits);
      expect(found.length).toBeGreaterThanOrEqual(17);
    },
  );

  it("allows Jarno and 1:20 together for a Jarno taper", () => {
    const { matches, text } = identifyTaper(readingsOf(jarnoTaper(8), 0.0001, 5));
    const agreeing = matches.filter(({ agrees }) => agrees).map(({ name }) => name);
    expect(agreeing).toEqual(expect.arrayContaining(["Jarno", "1:20"]));
    expect(text).toMatch(/Jarno \(the same slope as 1:20\)|1:20 \(the same slope as Jarno\)/);
  });

  it("lists all that the readings allow, nearest first, and claims none: Morse 1 is close to 2 and to 0.6", () => {
    const one = morseTapers.find(({ name }) => name === "Morse 1")!;
    const { matches, text } = identifyTaper(readingsOf(one, 0.0004, 8));
    expect(matches).toHaveLength(standardTapers.length);
    const off = matches.map(({ difference }) => Math.abs(difference));
    expect([...off].sort((a, b) => a - b)).toEqual(off);
    const agreeing = matches.filter(({ agrees }) => agrees).map(({ name }) => name);
    expect(agreeing).toEqual(expect.arrayContaining(["Morse 1", "Morse 2", "Jarno", "1:20"]));
    expect(agreeing.length).toBeLessThan(10);
    expect(text).toMatch(/cannot tell these apart/);
    // Morse 2 has the slope, but not the size.
    expect(matches.find(({ name }) => name === "Morse 2")!.sizeFits).toBe(false);
    expect(text).toMatch(/The slope of .*Morse 2.* fits too, but not (its|their) diameters/);
  });

  it("does not mind from which end the stations are counted", () => {
    const three = morseTapers.find(({ name }) => name === "Morse 3")!;
    const [there, back] = [readingsOf(three, 0.0001, 2), readingsOf(three, 0.0001, 2, true)];
    expect(back.taper.value).toBeLessThan(0);
    identifyTaper(back).matches.forEach((match, i) => {
      const same = identifyTaper(there).matches[i]!;
      expect(match.name).toBe(same.name);
      expectClose(match.difference, same.difference, { rel: 1e-6, abs: 1e-14, because: "rounding" });
    });
  });

  it("gives difference, difference in u, and misfit over the measured length, on diameter", () => {
    const five = morseTapers.find(({ name }) => name === "Morse 5")!;
    const fit = readingsOf(five, 0.0001, 3);
    for (const match of identifyTaper(fit).matches) {
      const tight = { rel: 1e-9, abs: 1e-15, because: "rounding" };
      expectClose(match.difference, fit.taper.value - match.taper, tight);
      expectClose(match.differenceInU, match.difference / fit.taper.standardUncertainty, tight);
      expectClose(match.misfit.in("inch"), match.difference * 5.1875, tight);
      // 1.96: the noise is as stated, so the degrees of freedom are without end.
      expect(match.agrees).toBe(Math.abs(match.differenceInU) <= 1.959963984540054);
    }
  });

  it("says so where no standard agrees", () => {
    const odd: StandardTaper = {
      ...morseTapers[2]!,
      largeEnd: inch(0.8),
      smallEnd: inch(0.6),
      length: inch(3.1),
    };
    const { matches, text } = identifyTaper(readingsOf(odd, 0.0001, 3));
    expect(matches.some(({ agrees }) => agrees)).toBe(false);
    expect(text).toMatch(
      /allow none of the \d+ standard tapers compared; the nearest is 1:16|3\/4 in per foot/,
    );
  });

  it("compares with the candidates given, and needs one", () => {
    const fit = readingsOf(morseTapers[3]!, 0.0001, 3);
    expect(identifyTaper(fit, { candidates: [morseTapers[3]!] }).text).toMatch(
      /^The readings allow Morse 3, off by 0\.\d\d thou on diameter over the 3\.188 in measured\.$/,
    );
    expect(() => identifyTaper(fit, { candidates: [] })).toThrow(/at least 1 candidate is needed, got 0/);
  });
});
