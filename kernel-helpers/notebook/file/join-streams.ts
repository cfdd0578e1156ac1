import type { Output } from "./notebook-format.js";

/** Outputs with consecutive pieces of the same stream made one: how they were cut is a matter of timing. */
export function joinStreams(outputs: readonly Output[]): readonly Output[] {
  const joined: Output[] = [];
  for (const output of outputs) {
    const last = joined.at(-1);
    if (output.output_type === "stream" && last?.output_type === "stream" && last.name === output.name)
      joined[joined.length - 1] = { ...last, text: last.text + output.text };
    else joined.push(output);
  }
  return joined;
}
