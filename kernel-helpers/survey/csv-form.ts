/**
 * How the cells of a table lie in its text, whoever takes it apart: lines that begin with # are remarks, a cell may be
 * in double quotes.
 */
export const csvForm = {
  record_delimiter: "\n",
  comment: "#",
  comment_no_infix: true,
  ltrim: true,
  // A quote inside a cell is an inch mark: 2.4375"
  relax_quotes: true,
  // Rows of a wrong length are told by who reads their columns, not dropped here.
  relax_column_count: true,
  max_record_size: 0,
} as const;
