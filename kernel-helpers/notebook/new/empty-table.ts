/** An empty table, and what it names of rebuild.json. */
export interface EmptyTable {
  readonly text: string;
  /** Short names of instruments. */
  readonly instruments: readonly string[];
  /** Short names of parts. */
  readonly parts: readonly string[];
}

/** Units of headers, and what stands for each in the other system. */
const otherUnits: Readonly<Record<"inch" | "metric", Readonly<Record<string, string>>>> = {
  metric: { in: "mm", thou: "µm", ft: "m", degF: "degC", lb: "kg", lbf: "N", lbf·ft: "N·m", psi: "MPa" },
  inch: { mm: "in", µm: "thou", m: "ft", degC: "degF", kg: "lb", N: "lbf", N·m: "lbf·ft", MPa: "psi" },
};

/**
 * The form of a table without its readings: who reads it finds which instrument and part it is about, what else may be
 * said above the header, and the header with its units.
 *
 * Remarks other than instrument and part become examples, which have no effect: what was true of other readings must
 * not count for new ones.
 *
 * @param text   a table with readings
 * @param units  the system the units are wanted in; those of the other system are exchanged, name by name
 * @example emptyTable("# part: shaft\n# when: May\na [in], remark\n1, x\n", "metric").text
 * // "# part: shaft\n# example: when: May\na [mm], remark\n"
 */
export function emptyTable(text: string, units: "inch" | "metric"): EmptyTable {
  const lines = text.split(/\r\n|\n|\r/);
  const header = lines.find((line) => line.trim() !== "" && !line.startsWith("#")) ?? "";
  const instruments: string[] = [];
  const parts: string[] = [];
  const remarks = lines
    .filter((line) => line.startsWith("#") && !/invented/i.test(line))
    .map((line) => {
      const [, key = "", value = ""] = /^#\s*([^:]+):\s*(.*)$/.exec(line) ?? [];
      if (key === "part") parts.push(value.trim());
      else if (/^instrument\b/.test(key)) instruments.push(value.trim());
      else return line.replace(/^#\s*/, "# example: ");
      return line;
    });
  const inUnits = header.replace(/\[([^\]]+)\]/g, (whole, unit: string) => {
    const other = otherUnits[units][unit.trim()];
    return other === undefined ? whole : `[${other}]`;
  });
  return { text: [...remarks, inUnits.trim(), ""].join("\n"), instruments, parts };
}
