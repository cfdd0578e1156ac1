import type { Material } from "../../handbook/material-type.js";
import { formatNumber, isQuantity, type UnitName, unitNamed, unitSystem } from "../../quantity/index.js";
import type { Presentation, TableRow } from "../blocks.js";

/** What every property has, whatever its kind. */
interface Shown {
  readonly value: unknown;
  readonly low: unknown;
  readonly high: unknown;
  readonly source: string;
}

/** A metal of the handbook: each property with its range and the place it stands in. */
export function presentMaterial(metal: Material): Presentation {
  const inch = unitSystem() === "inch";
  const row = (
    name: string,
    property: Shown | undefined,
    unit: UnitName | readonly [size: number, symbol: string],
  ): TableRow[] => {
    if (property === undefined) return [];
    const [size, symbol] = typeof unit === "string" ? [unitNamed(unit).si, unitNamed(unit).symbol] : unit;
    const shown = (value: unknown): string =>
      formatNumber((isQuantity(value) ? value.si : Number(value)) / size, 4);
    const [value, low, high] = [property.value, property.low, property.high].map(shown);
    return [{ cells: [name, value!, symbol, low === high ? "" : `${low} to ${high}`, property.source] }];
  };
  const stress = inch ? "ksi" : "megapascal";
  return Object.freeze<Presentation>({
    title: `${metal.name[0]!.toUpperCase()}${metal.name.slice(1)}`,
    blocks: [
      {
        type: "table",
        columns: [
          { title: "property", align: "left" },
          { title: "value", align: "right" },
          { title: "unit", align: "left" },
          { title: "range", align: "right" },
          { title: "source", align: "left" },
        ],
        rows: [
          ...row("modulus", metal.modulus, inch ? [6894757293.168, "10⁶ psi"] : "gigapascal"),
          ...row("Poisson's ratio", metal.poisson, [1, ""]),
          ...row("expansion", metal.expansion, inch ? [1.8e-6, "10⁻⁶/°F"] : [1e-6, "10⁻⁶/°C"]),
          ...row("yield", metal.yield, stress),
          ...row("tensile strength", metal.tensile, stress),
          ...row("compressive strength", metal.compressive, stress),
          ...row("density", metal.density, inch ? "poundPerCubicInch" : "kilogramPerCubicMetre"),
          ...row("specific heat", metal.specificHeat, [1, "J/(kg·K)"]),
          ...row("conductivity", metal.conductivity, [1, "W/(m·K)"]),
        ],
      },
      {
        type: "facts",
        facts: [
          {
            label: "on the bench not hotter than",
            value: String(metal.hottest.value),
            note: `${metal.hottest.why} (${metal.hottest.source})`,
          },
          { label: "breaks", value: metal.brittle ? "without giving way first" : "after giving way" },
        ],
      },
    ],
  });
}
