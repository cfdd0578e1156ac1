import { type Quantity, quantity } from "./quantity.js";
import type { UnitName } from "./units.js";

/** Turns a number in one unit into a quantity, e.g. `inch(2.4375)`. */
export type Maker<K extends string> = (value: number) => Quantity<K>;

const maker =
  <K extends string>(unit: UnitName): Maker<K> =>
  (value) =>
    quantity(value, unit) as unknown as Quantity<K>;

/** A length in inches. @example inch(2.4375) // 2.4375 in */
export const inch: Maker<"length"> = maker("inch");
/** A length in thousandths of an inch. @example thou(2) // 0.002 in */
export const thou: Maker<"length"> = maker("thou");
/** A length in feet. */
export const foot: Maker<"length"> = maker("foot");
/** A length in millimetres. @example mm(61.9) // 61.9 mm */
export const mm: Maker<"length"> = maker("mm");
/** A length in micrometres. */
export const micrometre: Maker<"length"> = maker("micrometre");
/** A length in metres. */
export const metre: Maker<"length"> = maker("metre");
/** An area in square inches. */
export const inch2: Maker<"area"> = maker("inch2");
/** An area in square millimetres. */
export const mm2: Maker<"area"> = maker("mm2");
/** A volume in cubic inches. */
export const inch3: Maker<"volume"> = maker("inch3");
/** A volume in cubic millimetres. */
export const mm3: Maker<"volume"> = maker("mm3");
/** A volume in litres. */
export const litre: Maker<"volume"> = maker("litre");
/** An angle in degrees. */
export const degree: Maker<"angle"> = maker("degree");
/** An angle in radians. */
export const radian: Maker<"angle"> = maker("radian");
/** An angle in whole turns. */
export const turn: Maker<"angle"> = maker("turn");
/** A time in seconds. */
export const second: Maker<"time"> = maker("second");
/** A time in minutes. */
export const minute: Maker<"time"> = maker("minute");
/** A time in hours. */
export const hour: Maker<"time"> = maker("hour");
/** A speed in metres a second. */
export const metrePerSecond: Maker<"speed"> = maker("metrePerSecond");
/** A speed in feet a minute. */
export const footPerMinute: Maker<"speed"> = maker("footPerMinute");
/** A rotational speed in turns a minute. It is no frequency, and no plain number: radians are kept apart. */
export const rpm: Maker<"rotational speed"> = maker("rpm");
/** A rotational speed in radians a second. */
export const radianPerSecond: Maker<"rotational speed"> = maker("radianPerSecond");
/** A rotational speed in turns a second. */
export const turnPerSecond: Maker<"rotational speed"> = maker("turnPerSecond");
/** A frequency in hertz. */
export const hertz: Maker<"frequency"> = maker("hertz");
/** A mass in kilograms. */
export const kilogram: Maker<"mass"> = maker("kilogram");
/** A mass in pounds. A force in pounds is `lbf`. */
export const pound: Maker<"mass"> = maker("pound");
/** A density in kilograms a cubic metre. */
export const kilogramPerCubicMetre: Maker<"density"> = maker("kilogramPerCubicMetre");
/** A density in pounds a cubic inch. */
export const poundPerCubicInch: Maker<"density"> = maker("poundPerCubicInch");
/** A force in newtons. */
export const newton: Maker<"force"> = maker("newton");
/** A force in kilonewtons. */
export const kilonewton: Maker<"force"> = maker("kilonewton");
/** A force in pounds. A mass in pounds is `pound`. */
export const lbf: Maker<"force"> = maker("lbf");
/** A force in US (short) tons of 2000 lbf. */
export const shortTonForce: Maker<"force"> = maker("shortTonForce");
/** A force in long tons of 2240 lbf. */
export const longTonForce: Maker<"force"> = maker("longTonForce");
/** A pressure or stress in pascals. */
export const pascal: Maker<"pressure"> = maker("pascal");
/** A pressure or stress in megapascals (newtons a square millimetre). */
export const megapascal: Maker<"pressure"> = maker("megapascal");
/** A pressure or stress in gigapascals. */
export const gigapascal: Maker<"pressure"> = maker("gigapascal");
/** A pressure or stress in pounds-force a square inch. */
export const psi: Maker<"pressure"> = maker("psi");
/** A pressure or stress in thousands of pounds-force a square inch. */
export const ksi: Maker<"pressure"> = maker("ksi");
/** A torque in newton metres. */
export const newtonMetre: Maker<"torque or energy"> = maker("newtonMetre");
/** A torque in pound-force inches. */
export const lbfInch: Maker<"torque or energy"> = maker("lbfInch");
/** A torque in pound-force feet. */
export const lbfFoot: Maker<"torque or energy"> = maker("lbfFoot");
/** A power in watts. */
export const watt: Maker<"power"> = maker("watt");
/** A power in kilowatts. */
export const kilowatt: Maker<"power"> = maker("kilowatt");
/** A power in horsepower of 550 ft·lbf/s. */
export const hp: Maker<"power"> = maker("hp");
/** A temperature difference in degrees Celsius; the temperature itself is `degC`. */
export const deltaC: Maker<"temperature difference"> = maker("deltaC");
/** A temperature difference in degrees Fahrenheit; the temperature itself is `degF`. */
export const deltaF: Maker<"temperature difference"> = maker("deltaF");
/** A coefficient of thermal expansion per degree Celsius. @example perC(11.7e-6) */
export const perC: Maker<"thermal expansion"> = maker("perC");
/** A coefficient of thermal expansion per degree Fahrenheit. @example perF(6.5e-6) */
export const perF: Maker<"thermal expansion"> = maker("perF");
/** A dynamic viscosity in millipascal seconds (centipoise). */
export const millipascalSecond: Maker<"dynamic viscosity"> = maker("millipascalSecond");
