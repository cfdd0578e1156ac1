import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decodeFrame, encodeFrame } from "../../../kernel-helpers/live/server/kernels/websocket-frame.js";
import { newHeader } from "../../../kernel-helpers/notebook/wire/message.js";

const message = {
  channel: "shell",
  header: newHeader("execute_request", "s"),
  parent: {},
  metadata: { cellId: "c1" },
  content: { code: "// 2 7/16 in, ± 0.2 µm" },
};

describe("encodeFrame(message), decodeFrame(frame)", () => {
  // Source: Jupyter Server documentation, "WebSocket kernel wire protocols": offset_number, offset_0 ..., then msg.
  it("lays the parts out as the protocol says", () => {
    const frame = encodeFrame(message);
    const at = (i: number): number => Number(frame.readBigUInt64LE(8 * i));
    expect(at(0)).toBe(6);
    expect(at(1)).toBe(8 * 7);
    expect(frame.subarray(at(1), at(2)).toString()).toBe("shell");
    expect(JSON.parse(frame.subarray(at(5), at(6)).toString())).toEqual(message.content);
    expect(at(6)).toBe(frame.length);
  });
  it("give back any message", () => {
    fc.assert(
      fc.property(fc.json(), fc.string(), (data, channel) => {
        const any = { ...message, channel, content: { data: JSON.parse(data) } };
        expect(decodeFrame(encodeFrame(any))).toEqual(JSON.parse(JSON.stringify(any)));
      }),
    );
  });
  it("decodeFrame refuses whatever is no message, and never does anything else", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expect(() => decodeFrame(Buffer.from(bytes))).toThrow(RangeError);
      }),
    );
    const frame = encodeFrame(message);
    for (let length = 0; length < frame.length; length++)
      expect(() => decodeFrame(frame.subarray(0, length))).toThrow(/^decodeFrame: a frame must have /);
    const huge = Buffer.alloc(16, 255);
    expect(() => decodeFrame(huge)).toThrow(/at most 1000 parts/);
  });
});
