/** A first header for an empty table. */
export interface Starter {
  readonly title: string;
  readonly headers: readonly string[];
}

/** The forms a table of diameters usually has, in the unit of the rebuild. */
export function starterHeaders(unitSystem: "inch" | "metric" | undefined): readonly Starter[] {
  const unit = unitSystem === "metric" ? "mm" : "in";
  const station = `station [${unit}]`;
  return [
    {
      title: "Diameters at two angles, side by side",
      headers: [station, `diameter @ 0 deg [${unit}]`, `diameter @ 90 deg [${unit}]`, "remark"],
    },
    {
      title: "One reading a row, with its angle",
      headers: [station, "angle [deg]", `diameter [${unit}]`, "remark"],
    },
    { title: "One diameter at each station", headers: [station, `diameter [${unit}]`, "remark"] },
  ];
}
