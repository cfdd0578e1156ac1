import { packageName } from "../../record/package-root.js";
import { helperNames } from "./helper-names.js";
import { nameOfType, withArticle } from "./name-of-type.js";
import { unitWords } from "./unit-words.js";

/** One message of TypeScript; a fault is a message and the details that follow it. */
export interface CompilerMessage {
  readonly code: number;
  readonly messageText: string;
}

/**
 * One fault that TypeScript found, in words a non-programmer can act on. A fault this does not know keeps
 * TypeScript's own first line. What TypeScript suggests ("did you mean") is always kept.
 *
 * @param fault at least one message: the fault, then its details
 * @example plainWords([{ code: 2304, messageText: "Cannot find name 'shaft'." }])
 *          // "shaft is not known here: is it spelled right, and was its cell run before?"
 */
export function plainWords(fault: readonly CompilerMessage[]): string {
  const texts = fault.map((message) => withoutPaths(message.messageText));
  // The details are the more telling the deeper they lie; those of several overloads all speak of the last one.
  for (const rule of rules) {
    for (const text of texts) {
      const found = rule.pattern.exec(text);
      if (found === null) continue;
      const parts = found.slice(1).map((part) => part ?? "");
      if (rule.when?.(parts) !== false) return rule.say(parts, texts);
    }
  }
  return texts[0]?.replace(/\.$/, "") ?? "";
}

