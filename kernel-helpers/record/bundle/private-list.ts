/** What is not to be shared, by name. */
export interface PrivateList {
  /** Columns of tables, without unit: "remark", "price". */
  readonly columns: readonly string[];
  /** Remarks over tables, by the word before the colon: "who". */
  readonly remarks: readonly string[];
  /** Entries of rebuild.json under "machine". */
  readonly machine: readonly string[];
  /** Entries of rebuild.json under "words". */
  readonly words: readonly string[];
}

/** The sections of the list, each with how a name in it is called. */
export const privateSections: Readonly<Record<keyof PrivateList, string>> = {
  columns: "column",
  remarks: "table remark",
  machine: "machine fact",
  words: "word",
};

/** A name to be left out, and where: in one section, or wherever it stands. */
export interface PrivateName {
  readonly section: keyof PrivateList | "any";
  readonly name: string;
}

/** All names of a list. */
export function privateNames(list: PrivateList): readonly PrivateName[] {
  const sections = Object.keys(privateSections) as (keyof PrivateList)[];
  return sections.flatMap((section) => list[section].map((name) => ({ section, name })));
}

/** Names are compared as tables do: capitals and doubled spaces do not count. */
export function sameName(a: string, b: string): boolean {
  const plain = (name: string): string => name.trim().replace(/\s+/g, " ").toLowerCase();
  return plain(a) === plain(b);
}

/** Whether a remark is marked as private by its own first word: "private: seen by the owner". */
export function isMarkedPrivate(text: string): boolean {
  return /^\s*private\b/i.test(text);
}
