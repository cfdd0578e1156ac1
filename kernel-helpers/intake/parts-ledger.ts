import { type Table, type TableFault, TableFaults, textOf } from "../survey/index.js";
import type { BlockedPart, LedgerPart, PartState, PartsLedger } from "./ledger-types.js";
import { orderOfParts } from "./order-of-parts.js";

const states: readonly PartState[] = ["in place", "removed", "out for work", "back", "ready", "refitted"];

/**
 * The parts ledger: in which order the machine comes apart and goes together, what can be done next and what blocks
 * what, from a table with the columns part, state, comes off after, waits for, marks and remark. Several parts in one
 * cell are divided by `;`, and `-` says none.
 *
 * A part comes off when all of `comes off after` are off. It goes on when every part that came off after it is refitted,
 * it is itself ready, and all of `waits for` are ready or refitted. States: in place, removed, out for work, back, ready,
 * refitted.
 *
 * @param table  of the parts
 * @returns the orders, what is next, what blocks what, and doubts: a part that is off while one that must come off before
 * it is in place, one refitted too early, one removed without match marks
 * @throws TableFaults  a part stands twice or has no name, a state is not known, a part waits for itself or for one not in
 * the list, or parts come off after each other in a ring; each with file, line and column
 * @example
 * const header = "part [text],state [text],comes off after [text],waits for [text],marks [text]";
 * const bytes = new TextEncoder().encode(`${header}\npulley,in place,nut,-,-\nnut,in place,-,-,-`);
 * partsLedger(readTable(bytes, { name: "parts", file: "parts.csv" })).removal // ["nut", "pulley"]
 * @source the order: A. B. Kahn, Topological sorting of large networks, CACM 5 (1962); going on in the order of coming
 * off, backwards: common practice, no source
 */
export function partsLedger(table: Table): PartsLedger {
  const parts = ledgerParts(table);
  const names = parts.map(({ part }) => part);
  const byName = new Map(parts.map((part) => [part.part, part]));
  const offAfter = (name: string): readonly string[] => byName.get(name)!.comesOffAfter;
  const { order, ring } = orderOfParts(names, offAfter);
  if (ring.length > 0)
    throw new TableFaults(table.file, [
      faultAt(
        table,
        byName.get(ring[0]!)!.line,
        "comes off after",
        `a ring: ${[...ring, ring[0]].join(" after ")}`,
        "an order in which something comes first",
        "take out the one that is not so",
      ),
    ]);
  const inPlace = (name: string): boolean => byName.get(name)!.state === "in place";
  const on = (name: string): boolean => ["in place", "refitted"].includes(byName.get(name)!.state);
  const readyOrOn = (name: string): boolean => on(name) || byName.get(name)!.state === "ready";
  const blockedOff = parts
    .filter(({ state }) => state === "in place")
    .map(({ part, comesOffAfter }) => ({
      part,
      by: comesOffAfter.filter(on),
    }));
  const blockedOn = parts
    .filter(({ state }) => !["in place", "refitted"].includes(state))
    .map(({ part, waitsFor }) => ({
      part,
      by: [
        ...parts.filter((one) => one.comesOffAfter.includes(part) && !on(one.part)).map((one) => one.part),
        ...waitsFor.filter((name) => !readyOrOn(name)),
      ],
    }));
  return Object.freeze<PartsLedger>({
    kind: "parts ledger",
    title: table.name,
    parts: Object.freeze(parts),
    removal: order,
    refitting: Object.freeze([...order].reverse()),
    removeNext: free(blockedOff),
    refitNext: Object.freeze(free(blockedOn).filter((name) => byName.get(name)!.state === "ready")),
    blockedOff: blocked(blockedOff),
    blockedOn: blocked(blockedOn),
    counts: Object.freeze(
      Object.fromEntries(
        states.map((state) => [state, parts.filter((part) => part.state === state).length]),
      ) as Record<PartState, number>,
    ),
    warnings: Object.freeze(parts.flatMap((part) => doubtsOf(part, parts, inPlace, on, table))),
  });
}

