/**
 * What a rebuild.json holds, as JSON Schema (draft 2020-12). Quantities are written as an engineer writes
 * them ("2 7/16 in") and read by `readRebuildFile`, which also checks their kind.
 */
export const rebuildSchema = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  title: "A rebuild: the machine and its facts",
  type: "object",
  required: ["schema", "title", "units"],
  additionalProperties: false,
  properties: {
    $schema: { type: "string" },
    schema: { const: 1, description: "The version of this form" },
    title: { type: "string", minLength: 1 },
    invented: { type: "boolean", description: "true for a demonstration: the readings are made up" },
    units: { enum: ["inch", "metric"], description: "The system results are shown in" },
    machine: {
      type: "object",
      description: "What it is, which way it turns, how fast, what it weighs: label and text",
      additionalProperties: { type: "string", minLength: 1 },
    },
    dimensions: {
      type: "object",
      description: "Sizes that worksheets ask for by name, with unit: 2 7/16 in",
      additionalProperties: { type: "string", minLength: 1 },
    },
    angles: {
      type: "object",
      description: "Directions that worksheets ask for by name, counted as in the tables: 90 deg",
      additionalProperties: { type: "string", minLength: 1 },
    },
    quantities: {
      type: "object",
      description:
        "Everything else with a unit that worksheets ask for by name: 12 hp, 110 rpm, 180 lb, 65 °F",
      additionalProperties: { type: "string", minLength: 1 },
    },
    numbers: {
      type: "object",
      description: "Numbers without unit that worksheets ask for by name, each with the reason for it",
      additionalProperties: {
        type: "object",
        required: ["value", "because"],
        additionalProperties: false,
        properties: {
          value: { type: "number", description: "1.3" },
          because: { type: "string", minLength: 1, description: "Why this number was chosen" },
        },
      },
    },
    words: {
      type: "object",
      description: "What worksheets ask for in a word: which member drives, which material, which oil",
      additionalProperties: { type: "string", minLength: 1 },
    },
    examples: {
      type: "array",
      description: "Entries that are still the examples a new rebuild begins with: dimensions.shaft nominal",
      items: { type: "string", minLength: 1 },
    },
    private: {
      type: "object",
      description: "What is left out whenever the rebuild is shared, by name",
      additionalProperties: false,
      properties: {
        columns: {
          type: "array",
          description: "Columns of tables, without unit: remark, price",
          items: { type: "string", minLength: 1 },
        },
        remarks: {
          type: "array",
          description: "Remarks over tables, by the word before the colon: who",
          items: { type: "string", minLength: 1 },
        },
        machine: {
          type: "array",
          description: "Entries under machine",
          items: { type: "string", minLength: 1 },
        },
        words: { type: "array", description: "Entries under words", items: { type: "string", minLength: 1 } },
      },
    },
    parts: {
      type: "object",
      additionalProperties: {
        type: "object",
        required: ["title"],
        additionalProperties: false,
        properties: {
          title: { type: "string", minLength: 1 },
          material: { type: "string", minLength: 1 },
          expansion: { type: "string", description: "Thermal expansion with unit: 6.5e-6 1/°F" },
        },
      },
    },
    instruments: {
      type: "object",
      additionalProperties: {
        type: "object",
        required: ["title", "resolution", "repeatability"],
        additionalProperties: false,
        properties: {
          title: { type: "string", minLength: 1 },
          resolution: { type: "string", description: "The smallest step read off: 0.0001 in" },
          repeatability: {
            type: "string",
            description: "Standard deviation of repeated readings of one place: 0.0002 in",
          },
          calibration: { type: "string", description: "Standard uncertainty of its setting: 0.0001 in" },
          expansion: { type: "string", description: "Thermal expansion of its frame: 6.4e-6 1/°F" },
        },
      },
    },
  },
} as const;
