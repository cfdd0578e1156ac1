/**
 * What a TypeScript type is called at the bench: `Quantity<"length">` is "length", `number` is "plain number",
 * a list of anything is "list". A type without such a name keeps its own.
 *
 * @example nameOfType('Quantity<"torque or energy">') // "torque or energy"
 */
export function nameOfType(type: string): string {
  const kind = /^Quantity<"([^"]+)">$/.exec(type)?.[1];
  if (kind !== undefined) return kind === "number" ? "plain number" : kind;
  if (/^Quantity<string>$|^AnyQuantity$/.test(type)) return "quantity";
  if (type in plainNames) return plainNames[type]!;
  const unitOf = /^UnitOf<"(.+)">$/.exec(type)?.[1];
  if (unitOf !== undefined) return `unit of ${unitOf}`;
  if (/^Promise<.+>$/.test(type)) return "value still being computed";
  if (/^"[^"]*"$/.test(type)) return `text ${type}`;
  if (/^-?\d+(\.\d+)?$/.test(type)) return `plain number ${type}`;
  if (/^(?:readonly )?.+\[\]$|^(?:readonly )?\[.*\]$|^(?:Readonly)?Array<.+>$/.test(type))
    return listName(type);
  return type;
}

/** The name with "a" or "an"; names that are types of their own, or need none, stay as they are. */
export function withArticle(name: string): string {
  if (withoutArticle.test(name)) return name;
  return /^[aeiou](?!nit )/.test(name) ? `an ${name}` : `a ${name}`;
}

/** Uncountable ones, and what is left of types: these begin with a capital or hold signs. */
const withoutArticle = /^(?:text|nothing|true|false)|^[A-Z{("'<]|[|&<>{}=]/;

const plainNames: Readonly<Record<string, string>> = {
  number: "plain number",
  string: "text",
  boolean: "yes-or-no value",
  undefined: "nothing",
  null: "nothing",
  void: "nothing",
  Temperature: "temperature",
  UnitName: "name of a unit",
  true: "true",
  false: "false",
};

function listName(type: string): string {
  const item = /^(?:readonly )?([A-Za-z]+(?:<"[^"]+">)?)\[\]$/.exec(type)?.[1];
  return item === undefined ? "list" : `list (of ${nameOfType(item)})`;
}
