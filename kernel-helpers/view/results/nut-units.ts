import {
  type Force,
  formatLimit,
  formatNumber,
  type Length,
  type Torque,
  type UnitSystem,
  unitNamed,
  unitSystem,
} from "../../quantity/index.js";

/** How forces, torques and wrenches are spoken of: two or three digits, for they are known no better. */
export interface NutUnits {
  readonly system: UnitSystem;
  readonly torqueUnit: { readonly si: number; readonly symbol: string };
  torque(value: Torque): string;
  torques(low: Torque, high: Torque): string;
  /** What must not be passed: cut down, never rounded up. */
  mostTorque(limit: Torque): string;
  mostForce(limit: Force): string;
  mostLength(limit: Length): string;
  force(value: Force): string;
  forces(low: Force, high: Force): string;
  /** Of a stud, which is a hundred times a hand's pull: pounds, or kilonewtons. */
  tensions(low: Force, high: Force): string;
  length(value: Length): string;
}

/** The units of the rebuild, where one is open; else those of the thread. */
export function nutUnits(inchThread: boolean): NutUnits {
  const system = unitSystem() ?? (inchThread ? "inch" : "metric");
  const torqueUnit = unitNamed(system === "inch" ? "lbfFoot" : "newtonMetre");
  const forceUnit = unitNamed(system === "inch" ? "lbf" : "newton");
  const tensionUnit = unitNamed(system === "inch" ? "lbf" : "kilonewton");
  const number = (si: number, unit: { readonly si: number }): string => formatNumber(si / unit.si, 2);
  const most = (si: number, unit: { readonly si: number }): string => formatLimit(si / unit.si, 2, "at most");
  const sizeUnit = unitNamed(system === "inch" ? "inch" : "mm");
  return {
    system,
    torqueUnit,
    torque: (value) => `${number(value.si, torqueUnit)} ${torqueUnit.symbol}`,
    torques: (low, high) =>
      `${number(low.si, torqueUnit)} to ${number(high.si, torqueUnit)} ${torqueUnit.symbol}`,
    mostTorque: (limit) => `${most(limit.si, torqueUnit)} ${torqueUnit.symbol}`,
    mostForce: (limit) => `${most(limit.si, forceUnit)} ${forceUnit.symbol}`,
    mostLength: (limit) => `${most(limit.si, sizeUnit)} ${sizeUnit.symbol}`,
    force: (value) => `${number(value.si, forceUnit)} ${forceUnit.symbol}`,
    forces: (low, high) =>
      `${number(low.si, forceUnit)} to ${number(high.si, forceUnit)} ${forceUnit.symbol}`,
    tensions: (low, high) =>
      `${number(low.si, tensionUnit)} to ${number(high.si, tensionUnit)} ${tensionUnit.symbol}`,
    length: (value) =>
      system === "inch" ? `${formatNumber(value.in("inch"), 2)} in` : `${formatNumber(value.in("mm"), 2)} mm`,
  };
}
