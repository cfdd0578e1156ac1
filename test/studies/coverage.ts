import { bandCases } from "./band-cases.js";
import { bandStudy } from "./band-study.js";
import type { StudyRow } from "./study-row.js";
import { taperCases, taperStudy } from "./taper-study.js";

/** Every row of the table of kept promises, from so many seeded surveys a shaft. */
export function coverageRows(surveys: number): readonly StudyRow[] {
  return [
    ...bandCases.flatMap((of, k) => bandStudy(of, surveys, 100 + k)),
    ...taperCases.flatMap((of, k) => taperStudy(of, surveys, 200 + k)),
  ];
}