function free(some: readonly BlockedPart[]): readonly string[] {
  return Object.freeze(some.filter(({ by }) => by.length === 0).map(({ part }) => part));
}

function blocked(some: readonly BlockedPart[]): readonly BlockedPart[] {
  return Object.freeze(
    some
      .filter(({ by }) => by.length > 0)
      .map(({ part, by }) => Object.freeze({ part, by: Object.freeze([...new Set(by)]) })),
  );
}

function doubtsOf(
  { part, state, comesOffAfter, marks, line }: LedgerPart,
  parts: readonly LedgerPart[],
  inPlace: (name: string) => boolean,
  on: (name: string) => boolean,
  table: Table,
): string[] {
  const off = state !== "in place";
  const where = `${table.file} line ${line}`;
  const early = off && state !== "refitted" ? comesOffAfter.filter(inPlace) : [];
  const under =
    state === "refitted" ? parts.filter((one) => one.comesOffAfter.includes(part) && !on(one.part)) : [];
  return [
    ...early.map(
      (name) =>
        `${where}: ${part} is ${state} while ${name}, which comes off before it, is still in place: correct a state, or the order.`,
    ),
    ...under.map(
      ({ part: name, state: its }) =>
        `${where}: ${part} is refitted before ${name}, which goes on first and is ${its}: correct a state, or take it off again.`,
    ),
    ...(off && marks === ""
      ? [
          `${where}: ${part} is off without match marks: write down which way round it was while somebody knows.`,
        ]
      : []),
  ];
}

function ledgerParts(table: Table): readonly LedgerPart[] {
  const faults: TableFault[] = [];
  const columns = ["part", "state", "comes off after", "waits for", "marks"].map((name) =>
    textOf(table, name),
  );
  const remarks = table.columns.find(({ name }) => name === "remark")?.text;
  const names = columns[0]!;
  const report = (row: number, column: string, found: string, expected: string, mend: string): void => {
    faults.push(faultAt(table, table.lines[row]!, column, found, expected, mend));
  };
  const listed = (row: number, column: string, cell: string): readonly string[] => {
    const wanted = cell === "-" || cell === "" ? [] : cell.split(";").map((name) => name.trim());
    for (const name of wanted)
      if (name === names[row])
        report(row, column, `the part itself, "${name}"`, "other parts", "take it out");
      else if (!names.includes(name))
        report(
          row,
          column,
          `"${name}"`,
          `parts of this list (${names.join(", ")})`,
          "correct the name, or add a row for it",
        );
    return Object.freeze([...new Set(wanted)]);
  };
  const parts = names.map((part, row): LedgerPart => {
    const state = columns[1]![row]!.toLowerCase() as PartState;
    if (part === "" || part === "-")
      report(row, "part", "nothing", "a name", "write what the part is called");
    else if (names.indexOf(part) < row)
      report(
        row,
        "part",
        `"${part}" a second time`,
        "a name of its own",
        `call them e.g. "${part} 1" and "${part} 2"`,
      );
    if (!states.includes(state))
      report(row, "state", `"${columns[1]![row]}"`, `one of ${states.join(", ")}`, "write where it is");
    return Object.freeze({
      part,
      state,
      comesOffAfter: listed(row, "comes off after", columns[2]![row]!),
      waitsFor: listed(row, "waits for", columns[3]![row]!),
      marks: columns[4]![row] === "-" ? "" : columns[4]![row]!,
      remark: remarks?.[row] ?? "",
      line: table.lines[row]!,
    });
  });
  if (faults.length > 0) throw new TableFaults(table.file, faults);
  return parts;
}

function faultAt(
  table: Table,
  line: number,
  name: string,
  found: string,
  expected: string,
  mend: string,
): TableFault {
  const at = table.columns.findIndex((column) => column.name === name);
  return Object.freeze({
    file: table.file,
    line,
    column: table.columns[at]!.header,
    columnNumber: at + 1,
    found,
    expected,
    mend,
  });
}
