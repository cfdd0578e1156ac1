/**
 * A standard uncertainty from readings and one common to all, together, with effective degrees of freedom.
 *
 * u² = u²(readings) + u²(common); ν = ν(readings) · (u/u(readings))⁴, the common part taken as known
 *
 * Valid when: the two are independent.
 *
 * @param uReadings  standard uncertainty from the readings [unit of the value]
 * @param dof  degrees of freedom behind it [-], Infinity allowed
 * @param uCommon  standard uncertainty of what is common to all readings, taken as known [unit of the value]
 * @returns the two together [unit of the value] and their degrees of freedom [-]
 * @source JCGM 100:2008 (GUM), 5.1.2 and G.4.1, equation G.2b (Welch–Satterthwaite)
 */
export function combined(
  uReadings: number,
  dof: number,
  uCommon: number,
): { readonly u: number; readonly degreesOfFreedom: number } {
  const u = Math.hypot(uReadings, uCommon);
  const known = uReadings === 0 || dof === Number.POSITIVE_INFINITY;
  return { u, degreesOfFreedom: known ? Number.POSITIVE_INFINITY : dof * (u / uReadings) ** 4 };
}
