import fc from "fast-check";

const characters = fc.constantFrom(...'ab12.,,,;\t  ""##:\n\n\r\'/é±', "\r\n", "\uFEFF");

/** Any text at all, mostly of the characters that matter to a CSV file. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  fc.string(),
  fc.array(characters, { maxLength: 60 }).map((parts) => parts.join("")),
);

const cells = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.constantFrom("1", " 2.4373", "2 7/16", "-", "", " ", "rust ", '2.4375"', "# 1"),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom('"light rust, filed"', ' "a ""b"" c"', '""', '"# 2"', '"x\ny"', '"x" y'),
  },
  { weight: 1, arbitrary: fc.stringMatching(/^[ab "']{0,4}$/) },
);
const rows = fc.array(cells, { minLength: 1, maxLength: 5 }).map((parts) => parts.join(","));
const remarks = fc.constantFrom("# part: shaft", "#", "  # read at 10:30", "# checked: line 4");
const blanks = fc.constantFrom("", "  ", ",,");
const lines = fc.oneof({ weight: 5, arbitrary: rows }, remarks, blanks);

/** The text of a table as hands and spreadsheets write it, with slips. */
export const csvText: fc.Arbitrary<string> = fc
  .tuple(fc.array(lines, { maxLength: 9 }), fc.constantFrom("\n", "\r\n", "\r"), fc.boolean())
  .map(
    ([body, end, closed]) => ["station [in],diameter [in],remark", ...body].join(end) + (closed ? end : ""),
  );
