import type { Header } from "../../../notebook/wire/message.js";

/** The subprotocol in which kernel messages travel over a WebSocket. */
export const kernelSubprotocol = "v1.kernel.websocket.jupyter.org";

/** A kernel message on its way between page and server. Binary buffers are not spoken here: our kernel sends none. */
export interface ChannelMessage {
  readonly channel: string;
  readonly header: Header;
  readonly parent: Partial<Header>;
  readonly metadata: Readonly<Record<string, unknown>>;
  readonly content: Readonly<Record<string, unknown>>;
}

/** More parts than this has no message without buffers. */
const mostParts = 1000;

/**
 * A message as one frame: the number of offsets, the offsets of channel, header, parent header, metadata and content
 * and of the end, each as 64-bit little-endian, then these parts.
 *
 * @source Jupyter Server documentation, "WebSocket kernel wire protocols", v1.kernel.websocket.jupyter.org
 */
export function encodeFrame({ channel, header, parent, metadata, content }: ChannelMessage): Buffer {
  const parts = [channel, ...[header, parent, metadata, content].map((part) => JSON.stringify(part))].map(
    (part) => Buffer.from(part, "utf8"),
  );
  const head = Buffer.alloc(8 * (parts.length + 2));
  head.writeBigUInt64LE(BigInt(parts.length + 1), 0);
  let offset = head.length;
  for (const [i, part] of parts.entries()) {
    head.writeBigUInt64LE(BigInt(offset), 8 * (i + 1));
    offset += part.length;
  }
  head.writeBigUInt64LE(BigInt(offset), 8 * (parts.length + 1));
  return Buffer.concat([head, ...parts]);
}

/**
 * The message in a frame.
 *
 * @throws RangeError  the frame is none of this protocol
 */
export function decodeFrame(frame: Buffer): ChannelMessage {
  const parts = partsOf(frame);
  if (parts.length < 5) throw fault(`five parts, got ${parts.length}`);
  const [header, parent, metadata, content] = parts.slice(1, 5).map(objectIn);
  const { msg_id, msg_type, session } = header as Partial<Header>;
  if (typeof msg_id !== "string" || typeof msg_type !== "string" || typeof session !== "string")
    throw fault("a header with msg_id, msg_type and session");
  return {
    channel: parts[0]!.toString("utf8"),
    header: header as unknown as Header,
    parent: parent as Partial<Header>,
    metadata: metadata!,
    content: content!,
  };
}

function partsOf(frame: Buffer): Buffer[] {
  const number = (at: number): number => {
    if (at + 8 > frame.length) throw fault(`${at + 8} bytes or more, got ${frame.length}`);
    return Number(frame.readBigUInt64LE(at));
  };
  const count = number(0);
  if (count > mostParts) throw fault(`at most ${mostParts} parts, got ${count}`);
  const offsets = Array.from({ length: count }, (_, i) => number(8 * (i + 1)));
  for (const [i, offset] of offsets.entries())
    if (offset > frame.length || offset < (offsets[i - 1] ?? 0))
      throw fault(`offsets that rise, got ${offset}`);
  return offsets.slice(0, -1).map((from, i) => frame.subarray(from, offsets[i + 1]));
}

function objectIn(part: Buffer): Record<string, unknown> {
  let value: unknown;
  try {
    value = JSON.parse(part.toString("utf8"));
  } catch {
    throw fault("parts of JSON");
  }
  if (typeof value !== "object" || value === null || Array.isArray(value))
    throw fault("parts that are objects");
  return value as Record<string, unknown>;
}

function fault(expected: string): RangeError {
  return new RangeError(`decodeFrame: a frame must have ${expected}`);
}
