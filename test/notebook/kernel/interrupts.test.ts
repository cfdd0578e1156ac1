import { setImmediate as nextTurn } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { Interrupts } from "../../../kernel-helpers/notebook/kernel/interrupts.js";
import { type Header, type Message, newHeader } from "../../../kernel-helpers/notebook/wire/message.js";

function request(session = "one", date?: string): Message {
  const header: Header = { ...newHeader("execute_request", session), ...(date && { date }) };
  return { identities: [], header, parent: {}, content: {} };
}

describe("Interrupts", () => {
  it("belong to what its client sent before, whether it was read before or after, and to nothing sent later", async () => {
    const interrupts = new Interrupts();
    const [read, late, interrupt, next] = [request(), request(), request(), request()];
    interrupts.read(read);
    interrupts.strike([read], interrupt.header);
    interrupts.read(next);
    await new Promise((r) => setTimeout(r, 20));
    interrupts.read(late);
    expect([read, late, next].map((each) => interrupts.isStruck(each))).toEqual([true, true, false]);
  });
  it("tell of dates in milliseconds and microseconds, with either name for the same zone", () => {
    const interrupts = new Interrupts();
    const interrupt = request("one", "2026-03-04T05:06:07.123500Z");
    const before = request("one", "2026-03-04T05:06:07.123Z");
    const after = request("one", "2026-03-04T05:06:07.123501+00:00");
    interrupts.strike([before, after], interrupt.header);
    expect([before, after].map((each) => interrupts.isStruck(each))).toEqual([true, false]);
  });
  it.each([
    ["of another client", request("two").header],
    ["by a signal", undefined],
    ["of the same moment", request("one", "2026-03-04T05:06:07.000Z").header],
  ])("%s belong to what is unanswered or just on its way", async (_, by) => {
    const interrupts = new Interrupts();
    const [read, late, next] = [0, 1, 2].map(() => request("one", "2026-03-04T05:06:07.000Z"));
    interrupts.strike([read!], by);
    await nextTurn();
    interrupts.read(late!);
    await new Promise((r) => setTimeout(r, 20));
    interrupts.read(next!);
    expect([read, late, next].map((each) => interrupts.isStruck(each!))).toEqual([true, true, false]);
  });
});
