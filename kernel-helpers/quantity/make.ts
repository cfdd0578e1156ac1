import { quantity } from "./quantity.js";
import type { Quantity } from "./quantity-type.js";
import type { KindOfUnit, UnitName } from "./unit-kinds.js";

/**
 * Turns a number in one unit into a quantity, e.g. `inch(2.4375)`. What a unit is worth, and whence, stands
 * in units.ts; a unit without a maker of its own is had by `quantity(3, "bar")`.
 *
 * @param value  the number, finite [the unit the maker is named for]
 * @throws RangeError  the value is no finite number
 */
export type Maker<K extends string> = (value: number) => Quantity<K>;

function maker<N extends UnitName>(unit: N): Maker<KindOfUnit<N>> {
  return (value) => quantity(value, unit);
}

/**
 * A length in inches.
 * @example inch(2.4375).in("mm") // 61.9125
 */
export const inch: Maker<"length"> = maker("inch");
/**
 * A length in thousandths of an inch.
 * @example thou(2).in("inch") // 0.002
 */
export const thou: Maker<"length"> = maker("thou");
/**
 * A length in feet.
 * @example foot(1).in("mm") // 304.8
 */
export const foot: Maker<"length"> = maker("foot");
/**
 * A length in millimetres.
 * @example mm(61.9).in("inch") // 2.437008
 */
export const mm: Maker<"length"> = maker("mm");
/**
 * A length in micrometres.
 * @example micrometre(25.4).in("thou") // 1
 */
export const micrometre: Maker<"length"> = maker("micrometre");
/**
 * A length in metres.
 * @example metre(1).in("foot") // 3.28084
 */
export const metre: Maker<"length"> = maker("metre");
/**
 * An area in square inches.
 * @example inch2(1).in("mm2") // 645.16
 */
export const inch2: Maker<"area"> = maker("inch2");
/**
 * An area in square millimetres.
 * @example mm2(645.16).in("inch2") // 1
 */
export const mm2: Maker<"area"> = maker("mm2");
/**
 * A volume in cubic inches.
 * @example inch3(1).in("mm3") // 16387.064
 */
export const inch3: Maker<"volume"> = maker("inch3");
/**
 * A volume in cubic millimetres.
 * @example mm3(1e6).in("litre") // 1
 */
export const mm3: Maker<"volume"> = maker("mm3");
/**
 * A volume in litres.
 * @example litre(1).in("inch3") // 61.02374
 */
export const litre: Maker<"volume"> = maker("litre");
/**
 * An angle in degrees.
 * @example degree(90).in("turn") // 0.25
 */
export const degree: Maker<"angle"> = maker("degree");
/**
 * An angle in radians.
 * @example radian(Math.PI).in("degree") // 180
 */
export const radian: Maker<"angle"> = maker("radian");
/**
 * An angle in whole turns.
 * @example turn(0.5).in("degree") // 180
 */
export const turn: Maker<"angle"> = maker("turn");
/**
 * A time in seconds.
 * @example second(90).in("minute") // 1.5
 */
export const second: Maker<"time"> = maker("second");
/**
 * A time in minutes.
 * @example minute(90).in("hour") // 1.5
 */
export const minute: Maker<"time"> = maker("minute");
/**
 * A time in hours.
 * @example hour(1).in("second") // 3600
 */
export const hour: Maker<"time"> = maker("hour");
/**
 * A speed in metres a second.
 * @example metrePerSecond(1).in("footPerMinute") // 196.8504
 */
export const metrePerSecond: Maker<"speed"> = maker("metrePerSecond");
/**
 * A speed in feet a minute.
 * @example footPerMinute(1000).in("metrePerSecond") // 5.08
 */
export const footPerMinute: Maker<"speed"> = maker("footPerMinute");
/**
 * A rotational speed in turns a minute. It is no frequency, and no plain number: radians are kept apart.
 * @example rpm(60).in("radianPerSecond") // 6.283185
 */
export const rpm: Maker<"rotational speed"> = maker("rpm");
/**
 * A rotational speed in radians a second.
 * @example radianPerSecond(1).in("rpm") // 9.549297
 */
export const radianPerSecond: Maker<"rotational speed"> = maker("radianPerSecond");
/**
 * A rotational speed in turns a second.
 * @example turnPerSecond(2).in("rpm") // 120
 */
export const turnPerSecond: Maker<"rotational speed"> = maker("turnPerSecond");
/**
 * A frequency in hertz.
 * @example hertz(50).in("hertz") // 50
 */
export const hertz: Maker<"frequency"> = maker("hertz");
/**
 * A mass in kilograms.
 * @example kilogram(1).in("pound") // 2.204623
 */
export const kilogram: Maker<"mass"> = maker("kilogram");
/**
 * A mass in pounds. A force in pounds is `lbf`.
 * @example pound(1).in("kilogram") // 0.45359237
 */
