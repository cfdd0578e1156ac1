import { createHmac } from "node:crypto";
import { describe, expect, it } from "vitest";
import { decode, encode, type Message, newHeader } from "../../../kernel-helpers/notebook/wire/message.js";

const message: Message = {
  identities: [Buffer.from("a client"), Buffer.from([0, 255])],
  header: newHeader("execute_request", "session"),
  parent: {},
  metadata: { cellId: "wear-bands" },
  content: { code: "2 7/16 ″, Ø 60 mm" },
};

describe("newHeader(type, session)", () => {
  it("is dated in microseconds, no two of a process alike, so that it can be told which was sent first", () => {
    const dates = Array.from({ length: 2000 }, () => newHeader("execute_request", "session").date);
    expect(dates.every((date) => /T\d\d:\d\d:\d\d\.\d{6}Z$/.test(date))).toBe(true);
    expect(dates).toEqual([...new Set(dates)].sort());
    expect(Math.abs(Date.parse(dates[0]!) - Date.now())).toBeLessThan(60_000);
  });
});

describe("encode(message, key) and decode(frames, key)", () => {
  it("give back what was sent", () => {
    expect(decode(encode(message, "key"), "key")).toEqual(message);
  });
  // Source: Jupyter Client documentation, "The wire protocol": HMAC of the four JSON parts, in hexadecimal.
  it("signs the header, parent, metadata and content in this order", () => {
    const frames = encode(message, "key");
    const expected = createHmac("sha256", "key")
      .update(Buffer.concat(frames.slice(4)))
      .digest("hex");
    expect(frames[2]?.toString()).toBe("<IDS|MSG>");
    expect(frames[3]?.toString()).toBe(expected);
    expect(frames).toHaveLength(8);
  });
  it("leaves the signature empty where the key is empty", () => {
    expect(encode(message, "")[3]).toHaveLength(0);
    expect(decode(encode(message, ""), "")).toEqual(message);
  });
  it("rejects a message signed with another key, or changed on its way", () => {
    expect(() => decode(encode(message, "other"), "key")).toThrow(
      /decode: a message must be signed with the key/,
    );
    const frames = encode(message, "key");
    frames[7] = Buffer.from('{"code":"something else"}');
    expect(() => decode(frames, "key")).toThrow(/decode: a message must be signed with the key/);
  });
  it("rejects what is no message", () => {
    expect(() => decode([Buffer.from("hello")], "key")).toThrow(
      /decode: a message must have six parts, got 1/,
    );
  });
});
