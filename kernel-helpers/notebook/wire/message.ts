import { createHmac, randomUUID, timingSafeEqual } from "node:crypto";

/**
 * Messages of the Jupyter protocol as they travel: routing prefix, delimiter, signature, and four parts
 * of JSON. Kernel and client share this file.
 *
 * @source Jupyter Client documentation, "Messaging in Jupyter", protocol version 5.3, "The wire protocol"
 */
export interface Message {
  /** Which client to answer; empty on a client's side. */
  readonly identities: readonly Buffer[];
  readonly header: Header;
  /** The header of the request this message belongs to. */
  readonly parent: Partial<Header>;
  /** Remarks of front ends, such as the id of the cell that is run. */
  readonly metadata?: Readonly<Record<string, unknown>>;
  readonly content: Readonly<Record<string, unknown>>;
}

export interface Header {
  readonly msg_id: string;
  readonly msg_type: string;
  readonly session: string;
  readonly username: string;
  readonly date: string;
  readonly version: string;
}

/** The version of the protocol spoken here. */
export const protocolVersion = "5.3";

const delimiter = Buffer.from("<IDS|MSG>");

/** A fresh header of its own identity. */
export function newHeader(type: string, session: string): Header {
  return {
    msg_id: randomUUID(),
    msg_type: type,
    session,
    username: "journalbox",
    date: dateNow(),
    version: protocolVersion,
  };
}

let last = 0;

/** In microseconds, as Jupyter writes it, and never one twice: what was sent before what can be told by it. */
function dateNow(): string {
  last = Math.max(Date.now() * 1000, last + 1);
  const milliseconds = Math.floor(last / 1000);
  return new Date(milliseconds).toISOString().replace("Z", `${String(last % 1000).padStart(3, "0")}Z`);
}

/** The frames to send: signed with the key, unsigned where the key is empty. */
export function encode(message: Message, key: string): Buffer[] {
  const parts = [message.header, message.parent, message.metadata ?? {}, message.content].map((part) =>
    Buffer.from(JSON.stringify(part)),
  );
  return [...message.identities, delimiter, Buffer.from(signature(parts, key)), ...parts];
}

/**
 * The message in the frames received.
 *
 * @throws Error the frames are no message, or were not signed with the key
 */
export function decode(frames: readonly Buffer[], key: string): Message {
  const at = frames.findIndex((frame) => frame.equals(delimiter));
  const parts = frames.slice(at + 2, at + 6);
  if (at < 0 || parts.length < 4)
    throw new Error(`decode: a message must have six parts, got ${frames.length}`);
  const given = frames[at + 1]!;
  const own = Buffer.from(signature(frames.slice(at + 2), key));
  if (given.length !== own.length || !timingSafeEqual(given, own))
    throw new Error("decode: a message must be signed with the key of the connection, got another signature");
  const [header, parent, metadata, content] = parts.map((part) => JSON.parse(part.toString("utf8")));
  return { identities: frames.slice(0, at), header, parent, metadata, content };
}

function signature(parts: readonly Buffer[], key: string): string {
  if (key === "") return "";
  const hash = createHmac("sha256", key);
  for (const part of parts) hash.update(part);
  return hash.digest("hex");
}
