import { expect, it } from "vitest";
import { Publisher, Subscriber } from "zeromq";
import { Outbox } from "../../../kernel-helpers/notebook/wire/outbox.js";

/** A socket on paper: ready or not, and what it was given. */
function paperSocket(ready: boolean) {
  const given: string[] = [];
  return {
    given,
    writable: ready,
    busy: false,
    async send(frames: unknown[]) {
      if (this.busy) throw new Error("busy");
      given.push(String(frames[0]));
    },
  };
}

it("put(frames) hands a message over before it returns where the socket is ready, later where it is not", async () => {
  const [ready, waiting] = [paperSocket(true), paperSocket(false)];
  for (const socket of [ready, waiting]) {
    const box = new Outbox(socket);
    for (const word of ["a", "b", "c"]) box.put([Buffer.from(word)]);
    expect(socket.given).toEqual(socket === ready ? ["a", "b", "c"] : []);
    await box.emptied();
    expect(socket.given).toEqual(["a", "b", "c"]);
  }
});

it("thousands of messages put without a pause all arrive, in order: a real socket takes some hundred at once", async () => {
  const [from, to] = [new Publisher({ sendHighWaterMark: 0 }), new Subscriber({ receiveHighWaterMark: 0 })];
  try {
    await from.bind("tcp://127.0.0.1:*");
    to.connect(from.lastEndpoint!);
    to.subscribe("");
    const box = new Outbox(from);
    // A subscriber hears only what is sent once it is known.
    let last = "";
    while (last === "") {
      box.put([Buffer.from("ready?")]);
      await new Promise((resolve) => setTimeout(resolve, 20));
      to.receiveTimeout = 100;
      last = await to.receive().then(
        ([frame]) => String(frame),
        () => "",
      );
    }
    to.receiveTimeout = 5000;
    for (let i = 0; i < 3000; i++) box.put([Buffer.from(String(i))]);
    let next = 0;
    for (const _ of Array.from({ length: 3000 })) {
      let word = String((await to.receive())[0]);
      while (word === "ready?") word = String((await to.receive())[0]);
      expect(word).toBe(String(next));
      next += 1;
    }
    await box.emptied();
  } finally {
    from.close();
    to.close();
  }
});

it("a socket closed meanwhile swallows what is put", async () => {
  const socket = new Publisher();
  const box = new Outbox(socket);
  socket.close();
  box.put([Buffer.from("late")]);
  await expect(box.emptied()).resolves.toBeUndefined();
});