/** TypeScript names the file of a type where two have one name. */
export function withoutPaths(text: string): string {
  return text.replaceAll(/import\("[^"]*"\)\./g, "");
}

interface Rule {
  readonly pattern: RegExp;
  /** Asked where the pattern alone does not tell. */
  readonly when?: (parts: readonly string[]) => boolean;
  readonly say: (parts: readonly string[], texts: readonly string[]) => string;
}

/** Asked from first to last: what tells most stands first. */
const rules: readonly Rule[] = [
  {
    pattern: /'(.+)' does not exist in type '.+'\. Did you mean to write '(.+)'\?/,
    say: ([name, meant]) => `there is no ${name} here; did you mean ${meant}?`,
  },
  {
    pattern: /^Property '(.+)' is missing in type '(.+)' but required in type '(.+)'/,
    say: ([name, got, wanted]) =>
      isNoLiteral(got!, wanted!) ? sayMismatch(got!, wanted!, []) : `${name} is missing here`,
  },
  {
    pattern:
      /^Type '(.+)' is missing the following properties from type '(.+)': (.+?)(?:, and (\d+) more\.?)?$/,
    say: ([got, wanted, names, more]) =>
      isNoLiteral(got!, wanted!)
        ? sayMismatch(got!, wanted!, [])
        : `${names} are missing here${more === "" ? "" : `, and ${more} more`}`,
  },
  {
    pattern: /'(.+)' does not exist in type '(.+)'/,
    say: ([name, type]) => `there is no ${name} ${type!.startsWith("{") ? "here" : `in ${type}`}`,
  },
  {
    pattern: /^Operator '(.+)' cannot be applied to types '(.+)' and '(.+)'/,
    say: ([operator, left, right]) => sayOperator(operator!, left!, right!),
  },
  {
    pattern: /^The (?:left|right)-hand side of an arithmetic operation must be/,
    say: () =>
      "this is no plain number: for quantities write .plus(), .minus(), .times() or .over() in place of + - * /",
  },
  {
    pattern: /^Argument of type '(.+)' is not assignable to parameter of type '(.+)'/,
    say: ([got, wanted], texts) => sayMismatch(got!, wanted!, texts),
  },
  {
    pattern: /^Type '(.+)' is not assignable to type '(.+)'\. Did you mean '(.+)'\?/,
    say: ([got, , meant]) => `${got} is not allowed here; did you mean ${meant}?`,
  },
  {
    pattern: /^Type '(.+)' is not assignable to type '(.+)'/,
    say: ([got, wanted], texts) => sayMismatch(got!, wanted!, texts),
  },
  {
    pattern: /^Type '(.+)' has no properties in common with type '(.+)'/,
    say: ([got, wanted]) => sayMismatch(got!, wanted!, []),
  },
  {
    pattern: /^Cannot find name '(.+?)'/,
    when: ([name]) => helperNames().has(name!),
    say: ([name]) => `${name} is not known here: put import { ${name} } from "${packageName}" before it`,
  },
  {
    pattern: /^Cannot find name '(.+)'\. Did you mean (?:the instance member )?'(.+)'\?/,
    say: ([name, meant]) => `${name} is not known here; did you mean ${meant}?`,
  },
  {
    pattern: /^Cannot find name '(.+)'/,
    say: ([name]) => `${name} is not known here: is it spelled right, and was its cell run before?`,
  },
  {
    pattern: /^Property '(.+)' does not exist on type 'Promise<.+>'/,
    say: ([name]) => `${name} is not there yet: put await before what it is taken from`,
  },
  {
    pattern: /^Property '(.+)' does not exist on type '(.+)'\. Did you mean '(.+)'\?/,
    say: ([name, type, meant]) => `${withArticle(nameOfType(type!))} has no ${name}; did you mean ${meant}?`,
  },
  {
    pattern: /^Property '(.+)' does not exist on type '(.+)'/,
    say: ([name, type]) => `${withArticle(nameOfType(type!))} has no ${name}`,
  },
  {
    pattern: /^Expected (.+) arguments?, but got (\d+)/,
    say: ([wanted, got]) => `${wanted} values were expected in the brackets, but ${got} were given`,
  },
  {
    pattern: /^'(.+)' is possibly '(?:null|undefined)'/,
    say: ([name]) => `${name} may be missing: check that it is there before using it`,
  },
  {
    pattern: /^Object is possibly '(?:null|undefined)'/,
    say: () => "this may be missing: check that it is there before using it",
  },
  {
    pattern: /^(?:Module )?'"(.+)"' has no exported member (?:named )?'(.+)'\. Did you mean '(.+)'\?/,
    say: ([module, name, meant]) => `${module} has no ${name}; did you mean ${meant}?`,
  },
  {
    pattern: /^Module '"(.+)"' has no exported member '(.+)'/,
    say: ([module, name]) => `${module} has no ${name}`,
  },
  {
    pattern: /^Cannot find module '(.+)' or its corresponding type declarations/,
    say: ([module]) => `${module} was not found: is it spelled right, and is it installed?`,
  },
  {
    pattern: /^This condition will always return true since this 'Promise</,
    say: () => "this is a value still being computed: put await before it",
  },
  {
    pattern: /^Variable '(.+)' is used before being assigned/,
    say: ([name]) => `${name} has no value yet`,
  },
  {
    pattern: /^The value '(?:null|undefined)' cannot be used here/,
    say: () => "there is nothing here that this could be taken from",
  },
  {
    pattern: /^Cannot redeclare exported variable/,
    say: () => "leave out the word export: every name of a cell is known to the cells after it",
  },
  {
    pattern: /^A 'return' statement can only be used within a function body/,
    say: () => "return has no place outside a function: a cell shows the value of its last line",
  },
  {
    pattern: /^Cannot redeclare block-scoped variable '(.+)'/,
    say: ([name]) => `${name} is named twice in this cell: give one of them another name`,
  },
  {
    pattern: /^Cannot assign to '(.+)' because it is a (?:constant|read-only property)/,
    say: ([name]) => `${name} cannot be changed: give the new value a name of its own`,
  },
  {
    pattern: /^(?:Parameter|Variable) '(.+)' implicitly has (?:an? )?'.+' type/,
    say: ([name]) => `say what ${name} is, e.g. ${name}: number`,
  },
  {
    pattern: /^'(.+)' expected\.?$/,
    say: ([sign]) => `${sign} is missing before this`,
  },
  {
    pattern: /^Unterminated string literal/,
    say: () => "this text has no closing quotation mark",
  },
  {
    pattern: /^Expression expected/,
    say: () => "a value is missing here",
  },
];

/** "a length was expected here, but this is a force": the kinds named, where both are plain enough. */
function sayMismatch(got: string, wanted: string, texts: readonly string[]): string {
  const field = texts
    .map((text) => /^Types of property '(.+)' are incompatible/.exec(text)?.[1])
    .find((name) => name !== undefined && name !== "dimension");
  const kindOfUnit = /^UnitOf<"(.+)">$/.exec(wanted)?.[1];
  const written = /^"(.*)"$/.exec(got)?.[1];
  if (kindOfUnit !== undefined && written !== undefined) return unitWords(kindOfUnit, written);
  const found = nameOfType(got);
  const needed = nameOfType(wanted);
  const where = field === undefined ? "here" : `for ${field}`;
  const inner = field === undefined ? undefined : innermostMismatch(texts);
  if (inner !== undefined) return `${inner.wanted} was expected ${where}, but this is ${inner.got}`;
  const hint =
    found === "plain number" && isQuantity(wanted) ? ": give it a unit, e.g. inch(2.5) or mm(60)" : "";
  const wait = /^Promise</.test(got) ? ": put await before it" : "";
  return `${withArticle(needed)} was expected ${where}, but this is ${withArticle(found)}${hint}${wait}`;
}

/** The kinds that differ inside two named types, from the last detail that names quantities. */
function innermostMismatch(
  texts: readonly string[],
): { readonly got: string; readonly wanted: string } | undefined {
  for (const text of texts.slice(1).reverse()) {
    const found = /^Type '(.+)' is not assignable to type '(.+)'/.exec(text);
    if (found === null) continue;
    // The kind itself, as in Type '"force"' is not assignable to type '"length"'.
    const [got, wanted] = found
      .slice(1)
      .map((type) => nameOfType(/^"(.+)"$/.test(type) ? `Quantity<${type}>` : type));
    return { got: withArticle(got!), wanted: withArticle(wanted!) };
  }
  return undefined;
}

/** Where what is there has a name of its own, that says more than what it lacks. */
function isNoLiteral(got: string, wanted: string): boolean {
  return isQuantity(wanted) || !got.startsWith("{");
}

function isQuantity(type: string): boolean {
  return /^Quantity<|^Temperature$/.test(type);
}

const methodFor: Readonly<Record<string, string>> = {
  "+": ".plus()",
  "-": ".minus()",
  "*": ".times()",
  "/": ".over()",
};

function sayOperator(operator: string, left: string, right: string): string {
  const method = methodFor[operator];
  const names = `${withArticle(nameOfType(left))} and ${withArticle(nameOfType(right))}`;
  return method !== undefined && (isQuantity(left) || isQuantity(right))
    ? `${operator} does not work between ${names}: write ${method} in its place`
    : `${operator} does not work between ${names}`;
}
