/** What each unit measures. */
export interface UnitKinds {
  readonly metre: "length";
  readonly mm: "length";
  readonly cm: "length";
  readonly micrometre: "length";
  readonly inch: "length";
  readonly thou: "length";
  readonly foot: "length";
  readonly mm2: "area";
  readonly m2: "area";
  readonly inch2: "area";
  readonly mm3: "volume";
  readonly litre: "volume";
  readonly m3: "volume";
  readonly inch3: "volume";
  readonly mm4: "second moment of area";
  readonly inch4: "second moment of area";
  readonly radian: "angle";
  readonly degree: "angle";
  readonly arcMinute: "angle";
  readonly arcSecond: "angle";
  readonly turn: "angle";
  readonly second: "time";
  readonly minute: "time";
  readonly hour: "time";
  readonly metrePerSecond: "speed";
  readonly footPerMinute: "speed";
  readonly footPerSecond: "speed";
  readonly metrePerSecondSquared: "acceleration";
  readonly radianPerSecond: "rotational speed";
  readonly rpm: "rotational speed";
  readonly turnPerSecond: "rotational speed";
  readonly hertz: "frequency";
  readonly kilogram: "mass";
  readonly gram: "mass";
  readonly pound: "mass";
  readonly ounce: "mass";
  readonly kilogramPerCubicMetre: "density";
  readonly poundPerCubicInch: "density";
  readonly gramMillimetre: "mass unbalance";
  readonly ounceInch: "mass unbalance";
  readonly kilogramSquareMetre: "moment of inertia";
  readonly poundSquareInch: "moment of inertia";
  readonly newton: "force";
  readonly kilonewton: "force";
  readonly lbf: "force";
  readonly kgf: "force";
  readonly shortTonForce: "force";
  readonly longTonForce: "force";
  readonly pascal: "pressure";
  readonly kilopascal: "pressure";
  readonly megapascal: "pressure";
  readonly gigapascal: "pressure";
  readonly bar: "pressure";
  readonly psi: "pressure";
  readonly ksi: "pressure";
  readonly newtonMetre: "torque or energy";
  readonly joule: "torque or energy";
  readonly lbfInch: "torque or energy";
  readonly lbfFoot: "torque or energy";
  readonly watt: "power";
  readonly kilowatt: "power";
  readonly hp: "power";
  readonly metricHp: "power";
  readonly newtonPerMillimetre: "stiffness or line load";
  readonly lbfPerInch: "stiffness or line load";
  readonly deltaC: "temperature difference";
  readonly deltaF: "temperature difference";
  readonly perC: "thermal expansion";
  readonly perF: "thermal expansion";
  readonly pascalSecond: "dynamic viscosity";
  readonly millipascalSecond: "dynamic viscosity";
  readonly reyn: "dynamic viscosity";
  readonly centistokes: "kinematic viscosity";
  readonly litrePerMinute: "volume flow";
  readonly cm3PerHour: "volume flow";
}

/** The name of a unit, as used in `quantity.in("inch")`. */
export type UnitName = keyof UnitKinds;

/** The names of the units that measure one kind of quantity. */
export type UnitOf<K extends string> = {
  [N in UnitName]: UnitKinds[N] extends K ? N : never;
}[UnitName];

/** What a unit measures. */
export type KindOfUnit<N extends UnitName> = UnitKinds[N];
