/**
 * The form of a piece of JSON, in as much of JSON Schema (draft 2020-12) as a rebuild.json needs. A form with any
 * other word in it is refused, so that nothing written there is passed over.
 */
export interface Form {
  readonly $schema?: string;
  readonly title?: string;
  readonly description?: string;
  readonly type?: "object" | "string" | "boolean" | "number" | "array";
  readonly const?: string | number | boolean;
  readonly enum?: readonly string[];
  /** Of a text: it must not be empty. */
  readonly minLength?: 1;
  /** Of an object: the names that must be there. */
  readonly required?: readonly string[];
  /** Of an object: the form of what stands under each name. */
  readonly properties?: Readonly<Record<string, Form>>;
  /** Of an object: the form of what stands under all other names; false where there must be none. */
  readonly additionalProperties?: false | Form;
  /** Of a list: the form of each item. */
  readonly items?: Form;
}

const words: Readonly<Record<keyof Form, true>> = {
  $schema: true,
  title: true,
  description: true,
  type: true,
  const: true,
  enum: true,
  minLength: true,
  required: true,
  properties: true,
  additionalProperties: true,
  items: true,
};

/**
 * What keeps a piece of JSON from a form: all faults at once, each with its place, what was found and what was
 * expected, in plain words. Empty where it fits.
 *
 * @param json what `JSON.parse` gives
 * @param place where it stands, e.g. "parts.shaft"; empty for the whole
 * @throws RangeError  the form holds a word that is not known here
 * @example formFaults({ units: "yards" }, { type: "object", properties: { units: { enum: ["inch", "metric"] } } }); // ['units: found "yards", expected one of inch, metric']
 * @source JSON Schema: A Vocabulary for Validation of JSON, draft 2020-12, clause 6 (the words used here)
 */
export function formFaults(json: unknown, form: Form, place = ""): readonly string[] {
  for (const word of Object.keys(form))
    if (!Object.hasOwn(words, word))
      throw new RangeError(`formFaults: a form must hold the words known here only, got "${word}"`);
  const at = place === "" ? "the file" : place;
  const found = JSON.stringify(json)?.slice(0, 60);
  if (form.type !== undefined && typeOf(json) !== form.type)
    return [`${at}: found ${found}, expected ${named[form.type] ?? `a ${form.type}`}`];
  if (form.const !== undefined && json !== form.const)
    return [`${at}: found ${found}, expected ${JSON.stringify(form.const)}`];
  if (form.enum !== undefined && !form.enum.some((one) => one === json))
    return [`${at}: found ${found}, expected one of ${form.enum.join(", ")}`];
  if (json === "" && form.minLength === 1) return [`${at}: nothing stands here, a text was expected`];
  if (Array.isArray(json))
    return json.flatMap((item, index) => formFaults(item, form.items ?? {}, `${place}[${index}]`));
  return typeof json === "object" && json !== null ? objectFaults(json, form, place) : [];
}

/** JSON's own names that are no words of the trade, or want another article. */
const named: Readonly<Record<string, string>> = { array: "a list", object: "an object" };

function objectFaults(json: object, form: Form, place: string): readonly string[] {
  const { required = [], properties = {}, additionalProperties = {} } = form;
  const at = place === "" ? "the file" : place;
  const inside = (name: string): string => (place === "" ? name : `${place}.${name}`);
  const missing = required
    .filter((name) => !Object.hasOwn(json, name))
    .map((name) => `${at}: "${name}" is missing`);
  const faults = Object.entries(json).flatMap(([name, value]) => {
    const known = Object.hasOwn(properties, name) ? properties[name] : additionalProperties;
    if (known !== undefined && known !== false) return formFaults(value, known, inside(name));
    return [`${at}: "${name}" is not known here; known are ${Object.keys(properties).join(", ")}`];
  });
  return [...missing, ...faults];
}

function typeOf(json: unknown): string {
  return json === null ? "null" : Array.isArray(json) ? "array" : typeof json;
}