export const pound: Maker<"mass"> = maker("pound");
/**
 * A mass in grams.
 * @example gram(500).in("kilogram") // 0.5
 */
export const gram: Maker<"mass"> = maker("gram");
/**
 * A mass in ounces (avoirdupois).
 * @example ounce(16).in("pound") // 1
 */
export const ounce: Maker<"mass"> = maker("ounce");
/**
 * A density in kilograms a cubic metre.
 * @example kilogramPerCubicMetre(7850).in("poundPerCubicInch") // 0.283599
 */
export const kilogramPerCubicMetre: Maker<"density"> = maker("kilogramPerCubicMetre");
/**
 * A density in pounds a cubic inch.
 * @example poundPerCubicInch(1).in("kilogramPerCubicMetre") // 27679.90
 */
export const poundPerCubicInch: Maker<"density"> = maker("poundPerCubicInch");
/**
 * A force in newtons.
 * @example newton(1000).in("lbf") // 224.8089
 */
export const newton: Maker<"force"> = maker("newton");
/**
 * A force in kilonewtons.
 * @example kilonewton(1).in("newton") // 1000
 */
export const kilonewton: Maker<"force"> = maker("kilonewton");
/**
 * A force in pounds. A mass in pounds is `pound`.
 * @example lbf(1).in("newton") // 4.4482216152605
 */
export const lbf: Maker<"force"> = maker("lbf");
/**
 * A force in US (short) tons of 2000 lbf.
 * @example shortTonForce(1).in("lbf") // 2000
 */
export const shortTonForce: Maker<"force"> = maker("shortTonForce");
/**
 * A force in long tons of 2240 lbf.
 * @example longTonForce(1).in("lbf") // 2240
 */
export const longTonForce: Maker<"force"> = maker("longTonForce");
/**
 * A pressure or stress in pascals.
 * @example pascal(1e6).in("megapascal") // 1
 */
export const pascal: Maker<"pressure"> = maker("pascal");
/**
 * A pressure or stress in megapascals (newtons a square millimetre).
 * @example megapascal(1).in("psi") // 145.0377
 */
export const megapascal: Maker<"pressure"> = maker("megapascal");
/**
 * A pressure or stress in gigapascals.
 * @example gigapascal(207).in("ksi") // 30022.81
 */
export const gigapascal: Maker<"pressure"> = maker("gigapascal");
/**
 * A pressure or stress in pounds-force a square inch.
 * @example psi(3000).in("megapascal") // 20.684271879505
 */
export const psi: Maker<"pressure"> = maker("psi");
/**
 * A pressure or stress in thousands of pounds-force a square inch.
 * @example ksi(1).in("psi") // 1000
 */
export const ksi: Maker<"pressure"> = maker("ksi");
/**
 * A torque in newton metres.
 * @example newtonMetre(1).in("lbfFoot") // 0.737562
 */
export const newtonMetre: Maker<"torque or energy"> = maker("newtonMetre");
/**
 * A torque in pound-force inches.
 * @example lbfInch(12).in("lbfFoot") // 1
 */
export const lbfInch: Maker<"torque or energy"> = maker("lbfInch");
/**
 * A torque in pound-force feet.
 * @example lbfFoot(250).in("newtonMetre") // 338.95448708285
 */
export const lbfFoot: Maker<"torque or energy"> = maker("lbfFoot");
/**
 * A power in watts.
 * @example watt(1000).in("hp") // 1.341022
 */
export const watt: Maker<"power"> = maker("watt");
/**
 * A power in kilowatts.
 * @example kilowatt(0.75).in("watt") // 750
 */
export const kilowatt: Maker<"power"> = maker("kilowatt");
/**
 * A power in horsepower of 550 ft·lbf/s.
 * @example hp(1).in("watt") // 745.699872
 */
export const hp: Maker<"power"> = maker("hp");
/**
 * A temperature difference in degrees Celsius; the temperature itself is `degC`.
 * @example deltaC(100).in("deltaF") // 180
 */
export const deltaC: Maker<"temperature difference"> = maker("deltaC");
/**
 * A temperature difference in degrees Fahrenheit; the temperature itself is `degF`.
 * @example deltaF(180).in("deltaC") // 100
 */
export const deltaF: Maker<"temperature difference"> = maker("deltaF");
/**
 * A coefficient of thermal expansion per degree Celsius.
 * @example perC(11.7e-6).in("perF") // 6.5e-6
 */
export const perC: Maker<"thermal expansion"> = maker("perC");
/**
 * A coefficient of thermal expansion per degree Fahrenheit.
 * @example perF(6.5e-6).in("perC") // 11.7e-6
 */
export const perF: Maker<"thermal expansion"> = maker("perF");
/**
 * A dynamic viscosity in millipascal seconds (centipoise).
 * @example millipascalSecond(1).in("pascalSecond") // 0.001
 */
export const millipascalSecond: Maker<"dynamic viscosity"> = maker("millipascalSecond");
