import { readFileSync } from "node:fs";

/** Where a kernel listens, and the key its messages are signed with: the content of a connection file. */
export interface Connection {
  readonly transport: string;
  readonly ip: string;
  readonly shell_port: number;
  readonly iopub_port: number;
  readonly stdin_port: number;
  readonly control_port: number;
  readonly hb_port: number;
  readonly key: string;
  readonly signature_scheme: string;
}

/** The five sockets of a kernel, by their name in the protocol. */
export type Channel = "shell" | "iopub" | "stdin" | "control" | "hb";

/** The address of one socket, e.g. "tcp://127.0.0.1:5001". */
export function addressOf(connection: Connection, channel: Channel): string {
  const separator = connection.transport === "ipc" ? "-" : ":";
  return `${connection.transport}://${connection.ip}${separator}${connection[`${channel}_port`]}`;
}

/**
 * Reads a connection file.
 *
 * @throws Error the file asks for a way of signing that is not spoken here
 */
export function readConnection(path: string): Connection {
  const connection: Connection = JSON.parse(readFileSync(path, "utf8"));
  const scheme = connection.signature_scheme ?? "hmac-sha256";
  if (scheme !== "hmac-sha256")
    throw new Error(`readConnection: signature_scheme must be hmac-sha256, got ${scheme}`);
  return connection;
}
