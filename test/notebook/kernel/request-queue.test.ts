import { describe, expect, it } from "vitest";
import { RequestQueue } from "../../../kernel-helpers/notebook/kernel/request-queue.js";
import { type Message, newHeader } from "../../../kernel-helpers/notebook/wire/message.js";

function request(name: string, type = "execute_request"): Message {
  return { identities: [], header: newHeader(type, "s"), parent: {}, content: { name } };
}

/** A queue that writes down what it does; requests whose name begins with "bad" ask that the rest be aborted. */
function watched(): { queue: RequestQueue; told: string[]; done: (count: number) => Promise<void> } {
  const told: string[] = [];
  const queue = new RequestQueue(
    async ({ content }) => {
      told.push(`run ${content.name}`);
      return {
        abortWaiting: String(content.name).startsWith("bad"),
        reply: () => told.push(`reply ${content.name}`),
      };
    },
    ({ content }) => told.push(`abort ${content.name}`),
  );
  const done = async (count: number): Promise<void> => {
    while (told.length < count) await new Promise((next) => setTimeout(next, 5));
  };
  return { queue, told, done };
}

describe("RequestQueue.add(request)", () => {
  it("runs one after the other, each replied to before the next begins", async () => {
    const { queue, told, done } = watched();
    queue.add(request("a"));
    queue.add(request("b"));
    await done(4);
    expect(told).toEqual(["run a", "reply a", "run b", "reply b"]);
  });
  it("aborts the cells that wait when one fails, and says so after its reply; a reset is not aborted", async () => {
    const { queue, told, done } = watched();
    queue.add(request("bad"));
    queue.add(request("b"));
    queue.add(request("reset", "journalbox_reset_request"));
    await done(5);
    expect(told).toEqual(["run bad", "reply bad", "abort b", "run reset", "reply reset"]);
  });
  it("aborts also what is read while the failed cell is being dealt with", async () => {
    const { queue, told, done } = watched();
    queue.add(request("bad"));
    setImmediate(() => queue.add(request("on its way")));
    await done(3);
    expect(told).toEqual(["run bad", "reply bad", "abort on its way"]);
  });
  it("runs what comes after the reply of a failed cell", async () => {
    const { queue, told, done } = watched();
    queue.add(request("bad"));
    await done(2);
    queue.add(request("next"));
    await done(4);
    expect(told).toEqual(["run bad", "reply bad", "run next", "reply next"]);
  });
});
