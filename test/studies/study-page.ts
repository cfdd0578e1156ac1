import type { StudyRow } from "./study-row.js";
import { asWished, studyTable } from "./study-table.js";

/** The page README.md of this folder. */
export function studyPage(rows: readonly StudyRow[]): string {
  const outside = rows.filter((row) => !asWished(row));
  return `# Are the stated intervals right? A trial on shafts whose truth is known

This page is written by \`coverage.study.ts\` (\`npx vitest run --config test/studies/study.config.mts\`, a minute or two);
do not edit it. It simulates surveys of shafts with known bands and tapers, hands the readings to \`profileOf\`,
\`wearBands\` and \`fitTaper\` as a table of text, and counts how often the result kept its promise. All random numbers
come from fixed seeds: a second run gives the same page.

${studyTable(rows)}

${outside.length === 0 ? "Every share lies in the range wished for, where one is." : `Outside the range wished for: ${outside.map(({ shaft, promise }) => `${shaft}: ${promise}`).join("; ")}.`}

## What was simulated

- **Bands.** Stations 1 in apart, read at 0° and 90°; a reading scatters normally by 0.15 thou, which is what is
  stated. "Wear" is one worn stretch, stations 11 to 20 of 30, on diameter; how deep and how steep is drawn anew for
  every survey. \`wearBands\` runs with its defaults.
- **Tapers.** 4 1/2 in long, 0.3 to 1 in per foot, read at 0° and 90°; a reading scatters by 0.2 thou. Both readings of
  a station share the error of its position.
- **Gross errors.** Each reading has a chance of 1.5 % to be off by 2, 5, 10, 25 or 100 thou, either way. Two or more
  in one survey, side by side or next to an edge, are not kept out.
- **Scatter twice the stated.** The readings are twice as bad as the table says. The results must notice by themselves.
- **Setting.** The instrument reads in steps of 0.1 thou, and its setting is off, in all readings of a survey alike, by
  a normal error of 0.1 thou, stated as calibration.

## How to read it

- _found_ is the share of trials that kept the promise; the last column is its own 95 % interval (Wilson, 1927). For
  edges there are two trials a survey. The two are not quite independent, so their interval is a little too narrow.
- _no promise_ marks what cannot be promised and is told all the same. Wear of 0.25 to 0.5 thou is at the limit of
  what these readings show: a weak edge is missed, or wear and sound shaft beside it pass for one slope. What can be promised
  there is that the doubt is told: a wrong number of bands is seldom given a probability of 95 %. And where the
  readings are twice as bad as stated, that must be told from the readings themselves. For bands, many bands in the
  noise stated are weighed against fewer in a larger noise, and a chi-square test (1 %) widens the intervals. A taper is
  widened where honest noise scatters so much in less than one survey of four. So the intervals of a taper hold it in
  96 to 97 % where the statement is right (1 to 2 more than stated, the price), and in 94 to 95 % where the noise is
  twice the stated, in place of the 91 % of a test at 1 %, which misses it in one survey of six (chance of chi-square,
  10 degrees of freedom, below 23.2/4). State the repeatability as it is all the same; \`repeatabilityStudy\` finds it.
- The depth is that of the band found in the middle of the worn stretch, against the truth at the middle of that band,
  also in surveys with a band too many or too few, unless the row says otherwise.
- Where between two stations an edge lies, readings cannot show. The study draws it there at random, every place alike,
  and so does the interval, which spreads the probability of each gap evenly over it. With the edge's gap nearly certain
  that is the middle 95 % of the gap; a wear that ends for a reason close to a station may lie in the rest.
- Unworn shafts of one diameter: a false band is an edge where there is none.
`;
}
