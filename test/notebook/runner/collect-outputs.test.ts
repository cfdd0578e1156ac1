import { describe, expect, it } from "vitest";
import { OutputCollector } from "../../../kernel-helpers/notebook/runner/collect-outputs.js";

function collect(
  ...messages: readonly (readonly [type: string, content: Record<string, unknown>])[]
): OutputCollector {
  const collector = new OutputCollector();
  for (const [type, content] of messages) collector.take({ type, content });
  return collector;
}

describe("OutputCollector.take(output)", () => {
  it("joins the pieces of a stream that follow each other, and no others", () => {
    const { outputs, stderr } = collect(
      ["stream", { name: "stdout", text: "a" }],
      ["stream", { name: "stdout", text: "b" }],
      ["stream", { name: "stderr", text: "c" }],
      ["stream", { name: "stdout", text: "d" }],
    );
    expect(outputs.map((output) => ("text" in output ? output.text : ""))).toEqual(["ab", "c", "d"]);
    expect(stderr).toBe("c");
  });
  it("keeps a result with its number, without what only matters on the way", () => {
    const data = { "text/plain": "1" };
    const { outputs } = collect(
      ["execute_result", { data, metadata: {}, execution_count: 4 }],
      ["display_data", { data, metadata: {}, transient: { display_id: "x" } }],
    );
    expect(outputs).toEqual([
      { output_type: "execute_result", data, metadata: {}, execution_count: 4 },
      { output_type: "display_data", data, metadata: {} },
    ]);
  });
  it("replaces what is updated, by its display id", () => {
    const shown = (text: string): Record<string, unknown> => ({
      data: { "text/plain": text },
      metadata: {},
      transient: { display_id: "bar" },
    });
    const { outputs } = collect(
      ["display_data", shown("10 %")],
      ["stream", { name: "stdout", text: "between" }],
      ["update_display_data", shown("100 %")],
      ["update_display_data", { ...shown("lost"), transient: { display_id: "unknown" } }],
    );
    expect(outputs).toHaveLength(2);
    expect(outputs[0]).toMatchObject({ data: { "text/plain": "100 %" } });
  });
  it("clears, and passes over messages that are no output", () => {
    const { outputs } = collect(
      ["stream", { name: "stdout", text: "a" }],
      ["clear_output", { wait: false }],
      ["comm_open", {}],
      ["error", { ename: "E", evalue: "v", traceback: ["t"] }],
    );
    expect(outputs).toEqual([{ output_type: "error", ename: "E", evalue: "v", traceback: ["t"] }]);
  });
});
