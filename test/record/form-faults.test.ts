import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Form, formFaults } from "../../kernel-helpers/record/form-faults.js";
import { rebuildSchema } from "../../kernel-helpers/record/rebuild-schema.js";

describe("formFaults(json, form)", () => {
  it("agrees with ajv on what fits the form of a rebuild.json, whatever stands in it", () => {
    const fits = new Ajv2020({ allErrors: true }).compile(rebuildSchema);
    const text = fc.constantFrom("", "12 hp", "inch");
    const odd = fc.oneof(text, fc.constantFrom(1, 2, null, true, [], ["inch"], {}));
    const names = fc.constantFrom(
      "schema",
      "title",
      "units",
      "resolution",
      "repeatability",
      "material",
      "else",
      "constructor",
    );
    const entries = (value: fc.Arbitrary<unknown>): fc.Arbitrary<Record<string, unknown>> =>
      fc.dictionary(names, value, { maxKeys: 4 });
    const sections = fc.constantFrom(...Object.keys(rebuildSchema.properties), "else");
    const whole = fc.tuple(
      fc.record(
        { schema: fc.constantFrom(1, 1, 2), title: text, units: fc.constantFrom("inch", "metric", "yard") },
        { requiredKeys: [] },
      ),
      fc.dictionary(sections, fc.oneof(odd, entries(fc.oneof(odd, entries(odd)))), { maxKeys: 3 }),
    );
    let [fitting, all] = [0, 0];
    fc.assert(
      fc.property(
        fc.oneof(
          odd,
          whole.map(([facts, others]) => ({ ...others, ...facts })),
        ),
        (json) => {
          const faults = formFaults(json, rebuildSchema);
          expect([JSON.stringify(json), faults.length === 0]).toEqual([JSON.stringify(json), fits(json)]);
          all += 1;
          if (faults.length === 0) fitting += 1;
        },
      ),
      { numRuns: 3000, seed: 7 },
    );
    expect(fitting).toBeGreaterThan(30);
    expect(all - fitting).toBeGreaterThan(1000);
  });
  it("tells all faults, each with its place", () => {
    const form: Form = {
      type: "object",
      required: ["title", "parts"],
      additionalProperties: false,
      properties: {
        title: { type: "string", minLength: 1 },
        units: { enum: ["inch", "metric"] },
        schema: { const: 1 },
        parts: { type: "array", items: { type: "object", additionalProperties: { type: "number" } } },
      },
    };
    const json = { title: "", units: "yard", schema: 2, parts: [{ mass: "1" }, 3], colour: "red" };
    expect(formFaults(json, form)).toEqual([
      "title: nothing stands here, a text was expected",
      'units: found "yard", expected one of inch, metric',
      "schema: found 2, expected 1",
      'parts[0].mass: found "1", expected a number',
      "parts[1]: found 3, expected an object",
      'the file: "colour" is not known here; known are title, units, schema, parts',
    ]);
    expect(formFaults([], form)).toEqual(["the file: found [], expected an object"]);
    expect(formFaults({}, form)).toEqual(['the file: "title" is missing', 'the file: "parts" is missing']);
  });
  it("refuses a form with a word it would pass over", () => {
    const form = { type: "string", pattern: "^a" } as Form;
    expect(() => formFaults("b", form)).toThrow('words known here only, got "pattern"');
  });
});
